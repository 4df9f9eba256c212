package org.lehrcase.core.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.seal.FileSource;

/**
 * Reads files of a folder that somebody else filled: measured first, read once, no link followed.
 */
public final class FoundFile {
  private FoundFile() {}

  /**
   * Reads a whole file.
   *
   * @param file the file
   * @param maxBytes the most that are read, at most what an array holds
   * @return all of its bytes
   * @throws VaultException.NotHere if there is none
   * @throws VaultException.TooLarge if it is longer than the limit
   * @throws VaultException.Malformed if it is a link, a folder or anything but a regular file
   * @throws IOException if the medium fails
   */
  public static byte[] read(Path file, long maxBytes) throws IOException, VaultException {
    try (FileSource source = open(file)) {
      if (source.sizeBytes() > maxBytes) {
        throw new VaultException.TooLarge(
            file.getFileName() + ": " + source.sizeBytes() + " bytes, the limit is " + maxBytes);
      }
      byte[] bytes = new byte[(int) source.sizeBytes()];
      source.readExactly(0, ByteBuffer.wrap(bytes));
      return bytes;
    }
  }

  /**
   * Opens a file of a known length.
   *
   * @param file the file
   * @param exactBytes its length
   * @return the file, which the caller closes
   * @throws VaultException.NotHere if there is none
   * @throws VaultException.Truncated if it is shorter
   * @throws VaultException.Malformed if it is longer, or no regular file
   * @throws IOException if the medium fails
   */
  public static FileSource open(Path file, long exactBytes) throws IOException, VaultException {
    FileSource source = open(file);
    if (source.sizeBytes() == exactBytes) {
      return source;
    }
    source.close();
    String lengths =
        file.getFileName() + ": " + source.sizeBytes() + " bytes, expected " + exactBytes;
    if (source.sizeBytes() < exactBytes) {
      throw new VaultException.Truncated(lengths + "; copy it again");
    }
    throw new VaultException.Malformed(lengths + "; copy it again");
  }

  /** Says whether there is anything of this name, be it only a link to nowhere. */
  public static boolean exists(Path file) {
    return Files.exists(file, LinkOption.NOFOLLOW_LINKS);
  }

  /** Says whether this is a folder and not a link to one. */
  public static boolean isFolder(Path file) {
    return Files.isDirectory(file, LinkOption.NOFOLLOW_LINKS);
  }

  private static FileSource open(Path file) throws IOException, VaultException {
    requireRegular(file);
    try {
      return FileSource.open(file);
    } catch (NoSuchFileException e) {
      throw notHere(file);
    }
  }

  /** Looks before opening, as opening a pipe would wait for ever. */
  private static void requireRegular(Path file) throws IOException, VaultException {
    try {
      if (!Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS)
          .isRegularFile()) {
        throw new VaultException.Malformed(
            file.getFileName() + " is a link or no file; copy the edition again");
      }
    } catch (NoSuchFileException e) {
      throw notHere(file);
    } catch (FileSystemException e) {
      if (!exists(file)) {
        throw notHere(file);
      }
      throw e;
    }
  }

  private static VaultException.NotHere notHere(Path file) {
    return new VaultException.NotHere(
        file.getFileName() + " is not in this copy; a fuller copy or another stick may have it");
  }
}
