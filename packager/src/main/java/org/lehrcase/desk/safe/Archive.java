package org.lehrcase.desk.safe;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.FileSource;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.OwnerFiles;

/**
 * The files of a desk as one row of bytes: {@code u32 size of the list ‖ (name, u64 size)… ‖ the
 * files}. Names are as in the home; any other is refused.
 */
final class Archive {
  /** What a file that packing remembers may be called. */
  static final String PACKING_NAME = "[A-Za-z0-9_-][A-Za-z0-9._-]{0,199}";

  private static final Set<String> FILES = Set.of(DeskHome.STATEMENT, DeskHome.KEYS, DeskHome.BOOK);
  private static final int MOST_LIST = 1 << 20;
  private static final int BUFFER_BYTES = 1 << 16;

  private Archive() {}

  /** Returns the files as one source, which owns them; a file must not change while it is read. */
  static ByteSource of(Map<String, Path> files) throws IOException {
    List<ByteSource> sources = new ArrayList<>();
    ByteArrayOutputStream list = new ByteArrayOutputStream();
    DataOutputStream out = new DataOutputStream(list);
    boolean whole = false;
    try {
      for (Map.Entry<String, Path> file : files.entrySet()) {
        ByteSource source = FileSource.open(file.getValue());
        sources.add(source);
        out.writeUTF(file.getKey());
        out.writeLong(source.sizeBytes());
      }
      sources.add(0, ByteSource.of(list.toByteArray()));
      sources.add(0, ByteSource.of(ByteBuffer.allocate(Integer.BYTES).putInt(list.size()).array()));
      whole = true;
      return new JoinedSource(sources);
    } finally {
      if (!whole) {
        new JoinedSource(sources).close();
      }
    }
  }

  /** Writes the files of a backup into a new home, for its owner only. */
  static void unpack(BackupFile backup, Path home) throws IOException {
    ByteBuffer size = ByteBuffer.allocate(Integer.BYTES);
    read(backup, 0, size);
    int listBytes = size.getInt();
    if (listBytes < 0 || listBytes > MOST_LIST) {
      throw impossible();
    }
    ByteBuffer list = ByteBuffer.allocate(listBytes);
    read(backup, Integer.BYTES, list);
    DataInputStream in = new DataInputStream(new ByteArrayInputStream(list.array()));
    long at = Integer.BYTES + (long) listBytes;
    while (in.available() > 0) {
      Path target = target(home, in.readUTF());
      long bytes = in.readLong();
      copy(backup, at, bytes, target);
      at += bytes;
    }
  }

  private static void read(BackupFile backup, long at, ByteBuffer target) throws IOException {
    if (at + target.remaining() > backup.sizeBytes()) {
      throw impossible();
    }
    backup.read(at, target);
    target.flip();
  }

  private static Path target(Path home, String name) throws IOException {
    if (FILES.contains(name)) {
      return home.resolve(name);
    }
    String packing = DeskHome.PACKING + "/";
    String inside = name.startsWith(packing) ? name.substring(packing.length()) : "";
    if (!inside.matches(PACKING_NAME)) {
      throw new BackupException("The backup holds a file that no desk has. Nothing was changed.");
    }
    OwnerFiles.folder(home.resolve(DeskHome.PACKING));
    return home.resolve(DeskHome.PACKING).resolve(inside);
  }

  private static void copy(BackupFile backup, long from, long size, Path target)
      throws IOException {
    if (size < 0 || size > backup.sizeBytes() - from) {
      throw impossible();
    }
    OwnerFiles.write(target, new byte[0]);
    ByteBuffer buffer = ByteBuffer.allocate(BUFFER_BYTES);
    try (FileChannel out = FileChannel.open(target, StandardOpenOption.WRITE)) {
      for (long done = 0; done < size; ) {
        buffer.clear().limit((int) Math.min(BUFFER_BYTES, size - done));
        read(backup, from + done, buffer);
        done += buffer.remaining();
        while (buffer.hasRemaining()) {
          out.write(buffer);
        }
      }
    }
  }

  private static BackupException impossible() {
    return new BackupException("The backup holds a file of an impossible size.");
  }
}
