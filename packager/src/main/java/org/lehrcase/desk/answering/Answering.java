package org.lehrcase.desk.answering;

import java.io.IOException;
import java.security.SecureRandom;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PlaceId;
import org.lehrcase.core.keys.LicenseKey;
import org.lehrcase.core.keys.MasterKey;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.license.KeyLetter;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.sales.LicenseEntry;
import org.lehrcase.desk.sales.Place;
import org.lehrcase.desk.sales.PlaceState;
import org.lehrcase.desk.sales.SalesBook;

/**
 * Answers laptop cards with key letters. One transaction decides, retires what is replaced, and
 * keeps the letter; the letter is given out from the book, so that the same card always gets the
 * same bytes.
 */
public final class Answering {
  private final SalesBook book;
  private final DeskKeys keys;
  private final SecureRandom random;

  /**
   * Works with an open desk.
   *
   * @param book the sales book
   * @param keys its keys
   * @param random the source of place ids
   */
  public Answering(SalesBook book, DeskKeys keys, SecureRandom random) {
    this.book = book;
    this.keys = keys;
    this.random = random;
  }

  /**
   * What the teacher says beside the card.
   *
   * @param license the license, needed if the card was made before there was one
   * @param replaces the place of a lost laptop that this one takes over
   */
  public record Wish(Optional<LicenseId> license, Optional<PlaceId> replaces) {
    /** Nothing beside what the card says. */
    public static final Wish NONE = new Wish(Optional.empty(), Optional.empty());
  }

  /**
   * The answer to a card.
   *
   * @param place the place with its letter
   * @param again whether the card had been answered before
   * @param retired places that were retired for it now
   */
  public record Answer(Place place, boolean again, List<PlaceId> retired) {}

  /**
   * Answers a card.
   *
   * @param card a verified card
   * @param wish what the teacher says beside it
   * @return the answer, kept in the book
   * @throws RefusedException if the card gets no letter; nothing is kept
   * @throws IOException if the book cannot be used; nothing is kept
   */
  public Answer answer(LaptopCard card, Wish wish) throws IOException, RefusedException {
    return book.<Answer, RefusedException>together(
        () -> {
          Optional<Place> before = book.places().answeredBy(card.digest());
          LicenseEntry license = license(card, wish, before);
          if (before.isPresent()) {
            return new Answer(stillLiving(before.get()), true, List.of());
          }
          if (card.hasProof()) {
            throw refused(
                Refusal.CODE_NOT_ASKED,
                "The card proves a code, but no code was ever given with this license.");
          }
          List<PlaceId> retired = retire(license, card, wish);
          return new Answer(settle(card, license.id()), false, retired);
        });
  }

  private LicenseEntry license(LaptopCard card, Wish wish, Optional<Place> before)
      throws IOException, RefusedException {
    Optional<LicenseId> tied = card.license().or(() -> before.map(Place::license));
    if (tied.isPresent() && wish.license().isPresent() && !tied.equals(wish.license())) {
      throw refused(
          Refusal.OTHER_LICENSE,
          "The card is tied to license " + tied.get().hex() + ", not to the one given.");
    }
    LicenseId id =
        tied.or(wish::license)
            .orElseThrow(
                () ->
                    refused(
                        Refusal.NO_LICENSE_NAMED,
                        "The card was made before there was a license; say whose it is with"
                            + " --license."));
    return new LicenseSearch(book).open(id);
  }

  private static Place stillLiving(Place place) throws RefusedException {
    if (!place.living()) {
      throw refused(
          Refusal.RETIRED_CARD,
          "The place of this card was retired, because another laptop took it over; a retired card"
              + " gets no letter. If the laptop is to be used again, let it make a new card.");
    }
    return place;
  }

  private List<PlaceId> retire(LicenseEntry license, LaptopCard card, Wish wish)
      throws IOException, RefusedException {
    Optional<PlaceId> named = card.replaces().or(wish::replaces);
    if (named.isPresent()) {
      Place place =
          book.places()
              .byId(license.id(), named.get())
              .orElseThrow(
                  () ->
                      refused(
                          Refusal.UNKNOWN_PLACE,
                          "This license has no place " + named.get().hex() + "."));
      if (place.living()) {
        if (wish.replaces().isEmpty()) {
          requireGranted(license);
        }
        return List.of(retire(license, place));
      }
    }
    requireRoom(license);
    return List.of();
  }

  /** A place that the teacher names herself is granted by that. */
  private void requireGranted(LicenseEntry license) throws IOException, RefusedException {
    Replacements policy = new Replacements(book);
    int before = policy.inTheLastYear(license.id());
    if (before >= policy.perYear()) {
      throw refused(
          Refusal.ASK_FIRST,
          "This laptop would replace another one. "
              + before
              + " of this license were replaced in the last year, and "
              + policy.perYear()
              + " a year are granted without asking. If it is right, name the laptop that is gone"
              + " and write the letter.");
    }
    book.events()
        .add(
            "granted",
            license.id().hex(),
            "replacement " + (before + 1) + " of " + policy.perYear() + " a year, without asking");
  }

  private PlaceId retire(LicenseEntry license, Place place) throws IOException, RefusedException {
    if (license.generation() >= LicenseKey.LAST_GENERATION) {
      throw refused(
          Refusal.KEYS_USED_UP,
          "Places of this license were replaced "
              + LicenseKey.LAST_GENERATION
              + " times, which is the limit; sell a new license.");
    }
    book.places().retire(license.id(), place.id());
    book.licenses().raiseGeneration(license.id());
    book.events().add("retired", place.id().hex(), license.id().hex());
    return place.id();
  }

  private void requireRoom(LicenseEntry license) throws IOException, RefusedException {
    List<Place> living = book.places().of(license.id()).stream().filter(Place::living).toList();
    if (living.size() >= license.terms().places()) {
      StringBuilder list = new StringBuilder();
      for (Place place : living) {
        list.append("\n  place ").append(place.id().hex()).append(", since ").append(place.since());
      }
      throw refused(
          Refusal.PLACES_IN_USE,
          "All "
              + license.terms().places()
              + " places of this license are in use:"
              + list
              + "\nIf a laptop was lost or replaced, name its place with --replaces.");
    }
  }

  private Place settle(LaptopCard card, LicenseId license) throws IOException, RefusedException {
    LicenseEntry entry = new LicenseSearch(book).open(license); // with its present generation
    PlaceId id = PlaceId.random(random);
    Place place =
        new Place(
            license,
            id,
            PlaceState.LIVE,
            entry.generation(),
            card.digest(),
            Octets.of(seal(card, entry, id).toBytes()),
            book.today());
    book.places().add(place);
    book.events().add("answered", card.digest().hex(), license.hex() + " " + id.hex());
    return place;
  }

  private KeyLetter seal(LaptopCard card, LicenseEntry license, PlaceId place)
      throws RefusedException {
    MasterKey master = keys.master(license.epoch());
    try (PlaceKeys secret =
        new PlaceKeys(
            master.licenseKey(license.id(), license.generation()),
            master.placeSecret(license.id(), place))) {
      return KeyLetter.issue(card, place, license.terms().moves(), secret, keys.desk());
    } catch (VaultException e) {
      throw refused(
          Refusal.BROKEN_CARD, "No letter can be sealed to this card (" + e.getMessage() + ").");
    }
  }

  private static RefusedException refused(Refusal reason, String message) {
    return new RefusedException(reason, message + " Nothing was changed.");
  }
}
