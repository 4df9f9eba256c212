package org.lehrcase.core.seal;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.primitive.Sha256;

/** Every committed vector opens, or is refused, exactly as it says. */
class SealVectorsTest {
  private static final int MAX_VECTOR_BYTES = 1 << 20;

  static Stream<String> names() throws IOException {
    return SealVectorFiles.make().keySet().stream().filter(name -> name.endsWith(".txt"));
  }

  @Test
  void committedVectorsAreWhatTheGeneratorMakes() throws IOException {
    for (Map.Entry<String, byte[]> made : SealVectorFiles.make().entrySet()) {
      assertThat(committed(made.getKey())).as(made.getKey()).isEqualTo(made.getValue());
    }
  }

  @Tag("slow")
  @ParameterizedTest(name = "{0}")
  @MethodSource("names")
  void opensOrRefusesAsTheVectorSays(String name) throws IOException {
    VectorFile vector = VectorFile.parse(new String(committed(name), UTF_8));
    var released = new ByteArrayOutputStream();
    assertThat(outcome(vector, true, released)).isEqualTo(vector.get("expect"));
    assertThat(HexFormat.of().formatHex(Sha256.of(released.toByteArray())))
        .isEqualTo(vector.get("released"));
  }

  @Tag("slow")
  @ParameterizedTest(name = "{0}")
  @MethodSource("names")
  void withoutDigestsTheTagAloneDecides(String name) throws IOException {
    VectorFile vector = VectorFile.parse(new String(committed(name), UTF_8));
    assertThat(outcome(vector, false, new ByteArrayOutputStream()))
        .isEqualTo(vector.get("without digests"));
  }

  /** Opens the part and reads it in order, one segment at a time. */
  private static String outcome(
      VectorFile vector, boolean withDigests, ByteArrayOutputStream released) throws IOException {
    int segment = -1;
    try (PartReader reader = opened(vector, withDigests)) {
      byte[] buffer = new byte[reader.bufferBytes()];
      long position = 0;
      while (position < reader.sizeBytes()) {
        segment++;
        ByteBuffer clear = reader.readSegment(position, buffer);
        position += clear.remaining();
        released.write(buffer, clear.position(), clear.remaining());
      }
      return "opens";
    } catch (VaultException e) {
      return word(e) + (segment < 0 ? " at opening" : " at segment " + segment);
    }
  }

  private static PartReader opened(VectorFile vector, boolean withDigests)
      throws IOException, VaultException {
    byte[] file = committed(vector.get("base"));
    for (String edit : vector.edits()) {
      file = VectorEdit.apply(file, edit);
    }
    PartHeader header = PartHeader.parse(HexFormat.of().parseHex(vector.get("header")));
    PartKey key = PartKey.ofBytes(HexFormat.of().parseHex(vector.get("key")));
    if (!withDigests) {
      return PartReader.openWithoutDigests(ByteSource.of(file), key, header);
    }
    DigestList digests = DigestList.parse(HexFormat.of().parseHex(vector.get("digests")));
    return PartReader.open(ByteSource.of(file), key, header, digests);
  }

  private static String word(VaultException e) {
    if (e instanceof VaultException.UnsupportedVersion) {
      return "unsupported";
    }
    return e.getClass().getSimpleName().toLowerCase(Locale.ROOT);
  }

  private static byte[] committed(String name) throws IOException {
    try (InputStream in = SealVectorsTest.class.getResourceAsStream("/vectors/seal/" + name)) {
      return Objects.requireNonNull(in, name).readNBytes(MAX_VECTOR_BYTES);
    }
  }
}
