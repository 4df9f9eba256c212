package org.lehrcase.core.seal;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.PartAddress;

class DigestListTest {
  private static final int SIZE = 150_000;

  private final byte[] file = Samples.clear(SIZE, 4);
  private final DigestList list = made(file);

  private static DigestList made(byte[] file) {
    try {
      return DigestList.ofFile(ByteSource.of(file), 16);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void hasTheBytesOfTheFormat() throws Exception {
    MessageDigest sha256 = MessageDigest.getInstance("SHA-256");
    ByteBuffer expected = ByteBuffer.allocate(28 + 3 * 16);
    expected.put("lehrcase/1 digests".getBytes(US_ASCII)).put((byte) 0);
    expected.putLong(SIZE).put((byte) 16);
    for (int at = 0; at < SIZE; at += 65_536) {
      sha256.update(file, at, Math.min(65_536, SIZE - at));
      expected.put(sha256.digest(), 0, 16);
    }
    assertThat(list.toBytes()).isEqualTo(expected.array());
    assertThat(list.address().toBytes()).isEqualTo(sha256.digest(expected.array()));
    assertThat(list.segments()).isEqualTo(3);
    assertThat(list.sealedBytes()).isEqualTo(SIZE);
    assertThat(list.log2SegmentBytes()).isEqualTo(16);
    assertThat(DigestList.MAX_BYTES).isEqualTo(262_172);
  }

  @Test
  void opensAgainUnderItsAddressOnly() throws Exception {
    assertThat(DigestList.proven(list.toBytes(), list.address())).isEqualTo(list);
    byte[] changed = list.toBytes();
    changed[40] ^= 1;
    assertThatThrownBy(() -> DigestList.proven(changed, list.address()))
        .isInstanceOf(VaultException.Tampered.class);
    assertThat(DigestList.parse(changed)).isNotEqualTo(list).isNotEqualTo("list");
    assertThat(DigestList.parse(list.toBytes())).hasSameHashCodeAs(list);
    assertThat(list.toString()).contains(list.address().hex(), "3 segments");
  }

  @ParameterizedTest(name = "byte {0} = {1}")
  @CsvSource({"0, 76", "18, 1", "19, 1", "19, 128", "27, 15", "27, 21", "27, -1"})
  void headOutOfRangeIsMalformed(int index, int value) {
    byte[] bytes = list.toBytes();
    bytes[index] = (byte) value;
    assertThatThrownBy(() -> DigestList.parse(bytes)).isInstanceOf(VaultException.Malformed.class);
  }

  @ParameterizedTest(name = "{0} bytes")
  @CsvSource({"0", "27", "28", "75"})
  void cutListIsTruncated(int size) {
    byte[] bytes = Arrays.copyOf(list.toBytes(), size);
    assertThatThrownBy(() -> DigestList.parse(bytes)).isInstanceOf(VaultException.Truncated.class);
  }

  @Test
  void longerListIsMalformed() {
    byte[] bytes = Arrays.copyOf(list.toBytes(), 77);
    assertThatThrownBy(() -> DigestList.parse(bytes)).isInstanceOf(VaultException.Malformed.class);
  }

  @ParameterizedTest(name = "{0} bytes")
  @CsvSource({"0", "95", "1073741825"})
  void noListOfWhatCanNotBeAPart(long size) {
    ByteSource odd = new FixedSize(size);
    assertThatThrownBy(() -> DigestList.ofFile(odd, 16))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> DigestList.provenWhole(odd, 16, list.address()))
        .isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void theShortestPartHasAList() throws Exception {
    byte[] shortest = Arrays.copyOf(file, 96);
    DigestList one = DigestList.provenWhole(ByteSource.of(shortest), 16, made(shortest).address());
    assertThat(one.segments()).isEqualTo(1);
    assertThat(DigestList.parse(one.toBytes()).sealedBytes()).isEqualTo(96);
  }

  @Test
  void wholeSegmentsHaveNoneBehindThem() {
    assertThat(made(new byte[65_536]).segments()).isEqualTo(1);
    assertThat(made(new byte[131_072]).toBytes()).hasSize(28 + 2 * 16);
    assertThat(made(new byte[131_073]).toBytes()).hasSize(28 + 3 * 16);
  }

  @ParameterizedTest(name = "segments of 2^{0}")
  @CsvSource({"16, 16384", "20, 1024"})
  void theListOfTheLongestPartIsRead(int log2, int segments) throws Exception {
    byte[] longest = Arrays.copyOf(list.toBytes(), 28 + 16 * segments);
    ByteBuffer.wrap(longest).putLong(19, 1L << 30).put(27, (byte) log2);
    assertThat(DigestList.parse(longest).segments()).isEqualTo(segments);
  }

  private record FixedSize(long sizeBytes) implements ByteSource {
    @Override
    public int readAt(long position, ByteBuffer target) {
      throw new AssertionError("must not be read");
    }

    @Override
    public void close() {}
  }

  @Test
  void wholeFileIsProvenByItsAddress() throws Exception {
    PartAddress address = list.address();
    assertThat(DigestList.provenWhole(ByteSource.of(file), 16, address)).isEqualTo(list);
    file[SIZE - 1] ^= 1;
    assertThatThrownBy(() -> DigestList.provenWhole(ByteSource.of(file), 16, address))
        .isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void segmentMatchesAtItsOwnPlaceOnly() {
    byte[] first = Arrays.copyOf(file, 65_536);
    assertThat(list.matches(0, first, 65_536)).isTrue();
    assertThat(list.matches(0, first, 65_535)).isFalse();
    assertThat(list.matches(1, first, 65_536)).isFalse();
    assertThatThrownBy(() -> list.matches(3, first, 65_536))
        .isInstanceOf(IndexOutOfBoundsException.class);
  }

  @Test
  void checkFindsEveryDamagedSegment() throws Exception {
    List<Long> told = new ArrayList<>();
    PartCheck good = PartCheck.of(ByteSource.of(file), list, told::add);
    assertThat(good.whole()).isTrue();
    assertThat(told).containsExactly(65_536L, 131_072L, 150_000L);
    file[0] ^= 1;
    file[140_000] ^= 1;
    PartCheck bad = PartCheck.of(ByteSource.of(file), list, Progress.NONE);
    assertThat(bad.damagedSegments()).containsExactly(0, 2);
    assertThat(bad.whole()).isFalse();
  }

  /** A part on a medium that cannot be read from one position to another. */
  private ByteSource unreadable(int from, int to) {
    ByteSource whole = ByteSource.of(file);
    return new ByteSource() {
      @Override
      public long sizeBytes() {
        return whole.sizeBytes();
      }

      @Override
      public int readAt(long position, ByteBuffer target) throws IOException {
        if (position + target.remaining() > from && position < to) {
          throw new IOException("Input/output error");
        }
        return whole.readAt(position, target);
      }

      @Override
      public void close() throws IOException {
        whole.close();
      }
    };
  }

  @Test
  void aBadSpotIsDamageAndAMediumThatIsGoneIsNot() throws Exception {
    for (int segment = 0; segment < 3; segment++) {
      int spot = segment * 65_536 + 9;
      PartCheck bad = PartCheck.of(unreadable(spot, spot + 512), list, Progress.NONE);
      assertThat(bad.damagedSegments()).containsExactly(segment);
    }
    assertThatThrownBy(() -> PartCheck.of(unreadable(70_000, SIZE), list, Progress.NONE))
        .isInstanceOf(IOException.class);
  }

  @Test
  void checkOfACutOrLongerFileIsNotWhole() throws Exception {
    PartCheck cut = PartCheck.of(ByteSource.of(Arrays.copyOf(file, 100_000)), list, Progress.NONE);
    assertThat(cut.damagedSegments()).containsExactly(1, 2);
    assertThat(cut.foundBytes()).isEqualTo(100_000);
    PartCheck longer =
        PartCheck.of(ByteSource.of(Arrays.copyOf(file, SIZE + 1)), list, Progress.NONE);
    assertThat(longer.damagedSegments()).isEmpty();
    assertThat(longer.whole()).isFalse();
  }

  @Test
  void checkCanBeStopped() {
    assertThatThrownBy(() -> PartCheck.of(ByteSource.of(file), list, doneBytes -> false))
        .isInstanceOf(CancellationException.class);
  }
}
