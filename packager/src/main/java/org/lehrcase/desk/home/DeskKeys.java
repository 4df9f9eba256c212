package org.lehrcase.desk.home;

import java.nio.ByteBuffer;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.ClosingKey;
import org.lehrcase.core.keys.MasterKey;
import org.lehrcase.core.keys.RootSecret;
import org.lehrcase.core.primitive.Argon2id;
import org.lehrcase.core.primitive.PassphraseBox;
import org.lehrcase.core.primitive.SecretBytes;
import org.lehrcase.core.primitive.SigningKey;
import org.lehrcase.core.primitive.VerifyKey;

/**
 * Everything secret that a desk works with: its signing key, and the master and closing keys of all
 * epochs so far. Kept in one file under the passphrase. The root secret is not among them.
 *
 * <pre>
 * version u8 = 1 ‖ restores u16 ‖ desk seed 32 ‖ root public key 32 ‖ epochs u8 ‖ (master 32 ‖ closing 32)…
 * </pre>
 */
public final class DeskKeys implements AutoCloseable {
  private static final int VERSION = 1;
  private static final int KEY_BYTES = 32;
  private static final int HEAD_BYTES = 1 + 2 + 2 * KEY_BYTES + 1;

  /** Most key epochs of one shop. */
  public static final int MAX_EPOCHS = 64;

  private final SigningKey desk;
  private final VerifyKey root;
  private final int restores;
  private final List<MasterKey> masters;
  private final List<ClosingKey> closings;

  private DeskKeys(
      SigningKey desk,
      VerifyKey root,
      int restores,
      List<MasterKey> masters,
      List<ClosingKey> closings) {
    this.desk = desk;
    this.root = root;
    this.restores = restores;
    this.masters = List.copyOf(masters);
    this.closings = List.copyOf(closings);
  }

  /**
   * Makes the keys of a new desk: a fresh signing key and the first epoch.
   *
   * @param rootSecret the shop's root, only read
   * @param random the source of the signing key
   * @return the keys
   */
  public static DeskKeys first(RootSecret rootSecret, SecureRandom random) {
    try (SecretBytes seed = SecretBytes.random(random, KEY_BYTES);
        SigningKey rootKey = rootSecret.signingKey()) {
      return new DeskKeys(
          SigningKey.fromSeed(seed),
          rootKey.publicKey(),
          0,
          List.of(rootSecret.masterKey(0)),
          List.of(rootSecret.closingKey(0)));
    }
  }

  /**
   * Makes the keys of a rebuilt desk: a fresh signing key, and every epoch so far.
   *
   * @param rootSecret the shop's root, only read
   * @param restores how often the desk was rebuilt, this time included
   * @param newestEpoch the newest epoch that was in use
   * @param random the source of the signing key
   * @return the keys
   */
  public static DeskKeys restored(
      RootSecret rootSecret, int restores, int newestEpoch, SecureRandom random) {
    List<MasterKey> masters = new ArrayList<>();
    List<ClosingKey> closings = new ArrayList<>();
    for (int epoch = 0; epoch <= newestEpoch; epoch++) {
      masters.add(rootSecret.masterKey(epoch));
      closings.add(rootSecret.closingKey(epoch));
    }
    try (SecretBytes seed = SecretBytes.random(random, KEY_BYTES);
        SigningKey rootKey = rootSecret.signingKey()) {
      return new DeskKeys(
          SigningKey.fromSeed(seed), rootKey.publicKey(), restores, masters, closings);
    }
  }

  /**
   * Returns the same keys for a desk that went back to a backup: its editions order behind all that
   * were packed after the backup.
   *
   * @return keys of their own, for the caller to close
   */
  DeskKeys wentBack() {
    byte[] clear = encode();
    try {
      ByteBuffer.wrap(clear).putShort(1, (short) (restores + 1));
      return decode(clear);
    } catch (VaultException e) {
      throw new IllegalStateException("keys of our own decode", e);
    } finally {
      Arrays.fill(clear, (byte) 0);
    }
  }

