package org.lehrcase.desk.pack;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.SecureRandom;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.PartSealer;
import org.lehrcase.core.seal.Progress;
import org.lehrcase.core.seal.SealedPart;
import org.lehrcase.desk.home.OwnerFiles;

/** The disk as it is. */
final class RealDisk implements PackDisk {
  static final String UNFINISHED = ".part";

  private final PartSealer sealer;

  RealDisk(SecureRandom random) {
    this.sealer = new PartSealer(random);
  }

  @Override
  public void folder(Path folder) throws IOException {
    Files.createDirectories(folder);
  }

  @Override
  public long freeBytes(Path folder) throws IOException {
    return Files.getFileStore(folder).getUsableSpace();
  }

  @Override
  public SealedPart seal(
      ByteSource clear, PartHeader header, PartKey key, Path target, Progress progress)
      throws IOException {
    return sealer.seal(clear, header, key, target, progress);
  }

  @Override
  public void write(Path file, byte[] bytes) throws IOException {
    Path unfinished = file.resolveSibling(file.getFileName() + UNFINISHED);
    Files.deleteIfExists(unfinished);
    try (FileChannel out = create(unfinished)) {
      ByteBuffer buffer = ByteBuffer.wrap(bytes);
      while (buffer.hasRemaining()) {
        out.write(buffer);
      }
      out.force(true);
    }
    Files.move(unfinished, file, StandardCopyOption.ATOMIC_MOVE);
  }

  @Override
  public void copy(Path from, Path file) throws IOException {
    Path unfinished = file.resolveSibling(file.getFileName() + UNFINISHED);
    Files.deleteIfExists(unfinished);
    try (FileChannel in = FileChannel.open(from, StandardOpenOption.READ);
        FileChannel out = create(unfinished)) {
      long size = in.size();
      long at = 0;
      while (at < size) {
        long done = in.transferTo(at, size - at, out);
        if (done <= 0) {
          throw new IOException(from + " became shorter while it was copied.");
        }
        at += done;
      }
      out.force(true);
    }
    move(unfinished, file);
  }

  @Override
  public void move(Path from, Path to) throws IOException {
    Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
    OwnerFiles.forceFolder(to.toAbsolutePath().getParent());
  }

  @Override
  public void remove(Path path) throws IOException {
    Files.deleteIfExists(path);
  }

  private static FileChannel create(Path file) throws IOException {
    return FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
  }
}
