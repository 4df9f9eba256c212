package org.lehrcase.desk.recovering;

import java.io.IOException;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.keys.LicenseKey;
import org.lehrcase.core.keys.MasterKey;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.license.KeyLetter;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.LicenseTerms;
import org.lehrcase.core.license.RowEntry;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.sales.EditionEntry;
import org.lehrcase.desk.sales.LessonEntry;
import org.lehrcase.desk.sales.LicenseEntry;
import org.lehrcase.desk.sales.LicenseState;
import org.lehrcase.desk.sales.Person;
import org.lehrcase.desk.sales.Place;
import org.lehrcase.desk.sales.PlaceState;
import org.lehrcase.desk.sales.SalesBook;

/**
 * Writes what is known of a lost sales book into a new one. An address is in no file that buyers
 * hold: it is entered as one that nobody can have.
 */
public final class RestoredBook {
  private static final int TAG_BYTES = 8;
  private static final int PERSON_DIGITS = 16;

  private final DeskKeys keys;
  private final Evidence evidence;
  private final Map<LicenseId, Integer> generations = new HashMap<>();
  private int places;
  private int passedOver;

  /**
   * Prepares the entries.
   *
   * @param keys the rebuilt keys
   * @param evidence what is left of the desk
   */
  public RestoredBook(DeskKeys keys, Evidence evidence) {
    this.keys = keys;
    this.evidence = evidence;
  }

  /**
   * Writes editions with their lessons, licenses and places in one transaction.
   *
   * @param book the new book
   * @throws VaultException if an edition does not open with the rebuilt keys
   * @throws IOException if an edition cannot be read, or the book cannot be written
   */
  public void write(SalesBook book) throws VaultException, IOException {
    Map<Octets, License> owners = owners();
    passedOver = evidence.lettersPassedOver();
    book.<Boolean, VaultException>together(
        () -> {
          for (EditionFolder edition : evidence.editions()) {
            writeEdition(book, edition);
          }
          for (License license : evidence.licenses()) {
            writeLicense(book, license);
          }
          for (KeyLetter letter : evidence.letters()) {
            Optional<License> owner = Optional.ofNullable(owners.get(letter.digest()));
            if (owner.isPresent()) {
              writePlace(book, owner.get(), letter);
            }
          }
          return true;
        });
  }

  /**
   * Says what was found again.
   *
   * @return a sentence or two
   */
  public String found() {
    return evidence.editions().size()
        + " editions, "
        + evidence.licenses().size()
        + " licenses, "
        + places
        + " places."
        + (passedOver == 0
            ? ""
            : " Passed over: "
                + passedOver
                + " key letters that no desk key known from these files signed.");
  }

  private MasterKey master(FrontPage front) {
    int epoch = 0;
    while (!Recovery.isOf(keys.master(epoch), front)) {
      epoch++; // the rebuilt keys hold every epoch that an edition was packed under
    }
    return keys.master(epoch);
  }

  private void writeEdition(SalesBook book, EditionFolder folder)
      throws VaultException, IOException {
    FrontPage front = folder.frontPage();
    MasterKey master = master(front);
    String series = front.title().series();
    book.editions().nameSeries(series, front.title().title());
    OpenedEdition opened;
    try (EditionKey key = master.editionKey(front.edition())) {
      opened = OpenedEdition.open(folder, key);
    }
    book.editions()
        .add(
            new EditionEntry(
                front.edition(),
                series,
                front.title().restores(),
                front.title().number(),
                master.epoch(),
                front.title().title(),
                opened.contents().map(c -> c.day()).orElse(book.today()),
                folder.roots().get(0).toAbsolutePath().toString()));
    for (Lesson lesson : opened.lessons()) {
      book.lessons()
          .keep(
              new LessonEntry(
                  lesson.id(), series, lesson.folder(), lesson.number(), lesson.title()));
    }
  }

  private void writeLicense(SalesBook book, License license) throws IOException {
    LicenseTerms terms = license.terms();
    String person = license.id().hex().substring(0, PERSON_DIGITS);
    Person buyer =
        new Person(
            person, terms.name(), "license-" + person + "@address.invalid", terms.issue().day());
    book.people().add(buyer);
    book.licenses()
        .add(
            new LicenseEntry(
                license.id(),
                buyer,
                terms.issue().epoch(),
                terms.issue().number(),
                new LicenseEntry.Terms(
                    terms.series(), terms.allowance().places(), terms.allowance().moves()),
                generation(license),
                LicenseState.OPEN,
                terms.issue().day()));
  }

  /** The newest generation that any letter or row of the license shows; it never falls. */
  private int generation(License license) {
    int newest = generations.getOrDefault(license.id(), 0);
    MasterKey master = keys.master(license.terms().issue().epoch());
    for (int later = LicenseKey.LAST_GENERATION; later > newest; later--) {
      try (LicenseKey key = master.licenseKey(license.id(), later)) {
        for (RowEntry row : license.rows()) {
          if (tag(row).equals(key.rowTag(row.edition(), row.salt()))) {
            return later;
          }
        }
      }
    }
    return newest;
  }

  private static Octets tag(RowEntry row) {
    return Octets.of(Arrays.copyOf(row.row().toBytes(), TAG_BYTES));
  }

  /** A letter does not name its license; the keys that it was signed for tell. */
  private Map<Octets, License> owners() throws VaultException {
    Map<Octets, License> owners = new HashMap<>();
    for (KeyLetter letter : evidence.letters()) {
      for (License license : evidence.licenses()) {
        MasterKey master = keys.master(license.terms().issue().epoch());
        KeyLetter.Grant grant = letter.grant();
        try (PlaceKeys derived =
            new PlaceKeys(
                master.licenseKey(license.id(), grant.generation()),
                master.placeSecret(license.id(), grant.place()))) {
          if (letter.isFor(derived)) {
            owners.put(letter.digest(), license);
            generations.merge(license.id(), grant.generation(), Math::max);
          }
        }
      }
    }
    return owners;
  }

  private void writePlace(SalesBook book, License license, KeyLetter letter) throws IOException {
    List<Place> before = book.places().of(license.id());
    long living = before.stream().filter(Place::living).count();
    boolean room = living < license.terms().allowance().places();
    book.places()
        .add(
            new Place(
                license.id(),
                letter.grant().place(),
                room ? PlaceState.LIVE : PlaceState.RETIRED,
                letter.grant().generation(),
                letter.cardDigest(),
                Octets.of(letter.toBytes()),
                license.terms().issue().day()));
    places++;
  }
}