  /**
   * Returns the key that signs front pages, letters and licenses.
   *
   * @return the desk key; closed with these keys
   */
  public SigningKey desk() {
    return desk;
  }

  /**
   * Returns the public key that benches pin.
   *
   * @return the root's public half
   */
  public VerifyKey root() {
    return root;
  }

  /**
   * Returns how often this desk was rebuilt from envelopes.
   *
   * @return 0 for a desk that was never lost
   */
  public int restores() {
    return restores;
  }

  /**
   * Returns the newest epoch.
   *
   * @return 0 until keys were stolen
   */
  public int epoch() {
    return masters.size() - 1;
  }

  /**
   * Returns the master key of an epoch.
   *
   * @param epoch 0 to {@link #epoch}
   * @return the key; closed with these keys
   */
  public MasterKey master(int epoch) {
    return masters.get(epoch);
  }

  /**
   * Returns the closing key of an epoch.
   *
   * @param epoch 0 to {@link #epoch}
   * @return the key; closed with these keys
   */
  public ClosingKey closing(int epoch) {
    return closings.get(epoch);
  }

  byte[] seal(Passphrase passphrase, Argon2id.Cost cost, SecureRandom random) {
    byte[] clear = encode();
    try {
      return passphrase.use(typed -> PassphraseBox.seal(typed, clear, cost, random));
    } finally {
      Arrays.fill(clear, (byte) 0);
    }
  }

  static DeskKeys open(Passphrase passphrase, byte[] box) throws VaultException {
    byte[] clear = passphrase.open(box);
    try {
      return decode(clear);
    } finally {
      Arrays.fill(clear, (byte) 0);
    }
  }

  private byte[] encode() {
    ByteBuffer out = ByteBuffer.allocate(HEAD_BYTES + masters.size() * 2 * KEY_BYTES);
    out.put((byte) VERSION).putShort((short) restores);
    put(out, desk.seed());
    out.put(root.octets().toBytes()).put((byte) masters.size());
    for (int epoch = 0; epoch < masters.size(); epoch++) {
      put(out, masters.get(epoch).secret());
      put(out, closings.get(epoch).secret());
    }
    return out.array();
  }

  private static void put(ByteBuffer out, SecretBytes secret) {
    try (secret) {
      secret.lend(out::put);
    }
  }

  private static DeskKeys decode(byte[] clear) throws VaultException {
    ByteBuffer in = ByteBuffer.wrap(clear);
    if (clear.length < HEAD_BYTES) {
      throw new VaultException.Truncated("the desk keys end too early");
    }
    int version = in.get();
    if (version != VERSION) {
      throw new VaultException.UnsupportedVersion(
          "the desk keys have version " + version + "; this program reads " + VERSION);
    }
    int restores = Short.toUnsignedInt(in.getShort());
    SecretBytes seed = take(in);
    byte[] root = new byte[KEY_BYTES];
    in.get(root);
    int epochs = in.get();
    if (epochs < 1 || epochs > MAX_EPOCHS || in.remaining() != epochs * 2 * KEY_BYTES) {
      throw new VaultException.Malformed("the desk keys have an impossible number of epochs");
    }
    List<MasterKey> masters = new ArrayList<>();
    List<ClosingKey> closings = new ArrayList<>();
    for (int epoch = 0; epoch < epochs; epoch++) {
      masters.add(MasterKey.of(epoch, take(in)));
      closings.add(ClosingKey.of(epoch, take(in)));
    }
    try (seed) {
      VerifyKey rootKey = new VerifyKey(Octets.of(root));
      return new DeskKeys(SigningKey.fromSeed(seed), rootKey, restores, masters, closings);
    }
  }

  private static SecretBytes take(ByteBuffer in) {
    byte[] key = new byte[KEY_BYTES];
    in.get(key);
    return SecretBytes.taking(key);
  }

  @Override
  public void close() {
    desk.close();
    masters.forEach(MasterKey::close);
    closings.forEach(ClosingKey::close);
  }

  @Override
  public String toString() {
    return "DeskKeys[redacted]";
  }
}
