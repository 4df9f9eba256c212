package org.lehrcase.core.device;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.security.SecureRandom;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.primitive.Argon2id;

class LaptopBindingTest {
  private static final Argon2id.Cost CHEAP = new Argon2id.Cost(8, 1, 1);

  private final SecureRandom random = new SecureRandom();
  private final LaptopBinding binding = new LaptopBinding(random, CHEAP);
  private final LaptopBinding.Bound bound = binding.create(PlayedMachine.typical()).orElseThrow();

  static IntStream patterns() {
    return IntStream.range(0, 32);
  }

  private void opensIf(boolean expected, PlayedMachine machine) {
    Optional<DeviceSecret> opened = binding.open(bound.wraps(), machine);
    assertThat(opened.isPresent()).isEqualTo(expected);
    opened.ifPresent(secret -> assertThat(secret.sameAs(bound.secret())).isTrue());
  }

  @ParameterizedTest(name = "changed traits {0}")
  @MethodSource("patterns")
  void anyTwoTraitsMayChangeAndNoMore(int pattern) {
    PlayedMachine machine = PlayedMachine.typical();
    for (int slot = 0; slot < 5; slot++) {
      if ((pattern >> slot & 1) != 0) {
        machine.change(PlayedMachine.FIVE.get(slot));
      }
    }
    opensIf(Integer.bitCount(pattern) <= 2, machine);
  }

  @ParameterizedTest(name = "absent traits {0}")
  @MethodSource("patterns")
  void anyTwoTraitsMayBeAbsentAndNoMore(int pattern) {
    PlayedMachine machine = PlayedMachine.typical();
    for (int slot = 0; slot < 5; slot++) {
      if ((pattern >> slot & 1) != 0) {
        machine.without(PlayedMachine.FIVE.get(slot));
      }
    }
    opensIf(Integer.bitCount(pattern) <= 2, machine);
  }

  @ParameterizedTest(name = "changed or absent traits {0}")
  @MethodSource("patterns")
  void changedAndAbsentTraitsCountAlike(int pattern) {
    PlayedMachine machine = PlayedMachine.typical();
    for (int slot = 0; slot < 5; slot++) {
      TraitKind kind = PlayedMachine.FIVE.get(slot);
      if ((pattern >> slot & 1) != 0) {
        PlayedMachine unused = slot % 2 == 0 ? machine.change(kind) : machine.without(kind);
        assertThat(unused).isSameAs(machine);
      }
    }
    opensIf(Integer.bitCount(pattern) <= 2, machine);
  }

  @ParameterizedTest(name = "changed traits {0}")
  @MethodSource("patterns")
  void theReportNamesWhatChanged(int pattern) {
    PlayedMachine machine = PlayedMachine.typical();
    for (int slot = 0; slot < 5; slot++) {
      if ((pattern >> slot & 1) != 0) {
        machine.change(PlayedMachine.FIVE.get(slot));
      }
    }
    TraitReport report = binding.compare(bound.wraps(), machine);
    int changed = Integer.bitCount(pattern);
    assertThat(report.changed()).hasSize(changed <= 2 ? changed : 5);
    assertThat(report.same()).hasSize(changed <= 2 ? 5 - changed : 0);
    assertThat(report.absent()).isEmpty();
  }

  @Test
  void anAbsentTraitIsReportedAndIsNoReasonToWrapAnew() {
    PlayedMachine machine = PlayedMachine.typical().without(TraitKind.NETWORK);
    TraitReport report = binding.compare(bound.wraps(), machine);
    assertThat(report.absent()).containsExactly(TraitKind.NETWORK);
    assertThat(report.same()).hasSize(4);
    assertThat(binding.rewrapIfChanged(bound.secret(), bound.wraps(), machine)).isEmpty();
  }

  @Test
  void theSameMachineIsNotWrappedAnew() {
    assertThat(binding.rewrapIfChanged(bound.secret(), bound.wraps(), PlayedMachine.typical()))
        .isEmpty();
  }

  @Test
  void afterAChangeNewWrapsHoldTheSameSecretAndAllowTwoMore() {
    PlayedMachine machine =
        PlayedMachine.typical().change(TraitKind.SYSTEM_DISK).change(TraitKind.ROOT_VOLUME);
    Wraps anew = binding.rewrapIfChanged(bound.secret(), bound.wraps(), machine).orElseThrow();
    assertThat(anew.salt()).isNotEqualTo(bound.wraps().salt());
    machine.change(TraitKind.NETWORK).without(TraitKind.LOCAL_SECRET);
    assertThat(binding.open(bound.wraps(), machine)).isEmpty();
    DeviceSecret opened = binding.open(anew, machine).orElseThrow();
    assertThat(opened.sameAs(bound.secret())).isTrue();
  }

