package org.lehrcase.bench.store;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;

/** A file of notes as the first program left it: its one step of the schema and nothing later. */
final class FirstSchema {
  private static final int MOST_BYTES = 1 << 16;

  private FirstSchema() {}

  /** Makes the file, and leaves it open for rows of the first program. */
  static Connection write(Path file) throws Exception {
    Connection raw = DriverManager.getConnection("jdbc:sqlite:" + file);
    try (var statement = raw.createStatement();
        InputStream step = Migrations.class.getResourceAsStream("0001_study.sql")) {
      String script = new String(step.readNBytes(MOST_BYTES), StandardCharsets.UTF_8);
      for (String part : script.split(";\\s*\\n")) {
        statement.execute(part);
      }
      statement.execute("PRAGMA user_version=1");
    }
    return raw;
  }
}
