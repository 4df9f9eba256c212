package org.lehrcase.desk.author;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;

/** A course folder that a test fills. */
final class CourseOnDisk {
  private final Path root;

  CourseOnDisk(Path parent) throws IOException {
    this.root = Files.createDirectories(parent.resolve("Brush"));
  }

  /** A course that is right in every way: one film with captions, chapters and papers. */
  static CourseOnDisk sound(Path parent) throws IOException {
    return new CourseOnDisk(parent)
        .text(
            "course.yaml",
            "id: brush\ntitle: Brush\nteacher: A. Teacher\nopen-lessons: [1]\n"
                + "save-for-printing: [handout, template]\n")
        .sample("01 Looking into water/film.mp4", "index-in-front.mp4")
        .text("01 Looking into water/film.en.vtt", "WEBVTT\n\n00:00.100 --> 00:01.500\nLook.\n")
        .text(
            "01 Looking into water/film.chapters.txt",
            "0:00 lay out [materials]\n0:01 wash [p2] [template 4]\n")
        .pdf("01 Looking into water/handout.pdf", 3)
        .text("01 Looking into water/sheet 3.template.svg", svg("180mm"))
        .text("01 Looking into water/sheet 4.template.svg", svg("180mm"))
        .text("01 Looking into water/all.materials.csv", "item,amount,unit,per\nsheet,7,,once\n")
        .text(
            "01 Looking into water/strips.firing.csv",
            "step,rate_c_per_h,target_c,hold_min,note\nup,200,580,10,no glass in the kiln\nfree,free,505,15,\n"
                + "down,200,370,0,\nend,,off,,\n")
        .text("01 Looking into water/lesson.yaml", "summary: Six sheets.\nblock: First week\n");
  }

  static String svg(String width) {
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + width + "\" height=\"130mm\"/>";
  }

  Path root() {
    return root;
  }

  CourseOnDisk text(String place, String text) throws IOException {
    return bytes(place, text.getBytes(StandardCharsets.UTF_8));
  }

  CourseOnDisk bytes(String place, byte[] bytes) throws IOException {
    var file = root.resolve(place);
    Files.createDirectories(Objects.requireNonNull(file.getParent()));
    Files.write(file, bytes);
    return this;
  }

  CourseOnDisk sample(String place, String film) throws IOException {
    try (InputStream in =
        Objects.requireNonNull(CourseOnDisk.class.getResourceAsStream("/media/" + film))) {
      return bytes(place, in.readNBytes(1 << 20));
    }
  }

  CourseOnDisk pdf(String place, int pages) throws IOException {
    try (var document = new PDDocument()) {
      for (var i = 0; i < pages; i++) {
        document.addPage(new PDPage());
      }
      bytes(place, new byte[0]);
      document.save(root.resolve(place).toFile());
    }
    return this;
  }

  CourseOnDisk lockedPdf(String place, String password) throws IOException {
    try (var document = new PDDocument()) {
      document.addPage(new PDPage());
      document.protect(new StandardProtectionPolicy("owner", password, new AccessPermission()));
      bytes(place, new byte[0]);
      document.save(root.resolve(place).toFile());
    }
    return this;
  }

  CourseOnDisk without(String place) throws IOException {
    Files.delete(root.resolve(place));
    return this;
  }

  CourseOnDisk link(String place, Path target) throws IOException {
    Files.createSymbolicLink(root.resolve(place), target);
    return this;
  }

  SourceCourse read() throws IOException {
    return CourseFolder.read(root);
  }

  CourseReport check() throws IOException {
    return CourseCheck.run(root);
  }

  List<Finding> findings(Severity severity) throws IOException {
    return check().findings().stream().filter(f -> f.severity() == severity).toList();
  }
}
