package org.lehrcase.bench.courses;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SearchRootsTest {
  @TempDir Path root;

  private Path edition(String below) throws Exception {
    Path folder = Files.createDirectories(root.resolve(below));
    Files.createFile(folder.resolve("lehrcase.front"));
    return folder;
  }

  @Test
  void aFolderThatAPersonNamesIsLookedThroughTwoStepsDeep() throws Exception {
    Path near = edition("stick/Brush");
    Path deeper = edition("stick/courses/Kiln");
    edition("stick/a/b/too deep");
    assertThat(SearchRoots.below(root.resolve("stick"))).containsExactlyInAnyOrder(near, deeper);
    assertThat(SearchRoots.below(near)).containsExactly(near);
    assertThat(SearchRoots.below(root.resolve("nothing"))).isEmpty();
  }

  @Test
  void linksAreNotFollowed() throws Exception {
    Path real = edition("elsewhere/Brush");
    Files.createDirectories(root.resolve("stick"));
    Files.createSymbolicLink(root.resolve("stick/link"), real);
    assertThat(SearchRoots.below(root.resolve("stick"))).isEmpty();
  }

  @Test
  void sticksAndNeighboursOfKnownFoldersAreFound() throws Exception {
    Path onStick = edition("media/user/STICK/Brush");
    Path known = edition("disk/Brush");
    Path beside = edition("disk/Kiln");
    SearchRoots search = SearchRoots.of(List.of(root.resolve("media")));
    assertThat(search.editionFolders(List.of(known)))
        .containsExactlyInAnyOrder(known, beside, onStick);
  }

  @Test
  void aSlowMediumIsNoticedAndForgiven() {
    MediumPace pace = new MediumPace();
    assertThat(pace.isSlow()).isFalse();
    pace.took(100_000_000);
    assertThat(pace.isSlow()).isTrue();
    for (int i = 0; i < 30; i++) {
      pace.took(50_000);
    }
    assertThat(pace.isSlow()).isFalse();
  }
}
