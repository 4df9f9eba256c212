package org.lehrcase.bench.web;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;

/** Writes small answers: JSON, pages, and trouble in the one shape that the pages know. */
final class Replies {
  static final String JSON = "application/json";
  static final String HTML = "text/html; charset=utf-8";

  private Replies() {}

  static void bytes(Response response, Callback callback, String type, byte[] body) {
    response.getHeaders().put(HttpHeader.CONTENT_TYPE, type);
    response.getHeaders().put(HttpHeader.CONTENT_LENGTH, body.length);
    response.write(true, ByteBuffer.wrap(body), callback);
  }

  static void json(Response response, Callback callback, JsonElement body) {
    bytes(response, callback, JSON, Json.bytes(body));
  }

  static void page(Response response, Callback callback, String html) {
    bytes(response, callback, HTML, html.getBytes(StandardCharsets.UTF_8));
  }

  static void empty(Response response, Callback callback, int status) {
    response.setStatus(status);
    response.write(true, ByteBuffer.allocate(0), callback);
  }

  static void trouble(Response response, Callback callback, Trouble trouble) {
    response.setStatus(status(trouble.code()));
    json(response, callback, shape(trouble));
  }

  static JsonObject shape(Trouble trouble) {
    JsonObject error = new JsonObject();
    error.addProperty("code", trouble.code().text());
    error.addProperty("happened", String.valueOf(trouble.getMessage()));
    error.addProperty("safe", trouble.safe());
    error.addProperty("next", trouble.next());
    JsonObject body = new JsonObject();
    body.add("error", error);
    return body;
  }

  static int status(TroubleCode code) {
    return switch (code) {
      case BAD_REQUEST -> 400;
      case STRANGER, NOT_LICENSED, SHUT, NOT_ALLOWED -> 403;
      case NOT_FOUND, OLD_ADDRESS, NOT_HERE -> 404;
      case METHOD -> 405;
      case ALREADY_RUNNING, REFUSED -> 409;
      case LOCKED -> 423;
      case TOO_LARGE -> 413;
      case UNKNOWN_FILE, DAMAGED, TOO_NEW -> 422;
      case STICK_GONE -> 503;
      case STORE, INTERNAL -> 500;
    };
  }
}
