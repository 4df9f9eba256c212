package org.lehrcase.desk.media;

import java.util.Set;

/**
 * Whether browsers play a stream, from what they are known to decode without extra software.
 *
 * @param verdict plays everywhere, in some browsers, or nowhere worth counting on
 * @param reason what stands in the way, empty if it plays
 */
public record BrowserSupport(Verdict verdict, String reason) {
  /** How far one can count on a stream being played. */
  public enum Verdict {
    /** Every browser since 2021. */
    EVERYWHERE,
    /** Some browsers, or only newer ones. */
    SOMEWHERE,
    /** None, or only with extra software. */
    NOWHERE
  }

  /** AAC and MP3, by the names that MP4 and WebM give them. */
  private static final Set<String> SOUND_EVERYWHERE =
      Set.of("mp4a.40.2", "mp4a.40.5", "mp4a.40.29", "mp4a.6b", "mp4a.69", "mp3");

  private static final Set<String> SOUND_IN_WEBM = Set.of("opus", "vorbis");
  private static final BrowserSupport PLAYS = new BrowserSupport(Verdict.EVERYWHERE, "");

  /**
   * Judges one stream.
   *
   * @param track the stream
   * @param container the box it comes in
   * @return the verdict
   */
  public static BrowserSupport of(Track track, Container container) {
    if (track instanceof Track.Picture picture) {
      return ofPicture(picture);
    }
    return track instanceof Track.Sound sound ? ofSound(sound, container) : PLAYS;
  }

  private static BrowserSupport ofPicture(Track.Picture picture) {
    var codec = picture.codec();
    var format = picture.format();
    if (startsWithAny(codec, "avc1", "avc3", "vp08", "vp8")) {
      return eightBit(format, Verdict.NOWHERE);
    }
    if (startsWithAny(codec, "vp09", "vp9")) {
      return eightBit(format, Verdict.SOMEWHERE);
    }
    if (codec.startsWith("av01")) {
      return somewhere("AV1 pictures need a newer browser");
    }
    if (startsWithAny(codec, "hvc1", "hev1", "dvh1", "dvhe")) {
      return nowhere("HEVC (H.265) pictures");
    }
    if (startsWithAny(codec, "encv")) {
      return nowhere("pictures locked by copy protection");
    }
    if (startsWithAny(codec, "ap")) {
      return nowhere("ProRes pictures, made for editing");
    }
    return nowhere("pictures coded as '" + codec + "'");
  }

  private static BrowserSupport eightBit(PictureFormat format, Verdict otherwise) {
    if (format.bitDepth() > 8) {
      return new BrowserSupport(otherwise, format.bitDepth() + "-bit pictures");
    }
    if (format.chroma() == Chroma.HALF_ACROSS || format.chroma() == Chroma.FULL) {
      return new BrowserSupport(otherwise, format.chroma().ratio() + " pictures");
    }
    return PLAYS;
  }

  private static BrowserSupport ofSound(Track.Sound sound, Container container) {
    var codec = sound.codec();
    if (SOUND_EVERYWHERE.contains(codec)
        || container == Container.WEBM && SOUND_IN_WEBM.contains(codec)) {
      return PLAYS;
    }
    return switch (codec) {
      case "ac-3" -> nowhere("AC-3 (Dolby Digital) sound");
      case "ec-3" -> nowhere("E-AC-3 (Dolby Digital Plus) sound");
      case "dtsc", "dtse", "dtsh", "a_dts" -> nowhere("DTS sound");
      case "alac" -> nowhere("Apple Lossless sound");
      case "sowt", "twos", "lpcm", "in24", "fl32", "ipcm" -> nowhere("uncompressed sound");
      case "Opus", "opus", "fLaC", "flac", "vorbis" ->
          somewhere(codec + " sound in " + container.title());
      default -> nowhere("sound coded as '" + codec + "'");
    };
  }

  private static boolean startsWithAny(String codec, String... starts) {
    for (var start : starts) {
      if (codec.startsWith(start)) {
        return true;
      }
    }
    return false;
  }

  private static BrowserSupport somewhere(String reason) {
    return new BrowserSupport(Verdict.SOMEWHERE, reason);
  }

  private static BrowserSupport nowhere(String reason) {
    return new BrowserSupport(Verdict.NOWHERE, reason);
  }
}
