package org.lehrcase.desk.pack;

import java.io.IOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.license.DeskSigner;
import org.lehrcase.core.license.KeysFile;
import org.lehrcase.core.license.KeysFileDraft;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.desk.answering.KeyRows;
import org.lehrcase.desk.answering.Refusal;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.sales.EditionEntry;

/**
 * Writes the keys file of an edition again, for everybody who is entitled now, without packing: a
 * few small files that go beside the parts on any copy. Nobody who is entitled is shut out.
 */
public final class KeysIssue {
  private final DeskHome home;
  private final DeskKeys keys;
  private final SecureRandom random;
  private final KeysRoom.Watch watch;

  /**
   * Works with an open desk.
   *
   * @param home its home
   * @param keys its keys
   * @param random the source of salt and dummy rows
   */
  public KeysIssue(DeskHome home, DeskKeys keys, SecureRandom random) {
    this(home, keys, random, step -> {});
  }

  KeysIssue(DeskHome home, DeskKeys keys, SecureRandom random, KeysRoom.Watch watch) {
    this.watch = watch;
    this.home = home;
    this.keys = keys;
    this.random = random;
  }

  /**
   * What was written.
   *
   * @param issue the number of this issue
   * @param licenses for how many licenses it opens
   */
  public record Written(int issue, int licenses) {}

  /**
   * Writes the keys file into the edition's folder. When it ends early, readers find the issue
   * before or this one, whole; writing it once more tidies up.
   *
   * @param folder a copy of an edition that this desk packed
   * @return what was written
   * @throws RefusedException if the edition is not in the sales book; nothing is written
   * @throws VaultException if the folder is no edition of this shop
   * @throws IOException if it cannot be read or written
   */
  public Written write(Path folder) throws IOException, VaultException, RefusedException {
    TrustedRoots shop = TrustedRoots.pinned(home.statement().root());
    FrontPage front = EditionFolder.open(folder, shop).frontPage();
    EditionEntry entry =
        home.book()
            .editions()
            .byId(front.edition())
            .orElseThrow(
                () ->
                    new RefusedException(
                        Refusal.WRONG_ENTRY,
                        "This edition is not in the sales book. Nothing was changed."));
    KeysRoom room = new KeysRoom(folder, watch);
    room.settle(front, shop);
    int before = issue(folder, front, shop);
    return home.book()
        .<Written, IOException>together(
            () -> {
              KeysFileDraft draft = KeysFileDraft.start(entry.id(), random);
              int licenses = new KeyRows(home.book(), keys).addTo(draft, entry);
              DeskSigner signer = new DeskSigner(home.statement(), keys.desk());
              draft.write(room.staging(), front.digest(), before + 1, signer);
              room.publish();
              home.book()
                  .events()
                  .add(
                      "keys",
                      entry.id().hex(),
                      "issue " + (before + 1) + ", " + licenses + " licenses");
              return new Written(before + 1, licenses);
            });
  }

  /** A keys file that is missing or torn counts as the first: its number only rises. */
  private int issue(Path folder, FrontPage front, TrustedRoots shop) throws IOException {
    long noted =
        home.book().events().all().stream()
            .filter(event -> event.kind().equals("keys"))
            .filter(event -> event.subject().equals(front.edition().hex()))
            .count();
    int found = 1;
    try {
      found = KeysFile.open(folder, front.edition(), front.digest(), shop).index().about().serial();
    } catch (VaultException e) {
      found = 1; // it is being written anew anyway
    }
    return Math.max(found, 1 + Math.toIntExact(noted));
  }
}
