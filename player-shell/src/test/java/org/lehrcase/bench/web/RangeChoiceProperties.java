package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The choice of a range against another reading of RFC 9110, sections 14.1 and 14.2, by hand and
 * with numbers of any size: no pattern, no long.
 */
class RangeChoiceProperties {
  private static final int CASES = 400;
  private static final String[] ODD = {
    "",
    "0",
    "00",
    "1",
    "9",
    "010",
    "+1",
    "-1",
    " 1",
    "1 ",
    "1.0",
    "0x1",
    "x",
    "\u0661",
    "1e3",
    "9223372036854775807",
    "9223372036854775808",
    "18446744073709551616",
    "99999999999999999999999"
  };

  static LongStream seeds() {
    Long given = Long.getLong("lehrcase.seed");
    SplittableRandom random = new SplittableRandom();
    return given != null
        ? LongStream.of(given)
        : LongStream.generate(() -> random.nextLong(1L << 48)).limit(20);
  }

  private static String number(SplittableRandom random, long size) {
    return switch (random.nextInt(5)) {
      case 0 -> ODD[random.nextInt(ODD.length)];
      case 1 -> String.valueOf(Math.max(0, size - 2 + random.nextInt(4)));
      case 2 -> "0".repeat(random.nextInt(30)) + random.nextLong(size + 3);
      default -> String.valueOf(random.nextLong(size + 3));
    };
  }

  private static String field(SplittableRandom random, long size) {
    String unit =
        List.of("bytes", "Bytes", "BYTES", "byte", "items", "")
            .get(Math.max(0, random.nextInt(20) - 14));
    String equals = random.nextInt(30) == 0 ? ":" : "=";
    String range =
        switch (random.nextInt(4)) {
          case 0 -> number(random, size) + "-";
          case 1 -> "-" + number(random, size);
          default -> number(random, size) + "-" + number(random, size);
        };
    String more = random.nextInt(10) == 0 ? "," + number(random, size) + "-" : "";
    return unit + equals + range + more;
  }

  /** What the standard says about one field: the positions, or nothing if the field is ignored. */
  private record Reading(BigInteger first, BigInteger pastLast) {}

  /** 1*DIGIT of RFC 5234: ASCII digits only. */
  private static Optional<BigInteger> digits(String text) {
    for (int i = 0; i < text.length(); i++) {
      if (text.charAt(i) < '0' || text.charAt(i) > '9') {
        return Optional.empty();
      }
    }
    return text.isEmpty() ? Optional.empty() : Optional.of(new BigInteger(text));
  }

  private static Optional<Reading> read(String field, BigInteger size) {
    int equals = field.indexOf('=');
    if (equals < 0 || !field.substring(0, equals).equalsIgnoreCase("bytes")) {
      return Optional.empty();
    }
    String range = field.substring(equals + 1).strip();
    int dash = range.indexOf('-');
    if (dash < 0 || range.indexOf(',') >= 0) {
      return Optional.empty(); // more than one range may be answered with the whole (14.2)
    }
    Optional<BigInteger> last = digits(range.substring(dash + 1));
    if (dash == 0) {
      return last.map(suffix -> new Reading(size.subtract(suffix.min(size)), size));
    }
    Optional<BigInteger> first = digits(range.substring(0, dash));
    boolean open = range.length() == dash + 1;
    if (first.isEmpty() || (!open && last.isEmpty())) {
      return Optional.empty();
    }
    BigInteger end = open ? size : last.get().add(BigInteger.ONE).min(size);
    boolean backwards = !open && last.get().compareTo(first.get()) < 0;
    return backwards ? Optional.empty() : Optional.of(new Reading(first.get(), end));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void theChoiceIsWhatTheStandardSays(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    for (int i = 0; i < CASES; i++) {
      long size = random.nextInt(5) == 0 ? random.nextLong(1L << 50) : random.nextLong(2000);
      String field = field(random, size);
      RangeChoice choice = RangeChoice.of(List.of(field), size);
      assertThat(choice).as("%s of %d bytes", field, size).isEqualTo(expected(field, size));
    }
  }

  private static RangeChoice expected(String field, long size) {
    BigInteger length = BigInteger.valueOf(size);
    Optional<Reading> reading = read(field, length);
    if (reading.isEmpty()) {
      return new RangeChoice.Whole();
    }
    BigInteger first = reading.get().first();
    BigInteger end = reading.get().pastLast();
    return first.compareTo(length) >= 0 || first.compareTo(end) >= 0
        ? new RangeChoice.Unsatisfiable()
        : new RangeChoice.Span(first.longValueExact(), end.longValueExact());
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void anythingElseIsTheWhole(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    for (int i = 0; i < CASES; i++) {
      StringBuilder noise = new StringBuilder();
      for (int length = random.nextInt(20); length > 0; length--) {
        noise.append("bytes=0123456789-, \t".charAt(random.nextInt(20)));
      }
      String field = noise.toString().replace("bytes=", "bytes");
      assertThat(RangeChoice.of(List.of(field), 100))
          .as(field)
          .isInstanceOf(RangeChoice.Whole.class);
    }
    assertThat(RangeChoice.of(List.of(), 100)).isInstanceOf(RangeChoice.Whole.class);
  }

  @Test
  void anExampleOfTheStandardIsChosenAsItSays() {
    // RFC 9110, section 14.1.2: a representation of 10000 bytes
    assertThat(RangeChoice.of(List.of("bytes=-500"), 10_000))
        .isEqualTo(new RangeChoice.Span(9500, 10_000));
    assertThat(RangeChoice.of(List.of("bytes=9500-"), 10_000))
        .isEqualTo(new RangeChoice.Span(9500, 10_000));
    assertThat(RangeChoice.of(List.of("bytes=500-999"), 10_000))
        .isEqualTo(new RangeChoice.Span(500, 1000));
    // the same, section 14.4: the answer's field for "the second 500 bytes" of 1234
    assertThat(new RangeChoice.Span(500, 1000).contentRange(1234)).isEqualTo("bytes 500-999/1234");
  }
}
