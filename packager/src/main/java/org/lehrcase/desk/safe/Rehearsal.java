package org.lehrcase.desk.safe;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import org.lehrcase.core.primitive.Argon2id;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskHomeException;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.home.OwnerFiles;
import org.lehrcase.desk.home.Passphrase;
import org.lehrcase.desk.home.WentBack;
import org.lehrcase.desk.sales.BookCheck;

/** Restores backups: to try, or for good. */
public final class Rehearsal {
  private final Clock clock;

  /**
   * Works by a clock.
   *
   * @param clock gives day and time
   */
  public Rehearsal(Clock clock) {
    this.clock = clock;
  }

  /**
   * What a restored desk was found to be.
   *
   * @param shop its name
   * @param events how many events its book has
   * @param people how many buyers
   * @param licenses how many licenses
   * @param editions how many editions
   * @param breaks what is not as it was written; empty for a whole book
   */
  public record Found(
      String shop,
      long events,
      int people,
      int licenses,
      int editions,
      java.util.List<String> breaks) {}

  /**
   * Restores a backup beside a place, opens the desk with the passphrase, follows the whole book,
   * and removes everything again.
   *
   * @param file the backup
   * @param passphrase of the day of the backup
   * @param beside a folder; the trial stands beside or in it, for the owner only
   * @return what was found
   * @throws DeskHomeException if it does not open
   * @throws IOException if it is damaged or cannot be read
   */
  public Found of(Path file, Passphrase passphrase, Path beside)
      throws IOException, DeskHomeException {
    Path trial = beside.resolve("rehearsal.part");
    remove(trial);
    try {
      unpack(file, passphrase, trial);
      return look(trial, passphrase);
    } finally {
      remove(trial);
    }
  }

  /**
   * Restores a backup for good. Editions packed from now on order behind all that were packed after
   * the backup.
   *
   * @param file the backup
   * @param passphrase of the day of the backup
   * @param home where the desk will live; must not exist
   * @param cost how slow guessing the passphrase is made
   * @param random the source of salts
   * @return what was found
   * @throws DeskHomeException if it does not open, or something is at the place
   * @throws IOException if it is damaged or cannot be written; nothing is left then
   */
  public Found restore(
      Path file, Passphrase passphrase, Path home, Argon2id.Cost cost, SecureRandom random)
      throws IOException, DeskHomeException {
    if (Files.exists(home)) {
      throw new DeskHomeException.NotAHome(
          "There is something at " + home + " already. Nothing was changed; name a new folder.");
    }
    Path making = home.resolveSibling(home.getFileName() + ".making");
    remove(making);
    try {
      unpack(file, passphrase, making);
      Found found = look(making, passphrase);
      WentBack.mark(making, passphrase, cost, random);
      enter(making, passphrase);
      Files.move(making, home, StandardCopyOption.ATOMIC_MOVE);
      return found;
    } finally {
      remove(making);
    }
  }

  private void enter(Path making, Passphrase passphrase) throws IOException, DeskHomeException {
    try (DeskHome desk = DeskHome.open(making, clock);
        DeskKeys keys = desk.unlock(passphrase)) {
      desk.book()
          .<Boolean, IOException>together(
              () -> {
                desk.book()
                    .events()
                    .add("restored", keys.root().octets().hex(), "time " + keys.restores());
                return true;
              });
    }
  }

  private Found look(Path trial, Passphrase passphrase) throws IOException, DeskHomeException {
    try (DeskHome desk = DeskHome.open(trial, clock);
        DeskKeys keys = desk.unlock(passphrase)) {
      BookCheck check = desk.book().check(Optional.of(DeskHome.seal(keys)));
      return new Found(
          desk.statement().terms().name(),
          check.events(),
          desk.book().people().count(),
          desk.book().licenses().all().size(),
          desk.book().editions().all().size(),
          check.breaks());
    }
  }

  private static void unpack(Path file, Passphrase passphrase, Path home)
      throws IOException, DeskHomeException {
    OwnerFiles.folder(home);
    try (BackupFile backup = BackupFile.open(file, passphrase)) {
      Archive.unpack(backup, home);
    }
  }

  private static void remove(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path one : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(one);
      }
    }
  }
}
