package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.util.Callback;
import org.junit.jupiter.api.Test;
import org.lehrcase.bench.courses.CourseFile;
import org.lehrcase.bench.courses.MediumPace;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.seal.ClearSource;

/** In which pieces an answer goes out, and what is left behind. */
class ClearCopierTest {
  private static final int SEGMENT = 64 << 10;
  private static final int FIRST = 8 << 10;

  private final byte[] film = new byte[3 * SEGMENT];
  private final Wire wire = new Wire();
  private final SegmentBuffers buffers = new SegmentBuffers();
  private final List<Long> damage = new ArrayList<>();
  private int opened;
  private long damagedFrom = Long.MAX_VALUE;

  ClearCopierTest() {
    for (int i = 0; i < film.length; i++) {
      film[i] = (byte) (i * 31 + i / 256 + 1);
    }
  }

  /** Takes all at once. */
  private static final class Wire implements Content.Sink, Callback {
    final List<Integer> pieces = new ArrayList<>();
    final ByteArrayOutputStream got = new ByteArrayOutputStream();
    boolean last;
    boolean succeeded;
    boolean failed;

    @Override
    public void write(boolean isLast, ByteBuffer bytes, Callback callback) {
      byte[] piece = new byte[bytes.remaining()];
      bytes.get(piece);
      got.writeBytes(piece);
      pieces.add(piece.length);
      last = isLast;
      callback.succeeded();
    }

    @Override
    public void succeeded() {
      succeeded = true;
    }

    @Override
    public void failed(Throwable cause) {
      failed = true;
    }
  }

  private final class Segments implements ClearSource {
    @Override
    public long sizeBytes() {
      return film.length;
    }

    @Override
    public int readAt(long position, ByteBuffer target) throws VaultException {
      opened++;
      if (position >= damagedFrom) {
        throw new VaultException.Tampered("damaged");
      }
      int end = (int) (position / SEGMENT + 1) * SEGMENT;
      int count = (int) Math.min(target.remaining(), end - position);
      target.put(film, (int) position, count);
      return count;
    }

    @Override
    public void close() {}
  }

  private void copy(int from, int to) throws IOException, VaultException {
    CourseFile file =
        new CourseFile("video/mp4", "ab", new Segments(), new MediumPace(), damage::add);
    RangeChoice.Span span = new RangeChoice.Span(from, to);
    ClearCopier copier = new ClearCopier(file, span, buffers, wire, wire);
    copier.openFirst();
    copier.iterate();
  }

  private void assertSent(int from, int to) {
    assertThat(wire.got.toByteArray()).isEqualTo(Arrays.copyOfRange(film, from, to));
  }

  @Test
  void aLittleGoesOutFirstAndEachSegmentIsOpenedOnce() throws Exception {
    copy(0, film.length);
    assertThat(wire.pieces).containsExactly(FIRST, SEGMENT - FIRST, SEGMENT, SEGMENT);
    assertSent(0, film.length);
    assertThat(opened).isEqualTo(3);
    assertThat(wire.last).isTrue();
    assertThat(wire.succeeded).isTrue();
  }

  @Test
  void aShortRangeIsOnePiece() throws Exception {
    copy(SEGMENT - 100, SEGMENT);
    assertThat(wire.pieces).containsExactly(100);
    assertThat(wire.last).isTrue();
  }

  @Test
  void aRangeMayBeginShortlyBeforeTheEndOfASegment() throws Exception {
    copy(SEGMENT - 100, SEGMENT + 20_000);
    assertThat(wire.pieces).containsExactly(100, 20_000);
    assertSent(SEGMENT - 100, SEGMENT + 20_000);
  }

  @Test
  void aDamagedSegmentEndsTheAnswerAndNothingClearStaysInTheArray() throws Exception {
    damagedFrom = SEGMENT;
    copy(0, film.length);
    assertThat(wire.failed).isTrue();
    assertThat(wire.succeeded).isFalse();
    assertSent(0, SEGMENT);
    assertThat(damage).containsExactly((long) SEGMENT);
    assertThat(buffers.take(SEGMENT)).containsOnly(0);
  }
}
