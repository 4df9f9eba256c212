package org.lehrcase.desk.safe;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.SecureRandom;
import java.util.Arrays;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.primitive.Argon2id;
import org.lehrcase.core.primitive.PassphraseBox;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.FileSource;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.PartKind;
import org.lehrcase.core.seal.PartReader;
import org.lehrcase.core.seal.PartSealer;
import org.lehrcase.core.seal.Progress;
import org.lehrcase.desk.home.DeskHomeException;
import org.lehrcase.desk.home.OwnerFiles;
import org.lehrcase.desk.home.Passphrase;

/**
 * The file of a backup: {@code "LEHRCASE BACKUP" ‖ 1 ‖ u16 size of the box ‖ box ‖ part}. The box,
 * opened by the passphrase, holds the key, the identifier and the length of the part, and the part
 * is one like every part of an edition.
 */
final class BackupFile implements AutoCloseable {
  private static final byte[] MAGIC = "LEHRCASE BACKUP\u0001".getBytes(StandardCharsets.US_ASCII);
  private static final int BOXED_BYTES = PartKey.BYTES + AssetId.BYTES + Long.BYTES;
  private static final int MOST_BOX = 1024;

  private final FileSource file;
  private final PartReader part;

  private BackupFile(FileSource file, PartReader part) {
    this.file = file;
    this.part = part;
  }

  /**
   * Writes a backup to an empty file and forces it.
   *
   * @param target an empty file that only its owner reads
   * @param clear what it shall hold
   */
  static void write(
      Path target, ByteSource clear, Passphrase passphrase, Argon2id.Cost cost, SecureRandom random)
      throws IOException {
    Path sealed = target.resolveSibling(target.getFileName() + ".sealed");
    AssetId id = AssetId.random(random);
    try (PartKey key = PartKey.random(random)) {
      Files.deleteIfExists(sealed);
      PartHeader header = PartHeader.single(PartKind.ASSET, id, clear.sizeBytes());
      new PartSealer(random).seal(clear, header, key, sealed, Progress.NONE);
      byte[] box = box(key, header, passphrase, cost, random);
      OwnerFiles.write(target, lead(box));
      append(sealed, target);
    } finally {
      Files.deleteIfExists(sealed);
    }
  }

  private static byte[] box(
      PartKey key,
      PartHeader header,
      Passphrase passphrase,
      Argon2id.Cost cost,
      SecureRandom random) {
    byte[] boxed = new byte[BOXED_BYTES];
    try {
      return key.use(
          bytes -> {
            ByteBuffer fields = ByteBuffer.wrap(boxed).put(bytes);
            fields.put(header.asset().toBytes()).putLong(header.plainBytes());
            return passphrase.use(typed -> PassphraseBox.seal(typed, boxed, cost, random));
          });
    } finally {
      Arrays.fill(boxed, (byte) 0);
    }
  }

  private static byte[] lead(byte[] box) {
    return ByteBuffer.allocate(MAGIC.length + Short.BYTES + box.length)
        .put(MAGIC)
        .putShort((short) box.length)
        .put(box)
        .array();
  }

  private static void append(Path sealed, Path target) throws IOException {
    try (FileChannel from = FileChannel.open(sealed, StandardOpenOption.READ);
        FileChannel to = FileChannel.open(target, StandardOpenOption.APPEND)) {
      long at = 0;
      while (at < from.size()) {
        at += from.transferTo(at, from.size() - at, to);
      }
      to.force(true);
    }
  }

  /**
   * Opens a backup.
   *
   * @throws DeskHomeException.WrongPassphrase if the passphrase is another
   * @throws BackupException if it is no backup, or damaged
   * @throws IOException if the medium fails
   */
  static BackupFile open(Path path, Passphrase passphrase)
      throws IOException, DeskHomeException.WrongPassphrase {
    FileSource file = FileSource.open(path);
    try {
      return open(file, passphrase);
    } catch (IOException | DeskHomeException.WrongPassphrase | RuntimeException e) {
      file.close();
      throw e;
    }
  }

  private static BackupFile open(FileSource file, Passphrase passphrase)
      throws IOException, DeskHomeException.WrongPassphrase {
    try {
      byte[] magic = bytes(file, 0, MAGIC.length);
      if (!Arrays.equals(magic, 0, magic.length, MAGIC, 0, MAGIC.length)) {
        throw new BackupException("This file is no backup of a desk.");
      }
      int size = ByteBuffer.wrap(bytes(file, MAGIC.length, Short.BYTES)).getShort() & 0xffff;
      long boxAt = MAGIC.length + Short.BYTES;
      byte[] boxed = unbox(bytes(file, boxAt, Math.min(size, MOST_BOX)), passphrase);
      try {
        return new BackupFile(file, part(file, boxAt + size, ByteBuffer.wrap(boxed)));
      } finally {
        Arrays.fill(boxed, (byte) 0);
      }
    } catch (EOFException | VaultException e) {
      throw damaged(e);
    }
  }

  private static byte[] unbox(byte[] box, Passphrase passphrase)
      throws VaultException, DeskHomeException.WrongPassphrase {
    try {
      return passphrase.open(box);
    } catch (VaultException.Tampered e) {
      throw new DeskHomeException.WrongPassphrase(
          "The passphrase does not open this backup. It is the one that the desk had on the day of"
              + " the backup.");
    }
  }

  private static PartReader part(FileSource file, long from, ByteBuffer boxed)
      throws IOException, VaultException {
    if (boxed.remaining() != BOXED_BYTES || from > file.sizeBytes()) {
      throw new VaultException.Malformed("the box of a backup has another size");
    }
    byte[] key = new byte[PartKey.BYTES];
    byte[] id = new byte[AssetId.BYTES];
    boxed.get(key).get(id);
    PartHeader header = PartHeader.single(PartKind.ASSET, AssetId.of(id), boxed.getLong());
    try (PartKey opened = PartKey.ofBytes(key)) {
      ByteSource sealed = file.slice(from, file.sizeBytes() - from);
      return PartReader.openWithoutDigests(sealed, opened, header);
    } finally {
      Arrays.fill(key, (byte) 0);
    }
  }

  private static byte[] bytes(FileSource file, long from, int size) throws IOException {
    ByteBuffer bytes = ByteBuffer.allocate(size);
    file.readExactly(from, bytes);
    return bytes.array();
  }

  /** Returns how many bytes the backup holds. */
  long sizeBytes() {
    return part.sizeBytes();
  }

  /** Fills {@code target} with proved bytes. */
  void read(long position, ByteBuffer target) throws IOException {
    try {
      part.readExactly(position, target);
    } catch (EOFException | VaultException e) {
      throw damaged(e);
    }
  }

  private static BackupException damaged(Exception why) {
    BackupException damaged =
        new BackupException(
            "The backup is damaged or was cut short. Nothing was changed; take another one.");
    damaged.initCause(why);
    return damaged;
  }

  @Override
  public void close() throws IOException {
    try (FileSource open = file) {
      part.close();
    }
  }
}
