package org.lehrcase.bench.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.BenchMain;
import org.lehrcase.bench.fixture.RawClient;

/** The program as its users start it: once, a second time, and from the page's Quit. */
class RunningProgramTest {
  @TempDir Path folder;

  private Process start() throws IOException {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    ProcessBuilder builder =
        new ProcessBuilder(
            java,
            "-Xmx64m",
            "-cp",
            System.getProperty("java.class.path"),
            BenchMain.class.getName(),
            "open",
            "--no-browser",
            "--home",
            folder.resolve("home").toString());
    builder.environment().put("XDG_CONFIG_HOME", folder.resolve("config").toString());
    builder.redirectError(ProcessBuilder.Redirect.DISCARD);
    return builder.start();
  }

  private static String firstLine(Process process) throws IOException {
    return new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))
        .readLine();
  }

  @Test
  void aSecondStartBringsThePageOfTheFirstBackAndQuitEndsIt() throws Exception {
    Process first = start();
    try {
      String address = firstLine(first);
      assertThat(address).matches("http://127\\.0\\.0\\.1:\\d+/enter/[0-9a-f]{32}");
      Process second = start();
      String again = firstLine(second);
      assertThat(second.waitFor()).isZero();
      assertThat(port(again)).isEqualTo(port(address));
      assertThat(again).isNotEqualTo(address);
      quit(again);
      assertThat(first.waitFor(20, TimeUnit.SECONDS)).isTrue();
      assertThat(first.exitValue()).isZero();
      assertThat(folder.resolve("home/bench.running")).doesNotExist();
    } finally {
      first.destroyForcibly();
    }
  }

  @Test
  void endedFromOutsideItClosesInOrder() throws Exception {
    Process first = start();
    try {
      assertThat(firstLine(first)).startsWith("http://127.0.0.1:");
      first.destroy();
      assertThat(first.waitFor(20, TimeUnit.SECONDS)).isTrue();
      assertThat(folder.resolve("home/bench.running")).doesNotExist();
      assertThat(folder.resolve("home/study.db-wal")).doesNotExist();
    } finally {
      first.destroyForcibly();
    }
  }

  @Test
  void theWayInIsNotAmongTheArgumentsThatOtherUsersCanRead() throws Exception {
    Process first = start();
    try {
      String address = firstLine(first);
      String arguments = commandLine(first.pid());
      assertThat(arguments).contains("BenchMain");
      assertThat(arguments).doesNotContain(address.substring(address.lastIndexOf('/') + 1));
    } finally {
      first.destroyForcibly();
    }
  }

  private static String commandLine(long pid) throws IOException {
    try (var in = Files.newInputStream(Path.of("/proc", String.valueOf(pid), "cmdline"))) {
      return new String(in.readNBytes(1 << 16), StandardCharsets.UTF_8);
    }
  }

  private static int port(String address) {
    return Integer.parseInt(address.replaceFirst("http://[^:]+:(\\d+)/.*", "$1"));
  }

  private static void quit(String address) throws IOException {
    RawClient client = new RawClient(port(address));
    String host = "Host: 127.0.0.1:" + port(address);
    String enter = address.replaceFirst("http://[^/]+", "");
    String set = client.send("GET " + enter + " HTTP/1.1", host).header("Set-Cookie").orElseThrow();
    String path = set.replaceFirst(".*Path=([^;]+).*", "$1");
    String cookie = "Cookie: " + set.substring(0, set.indexOf(';'));
    assertThat(client.send("GET " + path + " HTTP/1.1", host, cookie).status()).isEqualTo(200);
    RawClient.Answer quit =
        client.send(
            "POST " + path + "api/quit HTTP/1.1",
            host,
            cookie,
            "X-Lehrcase: 1",
            "Content-Length: 0");
    assertThat(quit.status()).isEqualTo(200);
  }
}
