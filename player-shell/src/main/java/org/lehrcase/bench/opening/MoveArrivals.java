package org.lehrcase.bench.opening;

import java.io.IOException;
import java.util.Optional;
import org.lehrcase.bench.opening.Dropped.Kind;
import org.lehrcase.bench.opening.Dropped.Outcome;
import org.lehrcase.bench.store.MoveTable.Move;
import org.lehrcase.bench.store.MoveTable.Role;
import org.lehrcase.bench.store.PlaceState;
import org.lehrcase.bench.store.PlaceTable.Answer;
import org.lehrcase.bench.store.PlaceTable.CardPlace;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.device.DeviceSecret;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.license.KeyLetter;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.MoveAsk;
import org.lehrcase.core.license.PlaceSeed;

/** The side of a move that gets the place: its asks, and what answers them. */
final class MoveArrivals {
  private final Opening opening;
  private final Moves.Ground ground;

  MoveArrivals(Opening opening, Moves.Ground ground) {
    this.opening = opening;
    this.ground = ground;
  }

  /** Returns the ask that waits if this machine can still open its seed, otherwise a new one. */
  MoveAsk ask() throws Trouble, VaultException, IOException {
    for (Move move : ground.store().moves().all()) {
      if (move.role() == Role.ASKED && seedOf(move).isPresent()) {
        return MoveAsk.verify(move.ask().toBytes());
      }
    }
    DeviceSecret secret = ground.laptop().secretForNewCard();
    try (PlaceSeed seed = PlaceSeed.random(ground.random())) {
      MoveAsk ask = MoveAsk.make(seed);
      ground
          .store()
          .moves()
          .ask(
              new Move(
                  ask.digest(),
                  Role.ASKED,
                  Octets.of(ask.toBytes()),
                  secret.wrapSeed(ask.digest(), seed),
                  "",
                  ""));
      return ask;
    }
  }

  /** Takes a place that another laptop passed on. */
  Dropped take(String text) throws VaultException, IOException {
    MoveParts parts = MoveParts.of(text);
    opening.acceptLicense(parts.license());
    License license =
        opening.licenses().stream()
            .filter(one -> Octets.of(one.toBytes()).equals(Octets.of(parts.license())))
            .findFirst()
            .orElseThrow(() -> new VaultException.Tampered("a newer license is here already"));
    KeyLetter letter = KeyLetter.verifyAny(parts.letter(), ground.roots().deskKeys());
    MoveChain chain = MoveChain.verify(license, parts, letter);
    for (Move move : ground.store().moves().all()) {
      if (move.role() != Role.PASSED && isFor(chain, move)) {
        return move.role() == Role.TAKEN
            ? new Dropped(Kind.LINK, Outcome.KNOWN, "This place is here already.", "")
            : arrive(move, chain);
      }
    }
    throw new VaultException.WrongLaptop("this move answers the ask of another laptop");
  }

  private static boolean isFor(MoveChain chain, Move move) throws VaultException {
    return chain.to().equals(MoveAsk.verify(move.ask().toBytes()).verifyKey());
  }

  private Dropped arrive(Move move, MoveChain chain) throws VaultException, IOException {
    DeviceSecret secret =
        ground.laptop().secrets().stream()
            .findFirst()
            .orElseThrow(() -> new VaultException.WrongLaptop("this machine is not recognised"));
    try (PlaceSeed seed =
            seedOf(move)
                .orElseThrow(
                    () -> new VaultException.WrongLaptop("this machine did not make that ask"));
        PlaceKeys keys = chain.open(seed)) {
      Answer answer =
          new Answer(
              chain.letter().grant().place(),
              keys.licenseKey().generation(),
              Octets.of(chain.letter().toBytes()),
              secret.wrapKeys(move.askDigest(), keys));
      CardPlace place =
          new CardPlace(
              move.askDigest(),
              PlaceState.ACTIVE,
              Optional.of(chain.license().id()),
              secret.wrapSeed(move.askDigest(), seed),
              Octets.of(chain.card().toBytes()),
              Optional.of(answer));
      Move taken =
          new Move(
              move.askDigest(),
              Role.TAKEN,
              move.ask(),
              move.seed(),
              move.askDigest().hex(),
              chain.text());
      ground.store().moves().take(taken, place);
    }
    return new Dropped(
        Kind.LINK, Outcome.ACCEPTED, "The place is on this laptop now.", "Your courses open.");
  }

  private Optional<PlaceSeed> seedOf(Move move) throws VaultException, IOException {
    for (DeviceSecret secret : ground.laptop().secrets()) {
      try {
        return Optional.of(secret.openSeed(move.askDigest(), move.seed()));
      } catch (VaultException.Tampered e) {
        continue; // wrapped under another secret of this laptop
      }
    }
    return Optional.empty();
  }
}
