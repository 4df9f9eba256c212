package org.lehrcase.core.file;

import java.nio.file.FileSystem;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;

/**
 * Rights with which a file or folder is made, so that nobody else can read it from the first moment
 * on. Asks the system and not the disk, which in a bare change of root does not answer.
 */
public final class OwnerOnly {
  private static final FileAttribute<?>[] NONE = {};

  private OwnerOnly() {}

  /** Returns the rights of a new file at this path; none where the system has other rights. */
  public static FileAttribute<?>[] file(Path path) {
    return rights(path.getFileSystem(), "rw-------");
  }

  /** Returns the rights of a new folder at this path; none where the system has other rights. */
  public static FileAttribute<?>[] folder(Path path) {
    return rights(path.getFileSystem(), "rwx------");
  }

  private static FileAttribute<?>[] rights(FileSystem system, String rights) {
    return system.supportedFileAttributeViews().contains("posix")
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(rights))
        }
        : NONE;
  }
}
