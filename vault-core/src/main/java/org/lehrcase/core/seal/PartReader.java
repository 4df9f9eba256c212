package org.lehrcase.core.seal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ClosedChannelException;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedDeque;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.keys.PartKey;

/**
 * Random access to the clear bytes of one part file.
 *
 * <p>Opening compares the header and the length with what the contents promise and authenticates
 * the last segment, so a cut or extended file never opens. A segment that is touched for the first
 * time is compared with its digest, if a list is given, and every segment with its tag each time; a
 * clear byte is given out only after both. Safe for use by many threads: each call borrows a cipher
 * with its arrays from a pool that grows to the number of threads at once.
 */
public final class PartReader implements ClearSource {
  private final ByteSource source;
  private final PartHeader header;
  private final PartStream stream;
  private final Optional<DigestList> digests;
  private final ConcurrentLinkedDeque<SegmentOpener> idle = new ConcurrentLinkedDeque<>();

  /**
   * Segments whose digest was found right. Written without a lock: at worst two threads compare the
   * same segment, and no data depends on the order of the writes.
   */
  private final boolean[] touched;

  private volatile boolean closed;

  private PartReader(
      ByteSource source, PartHeader header, PartStream stream, Optional<DigestList> digests) {
    this.source = source;
    this.header = header;
    this.stream = stream;
    this.digests = digests;
    this.touched = new boolean[stream.layout().segments()];
  }

  /**
   * Opens a part whose digests are proven.
   *
   * @param sealed the part file, which from now on belongs to the reader and is closed with it; it
   *     is also closed if this method throws
   * @param key the key of the part
   * @param expected the header that the contents promise
   * @param digests the list that {@link DigestList#proven} or {@link DigestList#provenWhole} gave
   * @return the reader, whose last segment is already authenticated
   * @throws VaultException.Truncated if the file is shorter than the header says
   * @throws VaultException.Tampered if it is another part, another key, or damaged
   * @throws VaultException if it is of another version, or no part at all
   * @throws IOException if the medium fails
   */
  public static PartReader open(
      ByteSource sealed, PartKey key, PartHeader expected, DigestList digests)
      throws IOException, VaultException {
    return closingOnFailure(sealed, key, expected, Optional.of(digests));
  }

  /**
   * Opens a part whose bytes the caller has proven in another way, or whose forgery by a fellow
   * buyer does not matter; otherwise as {@link #open}.
   *
   * @param sealed the part file, which from now on belongs to the reader
   * @param key the key of the part
   * @param expected the header it must have
   * @return the reader, whose last segment is already authenticated
   * @throws VaultException as {@link #open}
   * @throws IOException if the medium fails
   */
  public static PartReader openWithoutDigests(ByteSource sealed, PartKey key, PartHeader expected)
      throws IOException, VaultException {
    return closingOnFailure(sealed, key, expected, Optional.empty());
  }

  private static PartReader closingOnFailure(
      ByteSource medium, PartKey key, PartHeader expected, Optional<DigestList> digests)
      throws IOException, VaultException {
    PartReader reader = null;
    ByteSource sealed = new ReadAheadSource(medium);
    try {
      StreamHeader stream = readLead(sealed, expected);
      reader =
          new PartReader(sealed, expected, PartStream.existing(expected, stream, key), digests);
      reader.authenticateLastSegment();
      return reader;
    } catch (IOException | VaultException | RuntimeException e) {
      sealed.close();
      throw e;
    }
  }

  /** Checks everything that can be checked before a key is needed. */
  private static StreamHeader readLead(ByteSource sealed, PartHeader expected)
      throws IOException, VaultException {
    ByteBuffer lead =
        ByteBuffer.allocate((int) Math.min(SegmentLayout.LEAD_BYTES, sealed.sizeBytes()));
    sealed.readExactly(0, lead);
    PartHeader found = PartHeader.parse(lead.array());
    if (!found.equals(expected)) {
      throw new VaultException.Tampered("this part file is not the one that the contents name");
    }
    long expectedBytes = expected.layout().sealedBytes();
    String lengths = "part file: " + sealed.sizeBytes() + " bytes, expected " + expectedBytes;
    if (sealed.sizeBytes() < expectedBytes) {
      throw new VaultException.Truncated(lengths + "; copy it again");
    }
    if (sealed.sizeBytes() > expectedBytes) {
      throw new VaultException.Malformed(lengths + "; copy it again");
    }
    return StreamHeader.parse(lead.position(PartHeader.SIZE_BYTES));
  }

  private void authenticateLastSegment() throws IOException, VaultException {
    if (digests.isPresent()
        && (digests.get().sealedBytes() != layout().sealedBytes()
            || digests.get().log2SegmentBytes() != layout().log2SegmentBytes())) {
      throw new VaultException.Tampered("the digest list belongs to another part");
    }
    SegmentOpener opener = borrow();
    opener.hold(layout().lastSegment());
    giveBack(opener);
  }

  /** Returns the header of the part, as the contents promised it. */
  public PartHeader header() {
    return header;
  }

  SegmentLayout layout() {
    return stream.layout();
  }

  ByteSource source() {
    return source;
  }

  /** Compares a segment with its digest when it is touched for the first time. */
  boolean digestAgrees(int segment, byte[] sealed, int size) {
    if (digests.isEmpty() || touched[segment]) {
      return true;
    }
    touched[segment] = digests.get().matches(segment, sealed, size);
    return touched[segment];
  }

  @Override
  public long sizeBytes() {
    return header.plainBytes();
  }

  @Override
  public int bufferBytes() {
    return layout().segmentBytes();
  }

  @Override
  public int readAt(long position, ByteBuffer target) throws IOException, VaultException {
    if (position >= sizeBytes()) {
      return -1;
    }
    Objects.checkIndex(position, sizeBytes());
    int segment = layout().segmentAt(position);
    int from = (int) (position - layout().clearStart(segment));
    int count = Math.min(target.remaining(), layout().clearSize(segment) - from);
    SegmentOpener opener = borrow();
    try {
      target.put(opener.hold(segment), from, count);
    } finally {
      giveBack(opener);
    }
    return count;
  }

  @Override
  public ByteBuffer readSegment(long position, byte[] buffer) throws IOException, VaultException {
    Objects.checkIndex(position, sizeBytes());
    if (buffer.length < bufferBytes()) {
      throw new IllegalArgumentException(
          "a buffer of " + buffer.length + " bytes, needed " + bufferBytes());
    }
    int segment = layout().segmentAt(position);
    int from = (int) (position - layout().clearStart(segment));
    SegmentOpener opener = borrow();
    try {
      opener.openInto(segment, buffer);
    } finally {
      giveBack(opener);
    }
    return ByteBuffer.wrap(buffer, from, layout().clearSize(segment) - from);
  }

  private SegmentOpener borrow() throws ClosedChannelException {
    if (closed) {
      throw new ClosedChannelException();
    }
    SegmentOpener opener = idle.pollFirst();
    if (opener != null) {
      return opener;
    }
    int room = (int) Math.min(layout().segmentBytes(), layout().sealedBytes());
    return new SegmentOpener(this, stream.cipher(), room);
  }

  /** The one used last is lent next, as it holds the segment that a reader in order wants again. */
  private void giveBack(SegmentOpener opener) {
    if (closed) {
      opener.wipe();
    } else {
      idle.addFirst(opener);
    }
  }

  @Override
  public void close() throws IOException {
    closed = true;
    for (SegmentOpener opener = idle.poll(); opener != null; opener = idle.poll()) {
      opener.wipe();
    }
    source.close();
  }
}
