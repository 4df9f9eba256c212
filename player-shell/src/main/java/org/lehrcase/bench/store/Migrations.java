package org.lehrcase.bench.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The numbered, append-only steps of the schema. {@code PRAGMA user_version} holds the number of
 * the last step applied; each step is one transaction.
 */
final class Migrations {
  private static final List<String> STEPS =
      List.of(
          "0001_study.sql",
          "0002_pieces.sql",
          "0003_kilns.sql",
          "0004_moves.sql",
          "0005_notebook.sql",
          "0006_given_back.sql",
          "0007_closing.sql",
          "0008_plans.sql",
          "0009_following.sql");
  private static final int MAX_STEP_BYTES = 1 << 16;

  private Migrations() {}

  static int newest() {
    return STEPS.size();
  }

  static void apply(Database database) throws StoreException {
    int version = version(database);
    if (version > newest()) {
      throw new StoreException(
          "the study notes were written by a newer Lehrcase (schema "
              + version
              + ", this program knows "
              + newest()
              + "); nothing was changed; start the newer program");
    }
    for (int step = version + 1; step <= newest(); step++) {
      applyStep(database, step);
    }
  }

  private static void applyStep(Database database, int step) throws StoreException {
    String script = read(STEPS.get(step - 1));
    database.inTransaction(
        () -> {
          if (version(database) >= step) {
            return step; // another process was faster
          }
          for (String statement : script.split(";\\s*\\n")) {
            if (!statement.isBlank()) {
              database.run(statement);
            }
          }
          database.run("PRAGMA user_version=" + step);
          return step;
        });
  }

  static int version(Database database) throws StoreException {
    return database.first("PRAGMA user_version", row -> row.getInt(1)).orElse(0);
  }

  private static String read(String name) throws StoreException {
    try (@Nullable InputStream in = Migrations.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new StoreException("the program is incomplete: " + name + " is missing");
      }
      return new String(in.readNBytes(MAX_STEP_BYTES), StandardCharsets.UTF_8);
    } catch (StoreException e) {
      throw e;
    } catch (IOException e) {
      throw new StoreException("the program is damaged: " + name, e);
    }
  }
}
