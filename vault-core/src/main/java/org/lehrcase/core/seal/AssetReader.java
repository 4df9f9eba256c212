package org.lehrcase.core.seal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.lehrcase.core.VaultException;

/**
 * The parts of one asset, seen as one clear source. Safe for use by many threads.
 *
 * <p>A part is opened when one of its bytes is asked for, and stays open: a long film begins to
 * play with its first part alone. A part that cannot be opened fails that one reading; the next
 * reading there tries again, since a stick may have come back.
 */
public final class AssetReader implements ClearSource {
  private final List<PartSlot> parts;
  private final int bufferBytes;

  /** Where each part begins in the asset, and at the end the length of the asset. */
  private final long[] starts;

  private AssetReader(List<PartSlot> parts) {
    this.parts = List.copyOf(parts);
    this.starts = new long[parts.size() + 1];
    int widest = 0;
    for (int i = 0; i < parts.size(); i++) {
      PartHeader header = parts.get(i).header();
      starts[i + 1] = starts[i] + header.plainBytes();
      widest = Math.max(widest, header.layout().segmentBytes());
    }
    this.bufferBytes = widest;
  }

  /** Opens parts by number, perhaps from several threads at once, each for another part. */
  @FunctionalInterface
  public interface PartOpener {
    /**
     * Opens one part.
     *
     * @param number of the part, from 0
     * @return a reader for exactly the header that was promised for this part
     * @throws VaultException.NotHere if the part is in no place where it was looked for
     * @throws VaultException if it is not the part that was promised
     * @throws IOException if the medium fails
     */
    PartReader open(int number) throws IOException, VaultException;
  }

  /**
   * Joins opened parts, which from now on belong to the asset and are closed with it.
   *
   * @param parts all parts of one asset, in order
   * @return the asset
   * @throws IllegalArgumentException if a part is missing, foreign or out of order
   */
  public static AssetReader of(List<PartReader> parts) {
    requireOneAsset(parts.stream().map(PartReader::header).toList());
    return new AssetReader(parts.stream().map(PartSlot::opened).toList());
  }

  /**
   * Joins parts that are opened when they are touched.
   *
   * @param headers what is promised of all parts of one asset, in order
   * @param opener opens a part; what it gives belongs to the asset and is closed with it
   * @return the asset, of which nothing is open yet
   * @throws IllegalArgumentException if a part is missing, foreign or out of order
   */
  public static AssetReader lazily(List<PartHeader> headers, PartOpener opener) {
    requireOneAsset(headers);
    List<PartSlot> parts = new ArrayList<>();
    headers.forEach(header -> parts.add(PartSlot.shut(header, opener)));
    return new AssetReader(parts);
  }

  private static void requireOneAsset(List<PartHeader> headers) {
    if (headers.isEmpty()) {
      throw new IllegalArgumentException("an asset has at least one part");
    }
    PartHeader first = headers.get(0);
    for (int i = 0; i < headers.size(); i++) {
      PartHeader header = headers.get(i);
      if (header.part() != i
          || header.parts() != headers.size()
          || header.kind() != first.kind()
          || !header.asset().equals(first.asset())) {
        throw new IllegalArgumentException("the parts are not those of one asset, in order");
      }
    }
  }

  @Override
  public long sizeBytes() {
    return starts[parts.size()];
  }

  @Override
  public int bufferBytes() {
    return bufferBytes;
  }

  /**
   * Opens a part now, so that what is wrong with it is known before a byte is asked for.
   *
   * @param number of the part, from 0
   * @throws VaultException as reading a byte of it would
   * @throws IOException if the medium fails
   */
  public void touch(int number) throws IOException, VaultException {
    var unused = parts.get(number).reader();
  }

  @Override
  public int readAt(long position, ByteBuffer target) throws IOException, VaultException {
    if (position >= sizeBytes()) {
      return -1;
    }
    int part = partAt(position);
    return parts.get(part).reader().readAt(position - starts[part], target);
  }

  @Override
  public ByteBuffer readSegment(long position, byte[] buffer) throws IOException, VaultException {
    int part = partAt(position);
    return parts.get(part).reader().readSegment(position - starts[part], buffer);
  }

  /** Returns the last part that begins at or before {@code position}; empty parts hold nothing. */
  private int partAt(long position) {
    Objects.checkIndex(position, sizeBytes());
    int found = Arrays.binarySearch(starts, position);
    if (found < 0) {
      return -found - 2;
    }
    while (starts[found + 1] == position) {
      found++;
    }
    return found;
  }

  @Override
  public void close() throws IOException {
    IOException failure = null;
    for (PartSlot part : parts) {
      try {
        part.close();
      } catch (IOException e) {
        failure = e;
      }
    }
    if (failure != null) {
      throw failure;
    }
  }
}
