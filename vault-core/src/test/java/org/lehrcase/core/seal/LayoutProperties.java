package org.lehrcase.core.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.security.SecureRandom;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;
import org.lehrcase.core.id.AssetId;

/** The segment arithmetic agrees with counting, up to assets of 2^40 bytes. */
class LayoutProperties {
  static LongStream seeds() {
    return Seeds.some(20);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void segmentsTileTheFileAndTheClearBytes(long seed) {
    var random = new SplittableRandom(seed);
    int log2 = random.nextInt(16, 21);
    long plain = random.nextLong(SegmentLayout.maxPlainBytes(log2) >> random.nextInt(12));
    var layout = new SegmentLayout(plain, log2);
    long sealed = 0;
    long clear = 0;
    for (int segment = 0; segment < layout.segments(); segment++) {
      assertThat(layout.sealedStart(segment)).isEqualTo(sealed);
      assertThat(layout.clearStart(segment)).isEqualTo(clear);
      if (layout.clearSize(segment) > 0) {
        assertThat(layout.segmentAt(clear)).isEqualTo(segment);
        assertThat(layout.segmentAt(clear + layout.clearSize(segment) - 1)).isEqualTo(segment);
      }
      sealed += layout.sealedSize(segment);
      clear += layout.clearSize(segment);
    }
    assertThat(sealed).isEqualTo(layout.sealedBytes());
    assertThat(clear).isEqualTo(plain);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void partsSumToTheAssetAndAllButTheLastAreFull(long seed) {
    var random = new SplittableRandom(seed);
    int log2 = random.nextInt(16, 21);
    long plain = random.nextLong((1L << 40) >> random.nextInt(30));
    List<AssetSplit.Piece> pieces =
        AssetSplit.pieces(AssetId.random(new SecureRandom()), plain, log2);
    long from = 0;
    for (int part = 0; part < pieces.size(); part++) {
      PartHeader header = pieces.get(part).header();
      assertThat(header.part()).isEqualTo(part);
      assertThat(header.parts()).isEqualTo(pieces.size());
      assertThat(header.log2SegmentBytes()).isEqualTo(log2);
      assertThat(pieces.get(part).from()).isEqualTo(from);
      if (part < pieces.size() - 1) {
        assertThat(header.layout().sealedBytes()).isEqualTo(1L << 30);
      }
      from += header.plainBytes();
    }
    assertThat(from).isEqualTo(plain);
  }

  @Test
  void partsAtTheBounds() {
    long most = SegmentLayout.maxPlainBytes(16);
    assertThat(AssetSplit.parts(0, 16)).containsExactly(0L);
    assertThat(AssetSplit.parts(most, 16)).containsExactly(most);
    assertThat(AssetSplit.parts(most + 1, 16)).containsExactly(most, 1L);
    assertThat(AssetSplit.parts(most * 65_535, 16)).hasSize(65_535);
    assertThatThrownBy(() -> AssetSplit.parts(most * 65_535 + 1, 16))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> AssetSplit.parts(-1, 16)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> AssetSplit.parts(1, 64)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void defaultSegmentsAre64KiB() {
    var asset = AssetId.random(new SecureRandom());
    assertThat(AssetSplit.pieces(asset, 5)).isEqualTo(AssetSplit.pieces(asset, 5, 16));
  }
}
