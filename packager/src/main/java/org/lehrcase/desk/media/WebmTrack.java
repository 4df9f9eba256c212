package org.lehrcase.desk.media;

import java.util.List;
import java.util.Locale;

/** One track entry of a WebM or Matroska film (RFC 9559, 5.1.4.1). */
final class WebmTrack {
  private static final long TRACK_TYPE = 0x83L;
  private static final long CODEC_ID = 0x86L;
  private static final long CODEC_PRIVATE = 0x63a2L;
  private static final long DEFAULT_DURATION_NANOS = 0x23e383L;
  private static final long VIDEO = 0xe0L;
  private static final long PIXEL_WIDTH = 0xb0L;
  private static final long PIXEL_HEIGHT = 0xbaL;
  private static final long FLAG_INTERLACED = 0x9aL;
  private static final long AUDIO = 0xe1L;
  private static final long SAMPLING_FREQUENCY = 0xb5L;
  private static final int MAX_PIXELS_ACROSS = 1 << 16;

  private final List<EbmlElement> entry;

  WebmTrack(List<EbmlElement> entry) {
    this.entry = entry;
  }

  Track track() throws MediaException {
    var type = EbmlElement.number(entry, TRACK_TYPE, 0);
    if (type == 1) {
      return picture();
    }
    return type == 2 ? sound() : new Track.Other(EbmlElement.text(entry, CODEC_ID));
  }

  private Track picture() throws MediaException {
    var video = inside(VIDEO);
    var width = pixels(EbmlElement.number(video, PIXEL_WIDTH, 0));
    var height = pixels(EbmlElement.number(video, PIXEL_HEIGHT, 0));
    var nanos = EbmlElement.number(entry, DEFAULT_DURATION_NANOS, 0);
    var rate = nanos <= 0 ? 0 : 1e9 / nanos;
    var woven = EbmlElement.number(video, FLAG_INTERLACED, 0) == 1;
    var format = new PictureFormat(width, height, 0, Chroma.UNKNOWN, woven);
    var id = EbmlElement.text(entry, CODEC_ID);
    var config = EbmlElement.find(entry, CODEC_PRIVATE);
    if (config.isEmpty() || config.get().body().size() == 0) {
      return new Track.Picture(plainName(id), format, rate, 0);
    }
    var found = configured(id, config.get().body(), format, rate);
    return new Track.Picture(
        found.codec(), found.format().orInterlaced(woven), found.framesPerSecond(), 0);
  }

  private static Track.Picture configured(String id, Slice record, PictureFormat plain, double rate)
      throws MediaException {
    var width = plain.width();
    var height = plain.height();
    return switch (id) {
      case "V_VP9" -> vp9(record, plain, rate);
      case "V_AV1" ->
          new Track.Picture(
              OpenCodecConfig.av1(record),
              OpenCodecConfig.av1Format(record, width, height),
              rate,
              0);
      case "V_MPEG4/ISO/AVC" -> {
        var avc = new AvcConfig(record);
        yield new Track.Picture(avc.codec("avc1"), avc.format(width, height), rate, 0);
      }
      case "V_MPEGH/ISO/HEVC" -> {
        var hevc = new HevcConfig(record);
        yield new Track.Picture(hevc.codec("hvc1"), hevc.format(width, height), rate, 0);
      }
      default -> new Track.Picture(plainName(id), plain, rate, 0);
    };
  }

  /** Reads the features of VP9 in WebM: an id, a length that is always 1, a value. */
  private static Track.Picture vp9(Slice features, PictureFormat plain, double rate)
      throws MediaException {
    var values = new int[] {0, 0, 10, 8, 1}; // profile, level, bit depth, chroma by feature id
    for (var at = 0; at + 2 < features.size(); at += 3) {
      var id = features.u8(at);
      if (id >= 1 && id <= 4) {
        values[id] = features.u8(at + 2L);
      }
    }
    return new Track.Picture(
        OpenCodecConfig.vp9(values[1], values[2], values[3]),
        new PictureFormat(
            plain.width(), plain.height(), values[3], OpenCodecConfig.vp9Chroma(values[4])),
        rate,
        0);
  }

  private Track sound() throws MediaException {
    var audio = inside(AUDIO);
    var rate = (int) EbmlElement.real(audio, SAMPLING_FREQUENCY);
    return new Track.Sound(soundName(), rate, 0);
  }

  private String soundName() throws MediaException {
    var id = EbmlElement.text(entry, CODEC_ID);
    var config = EbmlElement.find(entry, CODEC_PRIVATE);
    if (id.equals("A_AAC") && config.isPresent() && config.get().body().size() > 1) {
      return "mp4a.40." + SoundConfig.audioObjectType(config.get().body());
    }
    return plainName(id);
  }

  private List<EbmlElement> inside(long id) throws MediaException {
    var found = EbmlElement.find(entry, id);
    return found.isEmpty() ? List.of() : EbmlElement.split(found.get().body());
  }

  private static int pixels(long value) throws MediaException {
    if (value < 0 || value > MAX_PIXELS_ACROSS) {
      throw MediaException.broken("the frame is said to be " + value + " pixels across");
    }
    return (int) value;
  }

  /** The name a browser knows a codec by when no configuration says more. */
  private static String plainName(String id) {
    return switch (id) {
      case "V_VP8" -> "vp8";
      case "V_VP9" -> "vp9";
      case "V_AV1" -> "av01";
      case "A_OPUS" -> "opus";
      case "A_VORBIS" -> "vorbis";
      case "A_FLAC" -> "flac";
      case "A_AC3" -> "ac-3";
      case "A_EAC3" -> "ec-3";
      case "A_MPEG/L3" -> "mp3";
      default -> id.toLowerCase(Locale.ROOT);
    };
  }
}
