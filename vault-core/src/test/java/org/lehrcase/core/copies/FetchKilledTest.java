package org.lehrcase.core.copies;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.edition.EditionCheck;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.file.WholeFiles;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.seal.Progress;

/** Fetching and merging processes are killed as by {@code kill -9}, and others go on. */
class FetchKilledTest {
  @TempDir Path work;
  private CopyShop shop;
  private Path good;
  private FrontPage front;

  /** The program that is killed: says each step, then does it. */
  static final class Child {
    public static void main(String[] arguments) throws Exception {
      PrintStream out = System.out;
      Path from = Path.of(arguments[1]);
      Path target = Path.of(arguments[2]);
      Progress aloud =
          bytes -> {
            out.println(bytes);
            out.flush();
            return true;
          };
      TrustedRoots anybody = TrustedRoots.firstMeeting();
      if (arguments[0].equals("merge")) {
        EditionFolder changes = EditionFolder.open(from, anybody);
        EditionMerge.of(changes, EditionFolder.open(target, anybody)).run(aloud);
      } else {
        FolderSource source = new FolderSource(from);
        FetchWish wish = FetchWish.all(EditionFetch.frontPage(source, anybody), target);
        EditionFetch.run(wish, FetchNeed.of(wish, aloud), List.of(source), aloud);
      }
      out.println("done");
    }
  }

  @BeforeEach
  void pack() throws Exception {
    shop = new CopyShop();
    good = work.resolve("good");
    front = shop.pack(good, 2, 3, 1, 2, 3);
  }

  private static void runAndKill(String what, Path from, Path to, int lines) throws Exception {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    String path = System.getProperty("java.class.path");
    Process child =
        new ProcessBuilder(
                java, "-cp", path, Child.class.getName(), what, from.toString(), to.toString())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    try (BufferedReader out =
        new BufferedReader(new InputStreamReader(child.getInputStream(), StandardCharsets.UTF_8))) {
      for (int i = 0; i < lines && out.readLine() != null; i++) {
        assertThat(child.pid()).isPositive();
      }
      child.destroyForcibly().waitFor();
    }
  }

  /** What has its name; a program that was killed early has not made the folder yet. */
  private static Map<String, Octets> finished(Path folder) throws Exception {
    Map<String, Octets> named =
        Files.isDirectory(folder) ? CopyShop.files(folder) : new HashMap<>();
    named.keySet().removeIf(name -> name.endsWith(WholeFiles.UNFINISHED));
    return named;
  }

  @Test
  void aKilledFetchLeavesOnlyWholeFilesAndGoesOn() throws Exception {
    Path copy = work.resolve("copy");
    Map<String, Octets> whole = CopyShop.files(good);
    for (int lines : new int[] {1, 5, 9}) {
      runAndKill("fetch", good, copy, lines);
      Map<String, Octets> named = finished(copy);
      assertThat(whole.entrySet()).containsAll(named.entrySet());
    }
    FetchWish wish = FetchWish.all(front, copy);
    FetchNeed need = FetchNeed.of(wish, Progress.NONE);
    EditionFetch.run(wish, need, List.of(new FolderSource(good)), Progress.NONE);
    assertThat(CopyShop.files(copy)).isEqualTo(whole);
  }

  @Test
  void aKilledMergeLeavesOneOfTheTwoEditions() throws Exception {
    Path pristine = work.resolve("old");
    shop.pack(pristine, 1, 1500, 1, 7);
    for (int lines : new int[] {2, 9, 16, 40}) {
      Path old = work.resolve("old " + lines);
      CopyShop.copyTree(pristine, old);
      runAndKill("merge", good, old, lines);
      EditionFolder opened = shop.open(old);
      assertThat(EditionCheck.everyByte(opened, Progress.NONE).isWhole()).isTrue();
      EditionMerge.finish(old, shop.roots());
      if (!shop.open(old).frontPage().digest().equals(front.digest())) {
        EditionMerge.of(shop.open(good), shop.open(old)).run(Progress.NONE);
      }
      assertThat(finished(old)).isEqualTo(CopyShop.files(good));
      assertThat(old.resolve(EditionLayout.NEXT)).doesNotExist();
    }
  }
}
