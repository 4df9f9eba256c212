package org.lehrcase.bench.web;

import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.lehrcase.bench.courses.CourseFile;
import org.lehrcase.bench.courses.MediumPace;
import org.lehrcase.bench.fixture.RawClient;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.seal.ClearSource;

/** A running server with one file behind it, and a client that has entered. */
final class ServerFixture implements AutoCloseable {
  static final String EDITION = "e1".repeat(16);
  static final String ASSET = "a1".repeat(16);
  static final String EMPTY_ASSET = "a2".repeat(16);
  static final String TAG = "\"0123456789abcdef\"";
  static final int SEGMENT = 1000;
  private static final Logger QUIET = Logger.getLogger("org.eclipse.jetty");

  static {
    QUIET.setLevel(Level.WARNING);
  }

  final byte[] content = new byte[10_500];
  final List<Long> damageNotes = new CopyOnWriteArrayList<>();
  final AtomicInteger segmentsOpened = new AtomicInteger();
  final MediumPace pace = new MediumPace();
  volatile long damagedFrom = Long.MAX_VALUE;
  volatile boolean open = true;

  final BenchServer server;
  final RawClient client;
  final String path;
  final String cookie;

  ServerFixture() throws IOException {
    for (int i = 0; i < content.length; i++) {
      content[i] = (byte) (i * 31 + i / 256);
    }
    JsonApi api = new JsonApi();
    api.on("GET state", ask -> new JsonObject());
    api.on("POST echo", ask -> ask.json());
    api.on("POST drop", ask -> new JsonPrimitive(ask.fileName() + " " + ask.file().length));
    api.on(
        "GET broken",
        ask -> {
          throw new IllegalStateException("a secret detail");
        });
    api.onEach("POST jobs/*/stop", (id, ask) -> new JsonPrimitive(id));
    Router.Rooms rooms =
        new Router.Rooms(
            api,
            new MediaHandler(new OneFile()),
            (name, response, callback) -> {
              throw new Trouble(TroubleCode.NOT_ALLOWED, "no", "ask");
            });
    server = BenchServer.start(0, new SecureRandom(), rooms);
    client = new RawClient(server.port());
    RawClient.Answer entry = client.send("GET " + entryPath() + " HTTP/1.1", host());
    String setCookie = entry.header("Set-Cookie").orElseThrow();
    cookie = "Cookie: " + setCookie.substring(0, setCookie.indexOf(';'));
    path = setCookie.replaceFirst(".*Path=([^;]+).*", "$1");
  }

  String entryPath() {
    return server.entryAddress().replaceFirst("http://[^/]+", "");
  }

  String host() {
    return "Host: 127.0.0.1:" + server.port();
  }

  /** Asks as the bench's own page would, with more headers. */
  RawClient.Answer get(String inside, String... more) throws IOException {
    return ask("GET", inside, new byte[0], more);
  }

  RawClient.Answer ask(String method, String inside, byte[] body, String... more)
      throws IOException {
    String[] lines = new String[3 + more.length];
    lines[0] = method + " " + path + inside + " HTTP/1.1";
    lines[1] = host();
    lines[2] = cookie;
    System.arraycopy(more, 0, lines, 3, more.length);
    return client.send(lines, body);
  }

  RawClient.Answer post(String inside, String type, String body) throws IOException {
    byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
    return ask(
        "POST",
        inside,
        bytes,
        "X-Lehrcase: 1",
        "Content-Type: " + type,
        "Content-Length: " + bytes.length);
  }

  RawClient.Answer media(String... more) throws IOException {
    return get("media/" + EDITION + "/" + ASSET, more);
  }

  @Override
  public void close() {
    server.close();
  }

  private final class OneFile implements MediaFinder {
    @Override
    public CourseFile find(EditionId edition, AssetId asset) throws Trouble {
      byte[] bytes = asset.hex().equals(EMPTY_ASSET) ? new byte[0] : content;
      if (!edition.hex().equals(EDITION) || !asset.hex().startsWith("a")) {
        throw new Trouble(TroubleCode.STICK_GONE, "The stick is away.", "Put it back in.");
      }
      return new CourseFile(
          "video/mp4", "0123456789abcdef", new Segments(bytes), pace, damageNotes::add);
    }

    @Override
    public Optional<CourseFile> ifOpen(EditionId edition, AssetId asset) {
      try {
        return open ? Optional.of(find(edition, asset)) : Optional.empty();
      } catch (Trouble e) {
        return Optional.empty();
      }
    }
  }

  private final class Segments implements ClearSource {
    private final byte[] bytes;

    Segments(byte[] bytes) {
      this.bytes = bytes;
    }

    @Override
    public long sizeBytes() {
      return bytes.length;
    }

    @Override
    public int readAt(long position, ByteBuffer target) throws VaultException {
      segmentsOpened.incrementAndGet();
      long end = Math.min(bytes.length, (position / SEGMENT + 1) * SEGMENT);
      if (position >= damagedFrom) {
        throw new VaultException.Tampered("a part of the edition does not check out");
      }
      int length = (int) Math.min(target.remaining(), end - position);
      target.put(bytes, (int) position, length);
      return length;
    }

    @Override
    public void close() {}
  }
}
