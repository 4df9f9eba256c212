package org.lehrcase.bench.packaging;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;

/** The Debian package: the system's installer puts the program in /opt and its icon in the menu. */
final class DebianPackage {
  private DebianPackage() {}

  /**
   * Makes the package with jpackage, dpkg-deb and fakeroot.
   *
   * @param portable a portable folder with the runtime of this system
   * @param system the name of that runtime
   * @param recipes the folder of the package scripts
   * @param target where the package goes
   */
  static void make(PortableFolder portable, String system, Path recipes, Path target)
      throws IOException, InterruptedException {
    PortableFolder.clear(target);
    Path program = portable.folder().resolve("program");
    Path input = Files.createDirectories(target.resolve("input"));
    Files.copy(
        program.resolve("lehrcase-bench.jar"),
        input.resolve("lehrcase-bench.jar"),
        StandardCopyOption.REPLACE_EXISTING);
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "jpackage").toString());
    command.addAll(List.of("--type", "deb", "--name", "Lehrcase", "--app-version", "0.1.0"));
    command.addAll(List.of("--linux-package-name", "lehrcase", "--linux-shortcut"));
    command.addAll(List.of("--linux-menu-group", "Education", "--linux-app-category", "education"));
    command.addAll(List.of("--description", "Opens glass courses offline", "--vendor", "Lehrcase"));
    command.addAll(List.of("--linux-deb-maintainer", "maintainers@lehrcase.invalid"));
    command.addAll(List.of("--icon", program.resolve("lehrcase.png").toString()));
    command.addAll(List.of("--runtime-image", portable.runtime(system).toString()));
    command.addAll(List.of("--input", input.toString(), "--main-jar", "lehrcase-bench.jar"));
    command.addAll(List.of("--resource-dir", recipes.resolve("deb").toString()));
    for (String line : Files.readAllLines(program.resolve("bench.options"))) {
      if (!line.startsWith("#") && !line.isBlank()) {
        command.addAll(List.of("--java-options", line));
      }
    }
    command.addAll(List.of("--java-options", "-XX:SharedArchiveFile=$APPDIR/start.jsa"));
    command.addAll(List.of("--java-options", "-Xlog:disable"));
    command.addAll(List.of("--dest", target.toString()));
    Commands.run(command);
    PortableFolder.clear(input);
  }
}
