package org.lehrcase.desk.sales;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The sales book of one desk. It holds no key: a stolen copy names buyers and opens nothing. */
public final class SalesBook implements AutoCloseable {
  private static final Set<PosixFilePermission> OWNER_ONLY =
      PosixFilePermissions.fromString("rw-------");

  private final Database database;
  private final Clock clock;
  private final SecureRandom random = new SecureRandom(); // salts of digests only
  private volatile @Nullable HeadSeal seal;

  private SalesBook(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /** Steps that are kept together or not at all. */
  @FunctionalInterface
  public interface Work<T, E extends Exception> {
    /**
     * Does the steps.
     *
     * @return the result
     * @throws IOException if the book or a file cannot be used; nothing is kept then
     * @throws E if the steps refuse; nothing is kept then
     */
    T run() throws IOException, E;
  }

  /**
   * Makes a new, empty book, readable by its owner only.
   *
   * @param file must not exist
   * @param clock gives the day and time of entries
   * @return the open book
   * @throws IOException if the file exists or cannot be written
   */
  public static SalesBook create(Path file, Clock clock) throws IOException {
    Files.createFile(file, ownerOnly(file));
    return open(file, clock);
  }

  /**
   * Opens a book and brings it to the newest schema.
   *
   * @param file an existing book
   * @param clock gives the day and time of entries
   * @return the open book
   * @throws SalesException if the file is no sales book or of a newer version
   * @throws IOException if it cannot be read
   */
  public static SalesBook open(Path file, Clock clock) throws IOException {
    if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new SalesException("There is no sales book at " + file + ".");
    }
    Database database = Database.open(file);
    boolean ready = false;
    try {
      Migrations.bringUp(database);
      SalesBook book = new SalesBook(database, clock);
      book.adopt();
      ready = true;
      return book;
    } finally {
      if (!ready) {
        database.close();
      }
    }
  }

  /**
   * Runs steps in one transaction.
   *
   * @param <T> the result
   * @param <E> why the steps may refuse
   * @param work the steps; they use the tables of this book
   * @return what the steps return
   * @throws IOException if the book or a file cannot be used; nothing is kept
   * @throws E if the steps refuse; nothing is kept
   */
  public <T, E extends Exception> T together(Work<T, E> work) throws IOException, E {
    return database.transaction(
        () -> {
          T result = work.run();
          signHead();
          return result;
        });
  }

  /**
   * Returns the buyers.
   *
   * @return the table
   */
  public People people() {
    return new People(database, events(), random);
  }

  /**
   * Returns the licenses.
   *
   * @return the table
   */
  public Licenses licenses() {
    return new Licenses(database);
  }

  /**
   * Returns the places.
   *
   * @return the table
   */
  public Places places() {
    return new Places(database);
  }

  /**
   * Returns the packed editions.
   *
   * @return the table
   */
  public Editions editions() {
    return new Editions(database);
  }

  /**
   * Returns the lasting identities of lessons.
   *
   * @return the table
   */
  public Lessons lessons() {
    return new Lessons(database);
  }

  /**
   * Returns the record of everything that happened.
   *
   * @return the table
   */
  public Events events() {
    return new Events(database, clock);
  }

  /**
   * Returns what the shop's own books need of each sale.
   *
   * @return the table
   */
  public SaleFacts facts() {
    return new SaleFacts(database, events(), random);
  }

  /**
   * Returns what can be taken back.
   *
   * @return the table
   */
  public Actions actions() {
    return new Actions(database);
  }

  /**
   * Returns what waits for the teacher.
   *
   * @return the table
   */
  public WaitingList waiting() {
    return new WaitingList(database, this::today);
  }

  /**
   * Returns what the desk remembers for its page.
   *
   * @return the table
   */
  public Settings settings() {
    return new Settings(database);
  }

  /**
   * Lets the newest event be signed at the end of every step from now on.
   *
   * @param desk signs for the desk
   * @throws IOException if the book cannot be written
   */
  public void sealWith(HeadSeal desk) throws IOException {
    seal = desk;
    database.<Boolean, SalesException>transaction(
        () -> {
          signHead();
          return true;
        });
  }

  /** Lets nothing be signed any more; the keys are being shut. */
  public void unseal() {
    seal = null;
  }

  /**
   * Follows the whole chain, and compares what stands outside it.
   *
   * @param desk knows the desk's signature; nothing while the keys are shut
   * @return what was found
   * @throws SalesException if the book cannot be read
   */
  public BookCheck check(Optional<HeadSeal> desk) throws SalesException {
    return BookCheck.of(database, events(), desk);
  }

  /**
   * Writes a copy of the whole book as it is at one moment, while others work with it.
   *
   * @param file must not exist
   * @throws SalesException if it cannot be written
   */
  public void copyTo(Path file) throws SalesException {
    database.change("VACUUM INTO ?", file.toString());
  }

  /**
   * Returns the present day, in universal time.
   *
   * @return the day that goes on licenses and editions
   */
  public LocalDate today() {
    return LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
  }

  private void signHead() throws SalesException {
    HeadSeal desk = seal;
    if (desk != null) {
      Head.renew(database, events(), desk);
    }
  }

  private void adopt() throws IOException {
    database.<Boolean, SalesException>transaction(
        () -> {
          people().adopt();
          return true;
        });
  }

  @Override
  public void close() throws SalesException {
    database.close();
  }

  private static FileAttribute<?>[] ownerOnly(Path file) {
    return file.getFileSystem().supportedFileAttributeViews().contains("posix")
        ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(OWNER_ONLY)}
        : new FileAttribute<?>[0];
  }
}
