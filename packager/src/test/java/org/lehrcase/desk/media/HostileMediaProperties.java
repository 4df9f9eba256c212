package org.lehrcase.desk.media;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.IOException;
import java.time.Duration;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.seal.ByteSource;

/**
 * Whatever a film claims, reading it ends soon, with an answer or with the one checked exception.
 */
class HostileMediaProperties {
  private static final long SEED = 20_260_117L;
  private static final int ROUNDS = 1500;
  private static final long[] NASTY = {
    0, 1, 7, 8, 15, 16, 0x7fff_ffffL, 0x8000_0000L, 0xffff_ffffL, 0xffff_fff8L
  };

  static Stream<String> films() {
    return Samples.FILMS.stream();
  }

  @ParameterizedTest(name = "{0}, seed " + SEED)
  @MethodSource("films")
  void mutatedFilmsAreReadOrRefused(String film) {
    var random = new SplittableRandom(SEED);
    var original = Samples.bytes(film);
    assertTimeoutPreemptively(
        Duration.ofSeconds(60),
        () -> {
          var read = 0;
          var refused = 0;
          for (var round = 0; round < ROUNDS; round++) {
            if (survives(mutated(original, random))) {
              read++;
            } else {
              refused++;
            }
          }
          assertThat(read).as("some mutations do no harm").isPositive();
          assertThat(refused).as("some mutations are noticed").isPositive();
        });
  }

  /** Returns whether the film was read; anything but the checked exception fails the test. */
  private static boolean survives(byte[] film) throws IOException {
    try {
      MediaProbe.probe(ByteSource.of(film));
      var view = FastStart.view(ByteSource.of(film));
      assertThat(view.sizeBytes()).isLessThan(film.length * 3L);
      return true;
    } catch (MediaException expected) {
      assertThat(expected.reason()).isNotBlank();
      return false;
    }
  }

  /** Hits the tables, not the pictures: a nasty number, a flipped bit, or a missing end. */
  private static byte[] mutated(byte[] original, SplittableRandom random) {
    var film = original.clone();
    var changes = 1 + random.nextInt(4);
    for (var i = 0; i < changes; i++) {
      var at = place(film, random);
      if (random.nextInt(3) == 0) {
        film[at] ^= (byte) (1 << random.nextInt(8));
      } else {
        var value = NASTY[random.nextInt(NASTY.length)];
        for (var k = 0; k < 4 && at + k < film.length; k++) {
          film[at + k] = (byte) (value >> (24 - 8 * k));
        }
      }
    }
    return random.nextInt(10) == 0
        ? java.util.Arrays.copyOf(film, random.nextInt(film.length))
        : film;
  }

  private static int place(byte[] film, SplittableRandom random) {
    return switch (random.nextInt(3)) {
      case 0 -> random.nextInt(Math.min(256, film.length));
      case 1 -> film.length - 1 - random.nextInt(Math.min(2600, film.length));
      default -> random.nextInt(film.length);
    };
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("films")
  void everyTruncationIsReadOrRefused(String film) throws IOException {
    var original = Samples.bytes(film);
    for (var size = 0; size < original.length; size += 1 + size / 200) {
      survives(java.util.Arrays.copyOf(original, size));
    }
    assertThat(survives(original)).isTrue();
  }

  @Test
  void aBoxThatContainsItselfForEverIsNotFollowed() throws IOException {
    var film = Samples.box("stbl", new byte[0]);
    for (var i = 0; i < 20_000; i++) {
      film = i % 2 == 0 ? nested("moov", film) : nested("trak", film);
      if (film.length > 100_000) {
        break;
      }
    }
    assertThat(survives(Samples.joined(Samples.box("ftyp", new byte[8]), film))).isFalse();
  }

  private static byte[] nested(String type, byte[] inner) {
    return Samples.box(type, inner);
  }

  @Test
  void aNestOfBoxesOnTheWayToTheOffsetsIsRefusedBeforeTheStackEnds() throws IOException {
    var inner = Samples.box("stco", Samples.ints(0, 1, 24));
    for (var i = 0; i < 6000; i++) {
      inner = nested("trak", inner);
    }
    var film =
        Samples.joined(
            Samples.box("ftyp", new byte[8]),
            Samples.box("mdat", new byte[32]),
            nested("moov", inner));
    try {
      FastStart.view(ByteSource.of(film));
      assertThat(false).as("the nest must be refused").isTrue();
    } catch (MediaException expected) {
      assertThat(expected.kind()).isEqualTo(MediaException.Kind.BROKEN);
    }
  }

  @Test
  void anIndexLargerThanTheLimitIsRefusedWithoutReadingIt() throws IOException {
    var size = Movie.MAX_INDEX_BYTES + 100;
    var head = Samples.joined(Samples.box("ftyp", new byte[8]), Samples.ints(size), bytes("moov"));
    var film = Samples.longer(head, 16L + size, Long.MAX_VALUE / 2, new byte[0]);
    try {
      MediaProbe.probe(film);
      assertThat(false).as("the index must be refused").isTrue();
    } catch (MediaException expected) {
      assertThat(expected.kind()).isEqualTo(MediaException.Kind.TOO_LARGE);
    }
  }

  private static byte[] bytes(String text) {
    return text.getBytes(java.nio.charset.StandardCharsets.US_ASCII);
  }
}
