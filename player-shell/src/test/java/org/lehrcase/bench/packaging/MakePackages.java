package org.lehrcase.bench.packaging;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Makes the packages of the bench. Takes the module's folder; then, in any order, {@code deb} for
 * the Debian package, and {@code SYSTEM=DIR} for each further system, where DIR holds the jmod
 * files of that system's Java 17, such as {@code windows-x64=/downloads/jdk-17/jmods}. The name of
 * this system with another folder replaces this Java's own modules.
 */
public final class MakePackages {
  private MakePackages() {}

  /** Makes what the arguments ask for. */
  public static void main(String[] arguments) throws IOException, InterruptedException {
    Path module = Path.of(arguments[0]).toAbsolutePath().normalize();
    List<String> wishes =
        Arrays.stream(arguments).skip(1).flatMap(word -> Arrays.stream(word.split(" "))).toList();
    make(module, wishes, System.out);
  }

  private static void make(Path module, List<String> wishes, PrintStream out)
      throws IOException, InterruptedException {
    Path recipes = module.resolve("src/package");
    Path target = module.resolve("target/portable");
    Path jar = module.resolve("target/lehrcase-bench.jar");
    PortableFolder portable =
        PortableFolder.make(target.resolve("Lehrcase"), new PortableFolder.Sources(recipes, jar));
    List<String> systems = new ArrayList<>(wishes.stream().filter(w -> w.contains("=")).toList());
    if (systems.stream().noneMatch(wish -> wish.startsWith(thisSystem() + "="))) {
      systems.add(thisSystem() + "=" + Path.of(System.getProperty("java.home"), "jmods"));
    }
    for (String wish : systems) {
      String system = wish.substring(0, wish.indexOf('='));
      Path modules = Path.of(wish.substring(wish.indexOf('=') + 1));
      RuntimeImage.link(modules, system.equals(thisSystem()), portable.runtime(system));
      portable.list(system);
    }
    List<String> problems = PortableNames.problems(portable.folder());
    if (!problems.isEmpty()) {
      throw new IOException("a stick would not carry this: " + problems);
    }
    out.println("portable folder: " + portable.folder());
    if (wishes.contains("deb")) {
      DebianPackage.make(portable, thisSystem(), recipes, module.resolve("target/deb"));
      out.println("Debian package: " + module.resolve("target/deb"));
    }
  }

  static String thisSystem() {
    String name = System.getProperty("os.name").toLowerCase(Locale.ROOT);
    String system =
        name.startsWith("windows") ? "windows" : name.startsWith("mac") ? "macos" : "linux";
    String machine = System.getProperty("os.arch");
    return system + "-" + (machine.equals("amd64") || machine.equals("x86_64") ? "x64" : machine);
  }
}
