package org.lehrcase.desk.home;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;

/**
 * Whole files that appear at once and that only their owner may read. Written as {@code name.part}
 * beside the target, forced to the disk, then moved over it.
 */
public final class OwnerFiles {
  private static final Set<PosixFilePermission> OWNER_FILE =
      PosixFilePermissions.fromString("rw-------");
  private static final Set<PosixFilePermission> OWNER_FOLDER =
      PosixFilePermissions.fromString("rwx------");

  private OwnerFiles() {}

  /**
   * Makes a folder, with those above it, that only its owner may enter.
   *
   * @param folder the folder; may exist
   * @throws IOException if it cannot be made
   */
  public static void folder(Path folder) throws IOException {
    Path parent = folder.toAbsolutePath().getParent();
    if (parent != null) {
      Files.createDirectories(parent);
    }
    if (!Files.isDirectory(folder)) {
      Files.createDirectory(folder, permissions(folder, OWNER_FOLDER));
    }
  }

  /**
   * Writes a whole file; a file that was there is replaced only once the new one is on the disk.
   *
   * @param file the target
   * @param bytes its content
   * @throws IOException if it cannot be written; the old file is untouched then
   */
  public static void write(Path file, byte[] bytes) throws IOException {
    Path part = file.resolveSibling(file.getFileName() + ".part");
    Files.deleteIfExists(part);
    try {
      fill(part, bytes);
      Files.move(part, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(part);
    }
    forceFolder(file.toAbsolutePath().getParent());
  }

  /**
   * Reads a file with a limit.
   *
   * @param file a regular file, not a link
   * @param maxBytes the most that is read
   * @return its content
   * @throws IOException if it is missing, no regular file, or longer
   */
  public static byte[] read(Path file, int maxBytes) throws IOException {
    if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new IOException("There is no file " + file + ".");
    }
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(maxBytes + 1);
      if (bytes.length > maxBytes) {
        throw new IOException(
            file + " is longer than " + maxBytes + " bytes, so it is not what is asked for.");
      }
      return bytes;
    }
  }

  /**
   * Forces the names in a folder to the disk, where the system can do that.
   *
   * @param folder the folder; {@code null} does nothing
   * @throws IOException if the folder can be opened but not forced
   */
  public static void forceFolder(@org.jspecify.annotations.Nullable Path folder)
      throws IOException {
    if (folder == null || !folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      return;
    }
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    }
  }

  /**
   * What makes a new file readable and writable for its owner alone, where the system knows that.
   */
  static FileAttribute<?>[] ownerOnly(Path file) {
    return permissions(file, OWNER_FILE);
  }

  private static FileAttribute<?>[] permissions(Path path, Set<PosixFilePermission> granted) {
    return path.getFileSystem().supportedFileAttributeViews().contains("posix")
        ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(granted)}
        : new FileAttribute<?>[0];
  }

  private static void fill(Path part, byte[] bytes) throws IOException {
    try (FileChannel channel =
        FileChannel.open(
            part,
            Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE),
            ownerOnly(part))) {
      ByteBuffer buffer = ByteBuffer.wrap(bytes);
      while (buffer.hasRemaining()) {
        channel.write(buffer);
      }
      channel.force(true);
    }
  }
}
