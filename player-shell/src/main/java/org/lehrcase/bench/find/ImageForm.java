package org.lehrcase.bench.find;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/** The tables of a search image: {@code docs/format.md}, section "Search image". */
final class ImageForm {
  /** Tells a search image from any other SQLite file: "LCSI". */
  static final int APPLICATION_ID = 0x4c435349;

  static final int VERSION = 1;

  private static final List<String> TABLES =
      List.of(
          "CREATE TABLE place(id INTEGER PRIMARY KEY, lesson BLOB, asset BLOB) STRICT",
          "CREATE TABLE passage(id INTEGER PRIMARY KEY, kind INTEGER NOT NULL,"
              + " place INTEGER NOT NULL, at INTEGER NOT NULL, text TEXT NOT NULL) STRICT",
          "CREATE TABLE word(id INTEGER PRIMARY KEY, word TEXT NOT NULL, german TEXT NOT NULL)"
              + " STRICT",
          "CREATE VIRTUAL TABLE words USING fts5(title, body, beside, kind, content='',"
              + " tokenize=\"ascii tokenchars '.'\")",
          "CREATE VIRTUAL TABLE forms USING fts5(word, content='', detail=none, columnsize=0,"
              + " tokenize=\"porter ascii tokenchars '.'\")");

  private ImageForm() {}

  /** Opens an empty database in memory that never writes a file. */
  static Connection inMemory() throws SQLException {
    Connection connection = DriverManager.getConnection("jdbc:sqlite::memory:");
    run(connection, "PRAGMA temp_store=MEMORY");
    run(connection, "PRAGMA trusted_schema=OFF");
    return connection;
  }

  static void create(Connection connection) throws SQLException {
    run(connection, "PRAGMA application_id=" + APPLICATION_ID);
    run(connection, "PRAGMA user_version=" + VERSION);
    for (String table : TABLES) {
      run(connection, table);
    }
  }

  static void run(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  static int number(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      return row.next() ? row.getInt(1) : -1;
    }
  }

  /** Returns every object of a database with its text, in the order in which they were made. */
  static List<String> objects(Connection connection) throws SQLException {
    List<String> objects = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows =
            statement.executeQuery("SELECT type, name, tbl_name, sql FROM sqlite_schema")) {
      while (rows.next()) {
        objects.add(
            String.join(
                "|",
                rows.getString(1),
                rows.getString(2),
                rows.getString(3),
                String.valueOf(rows.getString(4))));
      }
    }
    return objects;
  }
}
