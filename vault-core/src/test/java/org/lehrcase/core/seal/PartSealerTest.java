package org.lehrcase.core.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.keys.PartKey;

class PartSealerTest {
  private static final int FIVE_MIB = 5 << 20;

  @TempDir Path folder;
  private final SecureRandom random = new SecureRandom();
  private final PartSealer sealer = new PartSealer(random);
  private final PartKey key = PartKey.random(random);
  private final PartHeader header =
      PartHeader.single(PartKind.ASSET, AssetId.random(random), FIVE_MIB);
  private final byte[] clear = Samples.clear(FIVE_MIB, 1);

  @Test
  void whatIsSealedOpensAgain() throws Exception {
    Path file = folder.resolve("part");
    SealedPart sealed = sealer.seal(ByteSource.of(clear), header, key, file, Progress.NONE);

    assertThat(Files.size(file)).isEqualTo(sealed.sealedBytes());
    assertThat(sealed.needsDigestFile()).isTrue();
    assertThat(sealed.header()).isEqualTo(header);
    try (PartReader reader =
        PartReader.open(FileSource.open(file), key, header, sealed.digests())) {
      assertThat(Samples.all(reader)).isEqualTo(clear);
    }
  }

  @Test
  void digestsAreThoseOfTheFile() throws Exception {
    Path file = folder.resolve("part");
    SealedPart sealed = sealer.seal(ByteSource.of(clear), header, key, file, Progress.NONE);
    try (FileSource source = FileSource.open(file)) {
      assertThat(DigestList.ofFile(source, 16)).isEqualTo(sealed.digests());
      assertThat(DigestList.provenWhole(source, 16, sealed.address())).isEqualTo(sealed.digests());
    }
  }

  @Test
  void sealingTwiceSharesNoSegment() {
    byte[] once = sealer.sealBytes(clear, header, key);
    byte[] again = sealer.sealBytes(clear, header, key);
    for (int at = 0; at < once.length; at += 1 << 16) {
      int end = Math.min(once.length, at + (1 << 16));
      assertThat(Arrays.mismatch(once, at + 80, end, again, at + 80, end)).isLessThan(8);
    }
  }

  @Tag("slow")
  @Test
  void anyNumberOfWorkersWritesTheSameFormat() throws Exception {
    for (int workers = 1; workers <= 4; workers++) {
      byte[] sealed = new PartSealer(random, workers).sealBytes(clear, header, key);
      assertThat(PartSealer.openBytes(sealed, key, header)).isEqualTo(clear);
    }
  }

  @Test
  void progressRisesToTheWholeLength() throws Exception {
    List<Long> told = Collections.synchronizedList(new ArrayList<>());
    sealer.seal(ByteSource.of(clear), header, key, folder.resolve("part"), told::add);
    assertThat(told).hasSize(6).isSorted().last().isEqualTo((long) FIVE_MIB);
  }

  @Test
  void stoppedRunLeavesNoFile() {
    Path file = folder.resolve("part");
    assertThatThrownBy(
            () ->
                sealer.seal(
                    ByteSource.of(clear), header, key, file, doneBytes -> doneBytes < 2 << 20))
        .isInstanceOf(CancellationException.class);
    assertThat(file).doesNotExist();
  }

  @Test
  void existingFileIsLeftAlone() throws Exception {
    Path file = Files.writeString(folder.resolve("part"), "mine");
    assertThatThrownBy(() -> sealer.seal(ByteSource.of(clear), header, key, file, Progress.NONE))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThat(file).hasContent("mine");
  }

  @Test
  void lengthMustBeTheOneOfTheHeader() {
    Path file = folder.resolve("part");
    ByteSource shorter = ByteSource.of(clear).slice(0, 100);
    assertThatThrownBy(() -> sealer.seal(shorter, header, key, file, Progress.NONE))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(file).doesNotExist();
  }

  @Test
  void pieceOfALongerSourceIsSealedByItself() throws Exception {
    PartHeader middle = new PartHeader(PartKind.ASSET, header.asset(), 3_000_000, 16, 1, 3);
    Path file = folder.resolve("part");
    ByteSource piece = ByteSource.of(clear).slice(1_000_000, 3_000_000);
    SealedPart sealed = sealer.seal(piece, middle, key, file, Progress.NONE);
    try (PartReader reader =
        PartReader.open(FileSource.open(file), key, middle, sealed.digests())) {
      assertThat(Samples.all(reader)).isEqualTo(Arrays.copyOfRange(clear, 1_000_000, 4_000_000));
    }
  }

  @Test
  void partOfOneSegmentNeedsNoDigestFile() throws Exception {
    PartHeader small = PartHeader.single(PartKind.CORRECTION, header.asset(), 1000);
    Path file = folder.resolve("part");
    ByteSource piece = ByteSource.of(clear).slice(0, 1000);
    SealedPart sealed = sealer.seal(piece, small, key, file, Progress.NONE);
    assertThat(sealed.needsDigestFile()).isFalse();
    assertThat(sealed.sealedBytes()).isEqualTo(1096);
    try (FileSource source = FileSource.open(file)) {
      DigestList digests = DigestList.provenWhole(source, 16, sealed.address());
      PartReader reader = PartReader.open(source, key, small, digests);
      assertThat(Samples.all(reader)).isEqualTo(Arrays.copyOf(clear, 1000));
    }
  }
}
