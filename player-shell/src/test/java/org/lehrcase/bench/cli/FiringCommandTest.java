package org.lehrcase.bench.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class FiringCommandTest {
  @TempDir private Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(Path file) {
    CommandLine line = BenchCommand.commandLine();
    line.setOut(new PrintWriter(out, true));
    line.setErr(new PrintWriter(err, true));
    return line.execute("firing", file.toString());
  }

  private Path request(String text) throws Exception {
    return Files.writeString(folder.resolve("request.json"), text);
  }

  private JsonObject answer() {
    return JsonParser.parseString(out.toString()).getAsJsonObject();
  }

  @Test
  void theExampleOfTheDocumentationRuns() {
    Path example = Path.of("../docs/firing.example.json");
    assertThat(run(example)).isEqualTo(0);
    assertThat(answer().getAsJsonArray("segments")).hasSize(8);
    assertThat(answer().getAsJsonObject("controller").getAsJsonArray("type_in")).hasSize(8);
    assertThat(err.toString()).isEmpty();
  }

  @Test
  void theSchemaNamesEveryFieldOfTheAnswer() throws Exception {
    byte[] bytes;
    try (var in = Files.newInputStream(Path.of("../docs/firing.schema.json"))) {
      bytes = in.readNBytes(1 << 20);
    }
    JsonObject schema =
        JsonParser.parseString(new String(bytes, java.nio.charset.StandardCharsets.UTF_8))
            .getAsJsonObject()
            .getAsJsonObject("$defs");
    run(Path.of("../docs/firing.example.json"));
    assertThat(schema.getAsJsonObject("answer").getAsJsonObject("properties").keySet())
        .containsAll(answer().keySet());
  }

  @Test
  void aWrongFieldIsNamedOnBothSidesAndEndsWithTwo() throws Exception {
    assertThat(run(request("{\"glass\":\"coe-90\",\"thickness_mm\":400}"))).isEqualTo(2);
    assertThat(answer().getAsJsonObject("error").get("field").getAsString())
        .isEqualTo("thickness_mm");
    assertThat(err.toString()).contains("thickness_mm", "300 mm");
  }

  @Test
  void whatIsNoJsonIsSaidInWords() throws Exception {
    assertThat(run(request("{"))).isEqualTo(2);
    assertThat(err.toString()).contains("not JSON", "End of input").doesNotContain("Exception");
  }

  @Test
  void aKilnThatCannotRunItEndsWithOneAndStillAnswers() throws Exception {
    String text = "{\"glass\":\"coe-90\",\"thickness_mm\":20,\"kiln\":{\"highest\":600}}";
    assertThat(run(request(text))).isEqualTo(1);
    assertThat(answer().getAsJsonArray("segments")).isNotEmpty();
  }

  @Test
  void aFileThatIsNotThereEndsWithOne() {
    assertThat(run(folder.resolve("none.json"))).isEqualTo(1);
    assertThat(err.toString()).contains("there is no file");
  }

  @Test
  void bytesThatAreNoTextAreRefused() throws Exception {
    Path file = Files.write(folder.resolve("request.json"), new byte[] {(byte) 0xff, 1, 2});
    assertThat(run(file)).isEqualTo(2);
    assertThat(err.toString()).contains("UTF-8");
  }
}
