package org.lehrcase.core.device;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TraitRulesTest {
  @ParameterizedTest(name = "[{0}]")
  @ValueSource(
      strings = {
        "",
        "   ",
        "00000000-0000-0000-0000-000000000000",
        "FFFFFFFF-FFFF-FFFF-FFFF-FFFFFFFFFFFF",
        "To be filled by O.E.M.",
        "to BE filled by oem",
        "Default string",
        "System Serial Number",
        "03000200-0400-0500-0006-000700080009",
        "00020003-0004-0005-0006-000700080009",
        "None",
        "Not Specified",
        "12345678-1234-5678-1234-567812345678",
        "0123456789",
        "1111-2222-3333",
        "UNKNOWN",
        "N/A",
      })
  void whatMakersLeaveOrManyMachinesShareIsRefused(String value) {
    assertThat(TraitRules.isUsable(new Trait(TraitKind.HARDWARE, value))).isFalse();
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({
    "3c:7c:3f:1a:92:e4, true",
    "3C-7C-3F-1A-92-E4, true",
    "00:00:00:00:00:00, false",
    "ff:ff:ff:ff:ff:ff, false",
    "02:42:ac:11:00:02, false",
    "da:a1:19:3e:77:01, false",
    "01:00:5e:12:34:56, false",
    "3c:7c:3f:1a:92, false",
    "3c7c3f1a92e4 547b21c09d3f, true",
    "3c7c3f1a92e4 0242ac110002, false",
  })
  void onlyABuiltInCardsOwnAddressIsUsed(String address, boolean usable) {
    assertThat(TraitRules.isUsable(new Trait(TraitKind.NETWORK, address))).isEqualTo(usable);
  }

  @ParameterizedTest(name = "{0} {1}: {2} bits")
  @CsvSource({
    "INSTALLATION, c41f8ad2607e4b95b3d0126fe8a97c54, 122",
    "LOCAL_SECRET, 5d1c7f0e9ab34c28d6e1f4a79c02b853, 128",
    "ROOT_VOLUME, 1A2B-3C4D, 32",
    "SYSTEM_DISK, S3Z9NB0K714283Q, 30",
    "SYSTEM_DISK, S3Z9NB0K714283QWXYZRTG, 40",
    "NETWORK, 3c:7c:3f:1a:92:e4, 24",
    "NETWORK, 3c7c3f1a92e4 547b21c09d3f, 48",
  })
  void bitsAreEstimatedFromBelow(TraitKind kind, String value, int bits) {
    assertThat(TraitRules.bits(new Trait(kind, value))).isEqualTo(bits);
  }

  @Test
  void theStrongestFiveAreChosenInAnyOrderOfReading() {
    PlayedMachine machine =
        PlayedMachine.typical().set(TraitKind.HARDWARE, "8f3a6c10-25de-11ec-9b71-d45d64a0c3e2");
    List<Trait> read = machine.read();
    List<Trait> chosen = TraitRules.choose(read);
    assertThat(chosen).hasSize(5).extracting(Trait::kind).doesNotContain(TraitKind.NETWORK);
    List<Trait> backwards = new ArrayList<>(read);
    Collections.reverse(backwards);
    assertThat(TraitRules.choose(backwards)).isEqualTo(chosen);
  }

  @Test
  void everyAllowedThreeOfATypicalMachineHoldsAtLeastNinetyBits() {
    List<Trait> chosen = TraitRules.choose(PlayedMachine.typical().read());
    for (int[] three : Wraps.SUBSETS) {
      assertThat(
              TraitRules.isEnough(chosen.get(three[0]), chosen.get(three[1]), chosen.get(three[2])))
          .isTrue();
    }
  }

  @Test
  void spellingDoesNotMatter() {
    Trait lower = new Trait(TraitKind.HARDWARE, " 8f3a6c10-25de-11ec-9b71-d45d64a0c3e2\n");
    Trait upper = new Trait(TraitKind.HARDWARE, "8F3A6C1025DE11EC9B71D45D64A0C3E2");
    assertThat(lower).isEqualTo(upper);
  }
}
