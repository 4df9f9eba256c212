package org.lehrcase.desk.media;

import java.io.ByteArrayOutputStream;
import java.util.Locale;
import java.util.Set;

/**
 * Reads the decoder configuration of H.264 (ISO/IEC 14496-15, 5.3.3.1 and ITU-T H.264, 7.3.2.1).
 */
final class AvcConfig {
  /** Profiles whose parameter set says chroma and bit depth; all others are 8 bit 4:2:0. */
  private static final Set<Integer> HIGH_PROFILES =
      Set.of(100, 110, 122, 244, 44, 83, 86, 118, 128, 138, 139, 134, 135);

  /** What stands before the first parameter set, its length included. */
  private static final int HEAD_BYTES = 8;

  private final Slice record;

  AvcConfig(Slice record) {
    this.record = record;
  }

  /** Returns the codec as RFC 6381, 3.3 writes it: profile, constraints and level in hex. */
  String codec(String sampleEntry) throws MediaException {
    return String.format(
        Locale.ROOT, "%s.%02x%02x%02x", sampleEntry, record.u8(1), record.u8(2), record.u8(3));
  }

  /** Returns bit depth, chroma and interlacing for frames of the given size. */
  PictureFormat format(int width, int height) throws MediaException {
    var profile = record.u8(1);
    boolean high = HIGH_PROFILES.contains(profile);
    if (!high && record.size() < HEAD_BYTES || (record.u8(5) & 0x1f) == 0) {
      return byProfile(profile, width, height);
    }
    var set = unescaped(record.slice(8, record.u16(6)));
    return new AvcParameterSet(set, high).format(width, height);
  }

  /** Without a parameter set in the index the profile only says what is allowed at most. */
  private static PictureFormat byProfile(int profile, int width, int height) {
    return switch (profile) {
      case 110 -> new PictureFormat(width, height, 10, Chroma.HALF);
      case 122 -> new PictureFormat(width, height, 10, Chroma.HALF_ACROSS);
      case 244 -> new PictureFormat(width, height, 10, Chroma.FULL);
      default -> new PictureFormat(width, height, 8, Chroma.HALF);
    };
  }

  /** Drops the bytes that keep start codes out of a parameter set (ITU-T H.264, 7.4.1.1). */
  private static Slice unescaped(Slice nal) throws MediaException {
    var out = new ByteArrayOutputStream(nal.size());
    var zeros = 0;
    for (var i = 0; i < nal.size(); i++) {
      var value = nal.u8(i);
      if (zeros >= 2 && value == 3) {
        zeros = 0;
        continue;
      }
      zeros = value == 0 ? zeros + 1 : 0;
      out.write(value);
    }
    return Slice.of(out.toByteArray());
  }
}
