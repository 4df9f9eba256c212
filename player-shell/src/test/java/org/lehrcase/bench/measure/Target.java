package org.lehrcase.bench.measure;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.net.URI;
import org.lehrcase.bench.fixture.RawClient;

/**
 * A file that a server offers.
 *
 * @param address its address
 * @param cookie the cookie to send, or nothing
 */
record Target(URI address, String cookie) {
  /** Goes in through a one-time address and gets the start page. */
  static Target enter(URI entry) throws IOException {
    RawClient client = new RawClient(entry.getPort());
    RawClient.Answer door =
        client.send("GET " + entry.getPath() + " HTTP/1.1", "Host: " + entry.getAuthority());
    String set = door.header("Set-Cookie").orElseThrow();
    String path = set.replaceFirst(".*Path=([^;]+).*", "$1");
    Target page = new Target(entry.resolve(path), set.substring(0, set.indexOf(';')));
    page.get("");
    return page;
  }

  /** Returns the text of something below this address. */
  String get(String below) throws IOException {
    RawClient.Answer answer =
        new RawClient(address.getPort())
            .send(
                "GET " + address.getPath() + below + " HTTP/1.1",
                "Host: " + address.getAuthority(),
                "Cookie: " + cookie);
    if (answer.status() != 200) {
      throw new IOException(below + " answered " + answer.status() + " " + answer.text());
    }
    return answer.text();
  }

  Target below(String path) {
    return new Target(address.resolve(path), cookie);
  }

  /** Finds the first film of the first course that is open. */
  Target firstFilm() throws IOException {
    JsonObject course =
        JsonParser.parseString(get("api/state"))
            .getAsJsonObject()
            .getAsJsonArray("courses")
            .get(0)
            .getAsJsonObject();
    String edition = course.get("edition").getAsString();
    for (JsonElement lesson : course.getAsJsonArray("lessons")) {
      String id = lesson.getAsJsonObject().get("id").getAsString();
      if (lesson.getAsJsonObject().get("playable").getAsBoolean()) {
        JsonObject shown =
            JsonParser.parseString(get("api/lesson?e=" + edition + "&l=" + id)).getAsJsonObject();
        return below(
            shown.getAsJsonArray("video").get(0).getAsJsonObject().get("url").getAsString());
      }
    }
    throw new IOException("no lesson is open");
  }
}
