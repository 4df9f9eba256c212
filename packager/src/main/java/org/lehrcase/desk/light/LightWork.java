package org.lehrcase.desk.light;

import java.nio.file.Path;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Rendition;
import org.lehrcase.desk.author.LightPairs;
import org.lehrcase.desk.author.SourceAsset;
import org.lehrcase.desk.media.MediaInfo;
import org.lehrcase.desk.media.Track;

/**
 * A film that is to have a light copy.
 *
 * @param film the film
 * @param info what it says about itself
 * @param kept where the finished copy lies, or will
 */
record LightWork(SourceAsset film, MediaInfo info, Path kept) {
  /**
   * What films have in common that take equally long for each second.
   *
   * @param pixels in a frame
   * @param framesPerSecond rounded
   */
  record Shape(long pixels, long framesPerSecond) {}

  /** Returns its length in seconds, 0 if it does not say. */
  double seconds() {
    return info.durationMillis() / 1000.0;
  }

  /** Returns the copy as a file of the same lesson. */
  SourceAsset light() {
    String place = LightPairs.lightName(film.place());
    return new SourceAsset(kept, place, AssetRole.VIDEO, "video/mp4", "", Rendition.LIGHT);
  }

  Shape shape() {
    return info.picture().map(LightWork::shape).orElse(new Shape(0, 0));
  }

  private static Shape shape(Track.Picture picture) {
    return new Shape(
        (long) picture.format().width() * picture.format().height(),
        Math.round(picture.framesPerSecond()));
  }
}
