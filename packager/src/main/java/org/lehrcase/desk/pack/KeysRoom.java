package org.lehrcase.desk.pack;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.file.WholeFiles;
import org.lehrcase.core.license.KeysFile;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.desk.answering.Refusal;
import org.lehrcase.desk.answering.RefusedException;

/**
 * Replaces the keys file of an edition so that a reader finds one whole issue at every moment: the
 * new issue lies whole in {@code next/}, where readers look when the folder's own does not fit
 * together, before the first of the folder's files is replaced, and leaves it when the last one is.
 */
final class KeysRoom {
  private static final long MAX_CHUNK_BYTES = 1024L * 48;
  private static final String CHUNKS = "[0-9][0-9][0-9][0-9]";

  private final Path folder;
  private final Path next;
  private final Watch watch;

  /** Is told before every step on the disk; a test ends the work there. */
  @FunctionalInterface
  interface Watch {
    void before(String step) throws IOException;
  }

  KeysRoom(Path folder, Watch watch) {
    this.folder = folder;
    this.next = folder.resolve(EditionLayout.NEXT);
    this.watch = watch;
  }

  /** Finishes what an earlier run that was cut had begun: forward if its issue is whole. */
  void settle(FrontPage front, TrustedRoots shop) throws IOException, RefusedException {
    if (Files.exists(next.resolve(EditionLayout.FRONT_PAGE), LinkOption.NOFOLLOW_LINKS)) {
      throw new RefusedException(
          Refusal.WRONG_ENTRY,
          "A newer edition is being merged into this folder. Finish that first, with \"merge\""
              + " at the bench. Nothing was changed.");
    }
    if (!FoundFile.isFolder(next)) {
      return;
    }
    if (isWhole(front, shop)) {
      publish();
    } else {
      clear();
    }
  }

  private boolean isWhole(FrontPage front, TrustedRoots shop) throws IOException {
    try {
      KeysFile.open(next, front.edition(), front.digest(), shop).check();
      return true;
    } catch (VaultException e) {
      return false; // the folder's own files were not touched then
    }
  }

  /** Returns where the new issue is written. */
  Path staging() throws IOException {
    watch.before("stage");
    Files.createDirectories(next);
    return next;
  }

  /** Puts the whole issue of {@code next/} in place, file by file. */
  void publish() throws IOException {
    Path own = Files.createDirectories(folder.resolve(KeysFile.FOLDER_NAME));
    List<String> chunks = chunks(next.resolve(KeysFile.FOLDER_NAME));
    for (String chunk : chunks) {
      watch.before("chunk " + chunk);
      copy(next.resolve(KeysFile.FOLDER_NAME).resolve(chunk), own.resolve(chunk), MAX_CHUNK_BYTES);
    }
    watch.before("index");
    Path index = next.resolve(KeysFile.INDEX_NAME);
    copy(index, folder.resolve(KeysFile.INDEX_NAME), MessageType.KEYS_INDEX.maxBytes());
    for (String chunk : chunks(own)) {
      if (!chunks.contains(chunk)) {
        watch.before("older " + chunk);
        Files.delete(own.resolve(chunk));
      }
    }
    clear();
  }

  private static void copy(Path from, Path to, long mostBytes) throws IOException {
    try {
      WholeFiles.ON_SYSTEM.put(to, FoundFile.read(from, mostBytes));
    } catch (VaultException e) {
      throw new IOException("the new keys file was changed while it was put in place", e);
    }
  }

  /** Removes the staged issue, its index first, so that half of it is never taken for one. */
  private void clear() throws IOException {
    watch.before("clear");
    Files.deleteIfExists(next.resolve(KeysFile.INDEX_NAME));
    Path staged = next.resolve(KeysFile.FOLDER_NAME);
    for (String chunk : chunks(staged)) {
      watch.before("clear " + chunk);
      Files.delete(staged.resolve(chunk));
    }
    removeIfEmpty(staged);
    removeIfEmpty(next);
  }

  private static void removeIfEmpty(Path place) throws IOException {
    try {
      Files.deleteIfExists(place);
    } catch (java.nio.file.DirectoryNotEmptyException e) {
      return; // an unfinished file of a run that was cut; it does not exist for a reader
    }
  }

  private static List<String> chunks(Path place) throws IOException {
    List<String> names = new ArrayList<>();
    if (FoundFile.isFolder(place)) {
      try (DirectoryStream<Path> all = Files.newDirectoryStream(place, CHUNKS)) {
        all.forEach(one -> names.add(one.getFileName().toString()));
      }
    }
    Collections.sort(names);
    return names;
  }
}
