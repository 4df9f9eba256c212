package org.lehrcase.desk.media;

import java.util.Locale;

/** Reads the decoder configuration of HEVC (ISO/IEC 14496-15, 8.3.3.1). */
final class HevcConfig {
  private static final String[] PROFILE_SPACES = {"", "A", "B", "C"};

  private final Slice record;

  HevcConfig(Slice record) {
    this.record = record;
  }

  /**
   * Returns the codec as ISO/IEC 14496-15, annex E.3 writes it, such as {@code hvc1.2.4.L30.90}.
   */
  String codec(String sampleEntry) throws MediaException {
    var first = record.u8(1);
    var compatibility = Integer.reverse((int) record.u32(2));
    var codec = new StringBuilder(sampleEntry).append('.');
    codec.append(PROFILE_SPACES[first >> 6]).append(first & 0x1f).append('.');
    codec.append(Integer.toHexString(compatibility).toUpperCase(Locale.ROOT)).append('.');
    codec.append((first & 0x20) == 0 ? 'L' : 'H').append(record.u8(12));
    for (var i = 6; i <= lastConstraint(); i++) {
      codec.append('.').append(Integer.toHexString(record.u8(i)).toUpperCase(Locale.ROOT));
    }
    return codec.toString();
  }

  private int lastConstraint() throws MediaException {
    var last = 11;
    while (last >= 6 && record.u8(last) == 0) {
      last--;
    }
    return last;
  }

  /** Returns bit depth and chroma for frames of the given size. */
  PictureFormat format(int width, int height) throws MediaException {
    return new PictureFormat(
        width, height, 8 + (record.u8(17) & 7), Chroma.ofIdc(record.u8(16) & 3));
  }
}
