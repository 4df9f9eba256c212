package org.lehrcase.desk.author;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.course.MomentHint;
import org.lehrcase.core.course.MomentTarget;

class MomentLinksTest {
  private static Optional<String> found(MomentTarget target, String label, String... files) {
    var assets =
        Arrays.stream(files)
            .map(
                name -> {
                  var kind = FileKind.ofName(name).orElseThrow();
                  return new SourceAsset(
                      Path.of(name), "01 A/" + name, kind.role(), kind.mediaType(), "");
                })
            .toList();
    return new MomentLinks(assets, new ArrayList<>())
        .find(new MomentHint(target, label))
        .map(SourceAsset::name);
  }

  @Test
  void aPageIsOneOfTheFirstPdfHandout() {
    assertThat(found(MomentTarget.PAGE, "3", "a.md", "b.pdf", "c.pdf")).contains("b.pdf");
    assertThat(found(MomentTarget.PAGE, "3", "a.md")).isEmpty();
    assertThat(found(MomentTarget.PAGE, "3", "t.template.pdf")).isEmpty();
  }

  @Test
  void aNumberIsTheLastNumberInAName() {
    String[] sheets = {"sheet 14.template.svg", "sheet 4.template.svg", "4 of 6.template.svg"};
    assertThat(found(MomentTarget.TEMPLATE, "4", sheets)).contains("sheet 4.template.svg");
    assertThat(found(MomentTarget.TEMPLATE, "04", sheets)).contains("sheet 4.template.svg");
    assertThat(found(MomentTarget.TEMPLATE, "5", sheets)).isEmpty();
  }

  @Test
  void aNumberIsAPlaceInTheRowOnlyIfNoNameHasNumbers() {
    assertThat(found(MomentTarget.TEMPLATE, "2", "a.template.svg", "b.template.svg"))
        .contains("b.template.svg");
    assertThat(found(MomentTarget.TEMPLATE, "3", "a.template.svg", "b.template.svg")).isEmpty();
    assertThat(found(MomentTarget.TEMPLATE, "0", "a.template.svg")).isEmpty();
  }

  @Test
  void aWordIsTheWholeNameBeforeItIsAPartOfOne() {
    assertThat(found(MomentTarget.IMAGE, "Kelp", "kelp bed.png", "kelp.jpg")).contains("kelp.jpg");
    assertThat(found(MomentTarget.IMAGE, "bed", "kelp bed.png", "kelp.jpg"))
        .contains("kelp bed.png");
  }

  @Test
  void nothingSaidIsTheFirstOfItsKind() {
    assertThat(found(MomentTarget.MATERIALS, "", "a.materials.csv", "b.materials.csv"))
        .contains("a.materials.csv");
    assertThat(found(MomentTarget.FIRING, "", "a.materials.csv")).isEmpty();
    assertThat(found(MomentTarget.NONE, "", "a.materials.csv")).isEmpty();
  }
}
