package org.lehrcase.core.device;

import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.KeyLabel;
import org.lehrcase.core.primitive.Argon2id;
import org.lehrcase.core.primitive.KeyWrap;
import org.lehrcase.core.primitive.SecretBytes;

/**
 * Binds a laptop's secret to the machine: wrapped once under every three of its five traits, so
 * that two traits may change or be absent. Stops a copied folder; does not stop the owner of the
 * machine, who can read its traits. Safe for many threads.
 */
public final class LaptopBinding {
  private final Argon2id.Cost cost;
  private final SecureRandom random;

  /**
   * Binds at the cost of the format.
   *
   * @param random the source of secrets and salts
   */
  public LaptopBinding(SecureRandom random) {
    this(random, Argon2id.Cost.TRAITS);
  }

  /** Binds at another cost, for tests. */
  LaptopBinding(SecureRandom random, Argon2id.Cost cost) {
    this.cost = cost;
    this.random = random;
  }

  /**
   * A laptop's secret and how it is stored.
   *
   * @param secret the secret
   * @param wraps what to store
   */
  public record Bound(DeviceSecret secret, Wraps wraps) {}

  /**
   * Draws a new secret and binds it.
   *
   * @param traits the machine
   * @return the secret and its wraps; empty if the machine tells too little about itself
   */
  public Optional<Bound> create(Traits traits) {
    DeviceSecret secret = DeviceSecret.random(random);
    return wrap(secret, traits).map(wraps -> new Bound(secret, wraps));
  }

  /**
   * Opens the secret with the traits of now.
   *
   * @param wraps what was stored
   * @param traits the machine
   * @return the secret; empty if fewer than three traits are as they were
   */
  public Optional<DeviceSecret> open(Wraps wraps, Traits traits) {
    Map<TraitKind, Trait> now = byKind(traits);
    List<TraitKind> kinds = wraps.kinds();
    for (int subset = 0; subset < Wraps.SUBSETS.length; subset++) {
      Optional<DeviceSecret> secret = open(wraps, subset, kinds, now);
      if (secret.isPresent()) {
        return secret;
      }
    }
    return Optional.empty();
  }

  /**
   * Compares the traits of now with those that are bound, by opening further wraps.
   *
   * @param wraps what was stored
   * @param traits the machine
   * @return the comparison; a kind that a full binding does not use is left out
   */
  public TraitReport compare(Wraps wraps, Traits traits) {
    Map<TraitKind, Trait> now = byKind(traits);
    List<TraitKind> kinds = wraps.kinds();
    List<TraitKind> same = sameKinds(wraps, kinds, now);
    List<TraitKind> changed = new ArrayList<>(now.keySet());
    if (kinds.size() == TraitRules.MAX_TRAITS) {
      changed.retainAll(kinds);
    }
    changed.removeAll(same);
    List<TraitKind> absent = new ArrayList<>(kinds);
    absent.removeAll(now.keySet());
    return new TraitReport(same, changed, absent);
  }

  /**
   * Wraps the secret anew, under a fresh salt, if a trait has changed. A trait that is only absent
   * is no reason: it may come back. The caller stores the new wraps and keeps the previous ones
   * beside them.
   *
   * @param secret what {@link #open} returned
   * @param wraps what was stored
   * @param traits the machine
   * @return new wraps to store; empty if none are needed or the machine tells too little now
   */
  public Optional<Wraps> rewrapIfChanged(DeviceSecret secret, Wraps wraps, Traits traits) {
    TraitReport report = compare(wraps, traits);
    return report.changed().isEmpty() ? Optional.empty() : wrap(secret, traits);
  }

  private Optional<Wraps> wrap(DeviceSecret secret, Traits traits) {
    List<Trait> chosen = TraitRules.choose(traits.read());
    Octets salt = Octets.random(random, Wraps.SALT_BYTES);
    List<Octets> rows = new ArrayList<>();
    int opening = 0;
    for (int subset = 0; subset < Wraps.SUBSETS.length; subset++) {
      Optional<Octets> row = row(secret, salt, chosen, subset);
      opening += row.isPresent() ? 1 : 0;
      rows.add(row.orElseGet(() -> Octets.random(random, Wraps.ROW_BYTES)));
    }
    return opening == 0 ? Optional.empty() : Optional.of(Wraps.of(salt, chosen, rows));
  }

