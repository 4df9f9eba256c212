package org.lehrcase.desk.sticks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.lehrcase.core.edition.EditionTitle;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.desk.pack.PackListener;
import org.lehrcase.desk.sticks.StickLoad.Carried;

/** Small files that stand for an edition, and what came of putting them on a stick. */
final class StickFixture {
  static final EditionId EDITION = EditionId.ofHex("11".repeat(16));

  private StickFixture() {}

  static Welcome welcome() {
    return new Welcome(
        Optional.of("Ada Example"),
        "Atelier Test",
        List.of("amber", "kiln", "reef", "salt", "wave"),
        "atelier@example.org",
        List.of("Brush"),
        new Welcome.Has(true, false));
  }

  static StickOrder order(Path stick, List<StickFile> shared) {
    Carried edition =
        new Carried("brush-1", new EditionTitle(EDITION, "brush", 0, 1, "Brush", "", ""));
    return new StickOrder(
        stick,
        Recipient.NOBODY,
        new StickLoad(List.of(edition), shared, false),
        List.of(
            StickFile.text(StickPapers.LICENSE, "-----BEGIN LEHRCASE LICENSE-----\nAda"),
            StartPage.of(welcome())));
  }

  /** Files of 10 kB to 2.5 MB below one folder, always the same. */
  static List<StickFile> files(Path folder) throws IOException {
    List<StickFile> files = new ArrayList<>();
    int[] sizes = {10_000, 0, 4096, 2_500_000, 65_536};
    for (int i = 0; i < sizes.length; i++) {
      byte[] bytes = new byte[sizes[i]];
      new Random(i).nextBytes(bytes);
      Path file = folder.resolve("part-" + i);
      Files.createDirectories(folder);
      Files.write(file, bytes);
      files.add(StickFile.of("brush-1/00" + i + "/part-" + i, file, new Sums()));
    }
    return files;
  }

  static StickResult make(StickDisk disk, StickOrder order) throws IOException {
    return new StickMaker(disk, stick -> PackListener.NONE).make(List.of(order)).get(0);
  }

  /** The names of ours that hold anything but exactly what they should. */
  static List<String> broken(StickOrder order) throws IOException {
    List<String> broken = new ArrayList<>();
    for (StickFile file : order.files()) {
      Path at = order.stick().resolve(file.place());
      if (Files.exists(at) && !new Sums().ofStick(new MountedDisk(), at).is(file)) {
        broken.add(file.place());
      }
    }
    return broken;
  }

  static List<String> names(Path stick) throws IOException {
    try (Stream<Path> all = Files.walk(stick)) {
      return all.filter(Files::isRegularFile)
          .map(file -> stick.relativize(file).toString())
          .sorted()
          .toList();
    }
  }
}
