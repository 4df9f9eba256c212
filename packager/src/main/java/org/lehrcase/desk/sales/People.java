package org.lehrcase.desk.sales;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Optional;

/** The buyers. */
public final class People {
  private static final String BY_EMAIL =
      "SELECT id, name, email, since FROM person WHERE email = ?";
  private static final String ADD = "INSERT INTO person (id, name, email, since) VALUES (?,?,?,?)";

  private final Database database;

  People(Database database) {
    this.database = database;
  }

  /**
   * Finds a buyer by address, in either case of letters.
   *
   * @param email the address
   * @return the buyer, or nothing
   * @throws SalesException if the book cannot be read
   */
  public Optional<Person> byEmail(String email) throws SalesException {
    return database.row(BY_EMAIL, r -> read(r, ""), email);
  }

  /**
   * Adds a buyer.
   *
   * @param person not yet in the book
   * @throws SalesException if the address is taken or the book cannot be written
   */
  public void add(Person person) throws SalesException {
    database.change(ADD, person.id(), person.name(), person.email(), person.since().toString());
  }

  static Person read(ResultSet row, String prefix) throws SQLException {
    return new Person(
        row.getString(prefix + "id"),
        row.getString(prefix + "name"),
        row.getString(prefix + "email"),
        LocalDate.parse(row.getString(prefix + "since")));
  }
}
