package org.lehrcase.core.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.upokecenter.cbor.CBORObject;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.SecretBytes;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.core.primitive.SigningKey;
import org.lehrcase.core.primitive.VerifyKey;

class SignedMessageTest {
  /** The first key of RFC 8032, 7.1, which the COSE group's examples also use. */
  private static final SigningKey KEY =
      key("9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60");

  private static final SigningKey OTHER =
      key("4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb");

  private static final byte[] PAYLOAD = new CborWriter().array(2).uint(1).text("moss").toBytes();

  private static SigningKey key(String seedHex) {
    return SigningKey.fromSeed(SecretBytes.copyOf(HexFormat.of().parseHex(seedHex)));
  }

  /**
   * Example eddsa-sig-01 of the COSE working group: the signature of its message, whose protected
   * header is {@code {1: -8, 3: 0}}. Ed25519 is deterministic, so one wrong byte in what is signed
   * would show.
   */
  @Test
  void theWorkingGroupsExampleHasTheSameSignature() {
    byte[] header = HexFormat.of().parseHex("a201270300");
    byte[] content = "This is the content.".getBytes(StandardCharsets.US_ASCII);
    byte[] toBeSigned = SignedMessage.toBeSigned(header, new byte[0], content);
    assertThat(HexFormat.of().formatHex(KEY.sign(toBeSigned)))
        .isEqualTo(
            "7142fd2ff96d56db85bee905a76ba1d0b7321a95c8c4d3607c5781932b7afb87"
                + "11497dfa751bf40b58b3bcc32300b1487f3db34085eef013bf08f4a44d6fef0d");
  }

  @Test
  void aGeneralLibraryReadsTheMessageAsCoseSign1() {
    byte[] message = SignedMessage.sign(MessageType.CARD, PAYLOAD, KEY);
    CBORObject read = CBORObject.DecodeFromBytes(message);
    assertThat(read.size()).isEqualTo(4);
    CBORObject header = CBORObject.DecodeFromBytes(read.get(0).GetByteString());
    assertThat(header.get(CBORObject.FromObject(1)).AsInt32Value()).isEqualTo(-8);
    assertThat(read.get(1).size()).isZero();
    assertThat(read.get(2).GetByteString()).isEqualTo(PAYLOAD);
    CBORObject toBeSigned =
        CBORObject.NewArray()
            .Add("Signature1")
            .Add(read.get(0).GetByteString())
            .Add("lehrcase/1 card".getBytes(StandardCharsets.US_ASCII))
            .Add(PAYLOAD);
    byte[] signature = read.get(3).GetByteString();
    assertThat(KEY.publicKey().verifies(toBeSigned.EncodeToBytes(), signature)).isTrue();
  }

  @Test
  void aVerifiedMessageTellsPayloadSignerTypeAndDigest() throws VaultException {
    byte[] message = SignedMessage.sign(MessageType.LETTER, PAYLOAD, KEY);
    Verified verified = SignedMessage.verify(MessageType.LETTER, message, KEY.publicKey());
    assertThat(verified.payload()).isEqualTo(PAYLOAD);
    assertThat(verified.signer()).isEqualTo(KEY.publicKey());
    assertThat(verified.type()).isEqualTo(MessageType.LETTER);
    byte[] label = "lehrcase/1 letter".getBytes(StandardCharsets.US_ASCII);
    byte[] signed = SignedMessage.toBeSigned(HexFormat.of().parseHex("a10127"), label, PAYLOAD);
    assertThat(verified.digest16()).isEqualTo(Octets.of(Sha256.of16(signed)));
    assertThat(verified.fields(2).line(10)).isEqualTo("moss");
  }

  @ParameterizedTest
  @EnumSource(MessageType.class)
  void aMessagePassesForNoOtherType(MessageType signedAs) throws VaultException {
    byte[] message = SignedMessage.sign(signedAs, PAYLOAD, KEY);
    for (MessageType offeredAs : MessageType.values()) {
      if (offeredAs == signedAs) {
        assertThat(SignedMessage.verify(offeredAs, message, KEY.publicKey()).type())
            .isEqualTo(signedAs);
      } else {
        assertThatThrownBy(() -> SignedMessage.verify(offeredAs, message, KEY.publicKey()))
            .isInstanceOf(VaultException.Tampered.class);
      }
    }
  }

