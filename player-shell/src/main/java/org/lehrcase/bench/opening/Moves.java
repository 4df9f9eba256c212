package org.lehrcase.bench.opening;

import java.io.IOException;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.bench.courses.KnownRoots;
import org.lehrcase.bench.laptop.Laptop;
import org.lehrcase.bench.store.MoveTable.Move;
import org.lehrcase.bench.store.MoveTable.Role;
import org.lehrcase.bench.store.PlaceState;
import org.lehrcase.bench.store.PlaceTable.Answer;
import org.lehrcase.bench.store.PlaceTable.CardPlace;
import org.lehrcase.bench.store.StudyStore;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.license.GiveBack;
import org.lehrcase.core.license.KeyLetter;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.MoveAsk;
import org.lehrcase.core.license.MoveLink;
import org.lehrcase.core.license.PlaceSeed;

/**
 * A laptop passes its place on to another, with no desk and no internet. The new one keeps a seed
 * before it asks; the old one stores the link and gives up its keys in one step, and gives out what
 * it stored, any number of times. Safe for many threads.
 */
public final class Moves {
  private final Opening opening;
  private final Ground ground;
  private final Places places;
  private final MoveArrivals arrivals;

  /** What moves stand on. */
  record Ground(StudyStore store, KnownRoots roots, Laptop laptop, SecureRandom random) {}

  Moves(Opening opening, Ground ground, Places places) {
    this.opening = opening;
    this.ground = ground;
    this.places = places;
    this.arrivals = new MoveArrivals(opening, ground);
  }

  /**
   * A place that could be passed on.
   *
   * @param license its license
   * @param name the buyer's name
   * @param series what it covers
   * @param left how many moves are left before this one
   */
  public record Passable(LicenseId license, String name, List<String> series, int left) {}

  /**
   * Returns the ask to show: the one that waits if this machine can still open its seed, otherwise
   * a new one.
   *
   * @return the ask
   * @throws Trouble if the machine tells too little about itself
   * @throws VaultException if what is stored is damaged
   * @throws IOException if the database cannot be written
   */
  public MoveAsk ask() throws Trouble, VaultException, IOException {
    synchronized (opening) {
      return arrivals.ask();
    }
  }

  /**
   * Lists the places of this laptop that can be passed on.
   *
   * @return one for each license that is open here
   * @throws VaultException if what is stored is damaged
   * @throws IOException if the database cannot be read
   */
  public List<Passable> passable() throws VaultException, IOException {
    synchronized (opening) {
      List<Passable> all = new ArrayList<>();
      for (License license : opening.licenses()) {
        Optional<CardPlace> place = active(license.id());
        if (place.isPresent()) {
          MoveChain chain = chain(license, place.get());
          all.add(
              new Passable(
                  license.id(), license.terms().name(), license.terms().series(), chain.left()));
        }
      }
      return all;
    }
  }

  /**
   * Passes the place of a license on to the laptop that asked. From then on this laptop opens
   * nothing of it. The same ask again gets the same text.
   *
   * @param ask the ask; both screens were compared
   * @param license which place
   * @return the text to bring to the new laptop
   * @throws Trouble if there is no such place, or no move is left; nothing is changed
   * @throws VaultException if the ask cannot be answered; nothing is changed
   * @throws IOException if the database cannot be written; the place is still here then
   */
  public String pass(MoveAsk ask, LicenseId license) throws Trouble, VaultException, IOException {
    synchronized (opening) {
      for (Move move : ground.store().moves().all()) {
        if (move.askDigest().equals(ask.digest())) {
          return again(move);
        }
      }
      License owned =
          opening.licenses().stream()
              .filter(one -> one.id().equals(license))
              .findFirst()
              .orElseThrow(Moves::noPlace);
      CardPlace place = active(license).orElseThrow(Moves::noPlace);
      MoveChain chain = chain(owned, place);
      if (chain.left() < 1) {
        throw refused(
            "This place was passed on as often as its key letter allows.",
            "Ask your teacher: send the laptop card of the new laptop.");
      }
      String text = chain.with(link(ask, place, chain)).text();
      Move move =
          new Move(
              ask.digest(),
              Role.PASSED,
              Octets.of(ask.toBytes()),
              Octets.of(new byte[0]),
              place.cardDigest().hex(),
              text);
      if (!ground.store().moves().pass(move)) {
        throw noPlace();
      }
      opening.renewSecret();
      return text;
    }
  }

