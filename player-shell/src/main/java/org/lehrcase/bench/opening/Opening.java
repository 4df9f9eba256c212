package org.lehrcase.bench.opening;

import java.io.IOException;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.bench.courses.EditionKeys;
import org.lehrcase.bench.courses.KnownRoots;
import org.lehrcase.bench.laptop.Laptop;
import org.lehrcase.bench.store.LicenseTable.KeptLicense;
import org.lehrcase.bench.store.PlaceState;
import org.lehrcase.bench.store.StudyStore;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.ContentsSeal;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.keys.ClosingKey;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.TrustedRoots;

/**
 * Takes licenses and key letters, makes laptop cards, and finds the key of an edition. Safe for
 * many threads; every acceptance is one transaction.
 */
public final class Opening implements EditionKeys {
  private final StudyStore store;
  private final KnownRoots roots;
  private final Places places;
  private final Laptop laptop;
  private final SecureRandom random;

  /**
   * Works on the student's database.
   *
   * @param store the database
   * @param roots the teachers met so far
   * @param laptop this machine
   * @param random makes the seeds of cards
   */
  public Opening(StudyStore store, KnownRoots roots, Laptop laptop, SecureRandom random) {
    this.store = store;
    this.roots = roots;
    this.places = new Places(store.places(), laptop, random);
    this.laptop = laptop;
    this.random = random;
  }

  /**
   * Accepts a license of any teacher; the first message of a teacher pins the root.
   *
   * @param message the signed bytes
   * @return what became of it
   * @throws VaultException if it is no license
   * @throws IOException if the database cannot be written
   */
  public synchronized Dropped acceptLicense(byte[] message) throws VaultException, IOException {
    return new Acceptance(this, store, roots, places).license(message);
  }

  /**
   * Makes the card to send, or returns the one that was sent already: always the same bytes while
   * it waits for its letter.
   *
   * @param license the license, or empty for a card before any license
   * @return the card
   * @throws Trouble if the machine tells too little about itself
   * @throws VaultException if what is stored is damaged
   * @throws IOException if the database cannot be written
   */
  public synchronized LaptopCard card(Optional<LicenseId> license)
      throws Trouble, VaultException, IOException {
    return places.card(license);
  }

  /**
   * Accepts the key letter for a card of this laptop.
   *
   * @param message the signed bytes
   * @return what became of it
   * @throws VaultException if no known teacher signed it, or it is another laptop's
   * @throws IOException if the database cannot be written
   */
  public synchronized Dropped acceptLetter(byte[] message) throws VaultException, IOException {
    return new Acceptance(this, store, roots, places).letter(message);
  }

  /**
   * Returns the accepted licenses.
   *
   * @return verified licenses in the order of arrival
   * @throws VaultException if what is stored is damaged
   * @throws IOException if the database cannot be read
   */
  public List<License> licenses() throws VaultException, IOException {
    TrustedRoots trusted = roots.trusted();
    List<License> licenses = new ArrayList<>();
    for (KeptLicense kept : store.licenses().all()) {
      licenses.add(License.verify(kept.message().toBytes(), trusted));
    }
    return licenses;
  }

  /**
   * Returns the moves from and to this laptop.
   *
   * @return moves that work on the same places
   */
  public Moves moves() {
    return new Moves(this, new Moves.Ground(store, roots, laptop, random), places);
  }

  /**
   * Returns the giving back of places of this laptop.
   *
   * @return what works on the same places
   */
  public GiveBacks giveBacks() {
    return new GiveBacks(this, store, places);
  }

  /**
   * Gives this laptop another secret, if a place was given up since the last time.
   *
   * @throws VaultException if what is stored is damaged
   * @throws IOException if the database cannot be used; it stays due then
   */
  public synchronized void renewSecret() throws VaultException, IOException {
    new SecretRenewal(store, laptop, places).run();
  }

  /**
   * Says how far a license has come.
   *
   * @param license the license
   * @return its state on this laptop, now
   * @throws VaultException if what is stored is damaged
   * @throws IOException if the database cannot be read
   */
  public LicenseState state(LicenseId license) throws VaultException, IOException {
    return new LicenseStates(store, places).of(license);
  }

  /**
   * Says whether a card waits for its letter.
   *
   * @return true if at least one does
   * @throws IOException if the database cannot be read
   */
  public boolean isCardWaiting() throws IOException {
    return places.all().stream().anyMatch(place -> place.state() == PlaceState.ASKED);
  }

  /**
   * Says whether there are keys here that this machine no longer opens.
   *
   * @return true if a place is shut
   * @throws VaultException if what is stored is damaged
   * @throws IOException if the database cannot be read
   */
  public boolean isShut() throws VaultException, IOException {
    return new LicenseStates(store, places).isShut();
  }

  @Override
  public synchronized Optional<EditionKey> keyOf(EditionFolder folder)
      throws VaultException, IOException {
    Optional<EditionKey> closed = closedKeyOf(folder);
    return closed.isPresent()
        ? closed
        : new KeySearch(places, roots.trusted()).keyOf(folder, licenses());
  }

  /** After its shop closed, an edition opens by the key that was published. */
  private Optional<EditionKey> closedKeyOf(EditionFolder folder)
      throws VaultException, IOException {
    ContentsSeal seal = folder.frontPage().facts().seal();
    Optional<ClosingKey> published = store.closing().find(seal.closingCheck());
    if (published.isEmpty()) {
      return Optional.empty();
    }
    try (ClosingKey closing = published.get()) {
      return Optional.of(closing.open(folder.frontPage().edition(), seal.closingRow()));
    }
  }

  /**
   * Keeps what a shop published when it closed.
   *
   * @param note the bytes between the lines
   * @return what became of it
   * @throws VaultException if it is no closing key
   * @throws IOException if the database cannot be written
   */
  public synchronized Dropped acceptClosing(byte[] note) throws VaultException, IOException {
    return new Acceptance(this, store, roots, places).closing(note);
  }
}
