package org.lehrcase.desk.media;

import java.util.Optional;

/**
 * The first entry of a sample description: how a track is coded (ISO/IEC 14496-12, 8.5.2 and the
 * QuickTime File Format for the older sound entries).
 */
final class SampleEntry {
  private static final int PICTURE_BYTES = 78;
  private static final int SOUND_BYTES = 28;

  private final Box entry;

  private SampleEntry(Box entry) {
    this.entry = entry;
  }

  static SampleEntry of(Box stsd) throws MediaException {
    var entries = Box.split(stsd.body().from(8));
    if (entries.isEmpty()) {
      throw MediaException.broken("a track does not say how it is coded");
    }
    return new SampleEntry(entries.get(0));
  }

  String type() {
    return entry.type().strip();
  }

  Track.Picture picture(double framesPerSecond, long bitsPerSecond) throws MediaException {
    var width = entry.body().u16(24);
    var height = entry.body().u16(26);
    var inside = entry.body().from(PICTURE_BYTES);
    var config = config(inside);
    var fields = hasTwoFields(inside);
    if (config.isEmpty()) {
      var plain = new PictureFormat(width, height, 0, Chroma.UNKNOWN, fields);
      return new Track.Picture(type(), plain, framesPerSecond, bitsPerSecond);
    }
    return new Track.Picture(
        codec(config.get()),
        format(config.get(), width, height).orInterlaced(fields),
        framesPerSecond,
        bitsPerSecond);
  }

  /** The field atom of the QuickTime File Format: how many fields a frame has. */
  private static boolean hasTwoFields(Slice inside) throws MediaException {
    for (var box : Box.split(inside)) {
      if (box.type().equals("fiel") && box.body().size() > 0) {
        return box.body().u8(0) == 2;
      }
    }
    return false;
  }

  private String codec(Box config) throws MediaException {
    return switch (config.type()) {
      case "avcC" -> new AvcConfig(config.body()).codec(type());
      case "hvcC" -> new HevcConfig(config.body()).codec(type());
      case "vpcC" -> OpenCodecConfig.vp9(config.body());
      default -> OpenCodecConfig.av1(config.body());
    };
  }

  private static PictureFormat format(Box config, int width, int height) throws MediaException {
    return switch (config.type()) {
      case "avcC" -> new AvcConfig(config.body()).format(width, height);
      case "hvcC" -> new HevcConfig(config.body()).format(width, height);
      case "vpcC" -> OpenCodecConfig.vp9Format(config.body(), width, height);
      default -> OpenCodecConfig.av1Format(config.body(), width, height);
    };
  }

  private Optional<Box> config(Slice inside) throws MediaException {
    var wanted =
        switch (type()) {
          case "avc1", "avc2", "avc3", "avc4" -> "avcC";
          case "hvc1", "hev1" -> "hvcC";
          case "vp09" -> "vpcC";
          case "av01" -> "av1C";
          default -> "";
        };
    if (wanted.isEmpty()) {
      return Optional.empty();
    }
    return Box.split(inside).stream().filter(b -> b.type().equals(wanted)).findFirst();
  }

  Track.Sound sound(long bitsPerSecond) throws MediaException {
    var body = entry.body();
    var version = body.u16(8);
    var codec = type();
    if (codec.equals("mp4a")) {
      codec = mpegSound(version).orElse(codec);
    }
    return new Track.Sound(codec, (int) (body.u32(24) >> 16), bitsPerSecond);
  }

  private Optional<String> mpegSound(int version) throws MediaException {
    var skip = SOUND_BYTES + (version == 1 ? 16 : version == 2 ? 36 : 0);
    for (var box : Box.split(entry.body().from(skip))) {
      if (box.type().equals("esds")) {
        return Optional.of(SoundConfig.codec(box.body()));
      }
      if (box.type().equals("wave")) {
        var inner = box.find("esds");
        if (inner.isPresent()) {
          return Optional.of(SoundConfig.codec(inner.get().body()));
        }
      }
    }
    return Optional.empty();
  }
}
