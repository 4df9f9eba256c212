package org.lehrcase.desk.media;

import java.util.List;
import java.util.Optional;

/**
 * What a film says about itself.
 *
 * @param container the box it comes in
 * @param sizeBytes length of the file in bytes
 * @param durationMillis length of the film in milliseconds, 0 if the file does not say
 * @param index where the index stands
 * @param tracks the streams in the order of the file
 */
public record MediaInfo(
    Container container,
    long sizeBytes,
    long durationMillis,
    IndexPlace index,
    List<Track> tracks) {

  /** Copies the list. */
  public MediaInfo {
    tracks = List.copyOf(tracks);
  }

  /** Returns the first picture stream. */
  public Optional<Track.Picture> picture() {
    return tracks.stream()
        .filter(Track.Picture.class::isInstance)
        .map(Track.Picture.class::cast)
        .findFirst();
  }

  /** Returns the first sound stream. */
  public Optional<Track.Sound> sound() {
    return tracks.stream()
        .filter(Track.Sound.class::isInstance)
        .map(Track.Sound.class::cast)
        .findFirst();
  }

  /** Returns the mean of everything in the file, in bits per second; 0 if the length is unknown. */
  public long bitsPerSecond() {
    return durationMillis == 0 ? 0 : Math.round(sizeBytes * 8000.0 / durationMillis);
  }
}
