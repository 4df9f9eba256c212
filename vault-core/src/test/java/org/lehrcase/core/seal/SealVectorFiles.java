package org.lehrcase.core.seal;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.lehrcase.core.seal.VectorParts.ASSET;
import static org.lehrcase.core.seal.VectorParts.HEADER;
import static org.lehrcase.core.seal.VectorParts.KEY;
import static org.lehrcase.core.seal.VectorParts.PLAIN;
import static org.lehrcase.core.seal.VectorParts.S;
import static org.lehrcase.core.seal.VectorParts.clear;
import static org.lehrcase.core.seal.VectorParts.counted;
import static org.lehrcase.core.seal.VectorParts.list;
import static org.lehrcase.core.seal.VectorParts.sealed;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.primitive.Sha256;

/**
 * Makes the committed vectors of the part format, the same bytes on every run. Keys and salts are
 * counted up and for tests only.
 *
 * <p>To write them again: run {@link #main} with the folder {@code
 * src/test/resources/vectors/seal}.
 */
final class SealVectorFiles {
  private static final HexFormat HEX = HexFormat.of();

  private final Map<String, byte[]> files = new LinkedHashMap<>();
  private final byte[] whole = sealed(HEADER, KEY, 0x40);
  private final String digests = HEX.formatHex(list(whole).toBytes());

  private SealVectorFiles() {}

  public static void main(String[] folder) throws IOException {
    for (Map.Entry<String, byte[]> file : make().entrySet()) {
      Files.write(Path.of(folder[0]).resolve(file.getKey()), file.getValue());
    }
  }

  /** Returns all files of the vector folder by name. */
  static Map<String, byte[]> make() throws IOException {
    var files = new SealVectorFiles();
    files.files.put("whole.part", files.whole);
    files.add("whole", "the untouched part", "none", "opens");
    files.flips();
    files.cuts();
    files.moves();
    files.foreign();
    files.forged();
    files.headers();
    files.emptyLast();
    return files.files;
  }

  private void flips() {
    String opening = "tampered at opening";
    add("flip-asset-id", "one bit of the asset id in the header", "flip 20 01", opening);
    add("flip-clear-length", "one bit of the clear length", "flip 39 01", opening);
    add("flip-part-number", "part 1 in place of part 0", "flip 13 01", opening);
    add(
        "flip-stream-length",
        "length byte of the stream header",
        "flip 40 01",
        "malformed at opening");
    add("flip-salt", "one bit of the salt", "flip 50 80", opening);
    add("flip-nonce-prefix", "one bit of the nonce prefix", "flip 79 01", opening);
    add("flip-first", "one bit of segment 0", "flip 80 01", tampered(0));
    add("flip-first-tag", "one bit of the tag of segment 0", "flip 65535 01", tampered(0));
    add("flip-middle", "one bit in the middle of segment 1", "flip 100000 10", tampered(1));
    add("flip-middle-tag", "one bit of the tag of segment 1", "flip 131071 80", tampered(1));
    int last = 3 * S;
    add("flip-last", "one bit of the last segment", "flip " + (last + 500) + " 01", opening);
    add("flip-last-tag", "one bit of the last tag", "flip " + (whole.length - 1) + " 01", opening);
  }

  private void cuts() {
    int[] lengths = {0, 1, 39, 40, 41, 79, 80, 81, 96, S - 1, S, S + 1, 2 * S - 16, 2 * S};
    for (int length : lengths) {
      cut(length);
    }
    for (int length : new int[] {3 * S - 1, 3 * S, 3 * S + 16}) {
      cut(length);
    }
    cut(whole.length - 16);
    cut(whole.length - 1);
    add("extended-by-one", "one byte too many", "append 00", "malformed at opening");
    add(
        "extended-by-a-tag",
        "sixteen zero bytes too many",
        "append " + "00".repeat(16),
        "malformed at opening");
  }

  private void cut(int length) {
    String name = String.format(Locale.ROOT, "cut-%06d", length);
    add(name, "cut to " + length + " bytes", "cut " + length, "truncated at opening");
  }

  private void moves() {
    add("swapped", "segments 1 and 2 change places", "swap 1 2", tampered(1));
    add("repeated", "segment 1 stands in place of segment 2 too", "copy 1 2", tampered(2));
  }

  /**
   * The last segment, as it is short, taken from a file of another part, sealing, edition or
   * series.
   */
  private void foreign() {
    var other = new PartHeader(PartKind.ASSET, ASSET, PLAIN, 16, 1, 2);
    foreign("another-part", sealed(other, KEY, 0x40));
    foreign("another-sealing", sealed(HEADER, KEY, 0x41));
    foreign("another-edition", sealed(HEADER, counted(0x50, 32), 0x44));
    var series = new PartHeader(PartKind.ASSET, AssetId.of(counted(0xc0, 16)), PLAIN, 16, 0, 2);
    foreign("another-series", sealed(series, counted(0x70, 32), 0x60));
  }

