package org.lehrcase.bench.web;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.lehrcase.bench.fixture.RawClient;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;

/** Speaks to a running bench as its own page does. */
final class EnteredClient {
  private final RawClient client;
  private final String host;
  private final String path;
  private final String cookie;

  private EnteredClient(RawClient client, String host, String path, String cookie) {
    this.client = client;
    this.host = host;
    this.path = path;
    this.cookie = cookie;
  }

  static EnteredClient enter(BenchServer server) throws IOException {
    RawClient client = new RawClient(server.port());
    String host = "Host: 127.0.0.1:" + server.port();
    String entry = server.entryAddress().replaceFirst("http://[^/]+", "");
    String set = client.send("GET " + entry + " HTTP/1.1", host).header("Set-Cookie").orElseThrow();
    return new EnteredClient(
        client,
        host,
        set.replaceFirst(".*Path=([^;]+).*", "$1"),
        "Cookie: " + set.substring(0, set.indexOf(';')));
  }

  RawClient.Answer get(String inside, String... more) throws IOException {
    String[] lines = new String[3 + more.length];
    lines[0] = "GET " + path + inside + " HTTP/1.1";
    lines[1] = host;
    lines[2] = cookie;
    System.arraycopy(more, 0, lines, 3, more.length);
    return client.send(lines, new byte[0]);
  }

  RawClient.Answer send(String method, String inside, String json) throws IOException {
    return send(method, inside, "application/json", json.getBytes(StandardCharsets.UTF_8));
  }

  RawClient.Answer send(String method, String inside, String type, byte[] body) throws IOException {
    String[] lines = {
      method + " " + path + inside + " HTTP/1.1",
      host,
      cookie,
      "X-Lehrcase: 1",
      "Content-Type: " + type,
      "Content-Length: " + body.length
    };
    return client.send(lines, body);
  }

  /** Drops a message in its text form. */
  RawClient.Answer drop(byte[] message, String kind) throws IOException {
    ArmorKind armor = ArmorKind.valueOf(kind.replace(' ', '_'));
    String text = Armor.write(armor, "A text.", message);
    return send(
        "POST", "api/drop", "application/octet-stream", text.getBytes(StandardCharsets.UTF_8));
  }

  static byte[] armored(String text) throws VaultException {
    return Armor.find(text).get(0).content().toBytes();
  }

  /** Takes the chunks of HTTP/1.1 apart, if the answer was sent in chunks. */
  byte[] unchunked(RawClient.Answer answer) throws IOException {
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
}