  @Test
  void aMachineWithFourTraitsMayLoseOne() {
    PlayedMachine four = PlayedMachine.typical().without(TraitKind.SYSTEM_DISK);
    LaptopBinding.Bound own = binding.create(four).orElseThrow();
    assertThat(own.wraps().toBytes()).hasSize(Wraps.BYTES);
    assertThat(binding.open(own.wraps(), four.change(TraitKind.NETWORK))).isPresent();
    assertThat(binding.open(own.wraps(), four.change(TraitKind.INSTALLATION))).isEmpty();
  }

  @Test
  void aMachineThatTellsTooLittleIsNotBound() {
    PlayedMachine two = new PlayedMachine();
    two.set(TraitKind.INSTALLATION, "c41f8ad2607e4b95b3d0126fe8a97c54");
    two.set(TraitKind.ROOT_VOLUME, "7e2a91d4-0c5b-4f68-a3b7-d91e5f20c846");
    assertThat(binding.create(two)).isEmpty();
    PlayedMachine weak = new PlayedMachine();
    weak.set(TraitKind.SYSTEM_DISK, "WD1234Q");
    weak.set(TraitKind.NETWORK, "3c:7c:3f:1a:92:e4");
    weak.set(TraitKind.ROOT_VOLUME, "1A2B-3C4D");
    assertThat(binding.create(weak)).isEmpty();
  }

  @Test
  void twoLaptopsNeverShareASecret() {
    LaptopBinding.Bound other = binding.create(PlayedMachine.typical()).orElseThrow();
    assertThat(other.secret().sameAs(bound.secret())).isFalse();
    assertThat(other.wraps()).isNotEqualTo(bound.wraps());
  }

  @Test
  void theStoredFormComesBack() throws VaultException {
    Wraps read = Wraps.parse(bound.wraps().toBytes());
    assertThat(read).isEqualTo(bound.wraps());
    assertThat(read.kinds()).isEqualTo(PlayedMachine.FIVE);
    assertThat(binding.open(read, PlayedMachine.typical())).isPresent();
  }

  @Test
  void aDamagedStoredFormIsRefusedOrDoesNotOpenWrongly() throws VaultException {
    byte[] stored = bound.wraps().toBytes();
    assertThatThrownBy(() -> Wraps.parse(new byte[421]))
        .isInstanceOf(VaultException.Truncated.class);
    byte[] newer = stored.clone();
    newer[0] = 2;
    assertThatThrownBy(() -> Wraps.parse(newer))
        .isInstanceOf(VaultException.UnsupportedVersion.class);
    for (int kind : new int[] {0, 2, 9, -1}) {
      byte[] changed = stored.clone();
      changed[17] = (byte) kind;
      assertThatThrownBy(() -> Wraps.parse(changed)).isInstanceOf(VaultException.Malformed.class);
    }
    byte[] rows = stored.clone();
    for (int row = 0; row < 10; row++) {
      rows[22 + 40 * row] ^= 1;
    }
    assertThat(binding.open(Wraps.parse(rows), PlayedMachine.typical())).isEmpty();
  }

  @Test
  void oneDamagedRowDoesNotShutTheLaptop() throws VaultException {
    byte[] stored = bound.wraps().toBytes();
    stored[22] ^= 1;
    assertThat(binding.open(Wraps.parse(stored), PlayedMachine.typical())).isPresent();
  }

  /** The only test at the cost that ships: 19 MiB, two passes. */
  @Test
  void theShippedCostBindsAndOpens() {
    LaptopBinding real = new LaptopBinding(random);
    LaptopBinding.Bound own = real.create(PlayedMachine.typical()).orElseThrow();
    DeviceSecret opened = real.open(own.wraps(), PlayedMachine.typical()).orElseThrow();
    assertThat(opened.sameAs(own.secret())).isTrue();
    assertThat(binding.open(own.wraps(), PlayedMachine.typical())).isEmpty();
  }

  @Test
  void nothingPrintsATraitOrTheSecret() {
    assertThat(bound.secret().toString()).isEqualTo("DeviceSecret[redacted]");
    for (Trait trait : PlayedMachine.typical().read()) {
      assertThat(trait.toString()).doesNotContain(trait.value()).contains("redacted");
    }
    assertThat(bound.toString()).contains("redacted");
  }
}
