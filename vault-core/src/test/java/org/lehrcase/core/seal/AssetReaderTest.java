package org.lehrcase.core.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.keys.PartKey;

class AssetReaderTest {
  private static final int FIRST = 100_000;
  private static final int SECOND = 50_000;

  private final SecureRandom random = new SecureRandom();
  private final PartKey key = PartKey.random(random);
  private final AssetId asset = AssetId.random(random);
  private final byte[] clear = Samples.clear(FIRST + SECOND, 3);
  private final byte[] first = sealed(header(0, FIRST), 0);
  private final byte[] second = sealed(header(1, SECOND), FIRST);

  @Test
  void segmentsEndAtTheBoundOfAPart() throws Exception {
    try (AssetReader reader = AssetReader.of(List.of(part(first, 0), part(second, 1)))) {
      byte[] buffer = new byte[reader.bufferBytes()];
      assertThat(reader.sizeBytes()).isEqualTo(FIRST + SECOND);
      assertThat(reader.readSegment(FIRST - 1, buffer).remaining()).isEqualTo(1);
      assertThat(reader.readSegment(FIRST, buffer).remaining()).isEqualTo(SECOND);
      assertThat(Samples.all(reader)).isEqualTo(clear);
    }
  }

  @Test
  void emptyPartsHoldNothing() throws Exception {
    var head = new PartHeader(PartKind.ASSET, asset, 0, 16, 0, 3);
    var body = new PartHeader(PartKind.ASSET, asset, SECOND, 16, 1, 3);
    var tail = new PartHeader(PartKind.ASSET, asset, 0, 16, 2, 3);
    List<PartReader> parts =
        List.of(
            opened(sealed(head, 0), head),
            opened(sealed(body, 0), body),
            opened(sealed(tail, 0), tail));
    try (AssetReader reader = AssetReader.of(parts)) {
      assertThat(Samples.all(reader)).isEqualTo(Arrays.copyOf(clear, SECOND));
      assertThat(reader.readAt(SECOND, ByteBuffer.allocate(1))).isEqualTo(-1);
    }
  }

  @Test
  void bufferFitsTheCoarsestPart() throws Exception {
    var coarse = new PartHeader(PartKind.ASSET, asset, SECOND, 18, 1, 2);
    var parts = List.of(part(first, 0), opened(sealed(coarse, FIRST), coarse));
    try (AssetReader reader = AssetReader.of(parts)) {
      assertThat(reader.bufferBytes()).isEqualTo(1 << 18);
      assertThat(Samples.all(reader)).isEqualTo(clear);
    }
  }

  @Test
  void damageInOnePartLeavesTheOtherReadable() throws Exception {
    first[200] ^= 1;
    try (AssetReader reader = AssetReader.of(List.of(part(first, 0), part(second, 1)))) {
      byte[] buffer = new byte[reader.bufferBytes()];
      assertThatThrownBy(() -> reader.readSegment(0, buffer))
          .isInstanceOf(VaultException.Tampered.class)
          .hasMessageContaining("segment 0");
      assertThat(reader.readSegment(FIRST, buffer).get()).isEqualTo(clear[FIRST]);
    }
  }

  @Test
  void partsOfTwoAssetsOrOutOfOrderAreRefused() throws Exception {
    PartReader one = part(first, 0);
    PartReader two = part(second, 1);
    var foreign = new PartHeader(PartKind.ASSET, AssetId.random(random), SECOND, 16, 1, 2);
    var note = new PartHeader(PartKind.CORRECTION, asset, SECOND, 16, 1, 2);
    refused(List.of());
    refused(List.of(one));
    refused(List.of(two, one));
    refused(List.of(one, one));
    refused(List.of(one, opened(sealed(foreign, 0), foreign)));
    refused(List.of(one, opened(sealed(note, 0), note)));
  }

  private static void refused(List<PartReader> parts) {
    assertThatThrownBy(() -> AssetReader.of(parts)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void closingClosesAllPartsEvenIfOneFails() throws Exception {
    var stuck = new ClosingFails(ByteSource.of(first));
    var last = new FailingSource(ByteSource.of(second), FailingSource.NEVER);
    AssetReader reader =
        AssetReader.of(
            List.of(
                PartReader.openWithoutDigests(stuck, key, header(0, FIRST)),
                PartReader.openWithoutDigests(last, key, header(1, SECOND))));
    assertThatThrownBy(reader::close).isInstanceOf(IOException.class).hasMessage("stuck");
    assertThat(last.closed()).isTrue();
  }

  private record ClosingFails(ByteSource source) implements ByteSource {
    @Override
    public long sizeBytes() {
      return source.sizeBytes();
    }

    @Override
    public int readAt(long position, ByteBuffer target) throws IOException {
      return source.readAt(position, target);
    }

    @Override
    public void close() throws IOException {
      throw new IOException("stuck");
    }
  }

  private PartHeader header(int part, int size) {
    return new PartHeader(PartKind.ASSET, asset, size, 16, part, 2);
  }

  private byte[] sealed(PartHeader header, int from) {
    byte[] piece = Arrays.copyOfRange(clear, from, from + (int) header.plainBytes());
    return new PartSealer(random).sealBytes(piece, header, key);
  }

  private PartReader part(byte[] sealed, int part) throws Exception {
    return opened(sealed, header(part, part == 0 ? FIRST : SECOND));
  }

  private PartReader opened(byte[] sealed, PartHeader header) throws Exception {
    return PartReader.openWithoutDigests(ByteSource.of(sealed), key, header);
  }
}
