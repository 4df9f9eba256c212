package org.lehrcase.core.seal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.lehrcase.core.VaultException;

/** The parts of one asset, seen as one clear source. Safe for use by many threads. */
public final class AssetReader implements ClearSource {
  private final List<PartReader> parts;

  /** Where each part begins in the asset, and at the end the length of the asset. */
  private final long[] starts;

  private AssetReader(List<PartReader> parts, long[] starts) {
    this.parts = parts;
    this.starts = starts;
  }

  /**
   * Joins opened parts, which from now on belong to the asset and are closed with it.
   *
   * @param parts all parts of one asset, in order
   * @return the asset
   * @throws IllegalArgumentException if a part is missing, foreign or out of order
   */
  public static AssetReader of(List<PartReader> parts) {
    if (parts.isEmpty()) {
      throw new IllegalArgumentException("an asset has at least one part");
    }
    long[] starts = new long[parts.size() + 1];
    PartHeader first = parts.get(0).header();
    for (int i = 0; i < parts.size(); i++) {
      PartHeader header = parts.get(i).header();
      if (header.part() != i
          || header.parts() != parts.size()
          || header.kind() != first.kind()
          || !header.asset().equals(first.asset())) {
        throw new IllegalArgumentException("the parts are not those of one asset, in order");
      }
      starts[i + 1] = starts[i] + header.plainBytes();
    }
    return new AssetReader(List.copyOf(parts), starts);
  }

  @Override
  public long sizeBytes() {
    return starts[parts.size()];
  }

  @Override
  public int bufferBytes() {
    return parts.stream().mapToInt(PartReader::bufferBytes).max().orElseThrow();
  }

  @Override
  public int readAt(long position, ByteBuffer target) throws IOException, VaultException {
    if (position >= sizeBytes()) {
      return -1;
    }
    int part = partAt(position);
    return parts.get(part).readAt(position - starts[part], target);
  }

  @Override
  public ByteBuffer readSegment(long position, byte[] buffer) throws IOException, VaultException {
    int part = partAt(position);
    return parts.get(part).readSegment(position - starts[part], buffer);
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
    for (PartReader part : parts) {
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