  private MoveLink link(MoveAsk ask, CardPlace place, MoveChain chain)
      throws Trouble, VaultException, IOException {
    try (PlaceKeys keys = places.keysOf(place).orElseThrow(Moves::noPlace);
        PlaceSeed seed = places.seedOf(place).orElseThrow(Moves::noPlace)) {
      return MoveLink.issue(chain.next(), ask, keys, seed);
    }
  }

  private static String again(Move move) throws Trouble {
    if (move.role() != Role.PASSED) {
      throw refused(
          "This laptop made that ask itself.", "Open it on the laptop that has the place.");
    }
    return move.bundle();
  }

  /**
   * Returns the text of a move again, as it is stored.
   *
   * @param license the license whose place was passed on
   * @return the text, or nothing
   * @throws IOException if the database cannot be read
   */
  public Optional<String> passed(LicenseId license) throws IOException {
    for (CardPlace place : places.all()) {
      if (place.license().equals(Optional.of(license)) && place.state() == PlaceState.PASSED) {
        Optional<Move> move = ground.store().moves().of(place.cardDigest(), Role.PASSED);
        if (move.isPresent()) {
          return move.map(Move::bundle);
        }
      }
    }
    return Optional.empty();
  }

  /** Takes a place that another laptop passed on. */
  Dropped take(String text) throws VaultException, IOException {
    synchronized (opening) {
      return arrivals.take(text);
    }
  }

  Optional<CardPlace> active(LicenseId license) throws VaultException, IOException {
    for (CardPlace place : places.all()) {
      if (place.license().equals(Optional.of(license)) && places.opens(place)) {
        return Optional.of(place);
      }
    }
    return Optional.empty();
  }

  /** How a place came to this laptop, as a slip for the teacher tells it. */
  GiveBack.Chain chainOf(CardPlace place) throws VaultException, IOException {
    Octets bytes = place.answer().map(Answer::letter).orElseThrow();
    KeyLetter letter = KeyLetter.verifyAny(bytes.toBytes(), ground.roots().deskKeys());
    Optional<Move> came = ground.store().moves().of(place.cardDigest(), Role.TAKEN);
    LaptopCard card = LaptopCard.verify(place.card().toBytes());
    if (came.isEmpty()) {
      return new GiveBack.Chain(card, letter.digest(), List.of());
    }
    List<MoveLink> links = MoveParts.of(came.get().bundle()).follow(card, letter);
    return new GiveBack.Chain(card, letter.digest(), links);
  }

  /** How a place came to this laptop: by its own letter, or along a chain of links. */
  private MoveChain chain(License license, CardPlace place) throws VaultException, IOException {
    Optional<Move> came = ground.store().moves().of(place.cardDigest(), Role.TAKEN);
    Octets bytes =
        place
            .answer()
            .map(Answer::letter)
            .orElseThrow(() -> new IllegalStateException("no letter"));
    KeyLetter letter = KeyLetter.verifyAny(bytes.toBytes(), ground.roots().deskKeys());
    if (came.isPresent()) {
      return MoveChain.verify(license, MoveParts.of(came.get().bundle()), letter);
    }
    return MoveChain.begin(license, LaptopCard.verify(place.card().toBytes()), letter);
  }

  private static Trouble noPlace() {
    return refused(
        "There is no open place of this license on this laptop.",
        "Look at the licenses on the start page.");
  }

  private static Trouble refused(String happened, String next) {
    return new Trouble(TroubleCode.REFUSED, happened, next);
  }
}
