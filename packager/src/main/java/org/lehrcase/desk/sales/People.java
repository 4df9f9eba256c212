package org.lehrcase.desk.sales;

import java.security.SecureRandom;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.text.Normalizer;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.lehrcase.core.id.Octets;

/**
 * The buyers. Every entry and change stands in the chain of events as a salted digest, so that the
 * fields themselves can be erased.
 */
public final class People {
  /** The event by which a person's fields enter the chain. */
  public static final String ENTERED = "person";

  /** The event by which they leave the book. */
  public static final String ERASED = "erased";

  private static final int MOST_FOUND = 50;
  private static final String SELECT = "SELECT id, name, email, since FROM person ";
  private static final String BY_EMAIL = SELECT + "WHERE email = ?";
  private static final String BY_ID = SELECT + "WHERE id = ?";
  private static final String SEARCH =
      SELECT + "WHERE find LIKE ? ESCAPE '!' AND erased = 0 ORDER BY since DESC, id LIMIT ?";
  private static final String UNSALTED = SELECT + "WHERE salt IS NULL AND erased = 0";
  private static final String ADD =
      "INSERT INTO person (id, name, email, since, salt, find) VALUES (?,?,?,?,?,?)";
  private static final String CHANGE =
      "UPDATE person SET name = ?, email = ?, salt = ?, find = ? WHERE id = ? AND erased = 0";
  private static final String ERASE =
      "UPDATE person SET name = 'erased', email = ?, salt = NULL, find = '', erased = 1"
          + " WHERE id = ?";
  private static final String FORGET_FILES =
      "DELETE FROM issued WHERE license_id IN (SELECT id FROM license WHERE person_id = ?)";

  private final Database database;
  private final Events events;
  private final SecureRandom random;

  People(Database database, Events events, SecureRandom random) {
    this.database = database;
    this.events = events;
    this.random = random;
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
   * Finds a buyer.
   *
   * @param id the buyer
   * @return the buyer, or nothing
   * @throws SalesException if the book cannot be read
   */
  public Optional<Person> byId(String id) throws SalesException {
    return database.row(BY_ID, r -> read(r, ""), id);
  }

  /**
   * Searches while somebody types: names and addresses, in either case and without accents.
   *
   * @param typed a part of either; nothing finds the newest
   * @return at most 50, newest first
   * @throws SalesException if the book cannot be read
   */
  public List<Person> search(String typed) throws SalesException {
    String wanted = folded(typed.strip()).replaceAll("([!%_])", "!$1");
    return database.rows(SEARCH, r -> read(r, ""), "%" + wanted + "%", MOST_FOUND);
  }

  /**
   * Counts the buyers.
   *
   * @return how many are in the book
   * @throws SalesException if the book cannot be read
   */
  public int count() throws SalesException {
    return database.number("SELECT count(*) FROM person WHERE erased = 0");
  }

  /**
   * Adds a buyer.
   *
   * @param person not yet in the book
   * @throws SalesException if the address is taken or the book cannot be written
   */
  public void add(Person person) throws SalesException {
    Octets salt = Octets.random(random, PersonDigest.SALT_BYTES);
    database.change(
        ADD,
        person.id(),
        person.name(),
        person.email(),
        person.since().toString(),
        salt.toBytes(),
        find(person));
    enter(person, salt);
  }

  /**
   * Gives a buyer another name or address.
   *
   * @param person with the same id
   * @throws SalesException if the address is taken or the book cannot be written
   */
  public void change(Person person) throws SalesException {
    Octets salt = Octets.random(random, PersonDigest.SALT_BYTES);
    database.change(
        CHANGE, person.name(), person.email(), salt.toBytes(), find(person), person.id());
    enter(person, salt);
  }

  /**
   * Forgets who a buyer is. Licenses, places and events stay, with nothing that names a person.
   *
   * @param id the buyer
   * @throws SalesException if the book cannot be written
   */
  public void erase(String id) throws SalesException {
    database.change(ERASE, "erased-" + id + "@address.invalid", id);
    database.change(FORGET_FILES, id); // a license file names its buyer
    events.add(ERASED, id, "");
  }

  /** Enters the digests of those who stood in a book of the first version. */
  void adopt() throws SalesException {
    for (Person person : database.rows(UNSALTED, r -> read(r, ""))) {
      change(person);
    }
  }

  private void enter(Person person, Octets salt) throws SalesException {
    events.add(ENTERED, person.id(), PersonDigest.ofPerson(salt, person.name(), person.email()));
  }

  private static String find(Person person) {
    return folded(person.name() + " " + person.email());
  }

  private static String folded(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFKD)
        .replaceAll("\\p{M}+", "")
        .replace("ß", "ss")
        .toLowerCase(Locale.ROOT);
  }

  static Person read(ResultSet row, String prefix) throws SQLException {
    return new Person(
        row.getString(prefix + "id"),
        row.getString(prefix + "name"),
        row.getString(prefix + "email"),
        LocalDate.parse(row.getString(prefix + "since")));
  }
}
