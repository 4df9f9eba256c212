package org.lehrcase.bench.picture;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.Optional;
import java.util.TreeMap;
import org.lehrcase.bench.picture.PictureHeader.Ink;
import org.lehrcase.bench.picture.PictureHeader.Kind;

/**
 * Walks the segments of a JPEG up to its first frame (ITU-T T.81, annex B): size, Exif turn, colour
 * profile (ICC.1, annex B.4), and Adobe's word on how the numbers are meant.
 */
final class JpegHeader {
  private static final int EXIF = 0xe1;
  private static final int PROFILE = 0xe2;
  private static final int ADOBE = 0xee;
  private static final int JFIF = 0xe0;
  private static final int SCAN = 0xda;
  private static final int END = 0xd9;
  private static final int MOST_PROFILE_BYTES = 4 << 20;
  private static final String ICC = "ICC_PROFILE\0";

  private final byte[] file;
  private final TreeMap<Integer, byte[]> profile = new TreeMap<>();
  private int turn = 1;
  private int adobe = -1;
  private boolean jfif;

  JpegHeader(byte[] file) {
    this.file = file;
  }

  PictureHeader read() throws PictureRefusal {
    int place = 2;
    PictureHeader frame = null;
    while (place + 4 <= file.length) {
      if (HeaderReader.at(file, place) != 0xff) {
        throw HeaderReader.damaged("its segments do not follow each other");
      }
      int marker = HeaderReader.at(file, place + 1);
      if (marker == 0xff || marker == 0x01) {
        place += marker == 0xff ? 1 : 2;
        continue;
      }
      if (marker == SCAN || marker == END) {
        break;
      }
      int length = HeaderReader.two(file, place + 2);
      if (length < 2 || place + 2 + length > file.length) {
        throw HeaderReader.damaged("it ends before its first line");
      }
      if (isFrame(marker)) {
        frame = frame(place + 4, length - 2);
      } else {
        take(marker, place + 4, length - 2);
      }
      place += 2 + length;
    }
    if (frame == null) {
      throw HeaderReader.damaged("it has no size");
    }
    return new PictureHeader(
        frame.kind(), frame.width(), frame.height(), turn, ink(frame.ink()), joined());
  }

  /** C0 to CF start a frame, without C4, C8 and CC, which are tables. */
  private static boolean isFrame(int marker) {
    return marker >= 0xc0 && marker <= 0xcf && marker != 0xc4 && marker != 0xc8 && marker != 0xcc;
  }

  private PictureHeader frame(int place, int length) throws PictureRefusal {
    if (length < 6) {
      throw HeaderReader.damaged("its frame is cut off");
    }
    int components = HeaderReader.at(file, place + 5);
    int height = HeaderReader.two(file, place + 1);
    int width = HeaderReader.two(file, place + 3);
    PictureLimits.check(width, height);
    Ink ink =
        switch (components) {
          case 1 -> Ink.GRAY;
          case 3 -> letters(place + 6, length) ? Ink.RGB : Ink.YCC;
          case 4 -> Ink.CMYK;
          default -> throw HeaderReader.damaged("it has " + components + " colours");
        };
    return new PictureHeader(Kind.JPEG, width, height, 1, ink, Optional.empty());
  }

  /** Says whether the components call themselves R, G and B. */
  private boolean letters(int place, int length) {
    return length >= 15
        && HeaderReader.at(file, place) == 'R'
        && HeaderReader.at(file, place + 3) == 'G'
        && HeaderReader.at(file, place + 6) == 'B';
  }

  private Ink ink(Ink byFrame) {
    return switch (byFrame) {
      case RGB, YCC -> jfif ? Ink.YCC : adobe == 0 ? Ink.RGB : adobe == 1 ? Ink.YCC : byFrame;
      case CMYK -> adobe == 2 ? Ink.YCCK : Ink.CMYK;
      default -> byFrame;
    };
  }

  private void take(int marker, int place, int length) {
    if (marker == JFIF && HeaderReader.starts(file, place, "JFIF\0")) {
      jfif = true;
    } else if (marker == ADOBE && length >= 12 && HeaderReader.starts(file, place, "Adobe")) {
      adobe = HeaderReader.at(file, place + 11);
    } else if (marker == EXIF && HeaderReader.starts(file, place, "Exif\0\0")) {
      turn = ExifTurn.of(file, place + 6, length - 6);
    } else if (marker == PROFILE && length > 14 && HeaderReader.starts(file, place, ICC)) {
      byte[] piece = Arrays.copyOfRange(file, place + 14, place + length);
      profile.putIfAbsent(HeaderReader.at(file, place + 12), piece);
    }
  }

  private Optional<byte[]> joined() {
    var all = new ByteArrayOutputStream();
    for (byte[] piece : profile.values()) {
      all.write(piece, 0, piece.length);
    }
    boolean usable = all.size() > 128 && all.size() <= MOST_PROFILE_BYTES;
    return usable ? Optional.of(all.toByteArray()) : Optional.empty();
  }

  /** Says whether Adobe's segment is there: its CMYK numbers count light, not ink. */
  static boolean isAdobe(byte[] file) {
    int end = Math.min(file.length - 5, 1 << 20);
    for (int i = 2; i + 4 < end; ) {
      if (HeaderReader.at(file, i) != 0xff || HeaderReader.at(file, i + 1) == SCAN) {
        return false;
      }
      if (HeaderReader.at(file, i + 1) == ADOBE && HeaderReader.starts(file, i + 4, "Adobe")) {
        return true;
      }
      i += 2 + Math.max(2, HeaderReader.two(file, i + 2));
    }
    return false;
  }
}
