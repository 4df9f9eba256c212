package org.lehrcase.bench.web;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.Set;

/**
 * A picture without what cameras write beside it: place, time, owner, a second picture. Of Exif
 * only the orientation is kept, so that the picture still stands upright; pixels are not touched.
 *
 * <p>JPEG by ISO/IEC 10918-1, PNG by its specification (chunks), WebP by RFC 9649 (chunks).
 */
final class PlainPicture {
  private static final Set<String> PNG_KEPT =
      Set.of(
          "IHDR", "PLTE", "IDAT", "IEND", "tRNS", "gAMA", "cHRM", "sRGB", "iCCP", "sBIT", "pHYs");
  private static final Set<String> WEBP_DROPPED = Set.of("EXIF", "XMP ");
  private static final int PNG_HEAD = 8;
  private static final int PNG_AROUND = 12;
  private static final int RIFF_HEAD = 12;

  /** Exif and XMP of the extended header's flags. */
  private static final int WEBP_FLAGS = 0x0c;

  private PlainPicture() {}

  /**
   * Returns the picture alone.
   *
   * @param picture a file that {@link PictureType} knows
   * @return the same picture; empty if the file is damaged or cut short
   */
  static Optional<byte[]> of(byte[] picture) {
    try {
      return switch (PictureType.of(picture).orElse("")) {
        case "image/jpeg" -> PlainJpeg.of(picture);
        case "image/png" -> png(picture);
        case "image/webp" -> webp(picture);
        default -> Optional.empty();
      };
    } catch (IndexOutOfBoundsException e) {
      return Optional.empty(); // cut short, or a length that leads out of the file
    }
  }

  private static Optional<byte[]> png(byte[] picture) {
    var out = new ByteArrayOutputStream(picture.length);
    out.write(picture, 0, PNG_HEAD);
    var in = ByteBuffer.wrap(picture);
    int at = PNG_HEAD;
    while (true) {
      long size = in.getInt(at) & 0xffffffffL;
      String kind = new String(picture, at + 4, 4, StandardCharsets.ISO_8859_1);
      int whole = Math.toIntExact(Math.min(size + PNG_AROUND, Integer.MAX_VALUE));
      java.util.Objects.checkFromIndexSize(at, whole, picture.length);
      if (PNG_KEPT.contains(kind)) {
        out.write(picture, at, whole);
      }
      if (kind.equals("IEND")) {
        return Optional.of(out.toByteArray());
      }
      at += whole;
    }
  }

  private static Optional<byte[]> webp(byte[] picture) {
    var in = ByteBuffer.wrap(picture).order(ByteOrder.LITTLE_ENDIAN);
    long end = Math.min(picture.length, (in.getInt(4) & 0xffffffffL) + 8);
    var out = new ByteArrayOutputStream(picture.length);
    out.write(picture, 0, RIFF_HEAD);
    int at = RIFF_HEAD;
    while (at + 8 <= end) {
      String kind = new String(picture, at, 4, StandardCharsets.ISO_8859_1);
      long size = in.getInt(at + 4) & 0xffffffffL;
      int whole = Math.toIntExact(Math.min(8 + size + (size & 1), Integer.MAX_VALUE));
      java.util.Objects.checkFromIndexSize(
          at, Math.toIntExact(Math.min(8 + size, whole)), picture.length);
      if (!WEBP_DROPPED.contains(kind)) {
        out.write(picture, at, Math.min(whole, picture.length - at));
      }
      at += whole;
    }
    byte[] plain = out.toByteArray();
    ByteBuffer.wrap(plain).order(ByteOrder.LITTLE_ENDIAN).putInt(4, plain.length - 8);
    if (plain.length > RIFF_HEAD + 8 && plain[RIFF_HEAD + 3] == 'X') {
      plain[RIFF_HEAD + 8] &= (byte) ~WEBP_FLAGS;
    }
    return Optional.of(plain);
  }
}
