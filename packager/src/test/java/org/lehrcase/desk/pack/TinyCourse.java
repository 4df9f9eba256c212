package org.lehrcase.desk.pack;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import javax.imageio.ImageIO;

/** A small invented course: real in form, with papers and noise instead of films. */
public final class TinyCourse {
  private final Path folder;

  private TinyCourse(Path folder) {
    this.folder = folder;
  }

  /** Makes a course of three lessons; lesson 1 is open. */
  public static TinyCourse in(Path folder) throws IOException {
    TinyCourse course = new TinyCourse(Files.createDirectories(folder));
    course.write("course.yaml", "id: brush\ntitle: Brush\nopen-lessons: [1]\n");
    course.write("01 Looking/notes.md", "# Looking\n\nLook into the water.\n");
    course.noise("01 Looking/sheet.png", 1, 70_000);
    course.write("02 Far water/notes.md", "# Far water\n\nA pale wash.\n");
    course.noise("02 Far water/far.png", 2, 200_000);
    course.write("03 Kelp/notes.md", "# Kelp\n\nTuck under.\n");
    course.noise("03 Kelp/kelp.png", 3, 150_000);
    course.write(
        "03 Kelp/f3.firing.csv",
        "step,rate_c_per_h,target_c,hold_min,note\n1,120,450,15,vent\n2,200,590,8,\n3,free,505,15,\n"
            + "4,200,370,0,\n5,free,off,0,\n");
    return course;
  }

  public Path folder() {
    return folder;
  }

  public void write(String place, String text) throws IOException {
    Path file = folder.resolve(place);
    Files.createDirectories(file.getParent());
    Files.write(file, text.getBytes(StandardCharsets.UTF_8));
  }

  /** Writes a picture with noise behind its end, the same for the same seed. */
  public void noise(String place, long seed, int bytes) throws IOException {
    byte[] content = new byte[bytes];
    new Random(seed).nextBytes(content);
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    ImageIO.write(new BufferedImage(4, 4, BufferedImage.TYPE_INT_RGB), "png", png);
    System.arraycopy(png.toByteArray(), 0, content, 0, png.size());
    Path file = folder.resolve(place);
    Files.createDirectories(file.getParent());
    Files.write(file, content);
  }

  public void rename(String from, String to) throws IOException {
    Files.move(folder.resolve(from), folder.resolve(to));
  }
}
