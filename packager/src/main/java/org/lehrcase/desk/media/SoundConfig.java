package org.lehrcase.desk.media;

import java.util.Locale;

/** Reads the elementary stream descriptor of MPEG sound (ISO/IEC 14496-1, 7.2.6). */
final class SoundConfig {
  private static final int MPEG4_AUDIO = 0x40;
  private static final int TAG_STREAM = 3;
  private static final int TAG_DECODER = 4;
  private static final int TAG_SPECIFIC = 5;

  private SoundConfig() {}

  /**
   * Returns a name such as {@code mp4a.40.2}.
   *
   * @param box body of the {@code esds} box
   */
  static String codec(Slice box) throws MediaException {
    var stream = descriptor(box.from(4), TAG_STREAM);
    var flags = stream.u8(2);
    var skip = 3L;
    skip += (flags & 0x80) != 0 ? 2 : 0;
    skip += (flags & 0x40) != 0 ? 1 + stream.u8(skip) : 0;
    skip += (flags & 0x20) != 0 ? 2 : 0;
    var decoder = descriptor(stream.from(skip), TAG_DECODER);
    var objectType = decoder.u8(0);
    if (objectType != MPEG4_AUDIO) {
      return String.format(Locale.ROOT, "mp4a.%02x", objectType);
    }
    return "mp4a.40." + audioObjectType(descriptor(decoder.from(13), TAG_SPECIFIC));
  }

  /** Reads the audio object type (ISO/IEC 14496-3, 1.6.2.1). */
  static int audioObjectType(Slice specific) throws MediaException {
    var bits = new BitReader(specific);
    var type = bits.bits(5);
    return type == 31 ? 32 + bits.bits(6) : type;
  }

  /** Opens one descriptor: a tag, a length in groups of seven bits, then the body. */
  private static Slice descriptor(Slice at, int tag) throws MediaException {
    if (at.u8(0) != tag) {
      throw MediaException.broken("the description of the sound makes no sense");
    }
    var length = 0;
    for (var i = 1; i <= 4; i++) {
      var part = at.u8(i);
      length = length << 7 | part & 0x7f;
      if ((part & 0x80) == 0) {
        return at.slice(i + 1L, Math.min(length, at.size() - i - 1));
      }
    }
    throw MediaException.broken("the description of the sound has no end");
  }
}
