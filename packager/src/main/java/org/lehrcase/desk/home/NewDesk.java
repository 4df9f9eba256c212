package org.lehrcase.desk.home;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.List;
import java.util.stream.Stream;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.keys.RootSecret;
import org.lehrcase.core.license.SignerRole;
import org.lehrcase.core.license.Statement;
import org.lehrcase.core.primitive.Argon2id;
import org.lehrcase.core.primitive.SigningKey;
import org.lehrcase.desk.envelopes.SpareKeys;
import org.lehrcase.desk.sales.SalesBook;

/**
 * A desk being set up. The root secret lives only in this object and on the envelopes; the home
 * appears as a whole when everything else is done.
 */
public final class NewDesk implements AutoCloseable {
  private final Path home;
  private final SecureRandom random;
  private final DeskKeys keys;
  private final Statement statement;
  private final List<List<String>> envelopes;

  private NewDesk(
      Path home,
      SecureRandom random,
      DeskKeys keys,
      Statement statement,
      List<List<String>> envelopes) {
    this.home = home;
    this.random = random;
    this.keys = keys;
    this.statement = statement;
    this.envelopes = envelopes;
  }

  /**
   * Draws the keys of a new shop. Nothing is written yet.
   *
   * @param home where the desk will live; must be free
   * @param shop the teacher's or shop's name, shown to every buyer
   * @param random the source of all keys
   * @return the desk to be
   * @throws DeskHomeException.NotAHome if something is there already
   * @throws VaultException if the name breaks the rules for names
   * @throws IOException if the place cannot be looked at
   */
  public static NewDesk prepare(Path home, String shop, SecureRandom random)
      throws IOException, DeskHomeException, VaultException {
    requireFree(home);
    try (RootSecret root = RootSecret.random(random);
        SigningKey rootKey = root.signingKey()) {
      DeskKeys keys = DeskKeys.first(root, random);
      Statement.Terms terms =
          new Statement.Terms(keys.desk().publicKey(), 1, SignerRole.DESK, shop, List.of());
      Statement statement = Statement.issue(terms, rootKey);
      return new NewDesk(home, random, keys, statement, SpareKeys.split(root, random));
    }
  }

  /**
   * Takes the keys and the statement of a desk that is being rebuilt; its envelopes exist already.
   *
   * @param home where the desk will live; must be free
   * @param keys the keys; closed with this object
   * @param statement the root's word for them
   * @param random the source of salts
   * @return the desk to be
   * @throws DeskHomeException.NotAHome if something is there already
   * @throws IOException if the place cannot be looked at
   */
  public static NewDesk rebuild(Path home, DeskKeys keys, Statement statement, SecureRandom random)
      throws IOException, DeskHomeException {
    requireFree(home);
    return new NewDesk(home, random, keys, statement, List.of());
  }

  /** Writes the first entries of a sales book. */
  @FunctionalInterface
  public interface FirstEntries {
    /**
     * Writes them.
     *
     * @param book the new, empty book
     * @throws IOException if it cannot be written
     */
    void write(SalesBook book) throws IOException;
  }

  /**
   * Returns what goes on the three envelopes.
   *
   * @return for each envelope its lines; secret
   */
  public List<List<String>> envelopes() {
    return envelopes;
  }

  /**
   * Returns the root's word for the new desk key.
   *
   * @return the statement, public
   */
  public Statement statement() {
    return statement;
  }

  /**
   * Writes the home beside its place and moves it there when it is whole.
   *
   * @param passphrase protects the keys
   * @param cost how slow guessing it is made
   * @param clock gives the first day of the sales book
   * @throws IOException if it cannot be written; nothing is left behind then
   */
  public void settle(Passphrase passphrase, Argon2id.Cost cost, Clock clock) throws IOException {
    settle(passphrase, cost, clock, book -> {});
  }

  /**
   * Writes the home as {@link #settle(Passphrase, Argon2id.Cost, Clock)} does, with more in its
   * book.
   *
   * @param passphrase protects the keys
   * @param cost how slow guessing it is made
   * @param clock gives the first day of the sales book
   * @param entries what else stands in the book from the beginning
   * @throws IOException if it cannot be written; nothing is left behind then
   */
  public void settle(Passphrase passphrase, Argon2id.Cost cost, Clock clock, FirstEntries entries)
      throws IOException {
    Path staging = home.resolveSibling(home.getFileName() + ".making");
    remove(staging);
    try {
      OwnerFiles.folder(staging);
      OwnerFiles.write(staging.resolve(DeskHome.STATEMENT), statement.toBytes());
      try (SalesBook book = SalesBook.create(staging.resolve(DeskHome.BOOK), clock)) {
        book.events().add("opened", statement.root().octets().hex(), statement.terms().name());
        entries.write(book);
      }
      OwnerFiles.write(staging.resolve(DeskHome.KEYS), keys.seal(passphrase, cost, random));
      Files.deleteIfExists(home); // an empty folder, or nothing
      Files.move(staging, home, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      remove(staging);
    }
    OwnerFiles.forceFolder(home.toAbsolutePath().getParent());
  }

  @Override
  public void close() {
    keys.close();
  }

  private static void requireFree(Path home) throws IOException, DeskHomeException {
    if (!Files.exists(home)) {
      return;
    }
    boolean free = Files.isDirectory(home);
    if (free) {
      try (Stream<Path> inside = Files.list(home)) {
        free = inside.findAny().isEmpty();
      }
    }
    if (!free) {
      throw new DeskHomeException.NotAHome(
          "There is something at " + home + " already. Nothing was changed; name a new folder.");
    }
  }

  private static void remove(Path staging) throws IOException {
    if (!Files.isDirectory(staging)) {
      return;
    }
    try (Stream<Path> inside = Files.list(staging)) {
      for (Path file : inside.toList()) {
        Files.delete(file);
      }
    }
    Files.delete(staging);
  }
}
