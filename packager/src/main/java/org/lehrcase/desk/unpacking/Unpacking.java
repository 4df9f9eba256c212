package org.lehrcase.desk.unpacking;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.seal.ClearSource;
import org.lehrcase.desk.answering.Refusal;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.home.OwnerFiles;
import org.lehrcase.desk.sales.EditionEntry;

/** Rebuilds a course folder from a copy of an edition. */
public final class Unpacking {
  private static final int BUFFER_BYTES = 1 << 16;

  private final DeskHome desk;
  private final DeskKeys keys;

  /**
   * Works with an open desk.
   *
   * @param desk its home
   * @param keys its keys
   */
  public Unpacking(DeskHome desk, DeskKeys keys) {
    this.desk = desk;
    this.keys = keys;
  }

  /**
   * What was rebuilt.
   *
   * @param files how many files were written
   * @param missing files that this copy does not hold, or holds damaged
   */
  public record Unpacked(int files, List<String> missing) {}

  /**
   * Rebuilds the folder; it appears when all of it is written.
   *
   * @param folder a copy of an edition of this desk
   * @param course the folder to make; must not exist
   * @return what was rebuilt
   * @throws RefusedException if the edition is not this desk's
   * @throws VaultException if front page or contents are damaged
   * @throws IOException if reading or writing fails; no folder appears then
   */
  public Unpacked unpack(Path folder, Path course)
      throws IOException, VaultException, RefusedException {
    if (Files.exists(course)) {
      throw new FileAlreadyExistsException(course.toString());
    }
    EditionFolder edition = EditionFolder.open(folder, TrustedRoots.pinned(keys.root()));
    EditionId id = edition.frontPage().edition();
    EditionEntry entry =
        desk.book()
            .editions()
            .byId(id)
            .orElseThrow(
                () ->
                    new RefusedException(
                        Refusal.WRONG_ENTRY, "This desk did not pack that edition."));
    Path making = course.resolveSibling(course.getFileName() + ".unpacking");
    new OldFolder(making).remove();
    OwnerFiles.folder(making);
    Unpacked unpacked;
    try (EditionKey key = keys.master(entry.epoch()).editionKey(id)) {
      unpacked = write(OpenedEdition.open(edition, key), making);
    }
    Files.move(making, course, StandardCopyOption.ATOMIC_MOVE);
    return unpacked;
  }

  private static Unpacked write(OpenedEdition edition, Path making)
      throws IOException, VaultException {
    List<String> missing = new ArrayList<>();
    int files = 0;
    text(making.resolve("course.yaml"), CourseFacts.course(edition));
    for (Lesson lesson : edition.lessons()) {
      Path folder = making.resolve(folderName(lesson));
      OwnerFiles.folder(folder);
      text(folder.resolve("lesson.yaml"), CourseFacts.lesson(lesson));
      Set<String> taken = new HashSet<>();
      for (Asset asset : lesson.assets()) {
        String name = plain(asset.name());
        if (!taken.add(name.toLowerCase(Locale.ROOT))) {
          name = taken.size() + " " + name;
        }
        if (copied(edition, asset, folder.resolve(name))) {
          files++;
        } else {
          missing.add(lesson.title() + ": " + asset.name());
        }
      }
    }
    return new Unpacked(files, List.copyOf(missing));
  }

  private static boolean copied(OpenedEdition edition, Asset asset, Path target)
      throws IOException {
    if (!edition.isHere(asset)) {
      return false;
    }
    try (ClearSource source = edition.open(asset);
        FileChannel out =
            FileChannel.open(target, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      ByteBuffer buffer = ByteBuffer.allocate(BUFFER_BYTES);
      long at = 0;
      while (at < source.sizeBytes()) {
        buffer.clear();
        int now = source.readAt(at, buffer);
        buffer.flip();
        while (buffer.hasRemaining()) {
          out.write(buffer);
        }
        at += now;
      }
      out.force(true);
      return true;
    } catch (VaultException e) {
      Files.deleteIfExists(target);
      return false; // damaged in this copy: told by name, the rest goes on
    }
  }

  private static String folderName(Lesson lesson) {
    return String.format(Locale.ROOT, "%02d %s", lesson.number(), plain(lesson.title())).strip();
  }

  /** A name that every system takes, and that stays inside its folder. */
  private static String plain(String name) {
    String plain = name.replaceAll("[\\\\/:*?\"<>|\\p{Cntrl}]", "_").strip();
    plain = plain.replaceAll("^\\.+|[. ]+$", "");
    return plain.isEmpty() ? "file" : plain;
  }

  private static void text(Path file, String text) throws IOException {
    OwnerFiles.write(file, text.getBytes(StandardCharsets.UTF_8));
  }
}
