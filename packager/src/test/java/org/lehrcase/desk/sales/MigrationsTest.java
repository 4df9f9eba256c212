package org.lehrcase.desk.sales;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MigrationsTest {
  private static final String SCHEMA =
      "SELECT type || ' ' || name || ' ' || coalesce(sql, '') FROM sqlite_schema ORDER BY name";

  @TempDir Path folder;

  @ParameterizedTest(name = "version {0}")
  @ValueSource(ints = {1})
  void everyPastVersionBecomesTheNewest(int version) throws IOException {
    Path old = folder.resolve("old.db");
    try (Database database = Database.open(old)) {
      database.script(sample(version));
      assertThat(Migrations.version(database)).isEqualTo(version);
      Migrations.bringUp(database);
      assertThat(Migrations.version(database)).isEqualTo(Migrations.newest());
      assertThat(schema(database)).isEqualTo(fresh());
    }
    try (SalesBook book = SalesBook.open(old, BookFixture.NOON)) {
      assertThat(book.licenses().all()).hasSize(1);
      assertThat(book.events().firstBroken()).isEmpty();
    }
  }

  @Test
  void aNewerBookIsLeftAlone() throws IOException {
    Path file = folder.resolve("sales.db");
    SalesBook.create(file, BookFixture.NOON).close();
    try (Database raw = Database.open(file)) {
      raw.script("PRAGMA user_version = 99");
    }
    assertThatThrownBy(() -> SalesBook.open(file, BookFixture.NOON))
        .isInstanceOf(SalesException.class)
        .hasMessageContaining("install a newer desk");
  }

  @Test
  void anotherProgramsDatabaseIsLeftAlone() throws IOException {
    Path file = folder.resolve("sales.db");
    SalesBook.create(file, BookFixture.NOON).close();
    try (Database raw = Database.open(file)) {
      raw.script("PRAGMA application_id = 7");
    }
    assertThatThrownBy(() -> SalesBook.open(file, BookFixture.NOON))
        .isInstanceOf(SalesException.class)
        .hasMessageContaining("not a sales book");
  }

  @Test
  void aMigrationThatFailsLeavesTheVersionBefore() throws IOException {
    Path file = folder.resolve("sales.db");
    try (Database raw = Database.open(file)) {
      raw.script("CREATE TABLE event (anything)");
      assertThatThrownBy(() -> Migrations.bringUp(raw)).isInstanceOf(SalesException.class);
      assertThat(Migrations.version(raw)).isZero();
      assertThat(raw.number("SELECT count(*) FROM sqlite_schema")).isEqualTo(1);
    }
  }

  @Test
  void everyTableIsStrict() throws IOException {
    try (Database database = Database.open(folder.resolve("new.db"))) {
      Migrations.bringUp(database);
      assertThat(database.rows("PRAGMA table_list", r -> r.getInt("strict") + r.getString("name")))
          .filteredOn(row -> !row.contains("sqlite_"))
          .isNotEmpty()
          .allMatch(row -> row.startsWith("1"));
    }
  }

  private List<String> fresh() throws IOException {
    try (Database database = Database.open(folder.resolve("fresh.db"))) {
      Migrations.bringUp(database);
      return schema(database);
    }
  }

  private static List<String> schema(Database database) throws IOException {
    return database.rows(SCHEMA, r -> r.getString(1));
  }

  private static String sample(int version) throws IOException {
    try (InputStream in =
        MigrationsTest.class.getResourceAsStream("sales-book-version-" + version + ".sql")) {
      return new String(in.readNBytes(1 << 20), StandardCharsets.UTF_8);
    }
  }
}
