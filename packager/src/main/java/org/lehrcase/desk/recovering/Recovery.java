package org.lehrcase.desk.recovering;

import java.io.IOException;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.keys.MasterKey;
import org.lehrcase.core.keys.RootSecret;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.SignerRole;
import org.lehrcase.core.license.Statement;
import org.lehrcase.core.primitive.SigningKey;
import org.lehrcase.desk.answering.Refusal;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.DeskKeys;

/**
 * The keys and the statement of a rebuilt desk. Its signing key is new; the statement's serial is
 * above every one that was met, and names the editions that stay good although an older key signed
 * them.
 */
public final class Recovery {
  private Recovery() {}

  /** What a rebuilt desk works with. */
  public record Rebuilt(DeskKeys keys, Statement statement) {}

  /**
   * Rebuilds the keys.
   *
   * @param root the root secret, only read
   * @param evidence what is left of the desk
   * @param random the source of the new signing key
   * @return keys for the caller to close, and the statement
   * @throws RefusedException if nothing of the lost desk was found, or an edition is of no epoch
   * @throws VaultException if the statement cannot be signed
   * @throws IOException if an edition cannot be read
   */
  public static Rebuilt rebuild(RootSecret root, Evidence evidence, SecureRandom random)
      throws RefusedException, VaultException, IOException {
    List<Statement> met = evidence.statements();
    if (met.isEmpty()) {
      throw new RefusedException(
          Refusal.WRONG_ENTRY,
          "Nothing of the lost desk was given, so the number of its last statement is not known."
              + " Nothing was made. Give at least one edition (--edition) or one buyer's license"
              + " (--file).");
    }
    int restores = 0;
    int newestEpoch = 0;
    List<Octets> good = new ArrayList<>();
    for (EditionFolder edition : evidence.editions()) {
      FrontPage front = requireGood(edition.frontPage(), met.get(0));
      restores = Math.max(restores, front.title().restores());
      newestEpoch = Math.max(newestEpoch, epoch(root, front));
      good.add(front.digest());
    }
    for (License license : evidence.licenses()) {
      newestEpoch = Math.max(newestEpoch, license.terms().issue().epoch());
    }
    DeskKeys keys = DeskKeys.restored(root, restores + 1, newestEpoch, random);
    try (SigningKey rootKey = root.signingKey()) {
      Statement.Terms last = met.get(0).terms();
      Statement.Terms terms =
          new Statement.Terms(
              keys.desk().publicKey(), last.serial() + 1, SignerRole.DESK, last.name(), good);
      return new Rebuilt(keys, Statement.issue(terms, rootKey));
    }
  }

  /** The new statement vouches for what is given, so a replaced key's edition must not be. */
  private static FrontPage requireGood(FrontPage front, Statement newest) throws RefusedException {
    if (front.isGoodUnder(newest)) {
      return front;
    }
    throw new RefusedException(
        Refusal.WRONG_ENTRY,
        "\""
            + front.title().title()
            + "\", edition "
            + front.title().number()
            + ", was signed with a key that a later statement replaced. Nothing was made. If the key"
            + " was stolen, leave this edition out; give the later one.");
  }

  /** Finds the epoch whose key the front page was made with. */
  private static int epoch(RootSecret root, FrontPage front) throws RefusedException {
    for (int epoch = 0; epoch < DeskKeys.MAX_EPOCHS; epoch++) {
      try (MasterKey master = root.masterKey(epoch)) {
        if (isOf(master, front)) {
          return epoch;
        }
      }
    }
    throw new RefusedException(
        Refusal.WRONG_ENTRY,
        "\""
            + front.title().title()
            + "\" was packed with no key of these envelopes."
            + " Nothing was made.");
  }

  static boolean isOf(MasterKey master, FrontPage front) {
    try (EditionKey key = master.editionKey(front.edition())) {
      return key.check(front.edition()).equals(front.facts().seal().editionCheck());
    }
  }
}
