package org.lehrcase.desk.sales;

import java.security.SecureRandom;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.StringJoiner;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;

/**
 * What the shop's own books need of a sale, in columns of any name: order number, net, tax,
 * country. The chain of events holds a salted digest of them.
 */
public final class SaleFacts {
  /** The event by which the facts enter the chain. */
  public static final String ENTERED = "facts";

  private static final String READ = "SELECT facts FROM sale WHERE license_id = ?";
  private static final String KEEP =
      "INSERT INTO sale (license_id, salt, facts) VALUES (?,?,?) ON CONFLICT (license_id) DO UPDATE"
          + " SET salt = excluded.salt, facts = excluded.facts";

  private final Database database;
  private final Events events;
  private final SecureRandom random;

  SaleFacts(Database database, Events events, SecureRandom random) {
    this.database = database;
    this.events = events;
    this.random = random;
  }

  /**
   * Reads the facts of a sale.
   *
   * @param license the license that was sold
   * @return values by column, in the order in which they were given
   * @throws SalesException if the book cannot be read
   */
  public Map<String, String> of(LicenseId license) throws SalesException {
    return database
        .row(READ, r -> r.getString(1), license.hex())
        .map(SaleFacts::columns)
        .orElse(Map.of());
  }

  /**
   * Enters the facts of a sale.
   *
   * @param license the license that was sold
   * @param facts values by column; nothing is entered if there are none
   * @throws SalesException if they are too long or the book cannot be written
   */
  public void keep(LicenseId license, Map<String, String> facts) throws SalesException {
    if (facts.isEmpty()) {
      return;
    }
    StringJoiner lines = new StringJoiner("\n");
    facts.forEach((name, value) -> lines.add(oneLine(name) + "\t" + oneLine(value)));
    Octets salt = Octets.random(random, PersonDigest.SALT_BYTES);
    database.change(KEEP, license.hex(), salt.toBytes(), lines.toString());
    events.add(ENTERED, license.hex(), PersonDigest.ofSale(salt, lines.toString()));
  }

  private static String oneLine(String text) {
    return text.replaceAll("[\\p{Cntrl}]+", " ").strip();
  }

  private static Map<String, String> columns(String lines) {
    Map<String, String> columns = new LinkedHashMap<>();
    lines
        .lines()
        .map(line -> line.split("\t", 2))
        .filter(pair -> pair.length == 2)
        .forEach(pair -> columns.put(pair[0], pair[1]));
    return columns;
  }
}
