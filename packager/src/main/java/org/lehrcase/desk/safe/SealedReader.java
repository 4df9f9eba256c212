package org.lehrcase.desk.safe;

import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.primitive.AesGcm;
import org.lehrcase.core.primitive.PassphraseBox;
import org.lehrcase.core.primitive.SecretBytes;
import org.lehrcase.desk.home.DeskHomeException;
import org.lehrcase.desk.home.Passphrase;

/**
 * Opens what {@link SealedWriter} wrote; gives out no byte of a piece before all of it is proved.
 */
final class SealedReader extends InputStream {
  private static final int MOST_SEALED = SealedWriter.PIECE_BYTES + 64;
  private static final int MOST_BOX = 1024;

  private final DataInputStream in;
  private final SecretBytes key;
  private byte[] piece = {};
  private int at;
  private int number;
  private boolean last;

  SealedReader(InputStream raw, Passphrase passphrase)
      throws IOException, DeskHomeException.WrongPassphrase, BackupException {
    this.in = new DataInputStream(raw);
    byte[] magic = in.readNBytes(SealedWriter.MAGIC.length);
    if (!Arrays.equals(magic, 0, magic.length, SealedWriter.MAGIC, 0, SealedWriter.MAGIC.length)) {
      throw new BackupException("This file is no backup of a desk.");
    }
    this.key = key(passphrase);
  }

  private SecretBytes key(Passphrase passphrase)
      throws IOException, DeskHomeException.WrongPassphrase, BackupException {
    try {
      int size = in.readUnsignedShort();
      byte[] box = in.readNBytes(Math.min(size, MOST_BOX));
      return SecretBytes.taking(Passphrases.open(passphrase, box));
    } catch (VaultException.Tampered e) {
      throw new DeskHomeException.WrongPassphrase(
          "The passphrase does not open this backup. It is the one that the desk had on the day of"
              + " the backup.");
    } catch (VaultException | EOFException e) {
      throw damaged();
    }
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
  }

  @Override
  public int read(byte[] target, int from, int length) throws IOException {
    while (at == piece.length) {
      if (last) {
        return -1;
      }
      next();
    }
    int now = Math.min(length, piece.length - at);
    System.arraycopy(piece, at, target, from, now);
    at += now;
    return now;
  }

  private void next() throws IOException {
    Arrays.fill(piece, (byte) 0);
    try {
      int size = in.readInt();
      if (size < 0 || size > MOST_SEALED) {
        throw damaged();
      }
      byte[] sealed = in.readNBytes(size);
      piece = open(sealed);
      at = 0;
      number++;
    } catch (EOFException e) {
      throw damaged();
    }
  }

  private byte[] open(byte[] sealed) throws BackupException {
    try {
      return AesGcm.open(key, sealed, SealedWriter.bound(number, false));
    } catch (VaultException e) {
      return openLast(sealed);
    }
  }

  private byte[] openLast(byte[] sealed) throws BackupException {
    try {
      byte[] clear = AesGcm.open(key, sealed, SealedWriter.bound(number, true));
      last = true;
      return clear;
    } catch (VaultException e) {
      throw damaged();
    }
  }

  private static BackupException damaged() {
    return new BackupException(
        "The backup is damaged or was cut short. Nothing was changed; take another one.");
  }

  /** Opens boxes with a passphrase. */
  private static final class Passphrases {
    private Passphrases() {}

    static byte[] open(Passphrase passphrase, byte[] box) throws VaultException {
      VaultException[] why = new VaultException[1];
      byte[] clear =
          passphrase.use(
              typed -> {
                try {
                  return PassphraseBox.open(typed, box);
                } catch (VaultException e) {
                  why[0] = e;
                  return new byte[0];
                }
              });
      if (why[0] != null) {
        throw why[0];
      }
      return clear;
    }
  }

  @Override
  public void close() throws IOException {
    Arrays.fill(piece, (byte) 0);
    key.close();
    in.close();
  }
}
