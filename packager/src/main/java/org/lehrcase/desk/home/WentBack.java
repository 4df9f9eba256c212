package org.lehrcase.desk.home;

import java.io.IOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.primitive.Argon2id;

/** Marks the files of a home that was taken out of a backup, before anybody works there. */
public final class WentBack {
  private static final int MAX_KEYS_BYTES = 16_384;

  private WentBack() {}

  /**
   * Counts one more restore in the keys, so that editions packed from now on come behind all that
   * were packed after the backup.
   *
   * @param home the folder of the home
   * @param passphrase opens its keys
   * @param cost how slow guessing it is made
   * @param random the source of the salt
   * @throws DeskHomeException.WrongPassphrase if it does not open them
   * @throws IOException if the file cannot be read or written
   */
  public static void mark(Path home, Passphrase passphrase, Argon2id.Cost cost, SecureRandom random)
      throws IOException, DeskHomeException.WrongPassphrase {
    Path file = home.resolve(DeskHome.KEYS);
    try (DeskKeys keys = DeskKeys.open(passphrase, OwnerFiles.read(file, MAX_KEYS_BYTES));
        DeskKeys later = keys.wentBack()) {
      OwnerFiles.write(file, later.seal(passphrase, cost, random));
    } catch (VaultException e) {
      throw new DeskHomeException.WrongPassphrase(
          "The backup opens, but the keys in it do not open with the same passphrase.");
    }
  }
}
