package org.lehrcase.core.device;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.security.SecureRandom;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PlaceId;
import org.lehrcase.core.keys.MasterKey;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.keys.RootSecret;
import org.lehrcase.core.license.PlaceSeed;

class DeviceSecretTest {
  private final SecureRandom random = new SecureRandom();
  private final DeviceSecret secret = DeviceSecret.random(random);
  private final Octets digest = Octets.random(random, 16);

  @Test
  void aSeedComesBackForItsOwnCardOnThisLaptopOnly() throws VaultException {
    PlaceSeed seed = PlaceSeed.random(random);
    Octets wrapped = secret.wrapSeed(digest, seed);
    assertThat(wrapped.size()).isEqualTo(40);
    assertThat(secret.openSeed(digest, wrapped).secret().sameAs(seed.secret())).isTrue();
    Octets otherCard = Octets.random(random, 16);
    assertThatThrownBy(() -> secret.openSeed(otherCard, wrapped))
        .isInstanceOf(VaultException.Tampered.class);
    DeviceSecret other = DeviceSecret.random(random);
    assertThatThrownBy(() -> other.openSeed(digest, wrapped))
        .isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void keysComeBackAndPassForNoSeed() throws VaultException {
    MasterKey master = RootSecret.random(random).masterKey(0);
    LicenseId license = LicenseId.random(random);
    PlaceKeys keys =
        new PlaceKeys(
            master.licenseKey(license, 4), master.placeSecret(license, PlaceId.random(random)));
    Octets wrapped = secret.wrapKeys(digest, keys);
    assertThat(wrapped.size()).isEqualTo(72);
    assertThat(secret.openKeys(digest, 4, wrapped).secret().sameAs(keys.secret())).isTrue();
    assertThatThrownBy(() -> secret.openSeed(digest, wrapped))
        .isInstanceOf(VaultException.Tampered.class);
    assertThatThrownBy(() -> secret.openSeed(digest, wrapped.slice(0, 40)))
        .isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void aDigestOfAnotherLengthIsAMistakeOfTheProgram() {
    assertThatThrownBy(() -> secret.wrapSeed(Octets.random(random, 15), PlaceSeed.random(random)))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
