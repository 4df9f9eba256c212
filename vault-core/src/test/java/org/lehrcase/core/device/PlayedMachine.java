package org.lehrcase.core.device;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** A machine for tests, whose traits change and vanish at will. */
final class PlayedMachine implements Traits {
  static final List<TraitKind> FIVE =
      List.of(
          TraitKind.LOCAL_SECRET,
          TraitKind.INSTALLATION,
          TraitKind.ROOT_VOLUME,
          TraitKind.SYSTEM_DISK,
          TraitKind.NETWORK);

  private final Map<TraitKind, String> values = new EnumMap<>(TraitKind.class);

  static PlayedMachine typical() {
    PlayedMachine machine = new PlayedMachine();
    machine.set(TraitKind.LOCAL_SECRET, "5d1c7f0e9ab34c28d6e1f4a79c02b853");
    machine.set(TraitKind.INSTALLATION, "c41f8ad2607e4b95b3d0126fe8a97c54");
    machine.set(TraitKind.ROOT_VOLUME, "7e2a91d4-0c5b-4f68-a3b7-d91e5f20c846");
    machine.set(TraitKind.SYSTEM_DISK, "S3Z9NB0K714283Q");
    machine.set(TraitKind.NETWORK, "3c:7c:3f:1a:92:e4");
    return machine;
  }

  PlayedMachine set(TraitKind kind, String value) {
    values.put(kind, value);
    return this;
  }

  PlayedMachine without(TraitKind kind) {
    values.remove(kind);
    return this;
  }

  /** Changes a trait to another value that may be used. */
  PlayedMachine change(TraitKind kind) {
    String old = values.getOrDefault(kind, "");
    return set(kind, kind == TraitKind.NETWORK ? "3c:7c:3f:5b:08:d6" : "9b4e" + old);
  }

  @Override
  public List<Trait> read() {
    List<Trait> traits = new ArrayList<>();
    values.forEach((kind, value) -> traits.add(new Trait(kind, value)));
    return traits;
  }
}
