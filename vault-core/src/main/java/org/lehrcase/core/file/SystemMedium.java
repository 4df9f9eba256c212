package org.lehrcase.core.file;

import java.io.EOFException;
import java.io.IOException;
import java.io.InterruptedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** Disks and sticks as the operating system offers them. */
final class SystemMedium implements Medium {
  private static final int ATTEMPTS = 5;

  /** Said of a file in use; its subclasses say other things. */
  private static final Class<?> HELD = FileSystemException.class;

  private static final int MOVE_PAUSE_MILLIS = 100;

  @Override
  public void createFolder(Path folder) throws IOException {
    Files.createDirectory(folder);
  }

  @Override
  public Sink create(Path file) throws IOException {
    Files.deleteIfExists(file);
    return new ChannelSink(
        FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE));
  }

  @Override
  public Sink resume(Path file, long keptBytes) throws IOException {
    FileChannel channel =
        FileChannel.open(file, StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS);
    boolean handedOver = false;
    try {
      if (channel.size() < keptBytes) {
        throw new EOFException(file + " has fewer than " + keptBytes + " bytes");
      }
      channel.truncate(keptBytes).position(keptBytes);
      handedOver = true;
      return new ChannelSink(channel);
    } finally {
      if (!handedOver) {
        channel.close();
      }
    }
  }

  /** A program that looks for viruses may hold a new file for a moment, so this is tried again. */
  @Override
  public void move(Path from, Path to) throws IOException {
    patiently(
        () ->
            Files.move(
                from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING));
  }

  /** One step that another program may hold up. */
  @FunctionalInterface
  private interface Step {
    void run() throws IOException;
  }

  /**
   * A held file is told as a refused access, or, on Windows, as a plain trouble of that file. What
   * is not there, or not empty, will not change by waiting.
   */
  private static void patiently(Step step) throws IOException {
    for (int attempt = 1; ; attempt++) {
      try {
        step.run();
        return;
      } catch (FileSystemException e) {
        boolean held = e instanceof AccessDeniedException || e.getClass() == HELD;
        if (!held || attempt == ATTEMPTS) {
          throw e;
        }
        pause();
      }
    }
  }

  private static void pause() throws IOException {
    try {
      Thread.sleep(MOVE_PAUSE_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new InterruptedIOException("interrupted while a file was held by another program");
    }
  }

  @Override
  public void delete(Path file) throws IOException {
    patiently(() -> Files.deleteIfExists(file));
  }

  private record ChannelSink(FileChannel channel) implements Sink {
    @Override
    public void write(ByteBuffer bytes) throws IOException {
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
    }

    @Override
    public void force() throws IOException {
      channel.force(true);
    }

    @Override
    public void close() throws IOException {
      channel.close();
    }
  }
}
