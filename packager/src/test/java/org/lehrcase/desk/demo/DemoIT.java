package org.lehrcase.desk.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.desk.DeskMain;

/** The one command of the README, from an empty folder to the open course. */
class DemoIT {
  @TempDir Path folder;

  @Test
  void theWholeJobEndsWithAnAddressThatAnswers() throws Exception {
    Path work = folder.resolve("demo");
    Path log = folder.resolve("err");
    Process demo =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                DeskMain.class.getName(),
                "demo",
                "--no-browser",
                "--out",
                work.toString())
            .redirectError(log.toFile())
            .start();
    try {
      var out =
          new BufferedReader(new InputStreamReader(demo.getInputStream(), StandardCharsets.UTF_8));
      String address = out.readLine();
      assertThat(address).as(() -> text(log)).startsWith("http://127.0.0.1:");
      HttpResponse<String> answer =
          HttpClient.newHttpClient()
              .send(
                  HttpRequest.newBuilder(URI.create(address)).build(),
                  HttpResponse.BodyHandlers.ofString());
      assertThat(answer.statusCode()).isEqualTo(200);
    } finally {
      demo.destroy();
      assertThat(demo.waitFor(20, TimeUnit.SECONDS)).isTrue();
    }
    assertThat(text(log))
        .contains("changed: 03 Kelp, fish and coral", "Your courses open.")
        .doesNotContain("Exception");
    assertThat(work.resolve("editions/brush-2")).isDirectoryContaining("glob:**lehrcase.front");
    assertThat(work.resolve("letter.txt")).content().contains("BEGIN LEHRCASE KEY LETTER");
  }

  private static String text(Path log) {
    try {
      return Files.readString(log);
    } catch (java.io.IOException e) {
      return e.toString();
    }
  }
}
