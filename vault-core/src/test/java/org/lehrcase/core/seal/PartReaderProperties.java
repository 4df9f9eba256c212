package org.lehrcase.core.seal;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.keys.PartKey;

/** Random access gives what a plain array of the clear bytes gives. */
class PartReaderProperties {
  private final SecureRandom secure = new SecureRandom();

  static LongStream seeds() {
    return Seeds.some(12);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void randomAccessEqualsTheArray(long seed) throws Exception {
    var random = new SplittableRandom(seed);
    byte[] clear = Samples.clear(size(random), seed);
    int log2 = random.nextInt(16, 21);
    var header = new PartHeader(PartKind.ASSET, AssetId.random(secure), clear.length, log2, 0, 1);
    try (PartReader reader = opened(clear, header)) {
      readsEqual(reader, clear, random);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void partsSeenAsOneEqualTheArray(long seed) throws Exception {
    var random = new SplittableRandom(seed);
    byte[] clear = Samples.clear(size(random), seed);
    AssetId asset = AssetId.random(secure);
    int[] cuts = cuts(random, clear.length);
    List<PartReader> parts = new ArrayList<>();
    for (int part = 0; part + 1 < cuts.length; part++) {
      byte[] piece = Arrays.copyOfRange(clear, cuts[part], cuts[part + 1]);
      var header = new PartHeader(PartKind.ASSET, asset, piece.length, 16, part, cuts.length - 1);
      parts.add(opened(piece, header));
    }
    try (AssetReader reader = AssetReader.of(parts)) {
      readsEqual(reader, clear, random);
    }
  }

  private PartReader opened(byte[] clear, PartHeader header) throws Exception {
    PartKey key = PartKey.random(secure);
    ByteSource sealed = ByteSource.of(new PartSealer(secure).sealBytes(clear, header, key));
    DigestList digests = DigestList.ofFile(sealed, header.log2SegmentBytes());
    return PartReader.open(new ShortReads(sealed, header.plainBytes()), key, header, digests);
  }

  private static void readsEqual(ClearSource reader, byte[] clear, SplittableRandom random)
      throws Exception {
    assertThat(reader.sizeBytes()).isEqualTo(clear.length);
    byte[] buffer = new byte[reader.bufferBytes()];
    for (int i = 0; i < 60 && clear.length > 0; i++) {
      int position = position(random, clear.length);
      ByteBuffer target = ByteBuffer.allocate(random.nextInt(1, 100_000));
      int read = reader.readAt(position, target);
      assertThat(read).isPositive().isEqualTo(target.position());
      assertSame(target.flip(), clear, position);
      ByteBuffer segment = reader.readSegment(position, buffer);
      assertThat(segment.remaining()).isPositive();
      assertSame(segment, clear, position);
    }
    assertThat(reader.readAt(clear.length, ByteBuffer.allocate(1))).isEqualTo(-1);
    assertThat(Samples.all(reader)).isEqualTo(clear);
  }

  private static void assertSame(ByteBuffer read, byte[] clear, int position) {
    assertThat(read).isEqualTo(ByteBuffer.wrap(clear, position, read.remaining()));
  }

  /** Half of the sizes lie at a segment bound, give or take one. */
  private static int size(SplittableRandom random) {
    if (random.nextBoolean()) {
      return random.nextInt(600_000);
    }
    return random.nextInt(1, 10) * ((1 << 16) - 16) - 80 + random.nextInt(-1, 2);
  }

  private static int position(SplittableRandom random, int size) {
    int near = random.nextInt(10) * ((1 << 16) - 16) - 80 + random.nextInt(-1, 2);
    return random.nextBoolean() && near >= 0 && near < size ? near : random.nextInt(size);
  }

  private static int[] cuts(SplittableRandom random, int size) {
    int[] cuts = random.ints(random.nextInt(1, 6) + 1, 0, size + 1).sorted().toArray();
    cuts[0] = 0;
    cuts[cuts.length - 1] = size;
    return cuts;
  }
}
