package org.lehrcase.core.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.crypto.tink.StreamingAead;
import com.google.crypto.tink.subtle.AesGcmHkdfStreaming;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.keys.PartKey;

/**
 * The reference library of the published construction opens what we wrote, and we open its files.
 */
@Tag("slow")
class ReferenceStreamTest {
  private final SecureRandom random = new SecureRandom();
  private final PartKey key = PartKey.random(random);
  private final AssetId asset = AssetId.random(random);

  static Stream<Arguments> sizes() {
    Stream.Builder<Arguments> sizes = Stream.builder();
    for (int log2 = 16; log2 <= 20; log2++) {
      int capacity = (1 << log2) - 16;
      int segments = log2 < 19 ? 4 : 2;
      for (int size : new int[] {0, 1, 15, 16, 17}) {
        sizes.add(Arguments.of(size, log2));
      }
      for (int full = 1; full <= segments; full++) {
        for (int off = -1; off <= 1; off++) {
          sizes.add(Arguments.of(full * capacity - 80 + off, log2));
        }
      }
    }
    return sizes.build();
  }

  @ParameterizedTest(name = "{0} bytes, segments of 2^{1}")
  @MethodSource("sizes")
  void referenceOpensWhatWeSealed(int size, int log2) throws Exception {
    PartHeader header = header(size, log2);
    byte[] clear = Samples.clear(size, size);
    byte[] sealed = new PartSealer(random).sealBytes(clear, header, key);

    var behindOurHeader = new ByteArrayInputStream(sealed, 40, sealed.length - 40);
    try (var opened = reference(log2).newDecryptingStream(behindOurHeader, header.toBytes())) {
      assertThat(opened.readNBytes(size + 1)).isEqualTo(clear);
    }
  }

  @ParameterizedTest(name = "{0} bytes, segments of 2^{1}")
  @MethodSource("sizes")
  void weOpenWhatTheReferenceSealed(int size, int log2) throws Exception {
    PartHeader header = header(size, log2);
    byte[] clear = Samples.clear(size, size);
    byte[] sealed = sealedByReference(clear, header);

    assertThat(sealed).hasSize(Math.toIntExact(header.layout().sealedBytes()));
    assertThat(PartSealer.openBytes(sealed, key, header)).isEqualTo(clear);
  }

  @Test
  void referenceSeeksInsideOurFileAsItLiesOnTheMedium(@TempDir Path folder) throws Exception {
    PartHeader header = header(1_000_000, 16);
    byte[] clear = Samples.clear(1_000_000, 7);
    Path file = folder.resolve("part");
    new PartSealer(random).seal(ByteSource.of(clear), header, key, file, Progress.NONE);

    try (SeekableByteChannel opened =
        reference(16).newSeekableDecryptingChannel(FileChannel.open(file), header.toBytes())) {
      assertThat(opened.size()).isEqualTo(clear.length);
      for (int position : new int[] {999_999, 0, 65_439, 65_440, 131_000, 500_000}) {
        ByteBuffer one = ByteBuffer.allocate(1);
        opened.position(position);
        assertThat(opened.read(one)).isEqualTo(1);
        assertThat(one.get(0)).isEqualTo(clear[position]);
      }
    }
  }

  @Test
  void headerIsBoundForTheReferenceToo() throws Exception {
    PartHeader header = header(100, 16);
    byte[] sealed = new PartSealer(random).sealBytes(Samples.clear(100, 1), header, key);
    byte[] otherHeader = header(101, 16).toBytes();
    var behindOurHeader = new ByteArrayInputStream(sealed, 40, sealed.length - 40);
    try (var opened = reference(16).newDecryptingStream(behindOurHeader, otherHeader)) {
      assertThatThrownBy(() -> opened.readNBytes(100)).isInstanceOf(IOException.class);
    }
  }

  @Test
  void severalWorkersWriteTheSameStream(@TempDir Path folder) throws Exception {
    int size = 5_000_000;
    PartHeader header = header(size, 16);
    byte[] clear = Samples.clear(size, 3);
    Path file = folder.resolve("part");
    new PartSealer(random, 3).seal(ByteSource.of(clear), header, key, file, Progress.NONE);
    try (var in = Files.newInputStream(file)) {
      in.skipNBytes(40);
      try (var opened = reference(16).newDecryptingStream(in, header.toBytes())) {
        assertThat(opened.readNBytes(size + 1)).isEqualTo(clear);
      }
    }
  }

  private PartHeader header(int size, int log2) {
    return new PartHeader(PartKind.ASSET, asset, size, log2, 0, 1);
  }

  private byte[] sealedByReference(byte[] clear, PartHeader header)
      throws GeneralSecurityException, IOException {
    var sealed = new ByteArrayOutputStream();
    sealed.write(header.toBytes());
    try (OutputStream out =
        reference(header.log2SegmentBytes()).newEncryptingStream(sealed, header.toBytes())) {
      out.write(clear);
    }
    return sealed.toByteArray();
  }

  private StreamingAead reference(int log2) {
    return key.use(
        raw -> {
          try {
            return new AesGcmHkdfStreaming(raw.clone(), "HmacSha256", 32, 1 << log2, 40);
          } catch (GeneralSecurityException e) {
            throw new AssertionError(e);
          }
        });
  }
}
