package org.lehrcase.desk.sales;

import java.util.Optional;

/** What the desk remembers for its page: where courses lie, when the last backup was made. */
public final class Settings {
  private static final String READ = "SELECT value FROM setting WHERE name = ?";
  private static final String KEEP =
      "INSERT INTO setting (name, value) VALUES (?,?)"
          + " ON CONFLICT (name) DO UPDATE SET value = excluded.value";

  private final Database database;

  Settings(Database database) {
    this.database = database;
  }

  /**
   * Reads one.
   *
   * @param name its name
   * @return its value, or nothing
   * @throws SalesException if the book cannot be read
   */
  public Optional<String> of(String name) throws SalesException {
    return database.row(READ, r -> r.getString(1), name);
  }

  /**
   * Keeps one.
   *
   * @param name its name
   * @param value its value; never a secret
   * @throws SalesException if the book cannot be written
   */
  public void keep(String name, String value) throws SalesException {
    database.change(KEEP, name, value);
  }
}
