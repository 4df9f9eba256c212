package org.lehrcase.core.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.nio.channels.ClosedChannelException;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.keys.PartKey;

class PartReaderTest {
  private static final int SIZE = 300_000;

  private final SecureRandom random = new SecureRandom();
  private final PartKey key = PartKey.random(random);
  private final PartHeader header = PartHeader.single(PartKind.ASSET, AssetId.random(random), SIZE);
  private final byte[] clear = Samples.clear(SIZE, 9);
  private final byte[] sealed = new PartSealer(random).sealBytes(clear, header, key);

  @Test
  void openingReadsTheLeadAndTheLastSegmentOnly() throws Exception {
    var source = new FailingSource(ByteSource.of(sealed), FailingSource.NEVER);
    try (PartReader reader = PartReader.open(source, key, header, digests())) {
      assertThat(reader.header()).isEqualTo(header);
      assertThat(source.bytesRead()).isEqualTo(80 + header.layout().sealedSize(4));
    }
  }

  @Test
  void readingInSmallStepsOpensASegmentOnce() throws Exception {
    var source = new FailingSource(ByteSource.of(sealed), FailingSource.NEVER);
    try (PartReader reader = PartReader.open(source, key, header, digests())) {
      int before = source.reads();
      for (int position = 0; position < 60_000; position += 1000) {
        reader.readAt(position, ByteBuffer.allocate(1000));
      }
      assertThat(source.reads() - before).isEqualTo(1);
    }
  }

  @Test
  void damagedSegmentReleasesNothingAndTheRestIsRead() throws Exception {
    sealed[70_000] ^= 1;
    try (PartReader reader = PartReader.openWithoutDigests(ByteSource.of(sealed), key, header)) {
      ByteBuffer target = ByteBuffer.allocate(100);
      assertThatThrownBy(() -> reader.readAt(70_000, target))
          .isInstanceOf(VaultException.Tampered.class);
      assertThat(target.position()).isZero();
      assertThat(target.array()).containsOnly(0);

      byte[] buffer = Samples.clear(reader.bufferBytes(), 2);
      assertThatThrownBy(() -> reader.readSegment(70_000, buffer))
          .isInstanceOf(VaultException.Tampered.class);
      assertThat(buffer).containsOnly(0);

      assertThat(reader.readSegment(140_000, buffer).get()).isEqualTo(clear[140_000]);
      assertThat(reader.readAt(0, target)).isEqualTo(100);
    }
  }

  @Test
  void forgedSegmentReleasesNothing() throws Exception {
    DigestList before = digests();
    byte[] otherClear = clear.clone();
    otherClear[0] ^= 1;
    byte[] forged = sealedAgain(otherClear);
    try (PartReader reader = PartReader.open(ByteSource.of(forged), key, header, before)) {
      byte[] buffer = Samples.clear(reader.bufferBytes(), 2);
      assertThatThrownBy(() -> reader.readSegment(0, buffer))
          .isInstanceOf(VaultException.Tampered.class);
      assertThat(buffer).containsOnly(0);
      assertThat(reader.readAt(100_000, ByteBuffer.allocate(1))).isEqualTo(1);
    }
  }

  /** Seals under the salt of {@link #sealed}, which only a fellow buyer would do. */
  private byte[] sealedAgain(byte[] otherClear) throws VaultException {
    var lead = ByteBuffer.wrap(sealed).position(PartHeader.SIZE_BYTES);
    SegmentCipher cipher = PartStream.existing(header, StreamHeader.parse(lead), key).cipher();
    byte[] forged = sealed.clone();
    cipher.seal(0, otherClear, 0, forged, 0);
    return forged;
  }

  @Test
  void damageThatComesAfterTheFirstTouchIsStillFound() throws Exception {
    byte[] changing = sealed.clone();
    try (PartReader reader = PartReader.open(ByteSource.of(changing), key, header, digests())) {
      byte[] buffer = new byte[reader.bufferBytes()];
      assertThat(reader.readSegment(70_000, buffer).hasRemaining()).isTrue();
      changing[70_000] ^= 1;
      assertThatThrownBy(() -> reader.readSegment(70_000, buffer))
          .isInstanceOf(VaultException.Tampered.class);
    }
  }

