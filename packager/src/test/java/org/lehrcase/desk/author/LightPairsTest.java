package org.lehrcase.desk.author;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.course.AssetRole;

class LightPairsTest {
  private final List<Finding> findings = new ArrayList<>();

  private List<String> paired(String... names) {
    List<SourceAsset> assets = new ArrayList<>();
    for (String name : names) {
      FileKind kind = FileKind.ofName(name).orElseThrow();
      assets.add(new SourceAsset(Path.of(name), "01 a/" + name, kind.role(), kind.mediaType(), ""));
    }
    return new LightPairs(assets, findings)
        .paired().stream().map(asset -> asset.name() + " " + asset.rendition()).toList();
  }

  @Test
  void aFilmAndItsLightCopyAreOneFilmInTwoForms() {
    assertThat(paired("brush.light.mp4", "brush.mov", "notes.md"))
        .containsExactly("brush.mov FULL", "brush.light.mp4 LIGHT", "notes.md COMMON");
    assertThat(findings).isEmpty();
  }

  @Test
  void capitalsDoNotMatter() {
    assertThat(paired("Brush.LIGHT.MP4", "brush.mp4"))
        .containsExactly("brush.mp4 FULL", "Brush.LIGHT.MP4 LIGHT");
  }

  @Test
  void aLightCopyAloneIsAFilmAndIsAskedAbout() {
    assertThat(paired("brush.light.mp4", "brush.pdf", "other.mp4"))
        .contains("brush.light.mp4 COMMON", "other.mp4 COMMON", "brush.pdf COMMON");
    assertThat(findings).singleElement().satisfies(f -> assertThat(f.what()).contains("beside it"));
  }

  @Test
  void theFirstFilmIsNeverALightOne() {
    assertThat(paired("a.light.mp4", "a.mp4", "b.light.mp4", "b.mp4"))
        .containsExactly("a.mp4 FULL", "b.mp4 FULL", "a.light.mp4 LIGHT", "b.light.mp4 LIGHT");
  }

  @Test
  void theNameOfACopyKeepsTheStem() {
    assertThat(LightPairs.lightName("01 a/brush 2.mov")).isEqualTo("01 a/brush 2.light.mp4");
    assertThat(FileKind.ofName("x.light.mp4").orElseThrow().role()).isEqualTo(AssetRole.VIDEO);
  }
}
