package org.lehrcase.bench.web;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.UUID;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.lehrcase.bench.courses.CourseFile;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The one handler: asks the guard, then sends each request to what answers it. Media of a fast
 * medium is answered on the selector's own thread, everything that may wait on a thread of the
 * pool. This is the edge at which every failure becomes an answer.
 */
final class Router extends Handler.Abstract.NonBlocking {
  private static final Logger LOG = LoggerFactory.getLogger(Router.class);

  private final Guard guard;
  private final Session session;
  private final Rooms rooms;
  private final StaticFiles files;

  /** What lies behind the guard. */
  record Rooms(JsonApi api, MediaHandler media, Downloads downloads, House house) {
    /** The rooms of a bench. */
    Rooms(JsonApi api, MediaHandler media, Downloads downloads) {
      this(api, media, downloads, House.BENCH);
    }
  }

  /** Something to be answered, which may fail in all the ways that have words. */
  private interface Answer {
    void run() throws Trouble, VaultException, IOException;
  }

  Router(Guard guard, Session session, Rooms rooms) {
    this.guard = guard;
    this.session = session;
    this.rooms = rooms;
    this.files = new StaticFiles(rooms.house().folders());
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) {
    SecurityHeaders.addTo(response.getHeaders());
    Optional<Guard.Refusal> refusal = guard.refusal(request);
    if (refusal.isPresent()) {
      refuse(refusal.get(), response, callback);
      return true;
    }
    String path = String.valueOf(request.getHttpURI().getPath());
    if (path.startsWith(Guard.ENTER) || path.equals(Guard.KNOCK)) {
      atTheDoor(path, request, response, callback);
      return true;
    }
    String inside = path.substring(session.path().length());
    if (inside.startsWith("media/")) {
      media(inside.substring("media/".length()), request, response, callback);
    } else {
      inPool(request, response, callback, () -> inside(inside, request, response, callback));
    }
    return true;
  }

  private void refuse(Guard.Refusal refusal, Response response, Callback callback) {
    LOG.info("refused a request status={} reason={}", refusal.status(), refusal.reason());
    response.setStatus(refusal.status());
    if (refusal.code() == TroubleCode.OLD_ADDRESS) {
      Replies.page(response, callback, DoorPages.startFromIcon(rooms.house()));
    } else {
      Trouble trouble =
          new Trouble(refusal.code(), "This request was refused.", "Start Lehrcase from its icon.");
      Replies.json(response, callback, Replies.shape(trouble));
    }
  }

  private void atTheDoor(String path, Request request, Response response, Callback callback) {
    String method = request.getMethod();
    if (path.equals(Guard.MOVE_SCRIPT) && method.equals("GET")) {
      byte[] script = DoorPages.MOVE_SCRIPT.getBytes(StandardCharsets.UTF_8);
      Replies.bytes(response, callback, "text/javascript; charset=utf-8", script);
    } else if (path.equals(Guard.KNOCK)) {
      knock(request, response, callback);
    } else if (method.equals("GET") && session.redeem(path.substring(Guard.ENTER.length()))) {
      response.getHeaders().put("Set-Cookie", session.setCookie());
      Replies.page(response, callback, DoorPages.enter(session.path(), rooms.house()));
    } else {
      response.setStatus(404);
      Replies.page(response, callback, DoorPages.startFromIcon(rooms.house()));
    }
  }

  /** A second start asks for a way in; it knows the word from a file only its user can read. */
  private void knock(Request request, Response response, Callback callback) {
    String word = String.valueOf(request.getHeaders().get("X-Lehrcase-Knock"));
    if (!request.getMethod().equals("POST") || !session.isKnock(word)) {
      refuse(
          new Guard.Refusal(403, TroubleCode.STRANGER, "knocked without the word"),
          response,
          callback);
      return;
    }
    JsonObject body = new JsonObject();
    body.addProperty("enter", Guard.ENTER + session.issueToken());
    Replies.json(response, callback, body);
  }

  private void media(String ids, Request request, Response response, Callback callback) {
    inWords(
        response,
        callback,
        () -> {
          requireReading(request);
          MediaHandler media = rooms.media();
          MediaHandler.Name name = MediaHandler.Name.of(ids);
          Optional<CourseFile> file = media.atOnce(name);
          if (file.isPresent()) {
            media.answer(file.get(), request, response, callback);
          } else {
            inPool(
                request,
                response,
                callback,
                () -> media.answer(media.find(name), request, response, callback));
          }
        });
  }

  private void inside(String path, Request request, Response response, Callback callback)
      throws Trouble, VaultException, IOException {
    if (path.startsWith("api/")) {
      rooms.api().answer(path.substring("api/".length()), request, response, callback);
      return;
    }
    requireReading(request);
    if (path.startsWith("print/")) {
      rooms.downloads().answer(path.substring("print/".length()), response, callback);
      return;
    }
    StaticFiles.StaticFile file = find(path).orElseThrow(Router::noSuchPage);
    Replies.bytes(response, callback, file.mediaType(), file.bytes());
  }

  private Optional<StaticFiles.StaticFile> find(String path) throws IOException {
    if (path.startsWith("pdfjs/")) {
      return files.viewer(path.substring("pdfjs/".length()));
    }
    if (path.startsWith("ui/")) {
      return files.page(path.substring("ui/".length()));
    }
    return files.page(path.isEmpty() ? "index.html" : path);
  }

  private static Trouble noSuchPage() {
    return new Trouble(TroubleCode.NOT_FOUND, "There is no such page.", "Go to My courses.");
  }

  private static void requireReading(Request request) throws Trouble {
    if (!request.getMethod().equals("GET") && !request.getMethod().equals("HEAD")) {
      throw new Trouble(TroubleCode.METHOD, "This can only be read.", "Go to My courses.");
    }
  }

  private static void inPool(Request request, Response response, Callback callback, Answer answer) {
    request.getComponents().getExecutor().execute(() -> inWords(response, callback, answer));
  }

  /** Turns every failure into an answer, or ends an answer that has begun. */
  private static void inWords(Response response, Callback callback, Answer answer) {
    try {
      answer.run();
    } catch (Trouble e) {
      fail(response, callback, e);
    } catch (VaultException e) {
      fail(response, callback, Trouble.of(e));
    } catch (IOException e) {
      fail(response, callback, Trouble.of(e));
    } catch (RuntimeException e) {
      String id = UUID.randomUUID().toString();
      LOG.error("failed to answer id={}", id, e);
      fail(
          response,
          callback,
          new Trouble(
              TroubleCode.INTERNAL,
              "Something went wrong inside Lehrcase (" + id + ").",
              "What was kept before is kept.",
              "Try again; if it stays, send the help slip."));
    }
  }

  private static void fail(Response response, Callback callback, Trouble trouble) {
    if (response.isCommitted()) {
      callback.failed(trouble);
    } else {
      response.getHeaders().remove("Content-Range");
      response.getHeaders().remove("ETag");
      Replies.trouble(response, callback, trouble);
    }
  }
}