  private void foreign(String from, byte[] file) {
    String put = "put " + 3 * S + " " + HEX.formatHex(Arrays.copyOfRange(file, 3 * S, file.length));
    add("from-" + from, "the last segment is that of " + from, put, "tampered at opening");
    add(
        "file-of-" + from,
        "the first 80 bytes are those of " + from,
        "put 0 " + HEX.formatHex(Arrays.copyOf(file, 80)),
        "tampered at opening");
  }

  /** A buyer knows every key: the tag is right, the digest is not. */
  private void forged() throws IOException {
    for (int segment = 0; segment <= 3; segment++) {
      byte[] clear = clear();
      int at = (int) HEADER.layout().clearStart(segment) + 100;
      clear[at] ^= 1;
      byte[] forged = sealed(HEADER, KEY, 0x40, clear);
      int end = Math.min(forged.length, (segment + 1) * S);
      String edits =
          "flip "
              + (segment * S + HEADER.layout().leadBytes(segment) + 100)
              + " 01; put "
              + (end - 16)
              + " "
              + HEX.formatHex(Arrays.copyOfRange(forged, end - 16, end));
      add(
          "forged-" + segment,
          "segment " + segment + " sealed again with the right key",
          edits,
          segment == 3 ? "tampered at opening" : tampered(segment),
          "opens");
    }
  }

  private void headers() {
    String malformed = "malformed at opening";
    add("header-magic", "another magic", "flip 0 20", malformed);
    add("header-version-0", "version 0", "put 8 00", "unsupported at opening");
    add("header-version-2", "version 2", "put 8 02", "unsupported at opening");
    add("header-kind", "a kind that is not", "put 9 05", malformed);
    add("header-segment-15", "segments of 32 KiB", "put 10 0f", malformed);
    add("header-segment-21", "segments of 2 MiB", "put 10 15", malformed);
    add("header-segment-17", "segments of 128 KiB", "put 10 11", "tampered at opening");
    add("header-reserved", "reserved byte", "put 11 01", malformed);
    add("header-parts", "part 0 of 0", "put 14 0000", malformed);
    add("header-length", "clear length of 2^62", "put 32 4000000000000000", malformed);
    base(
        "wrong-key",
        "whole.part",
        "the right file with another key",
        Map.of(
            "key",
            HEX.formatHex(counted(0x11, 32)),
            "expect",
            "tampered at opening",
            "without digests",
            "tampered at opening"));
  }

  /** A writer that closed a full segment as not the last and then added an empty one. */
  private void emptyLast() throws IOException {
    var header = new PartHeader(PartKind.ASSET, ASSET, S - 96, 16, 0, 1);
    var longer = new PartHeader(PartKind.ASSET, ASSET, S - 95, 16, 0, 1);
    byte[] two = sealed(longer, KEY, 0x40);
    byte[] file = Arrays.copyOf(two, S + 16);
    System.arraycopy(header.toBytes(), 0, file, 0, 40);
    files.put("empty-last.part", file);
    String text = HEX.formatHex(header.toBytes());
    base(
        "empty-last",
        "empty-last.part",
        "an empty segment behind a full one",
        Map.of(
            "header",
            text,
            "digests",
            HEX.formatHex(list(file).toBytes()),
            "expect",
            "malformed at opening",
            "without digests",
            "malformed at opening"));
  }

  private void add(String name, String about, String edits, String expect) {
    add(name, about, edits, expect, expect);
  }

  private void add(String name, String about, String edits, String expect, String withoutDigests) {
    base(
        name,
        "whole.part",
        about,
        Map.of("edits", edits, "expect", expect, "without digests", withoutDigests));
  }

  private void base(String name, String base, String about, Map<String, String> changes) {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("about", about);
    fields.put("base", base);
    fields.put("edits", "none");
    fields.put("key", HEX.formatHex(KEY));
    fields.put("header", HEX.formatHex(HEADER.toBytes()));
    fields.put("digests", digests);
    fields.put("expect", "opens");
    fields.put("without digests", "opens");
    fields.put("released", "");
    fields.putAll(changes);
    fields.put("released", HEX.formatHex(Sha256.of(released(fields.get("expect")))));
    String text = new VectorFile(fields).text();
    files.put(name + ".txt", text.getBytes(UTF_8));
  }

  /** What reading in order gives out before the fault: whole segments only. */
  private static byte[] released(String expect) {
    if (expect.equals("opens")) {
      return clear();
    }
    if (expect.endsWith("opening")) {
      return new byte[0];
    }
    int segment = Integer.parseInt(expect.substring(expect.lastIndexOf(' ') + 1));
    return Arrays.copyOf(clear(), (int) HEADER.layout().clearStart(segment));
  }

  private static String tampered(int segment) {
    return "tampered at segment " + segment;
  }
}
