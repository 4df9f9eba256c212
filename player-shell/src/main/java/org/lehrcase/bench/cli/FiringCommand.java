package org.lehrcase.bench.cli;

import com.google.gson.GsonBuilder;
import com.google.gson.JsonObject;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.FiringService;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Proposes or simulates a firing; JSON in, JSON out. Touches nothing else. */
@Command(
    name = "firing",
    description = {
      "Proposes a firing schedule for a block, or simulates one: JSON in, JSON out.",
      "Ends with 0 done, 1 this kiln cannot run it or the file cannot be read, 2 a field is wrong."
    },
    mixinStandardHelpOptions = true)
final class FiringCommand implements Callable<Integer> {
  private static final int MAX_BYTES = 1 << 20;
  private static final int WRONG_FIELD = 2;

  @Parameters(paramLabel = "FILE", description = "The request; - for standard input.")
  private String file;

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() throws IOException {
    PrintWriter out = spec.commandLine().getOut();
    try {
      FiringService.Answer answer = FiringService.answer(text());
      out.println(shown(answer.json()));
      out.flush();
      return answer.runnable() ? BenchCommand.DONE : BenchCommand.REFUSED;
    } catch (FieldTrouble trouble) {
      return refuse(trouble);
    } catch (NoSuchFileException | FileNotFoundException e) {
      spec.commandLine().getErr().println("lehrcase-bench: there is no file " + file);
      return BenchCommand.REFUSED;
    }
  }

  private int refuse(FieldTrouble trouble) {
    var error = new JsonObject();
    error.addProperty("field", trouble.field());
    error.addProperty("message", trouble.getMessage());
    var json = new JsonObject();
    json.add("error", error);
    spec.commandLine().getOut().println(shown(json));
    String field = trouble.field().isEmpty() ? "" : trouble.field() + ": ";
    spec.commandLine().getErr().println("lehrcase-bench: " + field + trouble.getMessage());
    return WRONG_FIELD;
  }

  private static String shown(JsonObject json) {
    return new GsonBuilder()
        .serializeNulls()
        .disableHtmlEscaping()
        .setPrettyPrinting()
        .create()
        .toJson(json);
  }

  private String text() throws IOException, FieldTrouble {
    byte[] bytes = bytes();
    if (bytes.length > MAX_BYTES) {
      throw new FieldTrouble("", "the request is larger than 1 MiB");
    }
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      throw new FieldTrouble("", "the request is not UTF-8; save it again as UTF-8");
    }
  }

  private byte[] bytes() throws IOException {
    if (file.equals("-")) {
      return System.in.readNBytes(MAX_BYTES + 1);
    }
    try (InputStream in = Files.newInputStream(Path.of(file))) {
      return in.readNBytes(MAX_BYTES + 1);
    }
  }
}
