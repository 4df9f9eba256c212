package org.lehrcase.core.license;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.license.MessageVectorReader.Kind;
import org.lehrcase.core.seal.VectorFile;

/** Every committed message is read, or refused, exactly as its vector says. */
class MessageVectorsTest {
  private static final int MAX_VECTOR_BYTES = 1 << 20;

  @TempDir static Path empty;
  private static Map<String, byte[]> made = Map.of();
  private static final Map<String, VectorFile> VECTORS = new TreeMap<>();

  @BeforeAll
  static void read() throws Exception {
    made = MessageVectorFiles.make(Optional.of(committed("letter.message")), empty);
    for (String name : made.keySet()) {
      if (name.endsWith(".txt")) {
        VECTORS.put(name, VectorFile.parse(new String(committed(name), UTF_8)));
      }
    }
  }

  static Stream<String> names() {
    return VECTORS.keySet().stream();
  }

  private static byte[] committed(String name) throws IOException {
    if (name.equals("none")) {
      return new byte[0];
    }
    try (InputStream in =
        MessageVectorsTest.class.getResourceAsStream("/vectors/message/" + name)) {
      return Objects.requireNonNull(in, name).readNBytes(MAX_VECTOR_BYTES);
    }
  }

  private static Stream<VectorFile> of(Kind kind, String word) {
    return VECTORS.entrySet().stream()
        .filter(e -> e.getKey().startsWith(kind.fileName() + "-" + word))
        .map(Map.Entry::getValue);
  }

  @Test
  void committedVectorsAreWhatTheGeneratorMakes() throws IOException {
    for (Map.Entry<String, byte[]> file : made.entrySet()) {
      assertThat(committed(file.getKey())).as(file.getKey()).isEqualTo(file.getValue());
    }
  }

  @Tag("slow")
  @ParameterizedTest(name = "{0}")
  @MethodSource("names")
  void readsOrRefusesAsTheVectorSays(String name) throws Exception {
    VectorFile vector = Objects.requireNonNull(VECTORS.get(name));
    var reader = new MessageVectorReader(new MessageVectorShop());
    assertThat(reader.outcome(vector, committed(vector.get("base"))))
        .isEqualTo(vector.get("expect"));
  }

  @Test
  void onlyTheWholeMessagesOpenAndACardUnderWhateverRoot() {
    VECTORS.forEach(
        (name, vector) ->
            assertThat(vector.get("expect").equals("opens"))
                .as(name)
                .isEqualTo(name.endsWith("-whole.txt") || name.equals("card-other-root.txt")));
  }

  @ParameterizedTest
  @EnumSource(Kind.class)
  void aWholeMessageIsWrittenAgainByteForByte(Kind kind) throws Exception {
    byte[] message = committed(kind.fileName() + ".message");
    var reader = new MessageVectorReader(new MessageVectorShop());
    assertThat(reader.read(kind, message, true)).isEqualTo(message);
  }

  @ParameterizedTest
  @EnumSource(value = Kind.class, mode = EnumSource.Mode.EXCLUDE, names = "CONTENTS")
  void aChangedSignatureOrSignerIsTamperedAndNothingMoreIsTold(Kind kind) {
    assertThat(of(kind, "flip-signature-r")).allMatch(v -> v.get("expect").equals("tampered"));
    assertThat(of(kind, "flip-signature-s")).allMatch(v -> v.get("expect").equals("tampered"));
    assertThat(of(kind, "flip-signature-end")).allMatch(v -> v.get("expect").equals("tampered"));
    assertThat(of(kind, "stranger")).allMatch(v -> v.get("expect").equals("tampered"));
    assertThat(of(kind, "label-")).isNotEmpty();
  }

  @ParameterizedTest
  @EnumSource(Kind.class)
  void anotherVersionIsToldByName(Kind kind) {
    for (String version : new String[] {"version-0", "version-2"}) {
      assertThat(of(kind, version))
          .isNotEmpty()
          .allMatch(v -> v.get("expect").equals("unsupportedversion"));
    }
  }

  @ParameterizedTest
  @EnumSource(Kind.class)
  void everyKindHasItsFaults(Kind kind) {
    assertThat(of(kind, "").count()).isGreaterThan(15);
    assertThat(of(kind, "cut-")).hasSize(6);
    assertThat(of(kind, "reordered-")).isNotEmpty();
  }
}
