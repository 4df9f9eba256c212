package org.lehrcase.desk.sticks;

import com.sun.nio.file.ExtendedOpenOption;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.ReadableByteChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Set;
import org.lehrcase.core.file.Medium;
import org.lehrcase.desk.home.OwnerFiles;

/** Sticks as the operating system offers them. */
public final class MountedDisk implements StickDisk {
  @Override
  public Medium medium() {
    return Medium.SYSTEM;
  }

  @Override
  public long freeBytes(Path stick) throws IOException {
    return Files.getFileStore(stick).getUsableSpace();
  }

  @Override
  public long blockBytes(Path stick) throws IOException {
    try {
      return Math.max(1, Files.getFileStore(stick).getBlockSize());
    } catch (UnsupportedOperationException e) {
      return 1;
    }
  }

  @Override
  public ReadableByteChannel read(Path file, boolean pastTheCache) throws IOException {
    return pastTheCache
        ? FileChannel.open(
            file,
            Set.of(StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS, ExtendedOpenOption.DIRECT))
        : FileChannel.open(file, Set.of(StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS));
  }

  /** Some drivers of sticks' file systems cannot do it; then ejecting the stick does. */
  @Override
  public void forceNames(Path folder) {
    try {
      OwnerFiles.forceFolder(folder);
    } catch (IOException e) {
      return; // the files themselves were forced before
    }
  }
}