  private Optional<Octets> row(DeviceSecret secret, Octets salt, List<Trait> chosen, int subset) {
    int[] slots = Wraps.SUBSETS[subset];
    if (slots[2] >= chosen.size()) {
      return Optional.empty();
    }
    Trait first = chosen.get(slots[0]);
    Trait second = chosen.get(slots[1]);
    Trait third = chosen.get(slots[2]);
    if (!TraitRules.isEnough(first, second, third)) {
      return Optional.empty();
    }
    try (SecretBytes kek = kek(salt, subset, List.of(first, second, third));
        SecretBytes clear = secret.secret()) {
      return Optional.of(Octets.of(kek.use(key -> clear.use(raw -> KeyWrap.wrap(key, raw)))));
    }
  }

  private Optional<DeviceSecret> open(
      Wraps wraps, int subset, List<TraitKind> kinds, Map<TraitKind, Trait> now) {
    List<Trait> three = new ArrayList<>();
    for (int slot : Wraps.SUBSETS[subset]) {
      Optional<Trait> trait =
          slot < kinds.size() ? Optional.ofNullable(now.get(kinds.get(slot))) : Optional.empty();
      if (trait.isEmpty()) {
        return Optional.empty();
      }
      three.add(trait.get());
    }
    try (SecretBytes kek = kek(wraps.salt(), subset, three)) {
      return unwrap(kek, wraps.row(subset));
    }
  }

  private static Optional<DeviceSecret> unwrap(SecretBytes kek, Octets row) {
    byte[] key = kek.use(byte[]::clone);
    try {
      return Optional.of(new DeviceSecret(SecretBytes.taking(KeyWrap.unwrap(key, row.toBytes()))));
    } catch (VaultException.Tampered e) {
      return Optional.empty();
    } finally {
      Arrays.fill(key, (byte) 0);
    }
  }

  /** Opens wraps until every trait that can be read is settled: three if all are the same. */
  private List<TraitKind> sameKinds(Wraps wraps, List<TraitKind> kinds, Map<TraitKind, Trait> now) {
    boolean[] same = new boolean[TraitRules.MAX_TRAITS];
    for (int subset = 0; subset < Wraps.SUBSETS.length; subset++) {
      if (tellsSomething(same, subset) && open(wraps, subset, kinds, now).isPresent()) {
        for (int slot : Wraps.SUBSETS[subset]) {
          same[slot] = true;
        }
      }
    }
    List<TraitKind> found = new ArrayList<>();
    for (int slot = 0; slot < kinds.size(); slot++) {
      if (same[slot]) {
        found.add(kinds.get(slot));
      }
    }
    return found;
  }

  private static boolean tellsSomething(boolean[] same, int subset) {
    int[] slots = Wraps.SUBSETS[subset];
    return !(same[slots[0]] && same[slots[1]] && same[slots[2]]);
  }

  /** {@code Argon2id(t_a ‖ t_b ‖ t_c, salt ‖ T)} with T the index of the three, one byte. */
  private SecretBytes kek(Octets salt, int subset, List<Trait> three) {
    byte[] saltAndSubset = Arrays.copyOf(salt.toBytes(), Wraps.SALT_BYTES + 1);
    saltAndSubset[Wraps.SALT_BYTES] = (byte) subset;
    try (SecretBytes joined =
        stretched(salt, three.get(0))
            .concat(stretched(salt, three.get(1)))
            .concat(stretched(salt, three.get(2)))) {
      return joined.use(raw -> Argon2id.derive(raw, saltAndSubset, cost, DeviceSecret.BYTES));
    }
  }

  /** {@code t = K(trait, "trait", kind 1, salt 16)}: one length for every trait. */
  private static SecretBytes stretched(Octets salt, Trait trait) {
    byte[] kind = {(byte) trait.kind().code()};
    try (SecretBytes value = SecretBytes.taking(trait.bytes())) {
      return KeyLabel.TRAIT.derive(value, kind, salt.toBytes());
    }
  }

  private static Map<TraitKind, Trait> byKind(Traits traits) {
    Map<TraitKind, Trait> byKind = new EnumMap<>(TraitKind.class);
    TraitRules.usable(traits.read()).forEach(trait -> byKind.put(trait.kind(), trait));
    return byKind;
  }
}
