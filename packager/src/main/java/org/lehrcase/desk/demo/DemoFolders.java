package org.lehrcase.desk.demo;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Finds the invented course, copies and removes folders of it. */
final class DemoFolders {
  private DemoFolders() {}

  /** Finds the courses beside the program in the working tree, or below the present folder. */
  static Path courses() throws IOException {
    List<Path> places = new ArrayList<>();
    programFolder().forEach(target -> places.add(target.resolveSibling("demo")));
    places.add(Path.of("packager", "demo").toAbsolutePath());
    places.add(Path.of("demo").toAbsolutePath());
    for (Path place : places) {
      if (Files.isDirectory(place.resolve("brush")) && Files.isDirectory(place.resolve("kiln"))) {
        return place;
      }
    }
    throw new NoSuchFileException(places.get(0).toString());
  }

  /** Copies a folder over another one; files of the same name are replaced. */
  static void lay(Path from, Path over) throws IOException {
    List<Path> all;
    try (Stream<Path> walk = Files.walk(from)) {
      all = walk.toList();
    }
    for (Path path : all) {
      Path target = over.resolve(from.relativize(path).toString());
      if (Files.isDirectory(path)) {
        Files.createDirectories(target);
      } else {
        Files.copy(path, target, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
      }
    }
  }

  /** Removes a folder with everything in it. */
  static void remove(Path folder) throws IOException {
    List<Path> all;
    try (Stream<Path> walk = Files.walk(folder)) {
      all = walk.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path path : all) {
      Files.deleteIfExists(path);
    }
  }

  private static List<Path> programFolder() {
    try {
      var source = DemoFolders.class.getProtectionDomain().getCodeSource();
      Path program = source == null ? null : Path.of(source.getLocation().toURI());
      Path folder = program == null ? null : program.getParent();
      return folder == null ? List.of() : List.of(folder);
    } catch (URISyntaxException e) {
      return List.of();
    }
  }
}
