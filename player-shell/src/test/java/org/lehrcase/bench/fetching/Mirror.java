package org.lehrcase.bench.fetching;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/** A web server on the loopback that serves a folder honestly, or in one of many wrong ways. */
final class Mirror implements AutoCloseable {
  enum Manner {
    HONEST,
    WITHOUT_RANGES,
    SHORT,
    LONG,
    OTHER_BYTES,
    WRONG_RANGE,
    ERROR_PAGE_WITH_200,
    ENDLESS,
    SILENT,
    DRIPPING,
    SERVER_ERROR,
    NOT_FOUND,
    REDIRECT_ELSEWHERE,
    REDIRECT_IN_CIRCLES,
    BREAKS_OFF
  }

  final List<String> asked = new CopyOnWriteArrayList<>();
  private final HttpServer server;
  private final ExecutorService workers = Executors.newFixedThreadPool(4);
  private final Path folder;
  private final Manner manner;

  Mirror(Path folder, Manner manner) throws IOException {
    this.folder = folder;
    this.manner = manner;
    InetAddress loopback = InetAddress.getByAddress(new byte[] {127, 0, 0, 1});
    server = HttpServer.create(new InetSocketAddress(loopback, 0), 8);
    server.createContext("/", this::answer);
    server.setExecutor(workers);
    server.start();
  }

  URI address() {
    return URI.create("http://127.0.0.1:" + server.getAddress().getPort() + "/course/");
  }

  private void answer(HttpExchange exchange) throws IOException {
    try (exchange) {
      String path = exchange.getRequestURI().getPath().substring("/course/".length());
      String range = String.valueOf(exchange.getRequestHeaders().getFirst("Range"));
      asked.add(path + " " + range);
      boolean part = path.matches("[0-9]{3}/[0-9a-f]{64}");
      Path file = folder.resolve(path);
      if (!Files.isRegularFile(file)) {
        exchange.sendResponseHeaders(404, -1);
        return;
      }
      byte[] bytes = Files.newInputStream(file).readNBytes(1 << 22);
      int from = range.startsWith("bytes=") ? Integer.parseInt(range.replaceAll("[^0-9]", "")) : 0;
      if (part) {
        lie(exchange, bytes, from);
      } else {
        honest(exchange, bytes, from);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static void honest(HttpExchange exchange, byte[] bytes, int from) throws IOException {
    if (from > 0) {
      String range = "bytes " + from + "-" + (bytes.length - 1) + "/" + bytes.length;
      exchange.getResponseHeaders().set("Content-Range", range);
    }
    exchange.sendResponseHeaders(from > 0 ? 206 : 200, bytes.length - from);
    exchange.getResponseBody().write(bytes, from, bytes.length - from);
  }

  private void lie(HttpExchange exchange, byte[] bytes, int from)
      throws IOException, InterruptedException {
    switch (manner) {
      case HONEST -> honest(exchange, bytes, from);
      case WITHOUT_RANGES -> honest(exchange, bytes, 0);
      case SHORT -> honest(exchange, java.util.Arrays.copyOf(bytes, bytes.length / 2), 0);
      case LONG -> honest(exchange, java.util.Arrays.copyOf(bytes, bytes.length * 2), 0);
      case OTHER_BYTES -> honest(exchange, new byte[bytes.length], from);
      case WRONG_RANGE -> {
        exchange.getResponseHeaders().set("Content-Range", "bytes 7-9/10");
        exchange.sendResponseHeaders(206, 3);
        exchange.getResponseBody().write(new byte[3]);
      }
      case ERROR_PAGE_WITH_200 ->
          honest(exchange, "<!doctype html><h1>Oops".getBytes(StandardCharsets.US_ASCII), 0);
      case ENDLESS, DRIPPING, SILENT, BREAKS_OFF -> pour(exchange, bytes);
      case SERVER_ERROR -> exchange.sendResponseHeaders(500, -1);
      case NOT_FOUND -> exchange.sendResponseHeaders(404, -1);
      case REDIRECT_ELSEWHERE -> redirect(exchange, "http://192.0.2.1/elsewhere");
      case REDIRECT_IN_CIRCLES -> redirect(exchange, exchange.getRequestURI().toString());
    }
  }

  private static void redirect(HttpExchange exchange, String to) throws IOException {
    exchange.getResponseHeaders().set("Location", to);
    exchange.sendResponseHeaders(302, -1);
  }

  private void pour(HttpExchange exchange, byte[] bytes) throws IOException, InterruptedException {
    exchange.sendResponseHeaders(200, 0); // chunked: no length is told
    OutputStream out = exchange.getResponseBody();
    if (manner == Manner.BREAKS_OFF) {
      out.write(bytes, 0, bytes.length / 2);
      out.flush();
      return;
    }
    for (int i = 0; i < 2000; i++) {
      out.write(manner == Manner.ENDLESS ? new byte[1 << 16] : new byte[1]);
      out.flush();
      Thread.sleep(manner == Manner.SILENT ? 5000 : manner == Manner.DRIPPING ? 20 : 0);
    }
  }

  @Override
  public void close() {
    server.stop(0);
    workers.shutdownNow();
  }
}
