package org.lehrcase.desk.pack;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.lehrcase.core.edition.EditionCheck;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.core.seal.Progress;
import org.lehrcase.desk.home.TestDesk;

/** Packs in tests, and looks at what came of it. */
final class PackRun implements PackListener {
  final List<String> said = new ArrayList<>();
  private final TestDesk desk;
  private final Path out;

  PackRun(TestDesk desk, Path out) {
    this.desk = desk;
    this.out = out;
  }

  PackResult pack(TinyCourse course) throws IOException, PackException {
    return pack(wish(course));
  }

  PackResult pack(PackWish wish) throws IOException, PackException {
    return new Packer(desk.home(), desk.keys(), new SecureRandom(), this).pack(wish);
  }

  PackResult pack(TinyCourse course, PackDisk disk) throws IOException, PackException {
    return new Packer(desk.home(), desk.keys(), new SecureRandom(), this, disk).pack(wish(course));
  }

  PackWish wish(TinyCourse course) {
    return new PackWish(course.folder(), out, Optional.empty(), Set.of());
  }

  OpenedEdition opened(Path folder) throws Exception {
    EditionFolder edition =
        EditionFolder.open(folder, TrustedRoots.pinned(desk.home().statement().root()));
    try (EditionKey key = desk.keys().master(0).editionKey(edition.frontPage().edition())) {
      return OpenedEdition.open(edition, key);
    }
  }

  boolean isWhole(Path folder) throws Exception {
    EditionFolder edition =
        EditionFolder.open(folder, TrustedRoots.pinned(desk.home().statement().root()));
    return EditionCheck.everyByte(edition, Progress.NONE).isWhole();
  }

  /** The files of a folder by their place, with their hashes. */
  static Map<String, Octets> files(Path folder) throws IOException {
    Map<String, Octets> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        files.put(
            folder.relativize(file).toString(), Octets.of(Sha256.of(Files.readAllBytes(file))));
      }
    }
    return files;
  }

  @Override
  public void say(String sentence) {
    said.add(sentence);
  }

  @Override
  public void progress(long doneBytes, long totalBytes) {
    if (doneBytes > totalBytes) {
      throw new AssertionError("more done than there was: " + doneBytes + " of " + totalBytes);
    }
  }
}
