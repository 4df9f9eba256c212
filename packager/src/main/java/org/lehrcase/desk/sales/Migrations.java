package org.lehrcase.desk.sales;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Brings a sales book to the newest schema, one numbered script per version. {@code PRAGMA
 * user_version} is the version; each script runs in a transaction of its own with the raised
 * number, so that a killed migration leaves the version before.
 */
final class Migrations {
  /** Marks the file as a sales book ("LCsb"), so that another database is not taken for one. */
  static final int APPLICATION_ID = 0x4c437362;

  private static final int MAX_SCRIPT_BYTES = 1 << 16;
  private static final List<String> SCRIPTS =
      List.of("0001_sales_book.sql", "0002_years.sql", "0003_issued.sql");

  private Migrations() {}

  static int newest() {
    return SCRIPTS.size();
  }

  static void bringUp(Database database) throws IOException {
    refuseForeign(database);
    for (int next = version(database) + 1; next <= newest(); next++) {
      int version = next;
      String script = script(SCRIPTS.get(version - 1));
      database.transaction(
          () -> {
            database.script(script);
            database.script("PRAGMA application_id = " + APPLICATION_ID);
            database.script("PRAGMA user_version = " + version);
            return version;
          });
    }
  }

  static int version(Database database) throws SalesException {
    return database.number("PRAGMA user_version");
  }

  private static void refuseForeign(Database database) throws SalesException {
    int version = version(database);
    if (version > newest()) {
      throw new SalesException(
          "The sales book has version "
              + version
              + ", newer than "
              + newest()
              + ", the newest that this program reads. Nothing was changed; install a newer desk.");
    }
    if (version > 0 && database.number("PRAGMA application_id") != APPLICATION_ID) {
      throw new SalesException(
          "This database is not a sales book. Nothing was changed; give another --home.");
    }
  }

  private static String script(String name) throws SalesException {
    try (InputStream in = Migrations.class.getResourceAsStream("migrations/" + name)) {
      if (in == null) {
        throw new IllegalStateException("this build lacks " + name);
      }
      return new String(in.readNBytes(MAX_SCRIPT_BYTES), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new SalesException("The program's own file " + name + " cannot be read.", e);
    }
  }
}
