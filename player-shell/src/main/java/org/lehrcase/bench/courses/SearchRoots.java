package org.lehrcase.bench.courses;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Where sticks appear: the folders in which the systems mount them, and the drive letters. Looks
 * one or two steps deep, never through links, and no further than a few hundred folders.
 */
public final class SearchRoots {
  private static final List<String> MOUNT_FOLDERS =
      List.of("/media", "/run/media", "/mnt", "/Volumes");
  private static final int MAX_FOLDERS = 400;
  private static final String FRONT_PAGE = "lehrcase.front";

  private final List<Path> starts;

  private SearchRoots(List<Path> starts) {
    this.starts = List.copyOf(starts);
  }

  /**
   * Looks where this system mounts sticks.
   *
   * @return the usual places
   */
  public static SearchRoots ofSystem() {
    List<Path> starts = new ArrayList<>();
    MOUNT_FOLDERS.forEach(folder -> starts.add(Path.of(folder)));
    for (Path drive : FileSystems.getDefault().getRootDirectories()) {
      if (drive.toString().matches("[A-Z]:\\\\")) {
        starts.add(drive);
      }
    }
    return new SearchRoots(starts);
  }

  /**
   * Looks, besides, in the folder in which the program's own folder lies: the stick from which it
   * was started, wherever that is mounted.
   *
   * @param programFolder the folder of the start script, or nothing if it is not known
   * @return the usual places and this one
   */
  public static SearchRoots ofSystemAnd(Optional<Path> programFolder) {
    SearchRoots usual = ofSystem();
    Optional<Path> stick = programFolder.map(Path::getParent).filter(Files::isDirectory);
    return stick
        .map(
            folder ->
                new SearchRoots(Stream.concat(Stream.of(folder), usual.starts.stream()).toList()))
        .orElse(usual);
  }

  /**
   * Looks in given folders.
   *
   * @param starts the folders
   * @return these places
   */
  public static SearchRoots of(List<Path> starts) {
    return new SearchRoots(starts);
  }

  /**
   * Finds folders that hold a front page, at most three steps below the places and beside the given
   * folders.
   *
   * @param known folders where editions were seen before
   * @return folders, each once, in the order found
   */
  public List<Path> editionFolders(List<Path> known) {
    Set<Path> found = new LinkedHashSet<>();
    int[] budget = {MAX_FOLDERS};
    for (Path folder : known) {
      look(folder, 0, found, budget);
      Path parent = folder.getParent();
      if (parent != null) {
        look(parent, 1, found, budget);
      }
    }
    starts.forEach(start -> look(start, 3, found, budget));
    return List.copyOf(found);
  }

  /**
   * Finds the editions in a folder that a person named: the folder itself, or two steps below.
   *
   * @param folder the folder
   * @return folders that hold a front page
   */
  public static List<Path> below(Path folder) {
    Set<Path> found = new LinkedHashSet<>();
    look(folder, 2, found, new int[] {MAX_FOLDERS});
    return List.copyOf(found);
  }

  /**
   * Finds the editions in a person's own folders, wherever a download or a copy may have gone: some
   * steps below, without hidden folders.
   *
   * @param user the person's folder
   * @return folders that hold a front page
   */
  public static List<Path> inPockets(Path user) {
    Set<Path> found = new LinkedHashSet<>();
    int[] budget = {MAX_FOLDERS};
    try (DirectoryStream<Path> inside = Files.newDirectoryStream(user)) {
      for (Path folder : inside) {
        if (!folder.getFileName().toString().startsWith(".")) {
          look(folder, 2, found, budget);
        }
      }
    } catch (IOException | DirectoryIteratorException e) {
      return List.copyOf(found);
    }
    return List.copyOf(found);
  }

  private static void look(Path folder, int depth, Set<Path> found, int[] budget) {
    if (budget[0]-- <= 0 || !Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    if (Files.isRegularFile(folder.resolve(FRONT_PAGE), LinkOption.NOFOLLOW_LINKS)) {
      found.add(folder);
      return;
    }
    if (depth == 0) {
      return;
    }
    try (DirectoryStream<Path> inside = Files.newDirectoryStream(folder)) {
      for (Path next : inside) {
        look(next, depth - 1, found, budget);
      }
    } catch (IOException | DirectoryIteratorException e) {
      budget[0]--; // a folder that cannot be listed holds nothing for us
    }
  }
}