  @Test
  void digestListOfAnotherLengthOrSegmentSizeIsRefused() throws Exception {
    DigestList longer = DigestList.ofFile(ByteSource.of(Arrays.copyOf(sealed, SIZE + 9999)), 16);
    DigestList coarser = DigestList.ofFile(ByteSource.of(sealed), 17);
    for (DigestList other : List.of(longer, coarser)) {
      assertThatThrownBy(() -> PartReader.open(ByteSource.of(sealed), key, header, other))
          .isInstanceOf(VaultException.Tampered.class);
    }
  }

  @Test
  void positionsOutsideAreRefused() throws Exception {
    try (PartReader reader = PartReader.openWithoutDigests(ByteSource.of(sealed), key, header)) {
      byte[] buffer = new byte[reader.bufferBytes()];
      assertThat(reader.readAt(SIZE, ByteBuffer.allocate(1))).isEqualTo(-1);
      assertThat(reader.readAt(Long.MAX_VALUE, ByteBuffer.allocate(1))).isEqualTo(-1);
      assertThat(reader.readAt(0, ByteBuffer.allocate(0))).isZero();
      assertThatThrownBy(() -> reader.readAt(-1, ByteBuffer.allocate(1)))
          .isInstanceOf(IndexOutOfBoundsException.class);
      assertThatThrownBy(() -> reader.readSegment(SIZE, buffer))
          .isInstanceOf(IndexOutOfBoundsException.class);
      assertThatThrownBy(() -> reader.readExactly(SIZE - 1, ByteBuffer.allocate(2)))
          .isInstanceOf(IndexOutOfBoundsException.class);
      assertThatThrownBy(() -> reader.readSegment(0, new byte[65_535]))
          .isInstanceOf(IllegalArgumentException.class);
    }
  }

  @Test
  void emptyPartOpensAndHoldsNothing() throws Exception {
    PartHeader empty = PartHeader.single(PartKind.CORRECTION, header.asset(), 0);
    byte[] file = new PartSealer(random).sealBytes(new byte[0], empty, key);
    assertThat(file).hasSize(96);
    assertThat(PartSealer.openBytes(file, key, empty)).isEmpty();
  }

  @Test
  void closedReaderGivesNothing() throws Exception {
    PartReader reader = PartReader.openWithoutDigests(ByteSource.of(sealed), key, header);
    reader.readAt(0, ByteBuffer.allocate(1));
    reader.close();
    assertThatThrownBy(() -> reader.readAt(0, ByteBuffer.allocate(1)))
        .isInstanceOf(ClosedChannelException.class);
  }

  @Tag("slow")
  @Test
  void manyThreadsReadAtOnce() throws Exception {
    ExecutorService pool = Executors.newFixedThreadPool(8);
    try (PartReader reader = PartReader.open(ByteSource.of(sealed), key, header, digests())) {
      List<Callable<Boolean>> tasks = new ArrayList<>();
      for (int seed = 0; seed < 8; seed++) {
        var positions = new SplittableRandom(seed);
        tasks.add(() -> readsRight(reader, positions));
      }
      for (Future<Boolean> task : pool.invokeAll(tasks)) {
        assertThat(task.get()).isTrue();
      }
    } finally {
      pool.shutdownNow();
    }
  }

  private boolean readsRight(PartReader reader, SplittableRandom positions) throws Exception {
    byte[] buffer = new byte[reader.bufferBytes()];
    boolean right = true;
    for (int i = 0; i < 200; i++) {
      int position = positions.nextInt(SIZE);
      ByteBuffer segment = reader.readSegment(position, buffer);
      right &= segment.equals(ByteBuffer.wrap(clear, position, segment.remaining()));
      ByteBuffer some = ByteBuffer.allocate(50);
      int read = reader.readAt(position, some);
      right &= some.flip().equals(ByteBuffer.wrap(clear, position, read));
    }
    return right;
  }

  private DigestList digests() throws Exception {
    return DigestList.ofFile(ByteSource.of(sealed), 16);
  }
}
