package org.lehrcase.desk.sticks;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.desk.sticks.StickException.Reason;

class StickGroundTest {
  @TempDir Path folder;
  private Path stick;
  private StickOrder order;

  @BeforeEach
  void make() throws Exception {
    stick = Files.createDirectory(folder.resolve("STICK"));
    order = StickFixture.order(stick, StickFixture.files(folder.resolve("source")));
  }

  @Test
  void whatIsSomebodyElsesIsLeftAlone() throws Exception {
    Files.createDirectories(stick.resolve("Fotos"));
    Files.writeString(stick.resolve("Fotos/küche.txt"), "mine");
    Files.writeString(stick.resolve("letter-notes.txt"), "mine too");
    Files.writeString(stick.resolve("letter.txt"), "Dear aunt");
    assertThat(StickFixture.make(new MountedDisk(), order).made()).isTrue();
    assertThat(stick.resolve("Fotos/küche.txt")).hasContent("mine");
    assertThat(stick.resolve("letter-notes.txt")).hasContent("mine too");
    assertThat(stick.resolve("letter.txt")).hasContent("Dear aunt");
  }

  @Test
  void theEmptyFolderOfAnUnmountedStickIsNoStick() throws Exception {
    Path mounts = Files.createDirectories(folder.resolve("media"));
    Path empty = Files.createDirectories(mounts.resolve("ada/STICK"));
    assertThat(StickGround.isUnmounted(empty, List.of(mounts))).isTrue();
    assertThat(StickGround.isUnmounted(empty, List.of(folder.resolve("mnt")))).isFalse();
    Files.writeString(empty.resolve("notes.txt"), "something lies on it");
    assertThat(StickGround.isUnmounted(empty, List.of(mounts))).isFalse();
  }

  @Test
  void anothersFileUnderANeededNameIsNotWrittenOver() throws Exception {
    for (String name : new String[] {"READ ME FIRST.html", "license.txt", "License.TXT"}) {
      Path theirs = Files.writeString(stick.resolve(name), "theirs");
      StickResult result = StickFixture.make(new MountedDisk(), order);
      assertThat(result.failure().orElseThrow())
          .hasMessageContaining(name)
          .extracting(StickException::reason)
          .isEqualTo(Reason.TAKEN);
      assertThat(theirs).hasContent("theirs");
      assertThat(StickFixture.names(stick)).containsExactly(name);
      Files.delete(theirs);
    }
  }

  @Test
  void aFileWhereAFolderBelongsIsNotWrittenOver() throws Exception {
    Path theirs = Files.writeString(stick.resolve("brush-1"), "theirs");
    StickResult result = StickFixture.make(new MountedDisk(), order);
    assertThat(result.failure().orElseThrow().reason()).isEqualTo(Reason.TAKEN);
    assertThat(theirs).hasContent("theirs");
  }

  @Test
  void papersOfWhoeverHadTheStickBeforeGo() throws Exception {
    Files.writeString(stick.resolve("license.txt"), "-----BEGIN LEHRCASE LICENSE-----\nBo");
    Files.writeString(stick.resolve("letter.txt"), "-----BEGIN LEHRCASE KEY LETTER-----\nBo");
    Files.writeString(stick.resolve("letter-2.txt"), "-----BEGIN LEHRCASE KEY LETTER-----\nBo");
    StickResult result = StickFixture.make(new MountedDisk(), order);
    assertThat(result.made()).isTrue();
    assertThat(result.notes()).hasSize(2).allMatch(note -> note.contains("had this stick before"));
    assertThat(StickFixture.names(stick)).noneMatch(name -> name.startsWith("letter"));
    assertThat(stick.resolve("license.txt")).content().contains("Ada");
  }

  @Test
  void anOlderEditionStaysAndIsSaid() throws Exception {
    Path older = Files.createDirectory(stick.resolve("brush-0"));
    Files.writeString(older.resolve("lehrcase.front"), "older");
    StickResult result = StickFixture.make(new MountedDisk(), order);
    assertThat(result.made()).isTrue();
    assertThat(result.notes()).containsExactly("brush-0 was on it and was left there");
    assertThat(older.resolve("lehrcase.front")).hasContent("older");
  }

  @Test
  void aBrokenFrontPageInItsPlaceIsMended() throws Exception {
    Path half = Files.createDirectory(stick.resolve("brush-1"));
    Files.writeString(half.resolve("lehrcase.front"), "rotten");
    assertThat(StickFixture.make(new MountedDisk(), order).made()).isTrue();
  }
}
