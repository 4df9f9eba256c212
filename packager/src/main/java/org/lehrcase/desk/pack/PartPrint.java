package org.lehrcase.desk.pack;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.stream.IntStream;
import java.util.zip.CRC32;
import java.util.zip.CRC32C;
import org.jspecify.annotations.Nullable;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.SegmentLayout;

/**
 * The clear bytes of one part, and their print: a SHA-256 over two check sums, CRC-32 and CRC-32C,
 * of each stretch that the sealer reads at once. While the part is sealed, the print costs no
 * further reading; several threads can make it.
 *
 * <p>The print tells whether the teacher changed her own file since the last edition; it protects
 * nothing, stays in the desk's home, and a changed stretch keeps both sums once in 2^64 times.
 * Check sums cost a tenth of a second hash of every film.
 */
final class PartPrint implements ByteSource {
  private static final byte[] LABEL =
      "lehrcase/1 part print, sums\0".getBytes(StandardCharsets.US_ASCII);
  private static final int LEAF_SEGMENTS = 16;

  private final ByteSource part;
  private final SegmentLayout layout;
  private final AtomicReferenceArray<byte @Nullable []> leaves;

  /** Wraps the bytes of a part; closing is the business of whoever opened them. */
  PartPrint(ByteSource part, SegmentLayout layout) {
    this.part = part;
    this.layout = layout;
    this.leaves =
        new AtomicReferenceArray<>((layout.segments() + LEAF_SEGMENTS - 1) / LEAF_SEGMENTS);
  }

  @Override
  public long sizeBytes() {
    return part.sizeBytes();
  }

  @Override
  public int readAt(long position, ByteBuffer target) throws IOException {
    return part.readAt(position, target);
  }

  /** Reads and, if this is one whole stretch, keeps its sums. */
  @Override
  public void readExactly(long position, ByteBuffer target) throws IOException {
    ByteBuffer read = target.duplicate();
    part.readExactly(position, target);
    int leaf = leafAt(position);
    if (leaf >= 0 && position + read.remaining() == leafEnd(leaf)) {
      leaves.set(leaf, sums(read));
    }
  }

  /**
   * Returns the print, reading on two threads whatever has not been read yet.
   *
   * @throws IOException if the part cannot be read to its end
   */
  Octets print() throws IOException {
    try {
      IntStream.range(0, leaves.length()).parallel().forEach(this::readLeaf);
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    MessageDigest all = Sha256.start();
    all.update(LABEL);
    all.update(ByteBuffer.allocate(Long.BYTES).putLong(layout.plainBytes()).flip());
    for (int leaf = 0; leaf < leaves.length(); leaf++) {
      byte[] sums = leaves.get(leaf);
      all.update(sums == null ? new byte[0] : sums);
    }
    return Octets.of(all.digest());
  }

  @Override
  public void close() {
    // whoever opened the bytes closes them
  }

  private void readLeaf(int leaf) {
    if (leaves.get(leaf) != null) {
      return;
    }
    long start = layout.clearStart(leaf * LEAF_SEGMENTS);
    ByteBuffer buffer = ByteBuffer.allocate((int) (leafEnd(leaf) - start));
    try {
      part.readExactly(start, buffer);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    leaves.set(leaf, sums(buffer.flip()));
  }

  private int leafAt(long position) {
    int segment = layout.plainBytes() == 0 ? 0 : layout.segmentAt(position);
    boolean begins =
        segment % LEAF_SEGMENTS == 0
            && segment < layout.segments()
            && layout.clearStart(segment) == position;
    return begins ? segment / LEAF_SEGMENTS : -1;
  }

  private long leafEnd(int leaf) {
    int next = (leaf + 1) * LEAF_SEGMENTS;
    return next >= layout.segments() ? layout.plainBytes() : layout.clearStart(next);
  }

  private static byte[] sums(ByteBuffer bytes) {
    CRC32 first = new CRC32();
    CRC32C second = new CRC32C();
    first.update(bytes.duplicate());
    second.update(bytes);
    return ByteBuffer.allocate(2 * Integer.BYTES)
        .putInt((int) first.getValue())
        .putInt((int) second.getValue())
        .array();
  }
}
