package org.lehrcase.core.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.security.SecureRandom;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.VaultException;

class StreamHeaderTest {
  private final SecureRandom random = new SecureRandom();

  @Test
  void everyStreamHasASaltAndAPrefixOfItsOwn() {
    StreamHeader one = StreamHeader.fresh(random);
    StreamHeader other = StreamHeader.fresh(random);
    assertThat(one.salt()).hasSize(32).isNotEqualTo(other.salt());
    assertThat(one.noncePrefix()).hasSize(7).isNotEqualTo(other.noncePrefix());
  }

  @Test
  void lengthSaltAndPrefixStandInThisOrder() throws VaultException {
    byte[] bytes = StreamHeader.fresh(random).toBytes();
    StreamHeader read = StreamHeader.parse(ByteBuffer.wrap(bytes));
    assertThat(bytes[0]).isEqualTo((byte) 40);
    assertThat(bytes).endsWith(read.noncePrefix());
    assertThat(bytes).containsSubsequence(read.salt());
  }

  @Test
  void anotherLengthIsComparedAndNotObeyed() {
    byte[] bytes = StreamHeader.fresh(random).toBytes();
    bytes[0] = (byte) 200;
    assertThatThrownBy(() -> StreamHeader.parse(ByteBuffer.wrap(bytes)))
        .isInstanceOf(VaultException.Malformed.class)
        .hasMessageContaining("length 200");
  }
}
