package org.lehrcase.desk.light;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.lehrcase.desk.media.MediaInfo;
import org.lehrcase.desk.media.PictureFormat;
import org.lehrcase.desk.media.Track;

/**
 * What a light copy is: H.264 pictures in MP4 of at most 1280 × 720 (standing: 720 × 1280), 30
 * frames a second and 2.5 Mbit/s, a key frame every two seconds, AAC sound, the index in front.
 * These numbers are what laptops of 2010 decode without help; common practice, no source.
 */
final class LightRecipe {
  /** Part of the name of a kept copy: a recipe that gives other bytes needs another number. */
  static final int VERSION = 1;

  private static final int LONG_SIDE = 1280;
  private static final int SHORT_SIDE = 720;
  private static final double MAX_FRAMES_PER_SECOND = 30.5;

  /** A film of the right size that is leaner than this is light already. */
  private static final long LEAN_BITS_PER_SECOND = 3_000_000;

  /** Frames that were filmed as two half pictures become whole; others pass as they are. */
  private static final String WHOLE_FRAMES = "yadif=mode=send_frame:deint=interlaced,";

  /** The shorter side is the one that must fit 720; smaller pictures stay as they are. */
  private static final String SCALE =
      "scale=w='min(iw,if(gte(iw,ih),1280,720))':h='min(ih,if(gte(iw,ih),720,1280))'"
          + ":force_original_aspect_ratio=decrease:force_divisible_by=2";

  private static final String READ =
      "-hide_banner -nostdin -nostats -loglevel error -y -protocol_whitelist file";
  private static final String KEEP = "-map 0:v:0 -map 0:a:0? -map_metadata -1 -map_chapters -1";
  private static final String PICTURE =
      "-c:v libx264 -profile:v high -level:v 3.1 -preset medium -crf 23 -maxrate 2300k"
          + " -bufsize 4600k -force_key_frames expr:gte(t,n_forced*2)";
  private static final String SOUND = "-c:a aac -b:a 96k -ac 2";
  private static final String BOX =
      "-movflags +faststart -fflags +bitexact -progress pipe:1 -f mp4";

  private LightRecipe() {}

  /**
   * A stretch of a film.
   *
   * @param fromSeconds where it begins
   * @param seconds how long it is
   */
  record Stretch(double fromSeconds, double seconds) {}

  /** Tells whether a film is larger than its light copy would be. */
  static boolean wants(MediaInfo film) {
    if (film.picture().isEmpty()) {
      return false;
    }
    Track.Picture picture = film.picture().get();
    PictureFormat format = picture.format();
    return Math.max(format.width(), format.height()) > LONG_SIDE
        || Math.min(format.width(), format.height()) > SHORT_SIDE
        || picture.framesPerSecond() > MAX_FRAMES_PER_SECOND
        || film.bitsPerSecond() > LEAN_BITS_PER_SECOND;
  }

  /**
   * Returns what the encoder is told. Each word is one argument; no shell reads them, and both
   * paths carry a prefix, so that no name is taken for an option or an address.
   *
   * @param film the film
   * @param info what it says about itself
   * @param target the new file
   * @param only the stretch to encode; empty for the whole film
   */
  static List<String> arguments(Path film, MediaInfo info, Path target, List<Stretch> only) {
    List<String> arguments = new ArrayList<>(List.of(READ.split(" ")));
    for (Stretch stretch : only) {
      arguments.addAll(List.of("-ss", number(stretch.fromSeconds())));
      arguments.addAll(List.of("-t", number(stretch.seconds())));
    }
    arguments.addAll(List.of("-i", "file:" + film.toAbsolutePath()));
    arguments.addAll(List.of(KEEP.split(" ")));
    arguments.addAll(List.of("-sn", "-dn", "-vf", filter(info)));
    arguments.addAll(List.of(PICTURE.split(" ")));
    arguments.addAll(List.of(SOUND.split(" ")));
    arguments.addAll(List.of(BOX.split(" ")));
    arguments.add("file:" + target.toAbsolutePath());
    return List.copyOf(arguments);
  }

  private static String filter(MediaInfo info) {
    double rate = info.picture().map(Track.Picture::framesPerSecond).orElse(0.0);
    double kept = keptRate(rate);
    return WHOLE_FRAMES + SCALE + (kept < rate ? ",fps=" + number(kept) : "") + ",format=yuv420p";
  }

  /** Every second, fourth … frame, until there are no more than 30 a second. */
  static double keptRate(double framesPerSecond) {
    double kept = framesPerSecond;
    while (kept > MAX_FRAMES_PER_SECOND) {
      kept /= 2;
    }
    return kept;
  }

  /** Says how to make a light copy by hand, for any editing program. */
  static String byHand() {
    return String.join(
        System.lineSeparator(),
        "A light copy can be exported by hand from any editing program:",
        "  container  MP4, index first (\"fast start\", \"web optimised\")",
        "  pictures   H.264, profile High or Main, level 3.1, 8 bit, 4:2:0, progressive",
        "  size       1280 x 720 (standing films 720 x 1280), shape kept",
        "  rate       as filmed, but no more than 30 frames a second, constant",
        "  bits       variable, 2 Mbit/s on average, 2.5 Mbit/s at most",
        "  key frames one every 2 seconds",
        "  sound      AAC-LC, stereo, 96 kbit/s, 44.1 or 48 kHz",
        "Lay it beside its film under the same name with the ending .light.mp4, such as",
        "brush.mp4 and brush.light.mp4; pack takes the two as one film in two forms.");
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.3f", value);
  }
}
