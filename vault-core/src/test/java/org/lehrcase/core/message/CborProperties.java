package org.lehrcase.core.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import com.upokecenter.cbor.CBOREncodeOptions;
import com.upokecenter.cbor.CBORObject;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;

/** Random values of our subset, against a general CBOR library that nothing else here uses. */
class CborProperties {
  private static final CBOREncodeOptions CANONICAL =
      new CBOREncodeOptions("ctap2canonical=true;allowduplicatekeys=false");

  static LongStream seeds() {
    return Seeds.some(200);
  }

  /** A random tree: List, Long, Octets, String or Boolean. */
  private static Object tree(SplittableRandom random, int depth) {
    int kind = random.nextInt(depth >= 4 ? 4 : 6);
    return switch (kind) {
      case 0 -> random.nextLong() >>> random.nextInt(1, 64);
      case 1 -> Octets.of(Seeds.bytes(random, random.nextInt(300)));
      case 2 -> "gl\u00e4s-\u6c34".repeat(random.nextInt(30));
      case 3 -> random.nextBoolean();
      default -> {
        List<Object> list = new ArrayList<>();
        for (int i = random.nextInt(30); i > 0; i--) {
          list.add(tree(random, depth + 1));
        }
        yield list;
      }
    };
  }

  private static CborWriter write(CborWriter writer, Object value) {
    if (value instanceof List<?> list) {
      writer.array(list.size());
      list.forEach(element -> write(writer, element));
    } else if (value instanceof Long number) {
      writer.uint(number);
    } else if (value instanceof Octets octets) {
      writer.bytes(octets);
    } else if (value instanceof String text) {
      writer.text(text);
    } else {
      writer.bool((Boolean) value);
    }
    return writer;
  }

  private static void readAndCompare(CborReader reader, Object value) throws VaultException {
    if (value instanceof List<?> list) {
      reader.arrayOf(list.size());
      for (Object element : list) {
        readAndCompare(reader, element);
      }
    } else if (value instanceof Long number) {
      assertThat(reader.uint(Long.MAX_VALUE)).isEqualTo(number);
    } else if (value instanceof Octets octets) {
      assertThat(reader.octets(octets.size())).isEqualTo(octets);
    } else if (value instanceof String text) {
      assertThat(reader.text(100_000)).isEqualTo(text);
    } else {
      assertThat(reader.bool()).isEqualTo(value);
    }
  }

  private static CBORObject reference(Object value) {
    if (value instanceof List<?> list) {
      CBORObject array = CBORObject.NewArray();
      list.forEach(element -> array.Add(reference(element)));
      return array;
    }
    return value instanceof Octets octets
        ? CBORObject.FromObject(octets.toBytes())
        : CBORObject.FromObject(value);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void whatIsWrittenIsReadBackAndTheReferenceWritesTheSame(long seed) throws VaultException {
    Object value = tree(new SplittableRandom(seed), 0);
    byte[] written = write(new CborWriter(), value).toBytes();
    CborReader reader = CborReader.of(written);
    readAndCompare(reader, value);
    reader.end();
    assertThat(CBORObject.DecodeFromBytes(written)).isEqualTo(reference(value));
    assertThat(reference(value).EncodeToBytes(CANONICAL)).isEqualTo(written);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void foreignBytesAreReadOrRefusedAndNothingElse(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    byte[] written = write(new CborWriter(), tree(random, 0)).toBytes();
    for (int flips = 0; flips < 20; flips++) {
      byte[] changed = written.clone();
      changed[random.nextInt(changed.length)] ^= (byte) (1 << random.nextInt(8));
      assertThatCode(() -> walk(CborReader.of(changed), changed)).doesNotThrowAnyException();
    }
  }

  /** Reads whatever comes next by its first byte, as far as it goes. */
  private static void walk(CborReader reader, byte[] bytes) {
    try {
      while (true) {
        if (!reader.skipNull()) {
          readAny(reader, bytes.length);
        }
      }
    } catch (VaultException e) {
      assertThat(e.getMessage()).isNotBlank();
    }
  }

  private static void readAny(CborReader reader, int limit) throws VaultException {
    try {
      reader.array(limit);
    } catch (VaultException.Malformed e) {
      reader.bytes(limit);
    }
  }
}
