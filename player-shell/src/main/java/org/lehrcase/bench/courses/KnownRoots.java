package org.lehrcase.bench.courses;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.bench.store.RootTable;
import org.lehrcase.bench.store.RootTable.PinnedRoot;
import org.lehrcase.bench.store.StoreException;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.license.SignerRole;
import org.lehrcase.core.license.Statement;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.primitive.VerifyKey;

/**
 * The teachers that this laptop has met. The first message of a root pins it; its name and five
 * words are shown. Of each root the newest statement counts. Two roots with one name are told.
 */
public final class KnownRoots {
  private final RootTable table;

  /**
   * One teacher to show.
   *
   * @param name the name in the statement
   * @param words five words of the root's hash
   * @param twin whether another root carries the same name, which a person must look at
   */
  public record Teacher(String name, List<String> words, boolean twin) {}

  /**
   * Works on the stored roots.
   *
   * @param table where they are kept
   */
  public KnownRoots(RootTable table) {
    this.table = table;
  }

  /**
   * Returns the rule that accepts exactly the roots met so far.
   *
   * @return the rule; it accepts nothing before the first meeting
   * @throws IOException if the database cannot be read
   */
  public TrustedRoots trusted() throws IOException {
    Set<VerifyKey> keys = new HashSet<>();
    table.all().forEach(root -> keys.add(new VerifyKey(root.publicKey())));
    return TrustedRoots.pinned(keys);
  }

  /**
   * Pins the root of a verified statement, or notes a newer statement of a known root.
   *
   * @param statement the statement
   * @throws StoreException if the database cannot be written
   */
  public void meet(Statement statement) throws StoreException {
    table.keep(
        new PinnedRoot(
            statement.root().octets(),
            statement.terms().role(),
            statement.terms().name(),
            statement.terms().serial(),
            Octets.of(statement.toBytes())));
  }

  /**
   * Returns the newest desk statement of a root.
   *
   * @param root the root
   * @return the statement, empty if none was seen
   * @throws IOException if the database cannot be read
   * @throws VaultException if what is stored is damaged
   */
  public Optional<Statement> newestDesk(VerifyKey root) throws IOException, VaultException {
    for (PinnedRoot pinned : table.all()) {
      if (pinned.role() == SignerRole.DESK && pinned.publicKey().equals(root.octets())) {
        return Optional.of(read(pinned));
      }
    }
    return Optional.empty();
  }

  /**
   * Returns the desk keys by which letters may be signed.
   *
   * @return one key per teacher
   * @throws IOException if the database cannot be read
   * @throws VaultException if what is stored is damaged
   */
  public List<VerifyKey> deskKeys() throws IOException, VaultException {
    List<VerifyKey> keys = new ArrayList<>();
    for (PinnedRoot pinned : table.all()) {
      if (pinned.role() == SignerRole.DESK) {
        keys.add(read(pinned).deskKey());
      }
    }
    return keys;
  }

  /**
   * Returns the teachers to show.
   *
   * @return each once
   * @throws IOException if the database cannot be read
   * @throws VaultException if what is stored is damaged
   */
  public List<Teacher> teachers() throws IOException, VaultException {
    List<PinnedRoot> all = table.all();
    Set<VerifyKey> shown = new HashSet<>();
    List<Teacher> teachers = new ArrayList<>();
    for (PinnedRoot pinned : all) {
      if (shown.add(new VerifyKey(pinned.publicKey()))) {
        boolean twin =
            all.stream()
                .anyMatch(
                    other ->
                        other.name().equals(pinned.name())
                            && !other.publicKey().equals(pinned.publicKey()));
        teachers.add(new Teacher(pinned.name(), read(pinned).words(), twin));
      }
    }
    return teachers;
  }

  private static Statement read(PinnedRoot pinned) throws VaultException {
    return Statement.verify(
        pinned.statement().toBytes(), TrustedRoots.pinned(new VerifyKey(pinned.publicKey())));
  }
}
