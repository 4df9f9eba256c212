package org.lehrcase.desk.safe;

import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.SecureRandom;
import java.time.Clock;
import org.lehrcase.core.primitive.Argon2id;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskHomeException;
import org.lehrcase.desk.home.OwnerFiles;
import org.lehrcase.desk.home.Passphrase;
import org.lehrcase.desk.sales.SalesBook;

/**
 * Makes a backup of a desk, also while it is open elsewhere: keys (as their own sealed file),
 * statement, the sales book at one moment, what packing remembers. Films are not in it.
 */
public final class Backup {
  /** The setting that holds the day of the last backup. */
  public static final String LAST = "backup.last";

  /** The setting that holds the folder of the last backup. */
  public static final String FOLDER = "backup.folder";

  static final String PACKING_NAME = "[A-Za-z0-9._-]{1,200}";
  private static final String COPY = "book-copy.part";

  private final Path home;
  private final Clock clock;
  private final SecureRandom random;
  private final Argon2id.Cost cost;

  /**
   * Looks at a home.
   *
   * @param home its folder; it may be in use
   * @param clock gives day and time
   * @param random the source of key and salts
   * @param cost how slow guessing the passphrase is made
   */
  public Backup(Path home, Clock clock, SecureRandom random, Argon2id.Cost cost) {
    this.home = home;
    this.clock = clock;
    this.random = random;
    this.cost = cost;
  }

  /**
   * Makes a backup, reads it back, and rehearses a restore of it.
   *
   * @param passphrase the desk's passphrase, which opens the backup too
   * @param file must not exist; it appears when it is proved
   * @return what the rehearsal found
   * @throws DeskHomeException if the passphrase does not open the desk, or there is none
   * @throws IOException if it cannot be written or does not read back; no file is left then
   */
  public Rehearsal.Found make(Passphrase passphrase, Path file)
      throws IOException, DeskHomeException {
    if (!Files.isRegularFile(home.resolve(DeskHome.KEYS))) {
      throw new DeskHomeException.NotAHome("There is no desk at " + home + ".");
    }
    if (Files.exists(file)) {
      throw new java.nio.file.FileAlreadyExistsException(file.toString());
    }
    Path part = file.resolveSibling(file.getFileName() + ".part");
    Path copy = home.resolve(COPY);
    try {
      copyBook(copy);
      write(passphrase, part, copy);
      Rehearsal.Found found = new Rehearsal(clock).of(part, passphrase, home);
      Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
      note(file);
      return found;
    } finally {
      Files.deleteIfExists(copy);
      Files.deleteIfExists(part);
    }
  }

  private void copyBook(Path copy) throws IOException {
    Files.deleteIfExists(copy);
    OwnerFiles.write(copy, new byte[0]); // the copy takes over the owner's rights of an empty file
    try (SalesBook book = SalesBook.open(home.resolve(DeskHome.BOOK), clock)) {
      book.copyTo(copy);
    }
  }

  private void note(Path file) throws IOException {
    try (SalesBook book = SalesBook.open(home.resolve(DeskHome.BOOK), clock)) {
      book.<Boolean, IOException>together(
          () -> {
            Path folder = file.toAbsolutePath().getParent();
            book.settings().keep(LAST, book.today().toString());
            book.settings().keep(FOLDER, String.valueOf(folder));
            book.events().add("backup", String.valueOf(file.getFileName()), "");
            return true;
          });
    }
  }

  private void write(Passphrase passphrase, Path part, Path copy) throws IOException {
    Files.deleteIfExists(part);
    OwnerFiles.write(part, new byte[0]);
    try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE);
        OutputStream raw = new BufferedOutputStream(Channels.newOutputStream(channel));
        SealedWriter sealed = new SealedWriter(raw, passphrase, cost, random)) {
      DataOutputStream out = new DataOutputStream(sealed);
      put(out, DeskHome.STATEMENT, home.resolve(DeskHome.STATEMENT));
      put(out, DeskHome.KEYS, home.resolve(DeskHome.KEYS));
      put(out, DeskHome.BOOK, copy);
      Path packing = home.resolve(DeskHome.PACKING);
      if (Files.isDirectory(packing)) {
        try (DirectoryStream<Path> files = Files.newDirectoryStream(packing)) {
          for (Path one : files) {
            String name = one.getFileName().toString();
            if (Files.isRegularFile(one) && name.matches(PACKING_NAME)) {
              put(out, DeskHome.PACKING + "/" + name, one);
            }
          }
        }
      }
      out.writeUTF("");
      out.flush();
      sealed.finish();
      raw.flush();
      channel.force(true);
    }
  }

  private static void put(DataOutputStream out, String name, Path file) throws IOException {
    long size = Files.size(file);
    out.writeUTF(name);
    out.writeLong(size);
    try (InputStream in = Files.newInputStream(file)) {
      byte[] buffer = new byte[1 << 16];
      long left = size;
      while (left > 0) {
        int now = in.read(buffer, 0, (int) Math.min(buffer.length, left));
        if (now < 0) {
          throw new IOException(file + " became shorter while it was copied. Try again.");
        }
        out.write(buffer, 0, now);
        left -= now;
      }
    }
  }
}
