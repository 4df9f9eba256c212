package org.lehrcase.desk.media;

import java.util.Locale;

/**
 * Reads the decoder configurations of VP9 (the WebM project's {@code vpcC} and Matroska forms) and
 * of AV1 ({@code av1C}, AV1 ISO binding 2.3), which say the same in MP4 and in WebM.
 */
final class OpenCodecConfig {
  private OpenCodecConfig() {}

  /** Returns a name such as {@code vp09.00.10.08} from the body of a {@code vpcC} box. */
  static String vp9(Slice box) throws MediaException {
    return vp9(box.u8(4), box.u8(5), box.u8(6) >> 4);
  }

  static String vp9(int profile, int level, int bitDepth) {
    return String.format(Locale.ROOT, "vp09.%02d.%02d.%02d", profile, level, bitDepth);
  }

  static PictureFormat vp9Format(Slice box, int width, int height) throws MediaException {
    var chroma = box.u8(6) >> 1 & 7;
    return new PictureFormat(width, height, box.u8(6) >> 4, vp9Chroma(chroma));
  }

  /** Chroma as both forms number it: 0 and 1 differ only in where the colour samples sit. */
  static Chroma vp9Chroma(int value) {
    return switch (value) {
      case 0, 1 -> Chroma.HALF;
      case 2 -> Chroma.HALF_ACROSS;
      case 3 -> Chroma.FULL;
      default -> Chroma.UNKNOWN;
    };
  }

  /** Returns a name such as {@code av01.0.04M.08} from an {@code av1C} record. */
  static String av1(Slice record) throws MediaException {
    var tier = (record.u8(2) & 0x80) == 0 ? 'M' : 'H';
    return String.format(
        Locale.ROOT,
        "av01.%d.%02d%c.%02d",
        record.u8(1) >> 5,
        record.u8(1) & 0x1f,
        tier,
        av1Depth(record));
  }

  static PictureFormat av1Format(Slice record, int width, int height) throws MediaException {
    var flags = record.u8(2);
    var chroma = Chroma.FULL;
    if ((flags & 0x10) != 0) {
      chroma = Chroma.MONOCHROME;
    } else if ((flags & 0x08) != 0) {
      chroma = (flags & 0x04) != 0 ? Chroma.HALF : Chroma.HALF_ACROSS;
    }
    return new PictureFormat(width, height, av1Depth(record), chroma);
  }

  private static int av1Depth(Slice record) throws MediaException {
    var flags = record.u8(2);
    if ((flags & 0x40) == 0) {
      return 8;
    }
    return (flags & 0x20) == 0 ? 10 : 12;
  }
}
