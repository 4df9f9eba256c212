package org.lehrcase.core.license;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;

/** Indexes that are signed by the right desk and still break a rule. */
class KeysIndexHostileTest {
  private static final Octets HASH = Octets.of(new byte[32]);
  private CountedShop shop;
  private KeysIndex.About about;

  @BeforeEach
  void open() throws VaultException {
    shop = new CountedShop(14);
    about = new KeysIndex.About(shop.edition, Octets.random(shop.random, 16), 1);
  }

  private KeysIndex index(int count, KeysIndex.Chunk... chunks) throws VaultException {
    Octets salt = Octets.random(shop.random, 16);
    return KeysIndex.verify(
        KeysIndex.sign(about, salt, List.of(chunks), count, shop.signer), shop.roots());
  }

  private static KeysIndex.Chunk chunk(String firstTag) {
    return new KeysIndex.Chunk(Octets.ofHex(firstTag), HASH);
  }

  @Test
  void chunksOutOfOrderOrTwiceAreRefused() {
    assertThatThrownBy(() -> index(2048, chunk("0200000000000000"), chunk("0100000000000000")))
        .isInstanceOf(VaultException.Malformed.class);
    assertThatThrownBy(() -> index(2048, chunk("0200000000000000"), chunk("0200000000000000")))
        .isInstanceOf(VaultException.Malformed.class);
  }

  @Test
  void aCountThatDoesNotFitTheChunksIsRefused() {
    assertThatThrownBy(() -> index(1025, chunk("0100000000000000")))
        .isInstanceOf(VaultException.Malformed.class);
    assertThatThrownBy(() -> index(0, chunk("0100000000000000")))
        .isInstanceOf(VaultException.Malformed.class);
    assertThatThrownBy(() -> index(Integer.MAX_VALUE, chunk("0100000000000000")))
        .isInstanceOf(VaultException.TooLarge.class);
  }

  @Test
  void aTagIsSoughtInTheOneChunkThatCanHoldIt() throws VaultException {
    KeysIndex index =
        index(
            2100, chunk("1000000000000000"), chunk("8000000000000000"), chunk("f000000000000000"));
    assertThat(index.chunkOf(Octets.ofHex("0fffffffffffffff"))).isEqualTo(-1);
    assertThat(index.chunkOf(Octets.ofHex("1000000000000000"))).isZero();
    assertThat(index.chunkOf(Octets.ofHex("7fffffffffffffff"))).isZero();
    assertThat(index.chunkOf(Octets.ofHex("8000000000000000"))).isEqualTo(1);
    assertThat(index.chunkOf(Octets.ofHex("ffffffffffffffff"))).isEqualTo(2);
    assertThat(index.rowsOf(1)).isEqualTo(1024);
    assertThat(index.rowsOf(2)).isEqualTo(52);
    assertThat(index.about()).isEqualTo(about);
  }
}
