package org.lehrcase.core.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Reading ahead of a slow medium, seen from the medium: what it is asked for, and when. */
class ReadAheadSourceTest {
  private static final int SEGMENT = 64 << 10;
  private static final int SIZE = 20 * SEGMENT + 17;
  private static final long SLOW = 6_000_000L;

  private final byte[] bytes = Samples.clear(SIZE, 1);
  private final Medium medium = new Medium();
  private final ReadAheadSource source = new ReadAheadSource(medium, () -> medium.now);

  /** Bytes that come as late as wanted; notes what it was asked for, in segments. */
  private final class Medium implements ByteSource {
    final List<String> asked = new ArrayList<>();
    long now;
    long delayNanos;
    long badFrom = Long.MAX_VALUE;
    boolean closed;

    @Override
    public long sizeBytes() {
      return SIZE;
    }

    @Override
    public int readAt(long position, ByteBuffer target) throws IOException {
      asked.add(position / SEGMENT + "+" + target.remaining() / SEGMENT);
      now += delayNanos;
      if (position + target.remaining() > badFrom) {
        throw new IOException("a bad spot");
      }
      return ByteSource.of(bytes).readAt(position, target);
    }

    @Override
    public void close() {
      closed = true;
    }
  }

  private void read(int segment) throws IOException {
    int from = segment * SEGMENT;
    byte[] got = new byte[Math.min(SEGMENT, SIZE - from)];
    source.readExactly(from, ByteBuffer.wrap(got));
    assertThat(got).isEqualTo(Arrays.copyOfRange(bytes, from, from + got.length));
  }

  private void readInOrder(int from, int to) throws IOException {
    for (int segment = from; segment <= to; segment++) {
      read(segment);
    }
  }

  @Test
  void aSlowMediumReadInOrderIsAskedForMoreAtOnce() throws IOException {
    medium.delayNanos = SLOW;
    readInOrder(0, 11);
    assertThat(medium.asked).containsExactly("0+1", "1+1", "2+2", "4+4", "8+4");
  }

  @Test
  void aJumpTakesOnlyWhatWasAskedFor() throws IOException {
    medium.delayNanos = SLOW;
    readInOrder(0, 3);
    medium.asked.clear();
    read(12);
    readInOrder(13, 14);
    assertThat(medium.asked).containsExactly("12+1", "13+2");
  }

  @Test
  void theEndIsReachedExactly() throws IOException {
    medium.delayNanos = SLOW;
    readInOrder(14, 20);
    assertThat(source.readAt(SIZE, ByteBuffer.allocate(1))).isEqualTo(-1);
  }

  @Test
  void aMediumThatIsFastAgainIsReadDirectly() throws IOException {
    medium.delayNanos = SLOW;
    readInOrder(0, 3);
    medium.delayNanos = 0;
    readInOrder(4, 7);
    medium.asked.clear();
    readInOrder(8, 9);
    assertThat(medium.asked).containsExactly("8+1", "9+1");
  }

  @Test
  void aBadSpotFartherOnDoesNotSpoilWhatWasAskedFor() throws IOException {
    medium.delayNanos = SLOW;
    readInOrder(0, 3);
    medium.badFrom = 6L * SEGMENT;
    readInOrder(4, 5);
    assertThatThrownBy(() -> read(6)).isInstanceOf(IOException.class);
    read(5);
  }

  @Test
  void closingClosesTheMedium() throws IOException {
    assertThat(source.sizeBytes()).isEqualTo(SIZE);
    source.close();
    assertThat(medium.closed).isTrue();
  }
}
