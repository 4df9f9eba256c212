package org.lehrcase.bench.opening;

import java.io.IOException;
import java.util.Optional;
import org.lehrcase.bench.courses.KnownRoots;
import org.lehrcase.bench.opening.Dropped.Kind;
import org.lehrcase.bench.opening.Dropped.Outcome;
import org.lehrcase.bench.store.LicenseTable.KeptLicense;
import org.lehrcase.bench.store.PlaceTable.CardPlace;
import org.lehrcase.bench.store.StudyStore;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.ClosingKey;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.license.ClosingNote;
import org.lehrcase.core.license.KeyLetter;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.Statement;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.primitive.VerifyKey;

/**
 * What happens to a license, a key letter or a closing key that arrives: verified first, kept in
 * one transaction, and told in two sentences. {@link Opening} holds the lock.
 */
record Acceptance(Opening opening, StudyStore store, KnownRoots roots, Places places) {
  Dropped license(byte[] message) throws VaultException, IOException {
    License license = License.verify(message, TrustedRoots.firstMeeting());
    Optional<KeptLicense> before = store.licenses().find(license.id());
    if (before.isPresent() && !before.get().root().equals(license.statement().root().octets())) {
      return Dropped.refused(
          Kind.LICENSE,
          "Another teacher's key signed this license, which carries the number of one you have.",
          "Ask your teacher before you use it.");
    }
    boolean fresh =
        store.inTransaction(
            () -> {
              roots.meet(license.statement());
              return store
                  .licenses()
                  .keep(
                      new KeptLicense(
                          license.id(),
                          license.statement().root().octets(),
                          license.terms().issue().number(),
                          Octets.of(license.toBytes())));
            });
    tieLoosePlaces(license);
    LicenseState state = opening.state(license.id());
    String whose = "This is the license of " + license.terms().name() + ".";
    String next =
        state == LicenseState.ACTIVE
            ? "Your courses are open."
            : "Next: send this laptop card to your teacher; the key letter comes back.";
    return new Dropped(Kind.LICENSE, fresh ? Outcome.ACCEPTED : Outcome.KNOWN, whose, next);
  }

  /** A card made before its license named none; its keys tell which license they belong to. */
  private void tieLoosePlaces(License license) throws VaultException, IOException {
    for (Places.OpenPlace open : places.open()) {
      try (open) {
        if (open.place().license().isEmpty() && KeySearch.opensRowOf(license, open.keys())) {
          places.tie(open.place(), license.id());
        }
      }
    }
  }

  Dropped letter(byte[] message) throws VaultException, IOException {
    KeyLetter letter = KeyLetter.verifyAny(message, roots.deskKeys());
    CardPlace place =
        places
            .answeredBy(letter)
            .orElseThrow(
                () ->
                    new VaultException.WrongLaptop(
                        "this key letter answers the card of another laptop"));
    requireTeacher(place, letter);
    if (place.answer().isPresent() && places.opens(place)) {
      return again(place.answer().get().letter().equals(Octets.of(letter.toBytes())));
    }
    try (PlaceKeys keys = places.open(place, letter)) {
      Optional<LicenseId> license = place.license().isPresent() ? place.license() : licenseOf(keys);
      places.activate(place, license, letter, keys);
    }
    return new Dropped(
        Kind.LETTER,
        Outcome.ACCEPTED,
        "This is the key letter for this laptop.",
        "Your courses open.");
  }

  private static Dropped again(boolean same) {
    return same
        ? new Dropped(
            Kind.LETTER, Outcome.KNOWN, "This key letter was here already.", "Your courses open.")
        : Dropped.refused(
            Kind.LETTER,
            "Another key letter for the same laptop card is here already.",
            "Drop your license, then send the laptop card that is made for it.");
  }

  /** A card that names a license is answered by the teacher who sold it, and by nobody else. */
  private void requireTeacher(CardPlace place, KeyLetter letter)
      throws VaultException, IOException {
    if (place.license().isEmpty()) {
      return;
    }
    Optional<KeptLicense> license = store.licenses().find(place.license().get());
    if (license.isPresent()) {
      Optional<Statement> desk = roots.newestDesk(new VerifyKey(license.get().root()));
      if (desk.isPresent() && !desk.get().deskKey().equals(letter.desk())) {
        throw new VaultException.Tampered(
            "this key letter was not signed by the teacher who sold the license");
      }
    }
  }

  private Optional<LicenseId> licenseOf(PlaceKeys keys) throws VaultException, IOException {
    for (License license : opening.licenses()) {
      if (KeySearch.opensRowOf(license, keys)) {
        return Optional.of(license.id());
      }
    }
    return Optional.empty();
  }

  Dropped closing(byte[] note) throws VaultException, IOException {
    boolean fresh = false;
    for (ClosingKey key : ClosingNote.read(note)) {
      try (key) {
        fresh |= store.closing().keep(key);
      }
    }
    return new Dropped(
        Kind.CLOSING,
        fresh ? Outcome.ACCEPTED : Outcome.KNOWN,
        "This is the closing key of a shop.",
        "Every copy of its courses opens here now, without a license.");
  }
}
