package org.lehrcase.bench.laptop;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.lehrcase.core.device.Trait;
import org.lehrcase.core.device.TraitKind;

/**
 * What Linux tells about the machine without special rights and without a library: the
 * installation's id, the root volume, and the built-in network cards. What cannot be read is left
 * out.
 */
final class LinuxTraits {
  private static final int MAX_BYTES = 256;
  private static final String PERMANENT = "0";
  private static final int STAT_SECONDS = 3;

  private final Path root;

  /** Reads below a folder that stands for the root of the file system. */
  LinuxTraits(Path root) {
    this.root = root;
  }

  List<Trait> read() {
    List<Trait> traits = new ArrayList<>();
    text("etc/machine-id").ifPresent(id -> traits.add(new Trait(TraitKind.INSTALLATION, id)));
    networkCards().ifPresent(cards -> traits.add(new Trait(TraitKind.NETWORK, cards)));
    return traits;
  }

  /** The permanent addresses of cards that are neither virtual nor plugged in by USB. */
  private Optional<String> networkCards() {
    List<String> addresses = new ArrayList<>();
    try (DirectoryStream<Path> cards = Files.newDirectoryStream(root.resolve("sys/class/net"))) {
      for (Path card : cards) {
        if (isBuiltIn(card)) {
          text(card.resolve("address")).ifPresent(addresses::add);
        }
      }
    } catch (IOException e) {
      return Optional.empty();
    }
    addresses.sort(null);
    return addresses.isEmpty() ? Optional.empty() : Optional.of(String.join("", addresses));
  }

  private boolean isBuiltIn(Path card) throws IOException {
    Path device = card.resolve("device");
    if (!Files.exists(device)) {
      return false;
    }
    String where = device.toRealPath().toString().toLowerCase(Locale.ROOT);
    return !where.contains("/usb")
        && !where.contains("/virtual/")
        && text(card.resolve("addr_assign_type")).equals(Optional.of(PERMANENT))
        && isOwnAddress(text(card.resolve("address")).orElse(""));
  }

  /** A group or locally set address is not a card's own (IEEE 802, section 8.2). */
  private static boolean isOwnAddress(String address) {
    return address.matches("[0-9a-fA-F][048cC](:[0-9a-fA-F]{2}){5}");
  }

  private Optional<String> text(String below) {
    return text(root.resolve(below));
  }

  private static Optional<String> text(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      String text = new String(in.readNBytes(MAX_BYTES), StandardCharsets.US_ASCII).trim();
      return text.isEmpty() ? Optional.empty() : Optional.of(text);
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /** The file system's own id, which ext4 and others draw from the volume's UUID. */
  static Optional<String> fileSystemId() {
    try {
      Process stat =
          new ProcessBuilder("/usr/bin/stat", "-f", "-c", "%i", "/")
              .redirectErrorStream(true)
              .start();
      stat.getOutputStream().close();
      try (InputStream in = stat.getInputStream()) {
        String id = new String(in.readNBytes(MAX_BYTES), StandardCharsets.US_ASCII).trim();
        boolean ended = stat.waitFor(STAT_SECONDS, TimeUnit.SECONDS);
        return ended && stat.exitValue() == 0 && id.matches("[0-9a-f]{8,16}")
            ? Optional.of(id)
            : Optional.empty();
      }
    } catch (IOException e) {
      return Optional.empty();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    }
  }
}
