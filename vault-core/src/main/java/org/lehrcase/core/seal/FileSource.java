package org.lehrcase.core.seal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Set;

/**
 * A regular file, read by position.
 *
 * <p>Symbolic links are refused, as an edition folder is hostile input. An interrupt of a thread
 * that is reading closes the file for all others too, so jobs over a shared file are stopped by
 * their progress callback and not by interrupts.
 */
public final class FileSource implements ByteSource {
  private final FileChannel channel;
  private final long size;

  private FileSource(FileChannel channel, long size) {
    this.channel = channel;
    this.size = size;
  }

  /**
   * Opens {@code file} for reading; the last element of the path must not be a link.
   *
   * @throws FileSystemException if it is not a regular file
   * @throws IOException if it can't be opened
   */
  public static FileSource open(Path file) throws IOException {
    BasicFileAttributes attributes =
        Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
    if (!attributes.isRegularFile()) {
      throw new FileSystemException(file.toString(), null, "not a regular file");
    }
    FileChannel channel =
        FileChannel.open(file, Set.of(StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS));
    try {
      return new FileSource(channel, channel.size());
    } catch (IOException e) {
      channel.close();
      throw e;
    }
  }

  @Override
  public long sizeBytes() {
    return size;
  }

  @Override
  public int readAt(long position, ByteBuffer target) throws IOException {
    return channel.read(target, position);
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
