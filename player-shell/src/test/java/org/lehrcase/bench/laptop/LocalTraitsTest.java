package org.lehrcase.bench.laptop;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.device.Trait;
import org.lehrcase.core.device.TraitKind;

class LocalTraitsTest {
  @TempDir Path root;

  @Test
  void theLocalSecretIsMadeOnceForItsOwnerOnly() throws Exception {
    LocalSecret secret = new LocalSecret(root.resolve("config"), new SecureRandom());
    assertThat(secret.read()).isEmpty();
    secret.ensure();
    Optional<String> first = secret.read();
    secret.ensure();
    assertThat(first.orElseThrow()).matches("[0-9a-f]{32}");
    assertThat(secret.read()).isEqualTo(first);
    Path file = root.resolve("config/laptop.secret");
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
        .isEqualTo("rw-------");
    assertThat(secret.toString()).doesNotContain(first.orElseThrow());
  }

  @Test
  void aSpoiledOrLinkedSecretIsNoTrait() throws Exception {
    Files.writeString(root.resolve("laptop.secret"), "zzz");
    LocalSecret secret = new LocalSecret(root, new SecureRandom());
    assertThat(secret.read()).isEmpty();
    Files.delete(root.resolve("laptop.secret"));
    Files.writeString(root.resolve("elsewhere"), "ab".repeat(16));
    Files.createSymbolicLink(root.resolve("laptop.secret"), root.resolve("elsewhere"));
    assertThat(secret.read()).isEmpty();
  }

  @Test
  void onlyBuiltInCardsWithAnAddressOfTheirOwnCount() throws Exception {
    card("wlan0", "devices/pci0000:00/wifi", "0", "a4:bb:6d:00:11:22");
    card("eth0", "devices/pci0000:00/lan", "0", "00:1b:21:3c:4d:5e");
    card("usb0", "devices/pci0000:00/usb1/1-1", "0", "00:1b:21:aa:aa:aa");
    card("veth1", "devices/virtual/net/veth1x", "0", "00:1b:21:bb:bb:bb");
    card("rand0", "devices/pci0000:00/rand", "1", "00:1b:21:cc:cc:cc");
    card("local0", "devices/pci0000:00/local", "0", "02:1b:21:dd:dd:dd");
    Files.createDirectories(root.resolve("etc"));
    Files.writeString(root.resolve("etc/machine-id"), "3d1219c7c4c5404aaa1f6d2a48adfda4\n");
    List<Trait> traits = new LinuxTraits(root).read();
    assertThat(traits)
        .containsExactly(
            new Trait(TraitKind.INSTALLATION, "3d1219c7c4c5404aaa1f6d2a48adfda4"),
            new Trait(TraitKind.NETWORK, "00:1b:21:3c:4d:5ea4:bb:6d:00:11:22"));
  }

  @Test
  void aMachineThatTellsNothingHasNoTraits() {
    assertThat(new LinuxTraits(root).read()).isEmpty();
  }

  @Test
  void thisMachineIsReadAndNeverPrinted() throws Exception {
    LocalSecret secret = new LocalSecret(root, new SecureRandom());
    secret.ensure();
    List<Trait> traits = new MachineTraits(secret).read();
    assertThat(traits).extracting(Trait::kind).contains(TraitKind.LOCAL_SECRET);
    assertThat(traits).extracting(Trait::kind).doesNotHaveDuplicates();
    assertThat(traits.toString()).doesNotContain(secret.read().orElseThrow());
  }

  private void card(String name, String device, String assigned, String address) throws Exception {
    Path real = Files.createDirectories(root.resolve("sys").resolve(device));
    Path card = Files.createDirectories(root.resolve("sys/class/net").resolve(name));
    Files.createSymbolicLink(card.resolve("device"), real);
    Files.writeString(card.resolve("addr_assign_type"), assigned + "\n");
    Files.writeString(card.resolve("address"), address + "\n");
  }
}
