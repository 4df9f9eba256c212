package org.lehrcase.bench.cli;

import com.google.gson.GsonBuilder;
import com.google.gson.JsonObject;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.lehrcase.bench.firing.FieldTrouble;
import picocli.CommandLine;

/**
 * One JSON request from a file or standard input, one JSON answer to standard output. A wrong field
 * is answered as JSON too, and in words on standard error.
 */
final class JsonDoor {
  private static final int MAX_BYTES = 1 << 20;
  private static final int WRONG_FIELD = 2;

  private final String file;
  private final CommandLine line;

  JsonDoor(String file, CommandLine line) {
    this.file = file;
    this.line = line;
  }

  /**
   * An answer.
   *
   * @param json what to show
   * @param possible whether what was asked can be done
   */
  record Reply(JsonObject json, boolean possible) {}

  /** What answers a request. */
  interface Service {
    /** Answers; a field that cannot be used is refused by name. */
    Reply answer(String text) throws FieldTrouble;
  }

  /** Reads, asks, writes; returns how the program ends. */
  int pass(Service service) throws IOException {
    try {
      Reply reply = service.answer(text());
      line.getOut().println(shown(reply.json()));
      line.getOut().flush();
      return reply.possible() ? BenchCommand.DONE : BenchCommand.REFUSED;
    } catch (FieldTrouble trouble) {
      return refuse(trouble);
    } catch (NoSuchFileException | FileNotFoundException e) {
      line.getErr().println("lehrcase-bench: there is no file " + file);
      return BenchCommand.REFUSED;
    }
  }

  private int refuse(FieldTrouble trouble) {
    var error = new JsonObject();
    error.addProperty("field", trouble.field());
    error.addProperty("message", trouble.getMessage());
    var json = new JsonObject();
    json.add("error", error);
    line.getOut().println(shown(json));
    String field = trouble.field().isEmpty() ? "" : trouble.field() + ": ";
    line.getErr().println("lehrcase-bench: " + field + trouble.getMessage());
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
