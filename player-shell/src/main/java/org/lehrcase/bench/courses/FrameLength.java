package org.lehrcase.bench.courses;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.lehrcase.bench.courses.MovieBoxes.Box;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.seal.ClearSource;

/**
 * How long one picture of a film stands: the most frequent step of the picture track's table of
 * times (ISO/IEC 14496-12, 8.6.1.2) over the track's time scale (8.4.2).
 */
public final class FrameLength {
  private static final int MAX_ENTRIES = 4096;
  private static final int ENTRY_BYTES = 8;
  private static final int TABLE_HEAD = 8;
  private static final int LEAST_MEDIA_HEAD = 24;
  private static final int LEAST_HANDLER = 12;
  private static final int MAX_TRACKS = 32;
  private static final double SHORTEST = 0.001;
  private static final double LONGEST = 10;

  private final MovieBoxes boxes;

  private FrameLength(MovieBoxes boxes) {
    this.boxes = boxes;
  }

  /**
   * Reads it from a film.
   *
   * @param film the clear film
   * @return seconds; empty if it is no such film or states nothing usable
   * @throws IOException if it cannot be read
   * @throws VaultException if what is read does not check out
   */
  public static OptionalDouble seconds(ClearSource film) throws IOException, VaultException {
    FrameLength length = new FrameLength(new MovieBoxes(film));
    @Nullable Box media = length.pictureTrack();
    double seconds = media == null ? 0 : length.ofTrack(media);
    return seconds >= SHORTEST && seconds <= LONGEST
        ? OptionalDouble.of(seconds)
        : OptionalDouble.empty();
  }

  private @Nullable Box pictureTrack() throws IOException, VaultException {
    @Nullable Box movie = boxes.find(boxes.whole(), "moov");
    if (movie == null) {
      return null;
    }
    @Nullable Box track = boxes.next("trak", movie.body(), movie.end());
    for (int tracks = 0; track != null && tracks < MAX_TRACKS; tracks++) {
      @Nullable Box media = boxes.find(track, "mdia");
      if (media != null && isPicture(media)) {
        return media;
      }
      track = boxes.next("trak", track.end(), movie.end());
    }
    return null;
  }

  private boolean isPicture(Box media) throws IOException, VaultException {
    @Nullable Box handler = boxes.find(media, "hdlr");
    if (handler == null || handler.bodyBytes() < LEAST_HANDLER) {
      return false;
    }
    byte[] head = boxes.read(handler.body(), LEAST_HANDLER).array();
    return new String(head, 8, 4, StandardCharsets.ISO_8859_1).equals("vide");
  }

  private double ofTrack(Box media) throws IOException, VaultException {
    @Nullable Box header = boxes.find(media, "mdhd");
    @Nullable Box table = boxes.find(media, "minf", "stbl", "stts");
    if (header == null
        || header.bodyBytes() < LEAST_MEDIA_HEAD
        || table == null
        || table.bodyBytes() < TABLE_HEAD) {
      return 0;
    }
    ByteBuffer head = boxes.read(header.body(), LEAST_MEDIA_HEAD);
    long scale = Integer.toUnsignedLong(head.getInt(head.get(0) == 1 ? 20 : 12));
    return scale == 0 ? 0 : (double) mostFrequentStep(table) / scale;
  }

  private long mostFrequentStep(Box table) throws IOException, VaultException {
    long stated = Integer.toUnsignedLong(boxes.read(table.body(), TABLE_HEAD).getInt(4));
    long room = (table.bodyBytes() - TABLE_HEAD) / ENTRY_BYTES;
    int entries = (int) Math.min(MAX_ENTRIES, Math.min(stated, room));
    ByteBuffer body = boxes.read(table.body() + TABLE_HEAD, entries * ENTRY_BYTES);
    Map<Long, Long> pictures = new HashMap<>();
    for (int i = 0; i < entries; i++) {
      long count = Integer.toUnsignedLong(body.getInt(i * ENTRY_BYTES));
      long step = Integer.toUnsignedLong(body.getInt(i * ENTRY_BYTES + 4));
      pictures.merge(step, count, Long::sum);
    }
    return pictures.entrySet().stream()
        .max(Map.Entry.comparingByValue())
        .map(Map.Entry::getKey)
        .orElse(0L);
  }
}