  @Test
  void aMessageOfAnotherSignerIsRefused() {
    byte[] message = SignedMessage.sign(MessageType.CARD, PAYLOAD, OTHER);
    assertThatThrownBy(() -> SignedMessage.verify(MessageType.CARD, message, KEY.publicKey()))
        .isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void everyFlippedBitIsRefused() {
    byte[] message = SignedMessage.sign(MessageType.CARD, PAYLOAD, KEY);
    for (int bit = 0; bit < message.length * 8; bit++) {
      byte[] changed = message.clone();
      changed[bit / 8] ^= (byte) (1 << bit % 8);
      assertThatThrownBy(() -> SignedMessage.verify(MessageType.CARD, changed, KEY.publicKey()))
          .as("bit %d", bit)
          .isInstanceOf(VaultException.class);
    }
  }

  @Test
  void everyTruncationAndExtensionIsRefused() {
    byte[] message = SignedMessage.sign(MessageType.CARD, PAYLOAD, KEY);
    for (int length = 0; length <= message.length + 3; length++) {
      if (length != message.length) {
        byte[] changed = Arrays.copyOf(message, length);
        assertThatThrownBy(() -> SignedMessage.verify(MessageType.CARD, changed, KEY.publicKey()))
            .as("length %d", length)
            .isInstanceOf(VaultException.class);
      }
    }
  }

  /** The same content and signature in forms that a lenient reader would accept. */
  @ParameterizedTest(name = "{0}")
  @ValueSource(
      strings = {
        "d28443a10127a0", // tagged
        "8443a10126a0", // another algorithm
        "84581fa10127a0", // longer length
        "844401a10127a0", // another protected header
        "8443a10127a10442313", // a key name in the unprotected header
        "8443a10127bfff", // an unprotected header of indefinite length
        "9f43a10127a0", // an outer array of indefinite length
      })
  void anotherFormOfTheSameMessageIsRefused(String front) {
    byte[] message = SignedMessage.sign(MessageType.CARD, PAYLOAD, KEY);
    String even = front.length() % 2 == 0 ? front : front + "1";
    String rest = HexFormat.of().formatHex(message, 6, message.length);
    byte[] changed = HexFormat.of().parseHex(even + rest);
    assertThatThrownBy(() -> SignedMessage.verify(MessageType.CARD, changed, KEY.publicKey()))
        .isInstanceOf(VaultException.Malformed.class);
  }

  @Test
  void aPayloadLengthThatCouldBeShorterIsRefused() {
    byte[] message = SignedMessage.sign(MessageType.CARD, PAYLOAD, KEY);
    String hex = HexFormat.of().formatHex(message);
    String longer = hex.substring(0, 12) + "5807" + hex.substring(14);
    assertThat(hex.substring(12, 14)).isEqualTo("47");
    byte[] changed = HexFormat.of().parseHex(longer);
    assertThatThrownBy(() -> SignedMessage.verify(MessageType.CARD, changed, KEY.publicKey()))
        .isInstanceOf(VaultException.Malformed.class);
  }

  @Test
  void theLimitOfATypeHoldsBothWays() {
    byte[] large = new CborWriter().bytes(new byte[300]).toBytes();
    assertThatThrownBy(() -> SignedMessage.sign(MessageType.CARD, large, KEY))
        .isInstanceOf(IllegalArgumentException.class);
    byte[] message = SignedMessage.sign(MessageType.LICENSE, large, KEY);
    assertThatThrownBy(() -> SignedMessage.verify(MessageType.CARD, message, KEY.publicKey()))
        .isInstanceOf(VaultException.TooLarge.class);
  }

  @Test
  void aNewerVersionIsNamedAsSuch() throws VaultException {
    byte[] payload = new CborWriter().array(1).uint(2).toBytes();
    byte[] message = SignedMessage.sign(MessageType.ASK, payload, KEY);
    Verified verified = SignedMessage.verify(MessageType.ASK, message, KEY.publicKey());
    assertThatThrownBy(() -> verified.fields(1))
        .isInstanceOf(VaultException.UnsupportedVersion.class)
        .hasMessageContaining("2");
  }

  @Test
  void aKeyOfSmallOrderVerifiesNothing() {
    byte[] message = SignedMessage.sign(MessageType.CARD, PAYLOAD, KEY);
    VerifyKey smallOrder = VerifyKey.of(new byte[32]);
    assertThatThrownBy(() -> SignedMessage.verify(MessageType.CARD, message, smallOrder))
        .isInstanceOf(VaultException.Tampered.class);
  }
}
