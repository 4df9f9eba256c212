package org.lehrcase.bench.opening;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.bench.laptop.Laptop;
import org.lehrcase.bench.store.MoveTable.Move;
import org.lehrcase.bench.store.MoveTable.Role;
import org.lehrcase.bench.store.PlaceState;
import org.lehrcase.bench.store.PlaceTable.CardPlace;
import org.lehrcase.bench.store.PlaceTable.Wrapped;
import org.lehrcase.bench.store.StudyStore;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.device.DeviceSecret;
import org.lehrcase.core.device.LaptopBinding;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.license.PlaceSeed;

/**
 * Gives this laptop another secret after it gave a place up, so that what the disk still holds of
 * the old place is wrapped under a secret that is gone. What stays is wrapped anew in the same
 * step. It is due until it was done: a power cut before it leaves it due.
 */
final class SecretRenewal {
  private final StudyStore store;
  private final Laptop laptop;
  private final Places places;

  SecretRenewal(StudyStore store, Laptop laptop, Places places) {
    this.store = store;
    this.laptop = laptop;
    this.places = places;
  }

  private long gone() throws IOException {
    return places.all().stream().filter(place -> place.state() == PlaceState.PASSED).count();
  }

  /**
   * Renews the secret if that is due. A machine that does not open all that waits or is active (a
   * shut place may come back with its old traits) keeps its secret until it does.
   */
  void run() throws VaultException, IOException {
    long gone = gone();
    if (gone <= store.laptop().renewedAfter() || laptop.secrets().isEmpty()) {
      return;
    }
    Optional<LaptopBinding.Bound> fresh = laptop.another();
    Optional<List<Wrapped>> anew =
        fresh.isEmpty() ? Optional.empty() : wrappedAnew(fresh.get().secret());
    if (anew.isPresent()) {
      Octets wraps = Octets.of(fresh.get().wraps().toBytes());
      store.inTransaction(
          () -> {
            for (Wrapped one : anew.get()) {
              store.places().wrapAnew(one);
            }
            store.laptop().replace(wraps, gone);
            return true;
          });
      laptop.adopt(fresh.get());
    }
  }

  /** Wraps everything that is still in use; empty if something does not open now. */
  private Optional<List<Wrapped>> wrappedAnew(DeviceSecret secret)
      throws VaultException, IOException {
    List<Wrapped> anew = new ArrayList<>();
    for (CardPlace place : places.all()) {
      if (place.state() != PlaceState.PASSED) {
        Optional<Wrapped> one = place(place, secret);
        if (one.isEmpty()) {
          return Optional.empty();
        }
        anew.add(one.get());
      }
    }
    for (Move move : store.moves().all()) {
      if (move.role() == Role.ASKED) {
        Optional<PlaceSeed> seed = places.seedOf(move.askDigest(), move.seed());
        if (seed.isEmpty()) {
          return Optional.empty();
        }
        try (PlaceSeed open = seed.get()) {
          Octets wrapped = secret.wrapSeed(move.askDigest(), open);
          anew.add(new Wrapped(move.askDigest(), wrapped, Optional.empty()));
        }
      }
    }
    return Optional.of(anew);
  }

  private Optional<Wrapped> place(CardPlace place, DeviceSecret secret)
      throws VaultException, IOException {
    Optional<PlaceSeed> seed = places.seedOf(place);
    Optional<PlaceKeys> keys = places.keysOf(place);
    if (seed.isEmpty() || place.answer().isPresent() && keys.isEmpty()) {
      return Optional.empty();
    }
    try (PlaceSeed open = seed.get()) {
      Octets wrappedSeed = secret.wrapSeed(place.cardDigest(), open);
      Optional<Octets> wrappedKeys = keys.map(k -> secret.wrapKeys(place.cardDigest(), k));
      return Optional.of(new Wrapped(place.cardDigest(), wrappedSeed, wrappedKeys));
    } finally {
      keys.ifPresent(PlaceKeys::close);
    }
  }
}
