package org.lehrcase.core.id;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.security.SecureRandom;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class IdentifiersTest {
  @Test
  void octetsAreImmutableAndComparedByValue() {
    byte[] source = {1, 2, (byte) 0xff};
    Octets octets = Octets.of(source);
    source[0] = 9;
    octets.toBytes()[1] = 9;
    assertThat(octets).isEqualTo(Octets.ofHex("0102ff")).hasToString("0102ff");
    assertThat(octets.hashCode()).isEqualTo(Octets.ofHex("0102FF").hashCode());
    assertThat(octets).isNotEqualTo(Octets.ofHex("0102fe")).isNotEqualTo("0102ff");
  }

  @Test
  void octetsOrderAsUnsignedBytes() {
    assertThat(List.of(Octets.ofHex("ff"), Octets.ofHex("7f00"), Octets.ofHex("7f")))
        .isSortedAccordingTo((a, b) -> b.compareTo(a));
  }

  @Test
  void aSliceOutsideIsRefused() {
    Octets octets = Octets.ofHex("0102");
    assertThat(octets.slice(1, 2)).isEqualTo(Octets.ofHex("02"));
    assertThatThrownBy(() -> octets.slice(1, 3)).isInstanceOf(IndexOutOfBoundsException.class);
    assertThatThrownBy(() -> octets.slice(2, 1)).isInstanceOf(IndexOutOfBoundsException.class);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "0", "zz", "0102030405060708090a0b0c0d0e0f", "01020304050607080"})
  void anIdentifierOfAnotherLengthIsRefused(String hex) {
    assertThatThrownBy(() -> EditionId.ofHex(hex)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> PlaceId.ofHex(hex)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> PartAddress.ofHex(hex)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void freshIdentifiersDifferAndRoundTrip() {
    SecureRandom random = new SecureRandom();
    LicenseId license = LicenseId.random(random);
    assertThat(license).isNotEqualTo(LicenseId.random(random));
    assertThat(LicenseId.ofHex(license.hex())).isEqualTo(license);
    assertThat(LessonId.of(license.toBytes()).hex()).isEqualTo(license.hex());
    assertThat(AssetId.random(random).toBytes()).hasSize(AssetId.BYTES);
    assertThat(EditionId.random(random)).isNotEqualTo(EditionId.random(random));
  }
}
