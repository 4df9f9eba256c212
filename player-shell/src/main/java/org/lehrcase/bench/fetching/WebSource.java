package org.lehrcase.bench.fetching;

import java.io.IOException;
import java.io.InputStream;
import java.io.InterruptedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.NoSuchFileException;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import org.lehrcase.core.copies.CopySource;

/**
 * An edition folder on a plain web server. It needs no program on the server; byte ranges are used
 * where the server knows them (RFC 9110, section 14), and read over where it does not. No cookies,
 * no names, no compression; a redirect is followed only to the same host over https.
 */
public final class WebSource implements CopySource {
  private static final int MAX_REDIRECTS = 3;

  private final URI base;
  private final Limits limits;
  private final HttpClient client;

  /**
   * How long to wait.
   *
   * @param connect for the connection
   * @param silence for the answer to begin, and for each next byte of it
   * @param grace before the pace of an answer is judged
   * @param bytesPerSecond the slowest pace that is borne after the grace
   */
  public record Limits(Duration connect, Duration silence, Duration grace, long bytesPerSecond) {
    /** For people's lines. */
    public static final Limits USUAL =
        new Limits(Duration.ofSeconds(10), Duration.ofSeconds(30), Duration.ofSeconds(60), 1024);
  }

  /**
   * Prepares to ask; nothing is sent yet.
   *
   * @param base the address of the edition folder; it ends with a slash
   * @param limits how long to wait
   */
  public WebSource(URI base, Limits limits) {
    this.base = base;
    this.limits = limits;
    this.client =
        HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .followRedirects(HttpClient.Redirect.NEVER)
            .connectTimeout(limits.connect())
            .build();
  }

  @Override
  public String label() {
    return base.toString();
  }

  @Override
  public List<Candidate> find(String path, OptionalLong exactBytes) {
    return List.of(new WebFile(base.resolve(path), exactBytes));
  }

  private final class WebFile implements Candidate {
    private final URI address;
    private final OptionalLong exactBytes;

    WebFile(URI address, OptionalLong exactBytes) {
      this.address = address;
      this.exactBytes = exactBytes;
    }

    @Override
    public boolean isNear() {
      return false;
    }

    @Override
    public InputStream from(long position) throws IOException {
      HttpResponse<InputStream> answer = ask(position);
      InputStream body = new PacedStream(answer.body(), limits, label());
      boolean taken = false;
      try {
        requireFit(answer, position);
        if (answer.statusCode() == 200) {
          body.skipNBytes(position); // the server does not know ranges
        }
        taken = true;
        return body;
      } finally {
        if (!taken) {
          body.close();
        }
      }
    }

    private HttpResponse<InputStream> ask(long position) throws IOException {
      URI at = address;
      for (int hop = 0; hop <= MAX_REDIRECTS; hop++) {
        HttpResponse<InputStream> answer = send(at, position);
        if (answer.statusCode() / 100 != 3) {
          return answer;
        }
        answer.body().close();
        at = next(at, answer);
      }
      throw new IOException(base + " sends from one address to the next");
    }

    private HttpResponse<InputStream> send(URI at, long position) throws IOException {
      HttpRequest.Builder request = HttpRequest.newBuilder(at).timeout(limits.silence()).GET();
      if (position > 0) {
        request.header("Range", "bytes=" + position + "-");
      }
      try {
        return client.send(request.build(), BodyHandlers.ofInputStream());
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new InterruptedIOException("interrupted while asking " + base);
      } catch (IOException e) {
        throw new IOException(base + " does not answer: " + e.getMessage(), e);
      }
    }

    private URI next(URI at, HttpResponse<InputStream> answer) throws IOException {
      URI to;
      try {
        to = at.resolve(answer.headers().firstValue("Location").orElse(""));
      } catch (IllegalArgumentException e) {
        throw new IOException(base + " sends elsewhere, to no address", e);
      }
      boolean sameHost =
          to.getHost() != null
              && to.getHost()
                  .toLowerCase(Locale.ROOT)
                  .equals(at.getHost().toLowerCase(Locale.ROOT));
      if (!sameHost || !"https".equals(to.getScheme()) || to.getRawUserInfo() != null) {
        throw new IOException(base + " sends elsewhere, to " + to + ", which is not followed");
      }
      return to;
    }

    private void requireFit(HttpResponse<InputStream> answer, long position) throws IOException {
      int status = answer.statusCode();
      if (status == 404 || status == 410 || status == 416) {
        throw new NoSuchFileException(address.toString());
      }
      if (status != 200 && status != 206) {
        throw new IOException(base + " answered with number " + status);
      }
      if (status == 206) {
        String range = answer.headers().firstValue("Content-Range").orElse("");
        if (!range.startsWith("bytes " + position + "-")) {
          throw new IOException(base + " answered with another range than was asked for");
        }
      }
      long told = answer.headers().firstValueAsLong("Content-Length").orElse(-1);
      long rest = exactBytes.orElse(-1) - (status == 206 ? position : 0);
      if (told >= 0 && exactBytes.isPresent() && told != rest) {
        throw new IOException(
            base + " gives " + told + " bytes where " + rest + " are right; perhaps an error page");
      }
    }
  }
}
