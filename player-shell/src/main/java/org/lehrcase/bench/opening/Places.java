package org.lehrcase.bench.opening;

import java.io.IOException;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.bench.laptop.Laptop;
import org.lehrcase.bench.store.PlaceState;
import org.lehrcase.bench.store.PlaceTable;
import org.lehrcase.bench.store.PlaceTable.Answer;
import org.lehrcase.bench.store.PlaceTable.CardPlace;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.device.DeviceSecret;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.license.KeyLetter;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.PlaceSeed;

/**
 * This laptop's places: makes cards, takes letters, and lends the keys. Every change is one
 * transaction, and what leaves the laptop is made from what is stored.
 */
final class Places {
  private final PlaceTable table;
  private final Laptop laptop;
  private final SecureRandom random;

  Places(PlaceTable table, Laptop laptop, SecureRandom random) {
    this.table = table;
    this.laptop = laptop;
    this.random = random;
  }

  List<CardPlace> all() throws IOException {
    return table.all();
  }

  /**
   * Returns the card to send: the one that waits for its letter if this machine can still open its
   * seed, otherwise a new one. A card for a license whose place this machine can no longer open
   * names that place, so that the desk retires it.
   */
  LaptopCard card(Optional<LicenseId> license) throws Trouble, IOException, VaultException {
    for (CardPlace place : table.all()) {
      if (place.state() == PlaceState.ASKED
          && place.license().equals(license)
          && seedOf(place).isPresent()) {
        return LaptopCard.verify(place.card().toBytes());
      }
    }
    return newCard(about(license));
  }

  private LaptopCard.About about(Optional<LicenseId> license) throws IOException, VaultException {
    for (CardPlace place : table.all()) {
      boolean same = license.isPresent() && place.license().equals(license);
      boolean here = place.state() != PlaceState.PASSED;
      if (same && here && place.answer().isPresent() && keysOf(place).isEmpty()) {
        return LaptopCard.About.replacing(license.get(), place.answer().get().place());
      }
    }
    return license.map(LaptopCard.About::license).orElse(LaptopCard.About.NOTHING);
  }

  private LaptopCard newCard(LaptopCard.About about) throws Trouble, IOException, VaultException {
    DeviceSecret secret = laptop.secretForNewCard();
    try (PlaceSeed seed = PlaceSeed.random(random)) {
      LaptopCard card = LaptopCard.make(seed, about);
      table.ask(
          new CardPlace(
              card.digest(),
              PlaceState.ASKED,
              about.license(),
              secret.wrapSeed(card.digest(), seed),
              Octets.of(card.toBytes()),
              Optional.empty()));
      return card;
    }
  }

  /** Finds the card that a letter answers. */
  Optional<CardPlace> answeredBy(KeyLetter letter) throws IOException {
    return table.all().stream()
        .filter(place -> place.cardDigest().equals(letter.cardDigest()))
        .findFirst();
  }

  /** Opens a verified letter with the seed of its card; the caller owns the keys. */
  PlaceKeys open(CardPlace place, KeyLetter letter) throws IOException, VaultException {
    LaptopCard card = LaptopCard.verify(place.card().toBytes());
    try (PlaceSeed seed =
        seedOf(place)
            .orElseThrow(
                () ->
                    new VaultException.WrongLaptop(
                        "the key letter fits a card of this folder, but this machine is not the"
                            + " one that made the card"))) {
      return letter.open(card, seed);
    }
  }

  void activate(CardPlace place, Optional<LicenseId> license, KeyLetter letter, PlaceKeys keys)
      throws IOException, VaultException {
    for (DeviceSecret secret : laptop.secrets()) {
      table.activate(
          place.cardDigest(),
          license,
          new Answer(
              letter.grant().place(),
              keys.licenseKey().generation(),
              Octets.of(letter.toBytes()),
              secret.wrapKeys(place.cardDigest(), keys)));
      return;
    }
    throw new VaultException.WrongLaptop("this machine is not recognised");
  }

  /** Stores newer keys of a place after a loss elsewhere, beside the same letter. */
  void keepNewer(CardPlace place, PlaceKeys newer) throws IOException, VaultException {
    Optional<Answer> answer = place.answer();
    for (DeviceSecret secret : laptop.secrets()) {
      if (answer.isPresent()) {
        table.activate(
            place.cardDigest(),
            place.license(),
            new Answer(
                answer.get().place(),
                newer.licenseKey().generation(),
                answer.get().letter(),
                secret.wrapKeys(place.cardDigest(), newer)));
        return;
      }
    }
  }

  /** Ties a place to the license that its keys turned out to belong to. */
  void tie(CardPlace place, LicenseId license) throws IOException {
    Optional<Answer> answer = place.answer();
    if (answer.isPresent()) {
      table.activate(place.cardDigest(), Optional.of(license), answer.get());
    }
  }

  /**
   * Returns every active place whose keys this machine opens; the caller owns the keys. The machine
   * is looked at even while every card still waits: two small repairs, one after the other, must
   * not add up to a strange machine before the letter comes.
   */
  List<OpenPlace> open() throws IOException, VaultException {
    laptop.secrets();
    List<OpenPlace> open = new ArrayList<>();
    for (CardPlace place : table.all()) {
      keysOf(place).ifPresent(keys -> open.add(new OpenPlace(place, keys)));
    }
    return open;
  }

  /** A place with its keys. */
  record OpenPlace(CardPlace place, PlaceKeys keys) implements AutoCloseable {
    @Override
    public void close() {
      keys.close();
    }
  }

  /** Says whether this machine still opens the keys of a place. */
  boolean opens(CardPlace place) throws IOException, VaultException {
    Optional<PlaceKeys> keys = keysOf(place);
    keys.ifPresent(PlaceKeys::close);
    return keys.isPresent();
  }

  /** Opens the keys of a place, if they are still here; the caller owns them. */
  Optional<PlaceKeys> keysOf(CardPlace place) throws IOException, VaultException {
    Optional<Answer> answer = place.answer();
    if (place.state() == PlaceState.PASSED || answer.isEmpty()) {
      return Optional.empty();
    }
    for (DeviceSecret secret : laptop.secrets()) {
      try {
        return Optional.of(
            secret.openKeys(place.cardDigest(), answer.get().generation(), answer.get().secret()));
      } catch (VaultException.Tampered e) {
        continue; // wrapped under another secret of this laptop
      }
    }
    return Optional.empty();
  }

  /** Opens the seed of a place, if it is still here; the caller owns it. */
  Optional<PlaceSeed> seedOf(CardPlace place) throws IOException, VaultException {
    return seedOf(place.cardDigest(), place.seed());
  }

  /** Opens a wrapped seed; the caller owns it. */
  Optional<PlaceSeed> seedOf(Octets digest, Octets wrapped) throws IOException, VaultException {
    for (DeviceSecret secret : laptop.secrets()) {
      try {
        return Optional.of(secret.openSeed(digest, wrapped));
      } catch (VaultException.Tampered e) {
        continue; // wrapped under another secret of this laptop
      }
    }
    return Optional.empty();
  }
}
