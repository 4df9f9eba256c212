package org.lehrcase.core.device;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.security.SecureRandom;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.Seeds;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.Argon2id;

/** The stored record of a laptop: its form, and what a thief can and cannot do with it. */
class WrapsProperties {
  private static final Argon2id.Cost CHEAP = new Argon2id.Cost(8, 1, 1);

  private final SecureRandom random = new SecureRandom();
  private final LaptopBinding binding = new LaptopBinding(random, CHEAP);
  private final LaptopBinding.Bound bound = binding.create(PlayedMachine.typical()).orElseThrow();
  private final byte[] stored = bound.wraps().toBytes();

  static LongStream seeds() {
    return Seeds.some(20);
  }

  private static PlayedMachine machine(SplittableRandom random) {
    PlayedMachine machine = new PlayedMachine();
    for (TraitKind kind : TraitKind.values()) {
      if (random.nextInt(5) > 0) {
        String value = Octets.of(Seeds.bytes(random, 16)).hex();
        machine.set(kind, kind == TraitKind.NETWORK ? "3c7c3f" + value.substring(0, 6) : value);
      }
    }
    return machine;
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void anyMachineThatTellsEnoughIsKnownAgainAndNoOtherIs(long seed) {
    var chance = new SplittableRandom(seed);
    PlayedMachine machine = machine(chance);
    var found = binding.create(machine);
    assertThat(found.isPresent()).isEqualTo(TraitRules.choose(machine.read()).size() >= 3);
    found.ifPresent(
        own -> {
          assertThat(binding.open(own.wraps(), machine).orElseThrow().sameAs(own.secret()))
              .isTrue();
          assertThat(binding.open(own.wraps(), machine(chance))).isEmpty();
        });
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void whatIsStoredComesBackByteForByte(long seed) throws VaultException {
    var own = binding.create(machine(new SplittableRandom(seed)));
    if (own.isPresent()) {
      byte[] bytes = own.get().wraps().toBytes();
      assertThat(bytes).hasSize(Wraps.BYTES);
      Wraps read = Wraps.parse(bytes);
      assertThat(read).isEqualTo(own.get().wraps()).hasSameHashCodeAs(own.get().wraps());
      assertThat(read.toBytes()).isEqualTo(bytes);
      assertThat(read.kinds()).isEqualTo(own.get().wraps().kinds());
    }
  }

  @Test
  void theTenThreesAreAllThereAre() {
    Set<List<Integer>> threes = new HashSet<>();
    for (int[] three : Wraps.SUBSETS) {
      assertThat(three).hasSize(3).isSorted();
      threes.add(List.of(three[0], three[1], three[2]));
    }
    assertThat(threes).hasSize(10);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 421, 423, 844})
  void anotherLengthIsTold(int size) {
    byte[] bytes = Arrays.copyOf(stored, size);
    assertThatThrownBy(() -> Wraps.parse(bytes))
        .isInstanceOf(VaultException.Truncated.class)
        .hasMessageContaining(String.valueOf(size));
  }

  @ParameterizedTest
  @ValueSource(bytes = {0, 2, 127, -1})
  void anotherVersionIsTold(byte version) {
    byte[] bytes = stored.clone();
    bytes[0] = version;
    assertThatThrownBy(() -> Wraps.parse(bytes))
        .isInstanceOf(VaultException.UnsupportedVersion.class);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "0000000000",
        "0102000000",
        "0201030000",
        "0101020000",
        "0102030004",
        "0102030007",
        "ff02030405"
      })
  void kindsOutOfOrderOrUnknownAreRefused(String kinds) {
    byte[] bytes = stored.clone();
    byte[] codes = Octets.ofHex(kinds).toBytes();
    System.arraycopy(codes, 0, bytes, 17, codes.length);
    assertThatThrownBy(() -> Wraps.parse(bytes)).isInstanceOf(VaultException.Malformed.class);
  }

  @Test
  void oneLaptopBoundTwiceSharesNoByteOfItsRows() {
    Wraps again = binding.create(PlayedMachine.typical()).orElseThrow().wraps();
    assertThat(again.salt()).isNotEqualTo(bound.wraps().salt());
    Set<Octets> rows = new HashSet<>();
    for (int subset = 0; subset < 10; subset++) {
      rows.add(bound.wraps().row(subset));
      rows.add(again.row(subset));
    }
    assertThat(rows).hasSize(20);
  }

  @Test
  void aRowInThePlaceOfAnotherDoesNotOpen() throws VaultException {
    byte[] swapped = stored.clone();
    int rows = stored.length - 10 * Wraps.ROW_BYTES;
    for (int subset = 0; subset < 10; subset++) {
      int from = rows + (subset + 1) % 10 * Wraps.ROW_BYTES;
      System.arraycopy(stored, from, swapped, rows + subset * Wraps.ROW_BYTES, Wraps.ROW_BYTES);
    }
    assertThat(binding.open(Wraps.parse(swapped), PlayedMachine.typical())).isEmpty();
  }

  @Test
  void anotherSaltShutsEveryRow() throws VaultException {
    byte[] salted = stored.clone();
    salted[1] ^= 1;
    assertThat(binding.open(Wraps.parse(salted), PlayedMachine.typical())).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(TraitKind.class)
  void everyKindHasOneCodeAndALimitOfItsBits(TraitKind kind) {
    assertThat(TraitKind.ofCode(kind.code())).contains(kind);
    Trait long1 = new Trait(kind, "3c7c3f1a92e4".repeat(12));
    assertThat(TraitRules.bits(long1)).isLessThanOrEqualTo(kind.maxBits());
    assertThat(new Trait(kind, "ab cd-12").toString())
        .doesNotContain("12")
        .doesNotContain("ab".toUpperCase(Locale.ROOT));
  }
}
