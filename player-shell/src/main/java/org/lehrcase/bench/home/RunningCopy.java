package org.lehrcase.bench.home;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/**
 * The hold of one running bench on its data folder. The lock is the system's own, so that it is
 * free again when the program is killed; beside it lies how to reach the running copy, readable by
 * the user only.
 */
public final class RunningCopy implements Closeable {
  private static final String LOCK = "bench.lock";
  private static final String ADDRESS = "bench.running";
  private static final int MAX_ADDRESS_BYTES = 200;

  private final Path home;
  private final FileChannel channel;
  private final FileLock lock;

  /**
   * How to reach a running copy.
   *
   * @param port its port
   * @param knockWord the word by which it gives a one-time address
   */
  public record Reach(int port, String knockWord) {
    @Override
    public String toString() {
      return "Reach[" + port + ", redacted]";
    }
  }

  private RunningCopy(Path home, FileChannel channel, FileLock lock) {
    this.home = home;
    this.channel = channel;
    this.lock = lock;
  }

  /**
   * Takes hold of a data folder.
   *
   * @param home the data folder; it exists
   * @return the hold, or nothing if another copy has it
   * @throws IOException if the folder cannot be written
   */
  public static Optional<RunningCopy> take(Path home) throws IOException {
    FileChannel channel =
        FileChannel.open(home.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    FileLock lock = null;
    try {
      lock = channel.tryLock();
    } catch (OverlappingFileLockException e) {
      lock = null; // this very program holds it
    } finally {
      if (lock == null) {
        channel.close();
      }
    }
    return lock == null ? Optional.empty() : Optional.of(new RunningCopy(home, channel, lock));
  }

  /**
   * Tells later starts how to reach this copy.
   *
   * @param reach port and word
   * @throws IOException if it cannot be written
   */
  public void announce(Reach reach) throws IOException {
    OwnerFile.write(home.resolve(ADDRESS), reach.port() + " " + reach.knockWord() + "\n");
  }

  /**
   * Reads how to reach the copy that holds a data folder.
   *
   * @param home the data folder
   * @return port and word, or nothing if it did not announce itself yet
   * @throws IOException if it cannot be read
   */
  public static Optional<Reach> find(Path home) throws IOException {
    try (InputStream in = Files.newInputStream(home.resolve(ADDRESS))) {
      String text = new String(in.readNBytes(MAX_ADDRESS_BYTES), StandardCharsets.UTF_8).trim();
      String[] fields = text.split(" ");
      return fields.length == 2 && fields[0].matches("\\d{1,5}")
          ? Optional.of(new Reach(Integer.parseInt(fields[0]), fields[1]))
          : Optional.empty();
    } catch (NoSuchFileException e) {
      return Optional.empty();
    }
  }

  @Override
  public void close() throws IOException {
    Files.deleteIfExists(home.resolve(ADDRESS));
    lock.release();
    channel.close();
  }
}
