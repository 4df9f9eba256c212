package org.lehrcase.bench.picture;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Set;

/** Recognises a picture by its first octets, never by its name, and reads what it claims. */
final class HeaderReader {
  private static final Set<String> HEIC =
      Set.of("heic", "heix", "hevc", "heim", "heis", "mif1", "msf1");
  private static final int BRAND_AT = 8;

  private HeaderReader() {}

  static PictureHeader read(byte[] file) throws PictureRefusal {
    if (file.length > 2 && at(file, 0) == 0xff && at(file, 1) == 0xd8 && at(file, 2) == 0xff) {
      return new JpegHeader(file).read();
    }
    if (starts(file, 0, "\u0089PNG\r\n\u001a\n")) {
      return new PngHeader(file).read();
    }
    throw refusal(file);
  }

  private static PictureRefusal refusal(byte[] file) {
    if (file.length == 0) {
      return new PictureRefusal("This file is empty.", "Choose a JPEG or PNG picture.");
    }
    if (starts(file, 4, "ftyp") && HEIC.contains(text(file, BRAND_AT, 4))) {
      return new PictureRefusal(
          "This is a HEIC picture, which this browser cannot open.",
          "On the phone, share it as \"most compatible\" or mail it to yourself, which makes a JPEG."
              + " On a computer, open it in the picture viewer, choose Export or Save as, and take"
              + " JPEG.");
    }
    return new PictureRefusal(
        "This file is " + other(file) + ", whatever its name says; JPEG and PNG are opened.",
        "Open it in a picture program and save it as JPEG or PNG.");
  }

  private static String other(byte[] file) {
    if (starts(file, 0, "RIFF") && starts(file, BRAND_AT, "WEBP")) {
      return "a WebP picture";
    }
    if (starts(file, 4, "ftyp")) {
      return "a film, or a picture of another kind";
    }
    if (starts(file, 0, "GIF8")) {
      return "a GIF picture";
    }
    if (starts(file, 0, "II*\0") || starts(file, 0, "MM\0*")) {
      return "a TIFF or raw picture";
    }
    if (starts(file, 0, "%PDF")) {
      return "a PDF";
    }
    return "no picture";
  }

  static int at(byte[] file, int place) {
    return file[place] & 0xff;
  }

  static int two(byte[] file, int place) {
    return at(file, place) << 8 | at(file, place + 1);
  }

  static long four(byte[] file, int place) {
    return (long) two(file, place) << 16 | two(file, place + 2);
  }

  static boolean starts(byte[] file, int place, String magic) {
    return text(file, place, magic.length()).equals(magic);
  }

  private static String text(byte[] file, int place, int length) {
    if (place + length > file.length) {
      return "";
    }
    return new String(file, place, length, StandardCharsets.ISO_8859_1);
  }

  /** The refusal of a picture whose inside does not hold what its beginning promises. */
  static PictureRefusal damaged(String what) {
    return new PictureRefusal(
        String.format(Locale.ROOT, "This picture is damaged: %s.", what),
        "Copy it once more from where it came, or save it anew in a picture program.");
  }
}
