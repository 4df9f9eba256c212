package org.lehrcase.desk.answering;

import java.io.IOException;
import java.security.SecureRandom;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.license.DeskSigner;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.LicenseTerms;
import org.lehrcase.core.license.Statement;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.sales.LicenseEntry;
import org.lehrcase.desk.sales.LicenseState;
import org.lehrcase.desk.sales.Person;
import org.lehrcase.desk.sales.SalesBook;

/** Sells licenses and issues their files. Each act is one transaction of the sales book. */
public final class Licensing {
  private final SalesBook book;
  private final DeskKeys keys;
  private final DeskSigner signer;
  private final SecureRandom random;

  /**
   * Works with an open desk.
   *
   * @param book the sales book
   * @param keys its keys
   * @param statement the root's word for the desk key
   * @param random the source of identifiers and salts
   */
  public Licensing(SalesBook book, DeskKeys keys, Statement statement, SecureRandom random) {
    this.book = book;
    this.keys = keys;
    this.signer = new DeskSigner(statement, keys.desk());
    this.random = random;
  }

  /**
   * Enters a new license and issues its file, with rows for every edition so far of its series.
   *
   * @param order what was bought
   * @return the license
   * @throws RefusedException if an entry breaks a rule; nothing is kept
   * @throws IOException if the book cannot be used; nothing is kept
   */
  public License sell(Order order) throws IOException, RefusedException {
    return enter(order, "licensed", Map.of());
  }

  /**
   * Enters a new license with what the shop's own books need of it.
   *
   * @param order what was bought
   * @param gift whether it is given away
   * @param facts values by column, such as order number, net, tax and country
   * @return the license
   * @throws RefusedException if an entry breaks a rule; nothing is kept
   * @throws IOException if the book cannot be used; nothing is kept
   */
  public License sell(Order order, boolean gift, Map<String, String> facts)
      throws IOException, RefusedException {
    return enter(order, gift ? "gifted" : "licensed", facts);
  }

  /**
   * A sale from a table.
   *
   * @param order what was bought
   * @param facts values by column
   */
  public record Sale(Order order, Map<String, String> facts) {}

  /**
   * Enters many sales in one step.
   *
   * @param sales what was bought
   * @return how many
   * @throws RefusedException if one breaks a rule; none is kept then
   * @throws IOException if the book cannot be used; none is kept then
   */
  public int sellAll(List<Sale> sales) throws IOException, RefusedException {
    return book.<Integer, RefusedException>together(
        () -> {
          for (Sale sale : sales) {
            add(sale.order(), "licensed", sale.facts());
          }
          return sales.size();
        });
  }

  private License enter(Order order, String kind, Map<String, String> facts)
      throws IOException, RefusedException {
    return book.<License, RefusedException>together(() -> issue(add(order, kind, facts)));
  }

  private LicenseEntry add(Order order, String kind, Map<String, String> facts) throws IOException {
    LicenseEntry entry =
        new LicenseEntry(
            LicenseId.random(random),
            person(order),
            keys.epoch(),
            1,
            new LicenseEntry.Terms(
                order.series(), order.allowance().places(), order.allowance().moves()),
            0,
            LicenseState.OPEN,
            book.today());
    book.licenses().add(entry);
    book.events().add(kind, entry.id().hex(), String.join(",", order.series()));
    book.facts().keep(entry.id(), facts);
    return entry;
  }

  /**
   * Lets a license cover further series and issues its file anew, with rows for everything so far.
   *
   * @param id the license
   * @param series what was bought in addition; may be empty to issue the same again
   * @return the license with a higher issue number
   * @throws RefusedException if the license is unknown or blocked; nothing is kept
   * @throws IOException if the book cannot be used; nothing is kept
   */
  public License extend(LicenseId id, List<String> series) throws IOException, RefusedException {
    return book.<License, RefusedException>together(
        () -> {
          new LicenseSearch(book).open(id);
          book.licenses().cover(id, series);
          book.licenses().countIssue(id);
          book.events().add("reissued", id.hex(), String.join(",", series));
          return issue(new LicenseSearch(book).open(id));
        });
  }

  /**
   * Returns the license file of a license as it was issued last, byte for byte, unless its terms or
   * the desk's key have changed since; then it is issued anew.
   *
   * @param id the license
   * @return the license
   * @throws RefusedException if the license is unknown or blocked; nothing is kept
   * @throws IOException if the book cannot be used; nothing is kept
   */
  public License current(LicenseId id) throws IOException, RefusedException {
    LicenseEntry entry = new LicenseSearch(book).open(id);
    Optional<License> kept = kept(entry);
    return kept.isPresent() ? kept.get() : extend(id, List.of());
  }

  private Optional<License> kept(LicenseEntry entry) throws IOException {
    Optional<Octets> message = book.licenses().issued(entry.id());
    if (message.isEmpty()) {
      return Optional.empty();
    }
    try {
      License license =
          License.verify(message.get().toBytes(), TrustedRoots.pinned(signer.statement().root()));
      return Optional.of(license).filter(one -> isCurrent(one, entry));
    } catch (VaultException e) {
      return Optional.empty(); // by another root, or damaged: issued anew
    }
  }

  private boolean isCurrent(License license, LicenseEntry entry) {
    LicenseTerms terms = license.terms();
    return license.id().equals(entry.id())
        && license.statement().terms().serial() == signer.statement().terms().serial()
        && terms.issue().number() == entry.issue()
        && terms.name().equals(entry.person().name())
        && List.copyOf(terms.series()).equals(entry.terms().series())
        && terms.allowance().places() == entry.terms().places()
        && terms.allowance().moves() == entry.terms().moves();
  }

  private Person person(Order order) throws IOException {
    Optional<Person> known = book.people().byEmail(order.email());
    if (known.isPresent()) {
      return known.get();
    }
    Person person =
        new Person(Octets.random(random, 8).hex(), order.name(), order.email(), book.today());
    book.people().add(person);
    return person;
  }

  private License issue(LicenseEntry entry) throws IOException, RefusedException {
    LicenseTerms terms =
        new LicenseTerms(
            entry.id(),
            new LicenseTerms.Issue(entry.epoch(), entry.issue(), book.today()),
            entry.person().name(),
            entry.terms().series(),
            new LicenseTerms.Allowance(entry.terms().places(), entry.terms().moves()));
    try {
      License license =
          License.issue(terms, new KeyRows(book, keys).forLicense(entry, random), signer);
      book.licenses().keepIssued(entry.id(), license.toBytes());
      return license;
    } catch (VaultException e) {
      throw new RefusedException(
          Refusal.WRONG_ENTRY,
          "The license cannot be written: " + e.getMessage() + ". Nothing was changed.");
    }
  }
}
