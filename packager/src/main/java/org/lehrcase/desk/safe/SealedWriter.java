package org.lehrcase.desk.safe;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.security.SecureRandom;
import java.util.Arrays;
import org.lehrcase.core.primitive.AesGcm;
import org.lehrcase.core.primitive.Argon2id;
import org.lehrcase.core.primitive.PassphraseBox;
import org.lehrcase.core.primitive.SecretBytes;
import org.lehrcase.desk.home.Passphrase;

/**
 * Encrypts a stream in pieces of 1 MiB. Each piece is bound to its number, and the last one says
 * that it is the last, so that a cut, swapped or repeated piece is noticed.
 */
final class SealedWriter extends OutputStream {
  static final int PIECE_BYTES = 1 << 20;
  static final byte[] MAGIC =
      "LEHRCASE BACKUP\u0001".getBytes(java.nio.charset.StandardCharsets.US_ASCII);
  static final int KEY_BYTES = 32;

  private final OutputStream out;
  private final SecureRandom random;
  private final SecretBytes key;
  private final byte[] piece = new byte[PIECE_BYTES];
  private int filled;
  private int number;

  SealedWriter(OutputStream out, Passphrase passphrase, Argon2id.Cost cost, SecureRandom random)
      throws IOException {
    this.out = out;
    this.random = random;
    this.key = SecretBytes.random(random, KEY_BYTES);
    byte[] box =
        key.use(clear -> passphrase.use(typed -> PassphraseBox.seal(typed, clear, cost, random)));
    out.write(MAGIC);
    out.write(ByteBuffer.allocate(Short.BYTES).putShort((short) box.length).array());
    out.write(box);
  }

  @Override
  public void write(int one) throws IOException {
    write(new byte[] {(byte) one}, 0, 1);
  }

  @Override
  public void write(byte[] bytes, int from, int length) throws IOException {
    int at = from;
    int left = length;
    while (left > 0) {
      if (filled == PIECE_BYTES) {
        flushPiece(false);
      }
      int now = Math.min(left, PIECE_BYTES - filled);
      System.arraycopy(bytes, at, piece, filled, now);
      filled += now;
      at += now;
      left -= now;
    }
  }

  static byte[] bound(int number, boolean last) {
    return ByteBuffer.allocate(MAGIC.length + Integer.BYTES + 1)
        .put(MAGIC)
        .putInt(number)
        .put((byte) (last ? 1 : 0))
        .array();
  }

  private void flushPiece(boolean last) throws IOException {
    byte[] sealed = AesGcm.seal(key, Arrays.copyOf(piece, filled), bound(number, last), random);
    out.write(ByteBuffer.allocate(Integer.BYTES).putInt(sealed.length).array());
    out.write(sealed);
    filled = 0;
    number++;
  }

  /** Writes the last piece; without it the file does not open. */
  void finish() throws IOException {
    flushPiece(true);
    out.flush();
  }

  @Override
  public void close() throws IOException {
    Arrays.fill(piece, (byte) 0);
    key.close();
    out.close();
  }
}
