package org.lehrcase.bench.cli;

import java.io.IOException;
import java.net.HttpURLConnection;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.home.DataPlace;
import org.lehrcase.bench.web.BenchRooms;
import picocli.CommandLine.Command;

/**
 * Opens an empty bench for nobody, asks it for its first page and ends. The packages run it once,
 * so that the Java runtime can note which classes a start needs; every later start is quicker.
 */
@Command(name = "rehearse", hidden = true, description = "Starts for nobody and ends.")
final class RehearseCommand implements Callable<Integer> {
  private static final List<String> FIRST_PAGE =
      List.of("", "api/state", "api/sticks", "ui/js/start/main.js", "ui/css/base.css");
  private static final int TIMEOUT_MILLIS = 5000;

  @Override
  public Integer call() throws IOException {
    Path folder = Files.createTempDirectory("lehrcase-rehearsal");
    try {
      rehearse(new DataPlace(folder.resolve("home"), folder.resolve("local")));
      return BenchCommand.DONE;
    } finally {
      clear(folder);
    }
  }

  private static void rehearse(DataPlace place) throws IOException {
    place.ensure();
    BenchRooms.Service service = new BenchRooms.Service(0, BenchCommand.Version.text(), () -> {});
    try (Bench bench = new HomeOption().open(place);
        BenchRooms rooms = BenchRooms.open(bench, service, new SecureRandom())) {
      URI enter = URI.create(rooms.server().entryAddress());
      String set = ask(enter, "");
      String path = set.replaceFirst(".*Path=([^;]+).*", "$1");
      for (String page : FIRST_PAGE) {
        ask(enter.resolve(path + page), set.replaceFirst(";.*", ""));
      }
    }
  }

  /** Asks and returns the cookie that came with the answer, or nothing. */
  private static String ask(URI address, String cookie) throws IOException {
    HttpURLConnection connection = (HttpURLConnection) address.toURL().openConnection();
    connection.setConnectTimeout(TIMEOUT_MILLIS);
    connection.setReadTimeout(TIMEOUT_MILLIS);
    if (!cookie.isEmpty()) {
      connection.setRequestProperty("Cookie", cookie);
    }
    try {
      connection.getResponseCode(); // what it says matters to nobody
      String set = connection.getHeaderField("Set-Cookie");
      return set == null ? "" : set;
    } finally {
      connection.disconnect();
    }
  }

  private static void clear(Path folder) throws IOException {
    List<Path> all;
    try (Stream<Path> inside = Files.walk(folder)) {
      all = inside.sorted((a, b) -> b.compareTo(a)).toList();
    }
    for (Path each : all) {
      Files.delete(each);
    }
  }
}
