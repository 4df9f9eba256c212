package org.lehrcase.desk.author;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.lehrcase.desk.media.MediaInfo;
import org.lehrcase.desk.media.Track;

/** Says which films are heavier than a garage laptop likes, and what that costs in stick size. */
final class HeavyFilms {
  /** Enough for a hand and a brush at 1080p30; above it old laptops and sticks begin to stutter. */
  static final long ENOUGH_BITS_PER_SECOND = 8_000_000;

  /** 30 frames a second, with room for what cameras call 30. */
  static final double ENOUGH_FRAMES_PER_SECOND = 30.5;

  private final List<Film> films;
  private final long courseBytes;
  private final List<Finding> findings;

  HeavyFilms(List<Film> films, long courseBytes, List<Finding> findings) {
    this.films = films;
    this.courseBytes = courseBytes;
    this.findings = findings;
  }

  void report() {
    var leanerBytes = courseBytes;
    for (var film : films) {
      leanerBytes -= film.info().sizeBytes() - leanBytes(film.info());
    }
    for (var film : films) {
      var reasons = reasons(film.info());
      if (!reasons.isEmpty()) {
        findings.add(
            Finding.doubt(
                film.asset().place(),
                "is heavy: " + String.join(", ", reasons) + consequence(film.info(), leanerBytes),
                "export it at no more than 1920 × 1080, 30 frames a second and 8 Mbit/s"));
      }
    }
  }

  private static List<String> reasons(MediaInfo info) {
    var reasons = new ArrayList<String>();
    if (info.picture().isPresent()) {
      Track.Picture picture = info.picture().get();
      var format = picture.format();
      if (format.largerThanFullHd()) {
        reasons.add(String.format(Locale.ROOT, "%d × %d pixels", format.width(), format.height()));
      }
      if (picture.framesPerSecond() > ENOUGH_FRAMES_PER_SECOND) {
        reasons.add(Amounts.format("%.0f frames a second", picture.framesPerSecond()));
      }
    }
    if (info.bitsPerSecond() > ENOUGH_BITS_PER_SECOND) {
      reasons.add(Amounts.bitRate(info.bitsPerSecond()));
    }
    return reasons;
  }

  private String consequence(MediaInfo info, long leanerBytes) {
    var now = "; it takes " + Amounts.bytes(info.sizeBytes());
    if (leanBytes(info) < info.sizeBytes()) {
      now += ", at 8 Mbit/s " + Amounts.bytes(leanBytes(info));
    }
    now += "; the course takes " + sized(courseBytes);
    return leanerBytes < courseBytes ? now + ", with lean films " + sized(leanerBytes) : now;
  }

  private static String sized(long bytes) {
    return Amounts.bytes(bytes) + " (" + StickSize.words(bytes) + ")";
  }

  /** What the film would take at most at eight megabits a second; never more than it does. */
  private static long leanBytes(MediaInfo info) {
    return info.durationMillis() == 0
        ? info.sizeBytes()
        : Math.min(
            info.sizeBytes(),
            Math.round(info.durationMillis() * (ENOUGH_BITS_PER_SECOND / 8000.0)));
  }
}
