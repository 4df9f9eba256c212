package org.lehrcase.bench.home;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The file that a browser is opened on: it leads to a one-time address. An address on a command
 * line could be read by every user of the machine; this file only by its owner.
 */
public final class EntryFile {
  private static final String NAME = "open-lehrcase.html";

  private EntryFile() {}

  /**
   * Writes the file.
   *
   * @param home the data folder
   * @param address a one-time address
   * @return the file
   * @throws IOException if it cannot be written
   */
  public static Path write(Path home, String address) throws IOException {
    if (!address.matches("http://127\\.0\\.0\\.1:\\d+/enter/[0-9a-f]+")) {
      throw new IllegalArgumentException("not a one-time address");
    }
    Path file = home.resolve(NAME);
    OwnerFile.write(
        file,
        "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Lehrcase</title>"
            + "<meta name=\"referrer\" content=\"no-referrer\">"
            + "<meta http-equiv=\"refresh\" content=\"0;url="
            + address
            + "\"></head><body><p><a href=\""
            + address
            + "\">Open Lehrcase</a></p></body></html>\n");
    return file;
  }

  /**
   * Removes the file; its address is of no use any more.
   *
   * @param home the data folder
   * @throws IOException if it cannot be removed
   */
  public static void remove(Path home) throws IOException {
    Files.deleteIfExists(home.resolve(NAME));
  }
}
