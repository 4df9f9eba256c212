package org.lehrcase.bench.picture;

import java.io.ByteArrayOutputStream;
import java.util.Optional;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import org.lehrcase.bench.picture.PictureHeader.Ink;
import org.lehrcase.bench.picture.PictureHeader.Kind;

/**
 * Walks the chunks of a PNG up to its pixels: size, turn ({@code eXIf}), profile ({@code iCCP}).
 */
final class PngHeader {
  private static final int FIRST_CHUNK = 8;
  private static final int DEPTH = 24;
  private static final int MOST_PROFILE_BYTES = 4 << 20;

  private final byte[] file;

  PngHeader(byte[] file) {
    this.file = file;
  }

  PictureHeader read() throws PictureRefusal {
    if (file.length < 33 || !HeaderReader.starts(file, FIRST_CHUNK + 4, "IHDR")) {
      throw HeaderReader.damaged("it has no size");
    }
    long width = HeaderReader.four(file, FIRST_CHUNK + 8);
    long height = HeaderReader.four(file, FIRST_CHUNK + 12);
    PictureLimits.check(width, height);
    int turn = 1;
    Optional<byte[]> profile = Optional.empty();
    long place = FIRST_CHUNK;
    while (place + 12 <= file.length && !HeaderReader.starts(file, (int) place + 4, "IDAT")) {
      long length = HeaderReader.four(file, (int) place);
      if (place + 12 + length > file.length) {
        break;
      }
      if (HeaderReader.starts(file, (int) place + 4, "eXIf")) {
        turn = ExifTurn.of(file, (int) place + 8, (int) length);
      } else if (HeaderReader.starts(file, (int) place + 4, "iCCP")) {
        profile = profile((int) place + 8, (int) length);
      }
      place += 12 + length;
    }
    return new PictureHeader(Kind.PNG, (int) width, (int) height, turn, Ink.RGB, profile);
  }

  /** Returns how much memory a pixel takes while it is decoded; a palette is unfolded to four. */
  static int octetsPerPixel(byte[] file) {
    int octets = HeaderReader.at(file, DEPTH) > 8 ? 2 : 1;
    return switch (HeaderReader.at(file, DEPTH + 1)) {
      case 0 -> 2 * octets;
      case 2 -> 3 * octets;
      case 4 -> 2 * octets;
      case 6 -> 4 * octets;
      default -> 5;
    };
  }

  /** A name, an octet 0, the method 0, then the profile, deflated. */
  private Optional<byte[]> profile(int place, int length) {
    int end = place + length;
    int name = place;
    while (name < end && file[name] != 0) {
      name++;
    }
    if (name + 2 >= end) {
      return Optional.empty();
    }
    return inflated(name + 2, end - name - 2);
  }

  private Optional<byte[]> inflated(int place, int length) {
    var inflater = new Inflater();
    var out = new ByteArrayOutputStream();
    byte[] buffer = new byte[8192];
    try {
      inflater.setInput(file, place, length);
      int count = inflater.inflate(buffer);
      while (count > 0 && out.size() <= MOST_PROFILE_BYTES) {
        out.write(buffer, 0, count);
        count = inflater.inflate(buffer);
      }
    } catch (DataFormatException e) {
      return Optional.empty(); // a picture without a profile is read as sRGB
    } finally {
      inflater.end();
    }
    boolean usable = out.size() > 128 && out.size() <= MOST_PROFILE_BYTES;
    return usable ? Optional.of(out.toByteArray()) : Optional.empty();
  }
}
