package org.lehrcase.core.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.security.SecureRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.keys.PartKey;

/** Media that fail at every possible step. */
@Tag("slow")
class SealFaultTest {
  private static final int SIZE = (7 << 20) + 123;

  @TempDir Path folder;
  private final SecureRandom random = new SecureRandom();
  private final PartSealer sealer = new PartSealer(random);
  private final PartKey key = PartKey.random(random);
  private final PartHeader header = PartHeader.single(PartKind.ASSET, AssetId.random(random), SIZE);
  private final byte[] clear = Samples.clear(SIZE, 5);

  @Test
  void sealingSurvivesShortReads() throws Exception {
    var target = new FailingTarget((int) header.layout().sealedBytes(), FailingSource.NEVER);
    sealer.seal(new ShortReads(ByteSource.of(clear), 1), header, key, target, Progress.NONE);
    assertThat(PartSealer.openBytes(target.bytes(), key, header)).isEqualTo(clear);
  }

  @Test
  void everyFailingReadEndsSealingWithoutAFile() {
    int failing = 1;
    while (failsAtRead(failing)) {
      assertThat(folder).isEmptyDirectory();
      failing++;
    }
    assertThat(failing).isEqualTo(9);
  }

  private boolean failsAtRead(int number) {
    var source = new FailingSource(ByteSource.of(clear), number);
    Path file = folder.resolve("part");
    try {
      sealer.seal(source, header, key, file, Progress.NONE);
      return false;
    } catch (IOException e) {
      assertThat(e).hasMessage("medium gone");
      return true;
    }
  }

  @Test
  void everyFailingWriteAndTheFailingForceAreReported() throws Exception {
    int failing = 1;
    var target = new FailingTarget((int) header.layout().sealedBytes(), failing);
    while (failsOn(target)) {
      assertThat(target.forced()).isFalse();
      failing++;
      target = new FailingTarget((int) header.layout().sealedBytes(), failing);
    }
    assertThat(failing).isEqualTo(10);
    assertThat(target.forced()).isTrue();
    assertThat(PartSealer.openBytes(target.bytes(), key, header)).isEqualTo(clear);
  }

  private boolean failsOn(FailingTarget target) {
    try {
      sealer.seal(ByteSource.of(clear), header, key, target, Progress.NONE);
      return false;
    } catch (IOException e) {
      assertThat(e).hasMessage("No space left on device");
      return true;
    }
  }

  @Test
  void sourceThatShrinksWhileItIsSealedIsReported() {
    Path file = folder.resolve("part");
    ByteSource shrunk =
        new ByteSource() {
          @Override
          public long sizeBytes() {
            return SIZE;
          }

          @Override
          public int readAt(long position, ByteBuffer target) throws IOException {
            return ByteSource.of(clear).slice(0, SIZE / 2).readAt(position, target);
          }

          @Override
          public void close() {}
        };
    assertThatThrownBy(() -> sealer.seal(shrunk, header, key, file, Progress.NONE))
        .isInstanceOf(EOFException.class);
    assertThat(file).doesNotExist();
  }

  @Test
  void throwingProgressEndsSealingWithoutAFile() {
    Progress broken =
        doneBytes -> {
          throw new IllegalStateException("listener broke");
        };
    Path file = folder.resolve("part");
    assertThatThrownBy(() -> sealer.seal(ByteSource.of(clear), header, key, file, broken))
        .isInstanceOf(IllegalStateException.class)
        .hasMessage("listener broke");
    assertThat(file).doesNotExist();
  }

  @Test
  void interruptedCallerIsToldAndNoFileStays() {
    Path file = folder.resolve("part");
    Thread.currentThread().interrupt();
    try {
      assertThatThrownBy(() -> sealer.seal(ByteSource.of(clear), header, key, file, Progress.NONE))
          .isInstanceOf(IOException.class);
      assertThat(Thread.currentThread().isInterrupted()).isTrue();
    } finally {
      Thread.interrupted();
    }
    assertThat(file).doesNotExist();
  }

  @Test
  void failingOpeningClosesTheSource() {
    byte[] sealed = sealer.sealBytes(clear, header, key);
    for (int failing = 1; failing <= 2; failing++) {
      var source = new FailingSource(ByteSource.of(sealed), failing);
      assertThatThrownBy(() -> PartReader.openWithoutDigests(source, key, header))
          .isInstanceOf(IOException.class)
          .hasMessage("medium gone");
      assertThat(source.closed()).isTrue();
    }
  }

  @Test
  void readerGoesOnAfterAFailedRead() throws Exception {
    byte[] sealed = sealer.sealBytes(clear, header, key);
    var source = new FailingSource(ByteSource.of(sealed), 3);
    try (PartReader reader = PartReader.openWithoutDigests(source, key, header)) {
      ByteBuffer target = ByteBuffer.allocate(10);
      assertThatThrownBy(() -> reader.readAt(0, target)).hasMessage("medium gone");
      assertThat(target.position()).isZero();
      assertThat(Samples.all(reader)).isEqualTo(clear);
    }
    assertThat(source.closed()).isTrue();
  }
}
