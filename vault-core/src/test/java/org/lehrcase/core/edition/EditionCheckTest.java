package org.lehrcase.core.edition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EditionCheckTest {

  @TempDir Path folder;
  private SampleEdition sample;

  @BeforeEach
  void pack() throws Exception {
    sample = SampleEdition.pack(folder);
  }

  private EditionCheck check() throws Exception {
    return EditionCheck.everyByte(sample.open(), SampleEdition.QUIET);
  }

  private static FolderReport of(EditionCheck check, int folder) {
    return check.folders().stream().filter(f -> f.folder() == folder).findFirst().orElseThrow();
  }

  @Test
  void aFreshCopyIsWholeInTheOrderOfStudy() throws Exception {
    EditionCheck check = check();
    assertThat(check.isWhole()).isTrue();
    assertThat(check.isDamaged()).isFalse();
    assertThat(check.folders()).extracting(FolderReport::folder).containsExactly(0, 1, 2);
    assertThat(of(check, 2).title()).isEqualTo("Far water");
  }

  @Test
  void progressEndsAtTheTotal() throws Exception {
    List<Long> told = new ArrayList<>();
    EditionCheck.everyByte(sample.open(), told::add);
    assertThat(told).isSorted();
    assertThat(told.get(told.size() - 1)).isEqualTo(EditionCheck.totalBytes(sample.open()));
  }

  @Test
  void aStoppedCheckSaysSo() throws Exception {
    EditionFolder edition = sample.open();
    assertThatThrownBy(() -> EditionCheck.everyByte(edition, bytes -> false))
        .isInstanceOf(CancellationException.class);
  }

  @Test
  void aDamagedSegmentIsNamed() throws Exception {
    SampleEdition.damage(sample.path(sample.entry(sample.second, 0, 0)), (1 << 16) + 9);
    assertThat(EditionCheck.glance(sample.open()).isWhole()).isTrue();
    EditionCheck check = check();
    assertThat(of(check, 2).state()).isEqualTo(PartState.DAMAGED);
    assertThat(of(check, 2).parts().get(0).damagedSegments()).containsExactly(1);
    assertThat(of(check, 1).state()).isEqualTo(PartState.HERE);
    assertThat(check.isDamaged()).isTrue();
  }

  @Test
  void aDamagedHeaderOfASinglePartIsDamage() throws Exception {
    Path handout = sample.path(sample.entry(sample.first, 2, 0));
    for (int at : new int[] {0, 8, 10, 39, 60}) {
      SampleEdition.damage(handout, at);
      assertThat(of(check(), 1).state()).isEqualTo(PartState.DAMAGED);
      SampleEdition.damage(handout, at);
    }
    assertThat(check().isWhole()).isTrue();
  }

  @Test
  void aMissingLessonIsNotHereWhichIsNoDamage() throws Exception {
    for (int part : new int[] {0, 1}) {
      Files.delete(sample.path(sample.entry(sample.second, 0, part)));
    }
    EditionCheck check = check();
    assertThat(of(check, 2).state()).isEqualTo(PartState.NOT_HERE);
    assertThat(of(check, 2).count(PartState.NOT_HERE)).isEqualTo(2);
    assertThat(check.isDamaged()).isFalse();
    assertThat(check.isWhole()).isFalse();
  }

  @Test
  void aMissingDigestListIsNotHereAndAChangedOneIsDamage() throws Exception {
    Path film = sample.path(sample.entry(sample.second, 0, 0));
    Path list = film.resolveSibling(film.getFileName() + EditionLayout.DIGESTS_ENDING);
    SampleEdition.damage(list, 40);
    assertThat(of(check(), 2).state()).isEqualTo(PartState.DAMAGED);
    Files.delete(list);
    assertThat(of(check(), 2).state()).isEqualTo(PartState.NOT_HERE);
  }

  @Test
  void eitherRenditionMakesALessonComplete() throws Exception {
    Path full = sample.path(sample.entry(sample.first, 0, 0));
    Path light = sample.path(sample.entry(sample.first, 1, 0));
    Files.move(full, folder.resolve("aside"));
    assertThat(of(check(), 1).state()).isEqualTo(PartState.HERE);
    Files.move(folder.resolve("aside"), full);
    Files.delete(light);
    assertThat(of(check(), 1).state()).isEqualTo(PartState.HERE);
    Files.delete(full);
    assertThat(of(check(), 1).state()).isEqualTo(PartState.NOT_HERE);
  }

  @Test
  void withoutACommonPartNoRenditionHelps() throws Exception {
    Files.delete(sample.path(sample.entry(sample.first, 2, 0)));
    assertThat(of(check(), 1).state()).isEqualTo(PartState.NOT_HERE);
  }

  @Test
  void contentsAreHereMissingOrDamaged() throws Exception {
    Path contents = folder.resolve(EditionLayout.CONTENTS);
    SampleEdition.damage(contents, 100);
    assertThat(check().contents()).isEqualTo(PartState.DAMAGED);
    Files.delete(contents);
    assertThat(check().contents()).isEqualTo(PartState.NOT_HERE);
    Files.write(contents, new byte[3]);
    assertThat(check().contents()).isEqualTo(PartState.DAMAGED);
  }
}
