package org.lehrcase.bench.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

/** The commands for sheets and cut lists. */
class SheetCommandsTest {
  @TempDir private Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String command, Path file) {
    CommandLine line = BenchCommand.commandLine();
    line.setOut(new PrintWriter(out, true));
    line.setErr(new PrintWriter(err, true));
    return line.execute(command, file.toString());
  }

  private JsonObject answer() {
    return JsonParser.parseString(out.toString()).getAsJsonObject();
  }

  private static JsonObject schema(String command) throws Exception {
    try (var in = Files.newInputStream(Path.of("../docs/" + command + ".schema.json"))) {
      String text = new String(in.readNBytes(1 << 20), StandardCharsets.UTF_8);
      return JsonParser.parseString(text).getAsJsonObject().getAsJsonObject("$defs");
    }
  }

  /** Every field of an object, and of the objects inside it, must stand in its schema. */
  private static void covered(JsonElement part, JsonObject schema, JsonObject all) {
    if (part.isJsonObject() && schema.has("properties")) {
      JsonObject known = schema.getAsJsonObject("properties");
      assertThat(known.keySet()).containsAll(part.getAsJsonObject().keySet());
      for (var field : part.getAsJsonObject().entrySet()) {
        covered(field.getValue(), known.getAsJsonObject(field.getKey()), all);
      }
    } else if (part.isJsonArray() && schema.has("items")) {
      part.getAsJsonArray().forEach(e -> covered(e, schema.getAsJsonObject("items"), all));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"layers", "cut"})
  void theExampleOfTheDocumentationRunsAndTheSchemaNamesEveryField(String command)
      throws Exception {
    assertThat(run(command, Path.of("../docs/" + command + ".example.json"))).isZero();
    JsonObject schema = schema(command);
    covered(answer(), schema.getAsJsonObject("answer"), schema);
    assertThat(answer().getAsJsonArray("warnings").toString()).doesNotContain("means nothing");
    assertThat(err.toString()).isEmpty();
  }

  @Test
  void whatCannotBePlannedEndsWithOneAndNamesTheChain() throws Exception {
    Path file =
        Files.writeString(
            folder.resolve("a.json"),
            "{\"sheets\":1,\"subjects\":[{\"name\":\"gate\",\"depth\":0,\"in_front_of\":[\"barn\"]},"
                + "{\"name\":\"barn\",\"depth\":1}]}");
    assertThat(run("layers", file)).isEqualTo(1);
    JsonObject why = answer().getAsJsonObject("impossible");
    assertThat(why.get("reason").getAsString()).isEqualTo("chain");
    assertThat(why.getAsJsonArray("chain").toString()).isEqualTo("[\"gate\",\"barn\"]");
    JsonObject schema = schema("layers");
    covered(why, schema.getAsJsonObject("impossible"), schema);
  }

  @ParameterizedTest
  @ValueSource(strings = {"layers", "cut"})
  void aWrongFieldEndsWithTwoAndAMissingFileWithOne(String command) throws Exception {
    Path file = Files.writeString(folder.resolve("a.json"), "{}");
    assertThat(run(command, file)).isEqualTo(2);
    assertThat(answer().getAsJsonObject("error").get("field").getAsString()).isNotEmpty();
    assertThat(err.toString()).contains("lehrcase-bench: ");
    assertThat(run(command, folder.resolve("none.json"))).isEqualTo(1);
  }
}
