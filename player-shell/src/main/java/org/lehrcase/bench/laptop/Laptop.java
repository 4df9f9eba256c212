package org.lehrcase.bench.laptop;

import java.io.IOException;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lehrcase.bench.store.LaptopTable;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.device.DeviceSecret;
import org.lehrcase.core.device.LaptopBinding;
import org.lehrcase.core.device.Trait;
import org.lehrcase.core.device.TraitReport;
import org.lehrcase.core.device.Traits;
import org.lehrcase.core.device.Wraps;
import org.lehrcase.core.id.Octets;

/**
 * This laptop's secret: opened with the traits of now, made at the first card, wrapped anew when a
 * trait has changed. Safe for many threads. Stops a copied folder, not the owner of the machine.
 */
public final class Laptop {
  private final LaptopTable table;
  private final Traits traits;
  private final LaptopBinding binding;
  private @Nullable Octets openedFrom;
  private List<DeviceSecret> opened = List.of();

  /** A shut laptop is tried again only when a trait has changed: each try costs a second. */
  private List<Trait> triedWith = List.of();

  /**
   * Works on the stored wraps.
   *
   * @param table where the wraps are kept
   * @param traits the machine
   * @param random makes secrets and salts
   */
  public Laptop(LaptopTable table, Traits traits, SecureRandom random) {
    this(table, traits, new LaptopBinding(random));
  }

  /** Works with another binding, for tests. */
  Laptop(LaptopTable table, Traits traits, LaptopBinding binding) {
    this.table = table;
    this.traits = traits;
    this.binding = binding;
  }

  /**
   * Returns every secret that this machine opens: the current one, and the one before the last
   * change if it is another and its traits are back. The first wraps what is stored from now on.
   *
   * @return the secrets, owned by this object; empty if the machine is not recognised
   * @throws IOException if the database cannot be read
   * @throws VaultException if what is stored is damaged
   */
  public synchronized List<DeviceSecret> secrets() throws IOException, VaultException {
    Optional<Octets> stored = table.wraps();
    if (stored.isEmpty()) {
      return List.of();
    }
    boolean tried =
        Objects.equals(stored.get(), openedFrom)
            && (!opened.isEmpty() || triedWith.equals(traits.read()));
    if (!tried) {
      openAll(stored.get());
    }
    return opened;
  }

  private void openAll(Octets stored) throws IOException, VaultException {
    triedWith = traits.read();
    List<DeviceSecret> secrets = new ArrayList<>();
    Wraps wraps = Wraps.parse(stored.toBytes());
    Optional<DeviceSecret> current = binding.open(wraps, traits);
    openedFrom = stored;
    if (current.isPresent()) {
      secrets.add(current.get());
      rewrap(current.get(), wraps);
    }
    Optional<Octets> previous = table.previous();
    if (previous.isPresent()) {
      binding
          .open(Wraps.parse(previous.get().toBytes()), traits)
          .filter(secret -> secrets.stream().noneMatch(secret::sameAs))
          .ifPresent(secrets::add);
    }
    opened = List.copyOf(secrets);
  }

  private void rewrap(DeviceSecret secret, Wraps wraps) throws IOException {
    Optional<Wraps> changed = binding.rewrapIfChanged(secret, wraps, traits);
    if (changed.isPresent()) {
      Octets fresh = Octets.of(changed.get().toBytes());
      table.keep(fresh);
      openedFrom = fresh;
    }
  }

  /**
   * Returns the secret under which new things are wrapped, and makes one if this machine has none
   * or is no longer recognised. What an earlier secret wrapped stays where it is.
   *
   * @return the secret, owned by this object
   * @throws Trouble if the machine tells too little about itself
   * @throws IOException if the database cannot be written
   * @throws VaultException if what is stored is damaged
   */
  public synchronized DeviceSecret secretForNewCard() throws Trouble, IOException, VaultException {
    List<DeviceSecret> known = secrets();
    if (!known.isEmpty()) {
      return known.get(0);
    }
    LaptopBinding.Bound bound = binding.create(traits).orElseThrow(Laptop::tellsTooLittle);
    Octets fresh = Octets.of(bound.wraps().toBytes());
    table.keep(fresh);
    openedFrom = fresh;
    opened = List.of(bound.secret());
    return bound.secret();
  }

  /**
   * Draws another secret for this machine; nothing is stored.
   *
   * @return the secret with its wraps; empty if the machine tells too little about itself
   */
  public synchronized Optional<LaptopBinding.Bound> another() {
    return binding.create(traits);
  }

  /**
   * Takes a secret whose wraps were stored in place of all earlier ones.
   *
   * @param stored from {@link #another}
   */
  public synchronized void adopt(LaptopBinding.Bound stored) {
    openedFrom = Octets.of(stored.wraps().toBytes());
    opened = List.of(stored.secret());
  }

  private static Trouble tellsTooLittle() {
    return new Trouble(
        TroubleCode.SHUT,
        "This machine tells too little about itself to be recognised again.",
        "Use another laptop, or start Lehrcase outside the virtual machine or container.");
  }

  /**
   * Compares the machine with what is bound.
   *
   * @return kinds that are the same, changed and absent; empty before the first card
   * @throws IOException if the database cannot be read
   * @throws VaultException if what is stored is damaged
   */
  public synchronized Optional<TraitReport> report() throws IOException, VaultException {
    Optional<Octets> stored = table.wraps();
    return stored.isEmpty()
        ? Optional.empty()
        : Optional.of(binding.compare(Wraps.parse(stored.get().toBytes()), traits));
  }
}
