package org.lehrcase.desk.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.PartRef;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PartAddress;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.keys.RootSecret;
import org.lehrcase.desk.pack.KnownPart.KnownFile;

class PackMemoryTest {
  @TempDir Path folder;
  private final SecureRandom random = new SecureRandom();
  private final MemoryKey key = key();
  private Path file;

  @BeforeEach
  void name() {
    file = folder.resolve("memory.parts");
  }

  @Test
  void whatWasNotedComesBackWithItsKey() throws Exception {
    PackMemory memory = PackMemory.read(file, key);
    assertThat(memory.isEmpty()).isTrue();
    KnownPart first = part("Kelp, fish & coral ü 100%.pdf", 0);
    KnownPart second = part("Kelp, fish & coral ü 100%.pdf", 1);
    memory.add(first);
    memory.add(second);
    PackMemory again = PackMemory.read(file, key);
    assertThat(again.parts()).isEqualTo(memory.parts()).isNotEmpty();
    PartKey read = again.parts().get(first.file()).get(0).ref().key();
    assertThat(read.sameAs(first.ref().key())).isTrue();
  }

  @Test
  void everyCutLeavesTheLinesBefore() throws Exception {
    PackMemory memory = PackMemory.read(file, key);
    memory.add(part("a", 0));
    int whole = (int) Files.size(file);
    memory.add(part("b", 0));
    byte[] bytes = Files.readAllBytes(file);
    for (int cut = whole; cut < bytes.length - 1; cut += 3) {
      Files.write(file, Arrays.copyOf(bytes, cut));
      PackMemory torn = PackMemory.read(file, key);
      assertThat(torn.parts()).hasSize(1);
      torn.add(part("c", 0));
      assertThat(PackMemory.read(file, key).parts().keySet())
          .extracting(KnownFile::name)
          .containsExactly("a", "c");
    }
  }

  @Test
  void aChangedLineIsNotBelieved() throws Exception {
    PackMemory.read(file, key).add(part("a", 0));
    String text = Files.readString(file);
    for (int at = 1; at < text.length() - 1; at += 5) {
      char other = text.charAt(at) == '0' ? '1' : '0';
      Files.writeString(file, text.substring(0, at) + other + text.substring(at + 1));
      assertThat(PackMemory.read(file, key).isEmpty()).isTrue();
    }
  }

  @Test
  void anotherDeskReadsNothing() throws Exception {
    PackMemory.read(file, key).add(part("a", 0));
    assertThat(PackMemory.read(file, key()).isEmpty()).isTrue();
  }

  @Test
  void aWrappedKeyOfAnotherDeskIsRefused() {
    Octets wrapped = key.wrap(PartKey.random(random));
    assertThatThrownBy(() -> key().unwrap(wrapped)).isInstanceOf(VaultException.Tampered.class);
    assertThat(key.toString()).isEqualTo("MemoryKey[redacted]");
  }

  @Test
  void aJobComesBackAndADamagedOneIsSaid() throws Exception {
    Path jobFile = PackJob.file(folder, "brush");
    assertThat(PackJob.read(jobFile)).isEmpty();
    PackJob job =
        new PackJob(EditionId.random(random), 3, folder.resolve("out ü").resolve("brush-3"));
    job.write(jobFile);
    assertThat(PackJob.read(jobFile)).isEqualTo(Optional.of(job));
    assertThat(job.staging()).isEqualTo(folder.resolve("out ü").resolve(".brush-3.packing"));
    assertThat(job.place()).isEqualTo(folder.resolve("out ü"));
    Files.write(jobFile, "half".getBytes(StandardCharsets.UTF_8));
    assertThatThrownBy(() -> PackJob.read(jobFile)).hasMessageContaining("damaged");
  }

  @Test
  void aSweepLeavesOnlyWhatIsNamed() throws Exception {
    Path staging = Files.createDirectories(folder.resolve("staging"));
    Files.createDirectories(staging.resolve("001/deep"));
    Files.write(staging.resolve("001/sealing.part"), new byte[5]);
    Files.write(staging.resolve("001/deep/x"), new byte[5]);
    Files.write(staging.resolve("lehrcase.front"), new byte[5]);
    KnownPart part = part("a", 0);
    String name = part.ref().address().hex();
    Files.write(staging.resolve("001").resolve(name), new byte[5]);
    Files.write(staging.resolve("001").resolve(name + ".digests"), new byte[5]);
    assertThat(StagedBytes.of(staging)).isEqualTo(25);
    StagingSweep sweep = new StagingSweep(new RealDisk(random));
    sweep.keepOnly(
        staging,
        List.of(
            new org.lehrcase.core.edition.PartEntry(
                1,
                part.ref().address(),
                part.sealedBytes(),
                org.lehrcase.core.course.Rendition.COMMON)));
    assertThat(PackRun.files(staging).keySet())
        .isEqualTo(Set.of("001/" + name, "001/" + name + ".digests"));
    sweep.removeAll(staging);
    assertThat(staging).doesNotExist();
    sweep.removeAll(staging);
    assertThat(StagedBytes.of(staging)).isZero();
  }

  private KnownPart part(String name, int number) {
    KnownFile of =
        new KnownFile(
            LessonId.of(new byte[16]),
            AssetId.of(new byte[16]),
            AssetRole.HANDOUT,
            name,
            2_000_000_000L,
            2);
    PartRef ref = new PartRef(new PartAddress(Octets.random(random, 32)), PartKey.random(random));
    return new KnownPart(of, number, Octets.random(random, 32), ref, 1 << 30);
  }

  private MemoryKey key() {
    try (RootSecret root = RootSecret.random(random)) {
      return MemoryKey.of(root.masterKey(0));
    }
  }
}
