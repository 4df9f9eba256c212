package org.lehrcase.desk.home;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Keeps a second desk out of a home. The system drops it when the program ends, however it ends.
 */
final class DeskLock implements AutoCloseable {
  private final FileChannel channel;

  private DeskLock(FileChannel channel) {
    this.channel = channel;
  }

  /** Takes the lock, or says that another desk has it. */
  static DeskLock take(Path file) throws IOException, DeskHomeException {
    FileChannel channel =
        FileChannel.open(
            file,
            Set.of(StandardOpenOption.CREATE, StandardOpenOption.WRITE),
            OwnerFiles.ownerOnly(file));
    boolean taken = false;
    try {
      if (tryLock(channel) == null) {
        throw new DeskHomeException.InUse(
            "Another desk is at work in this home. Nothing was changed; let it finish, then start"
                + " again.");
      }
      taken = true;
      return new DeskLock(channel);
    } finally {
      if (!taken) {
        channel.close();
      }
    }
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }

  private static @Nullable FileLock tryLock(FileChannel channel) throws IOException {
    try {
      return channel.tryLock();
    } catch (OverlappingFileLockException e) {
      return null; // this very program holds it
    }
  }
}
