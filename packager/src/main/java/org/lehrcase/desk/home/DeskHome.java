package org.lehrcase.desk.home;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.license.Statement;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.desk.sales.SalesBook;

/** An open desk home: locked against a second desk, its sales book open, its keys still shut. */
public final class DeskHome implements AutoCloseable {
  static final String KEYS = "desk-keys";
  static final String STATEMENT = "statement";
  static final String BOOK = "sales.db";
  private static final String LOCK = "lock";
  private static final String PACKING = "packing";
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
