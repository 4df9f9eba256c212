package org.lehrcase.bench.laptop;

import com.sun.jna.Platform;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lehrcase.core.device.Trait;
import org.lehrcase.core.device.TraitKind;
import org.lehrcase.core.device.Traits;
import oshi.SystemInfo;
import oshi.hardware.HWDiskStore;
import oshi.hardware.HardwareAbstractionLayer;
import oshi.hardware.NetworkIF;
import oshi.software.os.OSFileStore;

/**
 * The traits of the machine this runs on. Linux: local secret, installation, root volume, system
 * disk, built-in network cards. Windows and macOS: local secret, main board, root volume, system
 * disk, network cards. Screens, processor and memory are left out on purpose: people change them.
 * Read once; safe for many threads.
 */
public final class MachineTraits implements Traits {
  private final LocalSecret localSecret;
  private @Nullable List<Trait> machine;

  /**
   * Reads this machine.
   *
   * @param localSecret the trait that the program itself keeps
   */
  public MachineTraits(LocalSecret localSecret) {
    this.localSecret = localSecret;
  }

  @Override
  public synchronized List<Trait> read() {
    List<Trait> known = machine;
    if (known == null) {
      known = List.copyOf(readMachine());
      machine = known;
    }
    List<Trait> traits = new ArrayList<>();
    localSecret.read().ifPresent(secret -> traits.add(new Trait(TraitKind.LOCAL_SECRET, secret)));
    traits.addAll(known);
    return List.copyOf(traits);
  }

  private static List<Trait> readMachine() {
    HardwareAbstractionLayer hardware = new SystemInfo().getHardware();
    List<Trait> traits = new ArrayList<>();
    if (Platform.isLinux()) {
      traits.addAll(new LinuxTraits(Path.of("/")).read());
    } else {
      add(traits, TraitKind.HARDWARE, hardware.getComputerSystem().getHardwareUUID());
      addresses(hardware).ifPresent(cards -> add(traits, TraitKind.NETWORK, cards));
    }
    OSFileStore system = systemVolume();
    if (system != null) {
      String uuid = system.getUUID();
      if (uuid != null && !uuid.isBlank()) {
        add(traits, TraitKind.ROOT_VOLUME, uuid);
      } else if (Platform.isLinux()) {
        LinuxTraits.fileSystemId().ifPresent(id -> add(traits, TraitKind.ROOT_VOLUME, id));
      }
      systemDisk(hardware, system.getMount()).ifPresent(s -> add(traits, TraitKind.SYSTEM_DISK, s));
    }
    return traits;
  }

  private static void add(List<Trait> traits, TraitKind kind, @Nullable String value) {
    if (value != null && !value.isBlank()) {
      traits.add(new Trait(kind, value));
    }
  }

  private static @Nullable OSFileStore systemVolume() {
    List<OSFileStore> stores =
        new SystemInfo().getOperatingSystem().getFileSystem().getFileStores();
    for (OSFileStore store : stores) {
      if (store.getMount().equals("/") || store.getMount().startsWith("C:")) {
        return store;
      }
    }
    return null;
  }

  /** The serial of the disk that holds the system volume; of the only disk if that is not told. */
  private static Optional<String> systemDisk(HardwareAbstractionLayer hardware, String mount) {
    List<HWDiskStore> disks =
        hardware.getDiskStores().stream().filter(disk -> !isExtra(disk)).toList();
    Optional<HWDiskStore> holder =
        disks.stream()
            .filter(disk -> disk.getPartitions().stream().anyMatch(p -> isAt(p, mount)))
            .findFirst();
    if (holder.isEmpty() && disks.size() == 1) {
      holder = Optional.of(disks.get(0));
    }
    return holder.map(HWDiskStore::getSerial).filter(s -> !s.isBlank());
  }

  private static boolean isAt(oshi.hardware.HWPartition partition, String mount) {
    return partition.getMountPoint().equals(mount)
        || (mount.startsWith("C:") && partition.getMountPoint().startsWith("C:"));
  }

  private static boolean isExtra(HWDiskStore disk) {
    String name = disk.getName();
    return name.contains("loop") || name.contains("zram") || name.contains("/ram");
  }

  private static Optional<String> addresses(HardwareAbstractionLayer hardware) {
    List<String> own =
        hardware.getNetworkIFs(false).stream()
            .filter(card -> !card.isKnownVmMacAddr())
            .map(NetworkIF::getMacaddr)
            .filter(mac -> mac.matches("[0-9a-fA-F][048cC](:[0-9a-fA-F]{2}){5}"))
            .sorted()
            .toList();
    return own.isEmpty() ? Optional.empty() : Optional.of(String.join("", own));
  }
}
