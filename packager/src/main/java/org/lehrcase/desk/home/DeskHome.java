package org.lehrcase.desk.home;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.license.Statement;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.primitive.Argon2id;
import org.lehrcase.core.primitive.VerifyKey;
import org.lehrcase.desk.sales.HeadSeal;
import org.lehrcase.desk.sales.SalesBook;

/** An open desk home: locked against a second desk, its sales book open, its keys still shut. */
public final class DeskHome implements AutoCloseable {
  /** The file with the keys, under the passphrase. */
  public static final String KEYS = "desk-keys";

  /** The file with the root's word for the desk key. */
  public static final String STATEMENT = "statement";

  /** The sales book. */
  public static final String BOOK = "sales.db";

  private static final String LOCK = "lock";

  /** The folder of what packing remembers. */
  public static final String PACKING = "packing";

  private static final int MAX_KEYS_BYTES = 16_384;

  private final Path folder;
  private final DeskLock lock;
  private final SalesBook book;
  private final Statement statement;

  private DeskHome(Path folder, DeskLock lock, SalesBook book, Statement statement) {
    this.folder = folder;
    this.lock = lock;
    this.book = book;
    this.statement = statement;
  }

  /**
   * Opens a home for this program alone.
   *
   * @param folder where {@code init} made it
   * @param clock gives the day and time of entries
   * @return the open home
   * @throws DeskHomeException.NotAHome if there is no desk
   * @throws DeskHomeException.InUse if another desk works there
   * @throws DeskHomeException.Damaged if a file is not as it was written
   * @throws IOException if a file cannot be read
   */
  public static DeskHome open(Path folder, Clock clock) throws IOException, DeskHomeException {
    if (!Files.isRegularFile(folder.resolve(KEYS))) {
      throw new DeskHomeException.NotAHome(
          "There is no desk at " + folder + ". Name the folder that `init` made, or run `init`.");
    }
    DeskLock lock = DeskLock.take(folder.resolve(LOCK));
    boolean open = false;
    try {
      Statement statement = readStatement(folder.resolve(STATEMENT));
      SalesBook book = SalesBook.open(folder.resolve(BOOK), clock);
      open = true;
      return new DeskHome(folder, lock, book, statement);
    } finally {
      if (!open) {
        lock.close();
      }
    }
  }

  /**
   * Opens the keys.
   *
   * @param passphrase the desk's passphrase
   * @return the keys, for the caller to close
   * @throws DeskHomeException.WrongPassphrase if it does not open them
   * @throws DeskHomeException.Damaged if the file is no keys file or does not fit the statement
   * @throws IOException if the file cannot be read
   */
  public DeskKeys unlock(Passphrase passphrase) throws IOException, DeskHomeException {
    DeskKeys keys = open(passphrase);
    book.sealWith(seal(keys));
    return keys;
  }

  /**
   * Puts the keys under another passphrase. The new file is opened once before it takes the place
   * of the old one.
   *
   * @param old the passphrase of today
   * @param fresh the new one
   * @param cost how slow guessing it is made
   * @param random the source of the salt
   * @throws DeskHomeException.WrongPassphrase if the old one does not open the desk
   * @throws DeskHomeException.Unusable if the new one is too short
   * @throws DeskHomeException.Damaged if the keys file is not as it was written
   * @throws IOException if the file cannot be read or written; the old one stays then
   */
  public void changePassphrase(
      Passphrase old, Passphrase fresh, Argon2id.Cost cost, SecureRandom random)
      throws IOException, DeskHomeException {
    fresh.fitForNewKeys();
    try (DeskKeys keys = open(old)) {
      byte[] box = keys.seal(fresh, cost, random);
      DeskKeys.open(fresh, box).close();
      OwnerFiles.write(folder.resolve(KEYS), box);
    } catch (VaultException e) {
      throw damaged(String.valueOf(e.getMessage()));
    }
    book.<Boolean, IOException>together(
        () -> {
          book.events().add("passphrase", statement.root().octets().hex(), "");
          return true;
        });
  }

  private DeskKeys open(Passphrase passphrase) throws IOException, DeskHomeException {
    byte[] box = OwnerFiles.read(folder.resolve(KEYS), MAX_KEYS_BYTES);
    try {
      DeskKeys keys = DeskKeys.open(passphrase, box);
      if (!keys.root().equals(statement.root())
          || !keys.desk().publicKey().equals(statement.terms().key())) {
        keys.close();
        throw damaged("the keys and the statement are of two desks");
      }
      return keys;
    } catch (VaultException.Tampered e) {
      throw new DeskHomeException.WrongPassphrase(
          "The passphrase does not open this desk. Nothing was changed; try again, and mind"
              + " capital letters and the keyboard's language.");
    } catch (VaultException e) {
      throw damaged(String.valueOf(e.getMessage()));
    }
  }

  /**
   * Returns what signs the newest event of the book, and knows the signature.
   *
   * @param keys the open keys of this desk
   * @return the seal; of no use once the keys are closed
   */
  public static HeadSeal seal(DeskKeys keys) {
    VerifyKey desk = keys.desk().publicKey();
    return new HeadSeal() {
      @Override
      public Octets sign(byte[] head) {
        return Octets.of(keys.desk().sign(head));
      }

      @Override
      public boolean verifies(byte[] head, Octets signature) {
        return desk.verifies(head, signature.toBytes());
      }
    };
  }

  /**
   * Returns the folder of this home.
   *
   * @return the folder
   */
  public Path folder() {
    return folder;
  }

  /**
   * Returns the sales book.
   *
   * @return open until this home is closed
   */
  public SalesBook book() {
    return book;
  }

  /**
   * Returns the root's word for the desk key.
   *
   * @return the statement
   */
  public Statement statement() {
    return statement;
  }

  /**
   * Returns the folder that keeps, for each series, what packing must remember.
   *
   * @return an existing folder for the owner only
   * @throws IOException if it cannot be made
   */
  public Path packing() throws IOException {
    Path packing = folder.resolve(PACKING);
    OwnerFiles.folder(packing);
    return packing;
  }

  @Override
  public void close() throws IOException {
    try {
      book.close();
    } finally {
      lock.close();
    }
  }

  private static Statement readStatement(Path file) throws IOException, DeskHomeException {
    byte[] bytes = OwnerFiles.read(file, MessageType.STATEMENT.maxBytes());
    try {
      return Statement.verify(bytes, TrustedRoots.firstMeeting());
    } catch (VaultException e) {
      throw damaged(String.valueOf(e.getMessage()));
    }
  }

  private static DeskHomeException.Damaged damaged(String what) {
    return new DeskHomeException.Damaged(
        "The desk's files are not as they were written ("
            + what
            + "). Nothing was changed; take the home from a backup.");
  }
}
