package org.lehrcase.desk.safe;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.Map;
import org.lehrcase.core.primitive.Argon2id;
import org.lehrcase.core.seal.ByteSource;
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
    Map<String, Path> files = new LinkedHashMap<>();
    files.put(DeskHome.STATEMENT, home.resolve(DeskHome.STATEMENT));
    files.put(DeskHome.KEYS, home.resolve(DeskHome.KEYS));
    files.put(DeskHome.BOOK, copy);
    Path packing = home.resolve(DeskHome.PACKING);
    if (Files.isDirectory(packing)) {
      try (DirectoryStream<Path> remembered = Files.newDirectoryStream(packing)) {
        for (Path one : remembered) {
          String name = one.getFileName().toString();
          if (Files.isRegularFile(one) && name.matches(Archive.PACKING_NAME)) {
            files.put(DeskHome.PACKING + "/" + name, one);
          }
        }
      }
    }
    try (ByteSource clear = Archive.of(files)) {
      BackupFile.write(part, clear, passphrase, cost, random);
    }
  }
}
