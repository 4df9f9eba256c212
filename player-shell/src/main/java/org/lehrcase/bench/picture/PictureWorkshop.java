package org.lehrcase.bench.picture;

import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;

/**
 * Has pictures decoded in a process of its own, one at a time. What a hostile or a very large file
 * does there, it does to a process with {@code 384 MiB} of heap that is ended after half a minute;
 * the bench itself holds no more than the clean picture. Nothing is written to a disk.
 */
public final class PictureWorkshop {
  private static final int PATIENCE_SECONDS = 30;
  private static final int MOST_JPEG_BYTES = 16 << 20;
  private static final int CHUNK = 1 << 16;

  private final Semaphore bench = new Semaphore(1);

  /**
   * Decodes a picture.
   *
   * @param file a JPEG or PNG, read once and to its end
   * @return the clean picture
   * @throws PictureRefusal if it cannot be taken
   * @throws IOException if the process cannot be started, or whoever sends the file is gone
   */
  public CleanPicture clean(InputStream file) throws PictureRefusal, IOException {
    bench.acquireUninterruptibly();
    try {
      return run(file);
    } finally {
      bench.release();
    }
  }

  private static CleanPicture run(InputStream file) throws PictureRefusal, IOException {
    Process child =
        new ProcessBuilder(command()).redirectError(ProcessBuilder.Redirect.DISCARD).start();
    var watch =
        CompletableFuture.runAsync(
            child::destroyForcibly,
            CompletableFuture.delayedExecutor(PATIENCE_SECONDS, TimeUnit.SECONDS));
    try (OutputStream to = child.getOutputStream();
        var from = new DataInputStream(child.getInputStream())) {
      send(file, to);
      return answer(from);
    } catch (EOFException e) {
      throw new PictureRefusal(
          "This picture took too long or too much memory to open.",
          "Save it smaller in a picture program: 3,000 pixels along the longer side are plenty.");
    } finally {
      watch.cancel(false);
      child.destroyForcibly();
    }
  }

  private static List<String> command() throws IOException {
    Path bin = Path.of(System.getProperty("java.home"), "bin");
    Path java = bin.resolve("java");
    Path windows = bin.resolve("java.exe");
    if (!Files.exists(java) && !Files.exists(windows)) {
      throw new IOException("the Java runtime of this program has no java");
    }
    return List.of(
        (Files.exists(java) ? java : windows).toString(),
        "-Xmx384m",
        "-Xss512k",
        "-XX:+UseSerialGC",
        "-XX:+ExitOnOutOfMemoryError",
        "-Xshare:auto",
        "-Djava.awt.headless=true",
        "-cp",
        System.getProperty("java.class.path"),
        PictureChild.class.getName());
  }

  /** A child that has already refused reads no further; its answer is what counts. */
  private static void send(InputStream file, OutputStream to) throws IOException {
    byte[] chunk = new byte[CHUNK];
    long left = PictureLimits.MOST_BYTES + 1L;
    int count = file.read(chunk, 0, (int) Math.min(CHUNK, left));
    while (count > 0) {
      to.write(chunk, 0, count);
      left -= count;
      count = file.read(chunk, 0, (int) Math.min(CHUNK, left));
    }
    to.close();
  }

  private static CleanPicture answer(DataInputStream from) throws IOException, PictureRefusal {
    int kind = from.readUnsignedByte();
    if (kind != PictureChild.CLEAN) {
      throw new PictureRefusal(from.readUTF(), from.readUTF());
    }
    int[] size = {from.readInt(), from.readInt()};
    int[] source = {from.readInt(), from.readInt()};
    int length = from.readInt();
    if (length < 1 || length > MOST_JPEG_BYTES) {
      throw new IOException("the picture's process answered nonsense");
    }
    byte[] jpeg = from.readNBytes(length);
    if (jpeg.length < length) {
      throw new EOFException("the picture's process ended early");
    }
    return new CleanPicture(size, source, jpeg);
  }
}
