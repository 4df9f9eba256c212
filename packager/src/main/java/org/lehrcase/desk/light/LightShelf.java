package org.lehrcase.desk.light;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lehrcase.core.id.Octets;
import org.lehrcase.desk.author.SourceAsset;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.OwnerFiles;
import org.lehrcase.desk.pack.FilmPrint;

/**
 * Where the desk keeps finished light copies between packs: clear films, each named by the print of
 * the film that it was made from, in a folder for the owner alone. A name without {@code .part}
 * stands for a finished and checked film.
 */
public final class LightShelf {
  private static final String FOLDER = "light-films";
  private static final String UNFINISHED = "making.mp4.part";
  private static final String CHILD = "encoder";
  private static final int NAME_OCTETS = 16;
  private static final int MAX_CHILD_BYTES = 100;

  private final Path folder;

  private LightShelf(Path folder) {
    this.folder = folder;
  }

  /**
   * Opens the shelf of a desk, ends an encoder that a killed desk left behind, and removes what it
   * had not finished.
   *
   * @param home an open home, which no other desk uses
   * @return its shelf
   * @throws IOException if the folder cannot be made or read
   */
  public static LightShelf of(DeskHome home) throws IOException {
    LightShelf shelf = new LightShelf(home.packing().resolve(FOLDER));
    OwnerFiles.folder(shelf.folder);
    shelf.endLeftChild();
    Files.deleteIfExists(shelf.unfinished());
    return shelf;
  }

  /**
   * Returns where the films lie.
   *
   * @return the folder
   */
  public Path folder() {
    return folder;
  }

  /**
   * Returns the finished light copies.
   *
   * @return their files
   * @throws IOException if the folder cannot be read
   */
  public List<Path> films() throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.filter(file -> file.toString().endsWith(".mp4")).sorted().toList();
    }
  }

  /**
   * Removes every light copy. Editions are untouched; a later pack makes the copies anew.
   *
   * @return how many there were
   * @throws IOException if one cannot be removed; it and those after it stay
   */
  public int clear() throws IOException {
    List<Path> films = films();
    for (Path film : films) {
      Files.deleteIfExists(film);
    }
    Files.deleteIfExists(unfinished());
    return films.size();
  }

  /** Returns where the light copy of a film lies, or will. */
  Path place(SourceAsset film) throws IOException {
    byte[] print = FilmPrint.of(film).toBytes();
    Octets name = Octets.of(java.util.Arrays.copyOf(print, NAME_OCTETS));
    return folder.resolve(name.hex() + "-" + LightRecipe.VERSION + ".mp4");
  }

  static boolean isKept(Path place) {
    return Files.isRegularFile(place, LinkOption.NOFOLLOW_LINKS);
  }

  /** Returns the file into which a copy is made. */
  Path unfinished() {
    return folder.resolve(UNFINISHED);
  }

  /** Gives a finished copy its name, once its bytes are on the disk. */
  void keep(Path place) throws IOException {
    try (FileChannel channel = FileChannel.open(unfinished(), StandardOpenOption.WRITE)) {
      channel.force(true);
    }
    Files.move(unfinished(), place, StandardCopyOption.ATOMIC_MOVE);
    OwnerFiles.forceFolder(folder);
  }

  long freeBytes() throws IOException {
    return Files.getFileStore(folder).getUsableSpace();
  }

  /** Notes the child, so that the next desk can end it if this one is killed. */
  void note(ProcessHandle child) {
    Optional<Instant> start = child.info().startInstant();
    String text = child.pid() + " " + start.map(Instant::toEpochMilli).orElse(0L);
    try {
      Files.write(folder.resolve(CHILD), text.getBytes(StandardCharsets.US_ASCII));
    } catch (IOException e) {
      // a full disk: then the child ends with its own failure, and no other desk need end it
    }
  }

  void forgetChild() throws IOException {
    Files.deleteIfExists(folder.resolve(CHILD));
  }

  private void endLeftChild() throws IOException {
    Path note = folder.resolve(CHILD);
    if (!Files.exists(note)) {
      return;
    }
    String text = new String(OwnerFiles.read(note, MAX_CHILD_BYTES), StandardCharsets.US_ASCII);
    if (text.matches("[0-9]{1,10} [0-9]{1,15}")) {
      String[] fields = text.split(" ", -1);
      ProcessHandle.of(Long.parseLong(fields[0]))
          .filter(child -> startedAt(child) == Long.parseLong(fields[1]))
          .ifPresent(ProcessHandle::destroyForcibly);
    }
    forgetChild();
  }

  /** Two programs never have the same number and the same start. */
  private static long startedAt(ProcessHandle child) {
    return child.info().startInstant().map(Instant::toEpochMilli).orElse(-1L);
  }
}
