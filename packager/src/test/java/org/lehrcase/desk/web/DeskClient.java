package org.lehrcase.desk.web;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.lehrcase.bench.fixture.RawClient;
import org.lehrcase.bench.web.BenchServer;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.Passphrase;
import org.lehrcase.desk.home.TestDesk;

/** A running desk, and a client that entered as its own page does. */
final class DeskClient implements AutoCloseable {
  private static final Logger QUIET = Logger.getLogger("org.eclipse.jetty");

  static {
    QUIET.setLevel(Level.WARNING);
  }

  final CountDownLatch quit = new CountDownLatch(1);
  final DeskHome home;
  final DeskRooms rooms;
  final RawClient raw;
  final String host;
  final String path;
  final String cookie;

  private DeskClient(Path folder, boolean unlocked) throws Exception {
    home = DeskHome.open(folder, TestDesk.CLOCK);
    DeskRooms.Service service =
        new DeskRooms.Service(
            0, TestDesk.CLOCK, new SecureRandom(), TestDesk.QUICK, quit::countDown);
    Optional<Passphrase> words =
        unlocked ? Optional.of(Passphrase.taking(TestDesk.WORDS.toCharArray())) : Optional.empty();
    rooms = DeskRooms.open(home, words, service);
    BenchServer server = rooms.server();
    raw = new RawClient(server.port());
    host = "Host: 127.0.0.1:" + server.port();
    String entry = server.entryAddress().replaceFirst("http://[^/]+", "");
    String set = raw.send("GET " + entry + " HTTP/1.1", host).header("Set-Cookie").orElseThrow();
    path = set.replaceFirst(".*Path=([^;]+).*", "$1");
    cookie = "Cookie: " + set.substring(0, set.indexOf(';'));
  }

  static DeskClient locked(Path folder) throws Exception {
    return new DeskClient(folder, false);
  }

  static DeskClient unlocked(Path folder) throws Exception {
    return new DeskClient(folder, true);
  }

  RawClient.Answer get(String inside) throws IOException {
    return raw.send("GET " + path + inside + " HTTP/1.1", host, cookie);
  }

  RawClient.Answer post(String inside, String type, byte[] body) throws IOException {
    String[] lines = {
      "POST " + path + inside + " HTTP/1.1",
      host,
      cookie,
      "X-Lehrcase: 1",
      "X-File-Name: " + URLEncoder.encode("a file.txt", StandardCharsets.UTF_8),
      "Content-Type: " + type,
      "Content-Length: " + body.length
    };
    return raw.send(lines, body);
  }

  JsonObject read(String inside) throws IOException {
    return json(get(inside), 200);
  }

  JsonObject say(String inside, String json) throws IOException {
    return json(say(inside, json, "application/json"), 200);
  }

  RawClient.Answer say(String inside, String text, String type) throws IOException {
    return post(inside, type, text.getBytes(StandardCharsets.UTF_8));
  }

  JsonObject hand(String inside, String text) throws IOException {
    return json(say(inside, text, "application/octet-stream"), 200);
  }

  static JsonObject json(RawClient.Answer answer, int status) throws IOException {
    if (answer.status() != status) {
      throw new AssertionError(answer.status() + ": " + answer.text());
    }
    return JsonParser.parseString(new String(unchunked(answer), StandardCharsets.UTF_8))
        .getAsJsonObject();
  }

  private static byte[] unchunked(RawClient.Answer answer) {
    if (answer.header("Transfer-Encoding").isEmpty()) {
      return answer.body();
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] body = answer.body();
    int at = 0;
    while (at < body.length) {
      int end = at;
      while (body[end] != '\r') {
        end++;
      }
      int size = Integer.parseInt(new String(body, at, end - at, StandardCharsets.US_ASCII), 16);
      out.write(body, end + 2, size);
      at = end + 2 + size + 2;
    }
    return out.toByteArray();
  }

  @Override
  public void close() throws IOException {
    rooms.close();
    home.close();
  }
}
