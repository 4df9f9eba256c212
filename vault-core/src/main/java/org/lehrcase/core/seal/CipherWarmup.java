package org.lehrcase.core.seal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.security.SecureRandom;
import org.jspecify.annotations.Nullable;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.primitive.Sha256;

/**
 * Runs the cipher hot before somebody waits for it.
 *
 * <p>The virtual machine uses the processor's AES instructions only in code that its second
 * compiler has seen, and it counts calls, not bytes. A few thousand blocks of 1 KiB take 0.2
 * seconds in the background; without them the first seconds of a film open twenty times slower.
 */
public final class CipherWarmup {
  private static final int ROUNDS = 3000;
  private static final int BLOCK_BYTES = 1024;
  private static final int PLAIN_BYTES =
      BLOCK_BYTES - SegmentLayout.LEAD_BYTES - SegmentLayout.TAG_BYTES;

  private static @Nullable Thread once;

  private CipherWarmup() {}

  /**
   * Starts the warm-up in a background thread that never keeps a program from ending. Only the
   * first call starts one, so a program calls this as early as it knows that it will need the
   * cipher.
   *
   * @return the thread, for those who want to wait for it
   */
  public static synchronized Thread start() {
    Thread started = once;
    if (started == null) {
      started = begin();
      once = started;
    }
    return started;
  }

  private static Thread begin() {
    Thread thread = new Thread(CipherWarmup::run, "cipher-warmup");
    thread.setDaemon(true);
    thread.start();
    return thread;
  }

  /** Warms sealing, opening and hashing in the calling thread, which takes 0.2 to 0.5 seconds. */
  static void run() {
    SecureRandom random = new SecureRandom();
    PartHeader header = PartHeader.single(PartKind.ASSET, AssetId.random(random), PLAIN_BYTES);
    byte[] clear = new byte[BLOCK_BYTES];
    byte[] sealed = new byte[BLOCK_BYTES];
    try (PartKey key = PartKey.random(random)) {
      for (int round = 0; round < ROUNDS; round++) {
        // A stream of its own each time: not even here is a nonce used twice.
        SegmentCipher cipher = PartStream.fresh(header, key, random).cipher();
        cipher.seal(0, clear, 0, sealed, 0);
        cipher.open(0, sealed, clear);
        cipher.open(0, sealed, clear);
        Sha256.of(sealed);
        if (round == 0) {
          readOnce(header, key, sealed);
        }
      }
    } catch (VaultException | IOException e) {
      throw new IllegalStateException("memory changed under the cipher", e);
    }
  }

  /** Loads what the first answer of a film needs besides the cipher. */
  private static void readOnce(PartHeader header, PartKey key, byte[] sealed)
      throws IOException, VaultException {
    ByteSource part = ByteSource.of(sealed);
    DigestList digests = DigestList.ofFile(part, SegmentLayout.DEFAULT_LOG2);
    try (PartReader reader = PartReader.open(part, key, header, digests)) {
      reader.readExactly(0, ByteBuffer.allocate(PLAIN_BYTES));
    }
  }
}
