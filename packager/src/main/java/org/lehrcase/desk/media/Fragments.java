package org.lehrcase.desk.media;

import java.io.IOException;
import java.util.List;
import org.lehrcase.core.seal.ByteSource;

/** Finds out how long a fragmented film is from its last fragment (ISO/IEC 14496-12, 8.8). */
final class Fragments {
  private static final int MAX_FRAGMENT_INDEX_BYTES = 4 << 20;

  private final Movie movie;

  Fragments(Movie movie) {
    this.movie = movie;
  }

  /** Returns the end of the last fragment in milliseconds, 0 if it does not say. */
  long durationMillis(ByteSource source, List<MovieTrack> tracks)
      throws IOException, MediaException {
    var fragments = movie.boxes().stream().filter(b -> b.type().equals("moof")).toList();
    if (fragments.isEmpty()) {
      return 0;
    }
    var last = fragments.get(fragments.size() - 1);
    if (last.sizeBytes() > MAX_FRAGMENT_INDEX_BYTES) {
      return 0;
    }
    var bytes = SourceBytes.read(source, last.start(), (int) last.sizeBytes());
    var longest = 0L;
    for (var box : Box.split(bytes.from(last.headerBytes()))) {
      if (box.type().equals("traf")) {
        longest = Math.max(longest, endMillis(box, tracks));
      }
    }
    return longest;
  }

  private long endMillis(Box traf, List<MovieTrack> tracks) throws MediaException {
    var tfhd = traf.need("tfhd");
    var id = tfhd.body().u32(4);
    var track = tracks.stream().filter(t -> t.id() == id).findFirst();
    var start = traf.find("tfdt");
    if (track.isEmpty() || start.isEmpty()) {
      return 0;
    }
    var wide = start.get().version() == 1;
    var ticks = wide ? start.get().body().u64(4) : start.get().body().u32(4);
    for (var box : traf.children()) {
      if (box.type().equals("trun")) {
        ticks += runTicks(box, defaultTicks(tfhd, id));
      }
    }
    return MovieTrack.millis(Math.max(0, ticks), track.get().ticksPerSecond());
  }

  /** The length of a sample that does not say its own: from the fragment, else from the index. */
  private long defaultTicks(Box tfhd, long trackId) throws MediaException {
    var flags = tfhd.flags();
    if ((flags & 0x08) != 0) {
      return tfhd.body().u32(8 + ((flags & 0x01) != 0 ? 8 : 0) + ((flags & 0x02) != 0 ? 4 : 0));
    }
    for (var trex : movie.moov().need("mvex").children()) {
      if (trex.type().equals("trex") && trex.body().u32(4) == trackId) {
        return trex.body().u32(12);
      }
    }
    return 0;
  }

  private static long runTicks(Box trun, long defaultTicks) throws MediaException {
    var flags = trun.flags();
    var count = trun.body().u32(4);
    if ((flags & 0x100) == 0) {
      return count * defaultTicks;
    }
    var first = 8L + ((flags & 0x01) != 0 ? 4 : 0) + ((flags & 0x04) != 0 ? 4 : 0);
    var stride = 4L * Integer.bitCount(flags & 0xf00);
    var ticks = 0L;
    for (var i = 0L; i < count; i++) {
      ticks += trun.body().u32(first + i * stride);
    }
    return ticks;
  }
}
