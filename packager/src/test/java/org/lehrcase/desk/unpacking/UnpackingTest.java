package org.lehrcase.desk.unpacking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.VaultException;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.author.CourseCheck;
import org.lehrcase.desk.author.CourseReport;
import org.lehrcase.desk.home.TestDesk;
import org.lehrcase.desk.pack.PackListener;
import org.lehrcase.desk.pack.PackWish;
import org.lehrcase.desk.pack.Packer;
import org.lehrcase.desk.pack.TinyCourse;

class UnpackingTest {
  @TempDir Path folder;
  private TestDesk desk;
  private TinyCourse course;
  private Path edition;

  @BeforeEach
  void pack() throws Exception {
    desk = TestDesk.fresh(folder.resolve("desk"));
    course = TinyCourse.in(folder.resolve("brush"));
    PackWish wish =
        new PackWish(course.folder(), folder.resolve("out"), Optional.empty(), Set.of());
    edition =
        new Packer(desk.home(), desk.keys(), new SecureRandom(), PackListener.NONE)
            .pack(wish)
            .folder();
  }

  @AfterEach
  void close() throws Exception {
    desk.close();
  }

  @Test
  void theCourseFolderComesBackByteForByteAndCanBePacked() throws Exception {
    Path back = folder.resolve("back");
    Unpacking.Unpacked unpacked = new Unpacking(desk.home(), desk.keys()).unpack(edition, back);
    assertThat(unpacked.missing()).isEmpty();
    for (String name :
        new String[] {"02 Far water/far.png", "03 Kelp/kelp.png", "03 Kelp/f3.firing.csv"}) {
      assertThat(Files.mismatch(back.resolve(name), course.folder().resolve(name))).isEqualTo(-1);
    }
    CourseReport report = CourseCheck.run(back);
    assertThat(report.packable()).isTrue();
    assertThat(report.course().series()).isEqualTo("brush");
    assertThat(report.course().lessons()).hasSize(3);
    assertThat(report.course().lessons().get(0).open()).isTrue();
  }

  @Test
  void whatACopyLacksIsNamedAndTheRestComesBack() throws Exception {
    try (Stream<Path> parts = Files.walk(edition.resolve("002"))) {
      for (Path part : parts.filter(Files::isRegularFile).toList()) {
        Files.delete(part);
      }
    }
    Unpacking.Unpacked unpacked =
        new Unpacking(desk.home(), desk.keys()).unpack(edition, folder.resolve("back"));
    assertThat(unpacked.missing()).hasSize(2).allMatch(name -> name.startsWith("Far water"));
    assertThat(folder.resolve("back/03 Kelp/kelp.png")).isRegularFile();
  }

  @Test
  void anotherDeskOpensNothing() throws Exception {
    try (TestDesk other = TestDesk.fresh(folder.resolve("other"))) {
      Unpacking unpacking = new Unpacking(other.home(), other.keys());
      assertThatThrownBy(() -> unpacking.unpack(edition, folder.resolve("back")))
          .isInstanceOfAny(VaultException.class, RefusedException.class);
      assertThat(folder.resolve("back")).doesNotExist();
    }
  }

  @Test
  void whatIsThereIsLeftAlone() throws Exception {
    Files.createDirectory(folder.resolve("back"));
    assertThatThrownBy(
            () -> new Unpacking(desk.home(), desk.keys()).unpack(edition, folder.resolve("back")))
        .isInstanceOf(FileAlreadyExistsException.class);
  }
}
