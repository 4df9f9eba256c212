package org.lehrcase.desk.pack;

import java.io.IOException;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.PartRef;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.LessonId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PartAddress;
import org.lehrcase.desk.home.OwnerFiles;
import org.lehrcase.desk.pack.KnownPart.KnownFile;

/**
 * The parts of one edition, one line each, added and forced to the disk as they are finished. While
 * packing this is the journal by which an ended pack goes on; afterwards it is what the next
 * edition compares with. Part keys are wrapped; each line carries its own mark, and a line whose
 * mark does not fit (torn when the program ended) is as if it were not there.
 */
final class PackMemory {
  private static final int MAX_BYTES = 8 << 20;
  private static final int FIELDS = 12;
  private static final String VERSION = "1";

  private final Path file;
  private final MemoryKey key;
  private final Map<KnownFile, List<KnownPart>> parts = new LinkedHashMap<>();

  private PackMemory(Path file, MemoryKey key) {
    this.file = file;
    this.key = key;
  }

  /** Reads a memory; a file that is not there is an empty one. */
  static PackMemory read(Path file, MemoryKey key) throws IOException {
    PackMemory memory = new PackMemory(file, key);
    if (Files.exists(file)) {
      String text = new String(OwnerFiles.read(file, MAX_BYTES), StandardCharsets.UTF_8);
      text.lines().forEach(line -> memory.parse(line).ifPresent(memory::keep));
    }
    return memory;
  }

  /** Returns the parts by file; a file may have fewer parts here than it is to have. */
  Map<KnownFile, List<KnownPart>> parts() {
    return parts;
  }

  boolean isEmpty() {
    return parts.isEmpty();
  }

  /** Adds a finished part; it is on the disk when this returns. */
  void add(KnownPart part) throws IOException {
    String line = write(part);
    byte[] bytes =
        ("\n" + line + " " + key.mark(line).hex() + "\n").getBytes(StandardCharsets.UTF_8);
    if (!Files.exists(file)) {
      OwnerFiles.write(file, new byte[0]);
    }
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.APPEND)) {
      ByteBuffer buffer = ByteBuffer.wrap(bytes);
      while (buffer.hasRemaining()) {
        channel.write(buffer);
      }
      channel.force(true);
    }
    keep(part);
  }

  private void keep(KnownPart part) {
    parts.computeIfAbsent(part.file(), f -> new ArrayList<>()).add(part);
  }

  private String write(KnownPart part) {
    KnownFile of = part.file();
    return String.join(
        " ",
        VERSION,
        of.lesson().hex(),
        of.asset().hex(),
        Integer.toString(of.role().code()),
        Long.toString(of.plainBytes()),
        Integer.toString(of.parts()),
        Integer.toString(part.part()),
        part.print().hex(),
        part.ref().address().hex(),
        Long.toString(part.sealedBytes()),
        key.wrap(part.ref().key()).hex(),
        URLEncoder.encode(of.name(), StandardCharsets.UTF_8));
  }

  private Optional<KnownPart> parse(String line) {
    int end = line.lastIndexOf(' ');
    if (end < 0 || !key.mark(line.substring(0, end)).hex().equals(line.substring(end + 1))) {
      return Optional.empty();
    }
    String[] fields = line.substring(0, end).split(" ", -1);
    if (fields.length != FIELDS || !fields[0].equals(VERSION)) {
      return Optional.empty();
    }
    try {
      return Optional.of(read(fields));
    } catch (VaultException.Tampered e) {
      return Optional.empty(); // marked by this desk, wrapped by another: not usable
    }
  }

  private KnownPart read(String[] fields) throws VaultException.Tampered {
    KnownFile of =
        new KnownFile(
            LessonId.ofHex(fields[1]),
            AssetId.ofHex(fields[2]),
            AssetRole.ofCode(Long.parseLong(fields[3])).orElseThrow(),
            URLDecoder.decode(fields[11], StandardCharsets.UTF_8),
            Long.parseLong(fields[4]),
            Integer.parseInt(fields[5]));
    PartRef ref = new PartRef(PartAddress.ofHex(fields[8]), key.unwrap(Octets.ofHex(fields[10])));
    return new KnownPart(
        of, Integer.parseInt(fields[6]), Octets.ofHex(fields[7]), ref, Long.parseLong(fields[9]));
  }
}
