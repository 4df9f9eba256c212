package org.lehrcase.core.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** Disks and sticks as the operating system offers them. */
final class SystemMedium implements Medium {
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
  public void move(Path from, Path to) throws IOException {
    Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  @Override
  public void delete(Path file) throws IOException {
    Files.deleteIfExists(file);
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
