package org.lehrcase.desk.media;

/**
 * One {@code trak} box, read.
 *
 * @param id the number by which fragments name it
 * @param ticksPerSecond the track's time scale
 * @param ticks its length in those units, 0 if only fragments say
 * @param track what it holds
 */
record MovieTrack(long id, long ticksPerSecond, long ticks, Track track) {
  static MovieTrack of(Box trak) throws MediaException {
    var tkhd = trak.need("tkhd");
    var id = tkhd.body().u32(tkhd.version() == 1 ? 20 : 12);
    var mdhd = trak.need("mdia", "mdhd");
    var wide = mdhd.version() == 1;
    var scale = mdhd.body().u32(wide ? 20 : 12);
    var ticks = wide ? mdhd.body().u64(24) : mdhd.body().u32(16);
    if (scale == 0) {
      throw MediaException.broken("track " + id + " has no time scale");
    }
    return new MovieTrack(id, scale, ticks, track(trak, scale));
  }

  private static Track track(Box trak, long scale) throws MediaException {
    var handler = trak.need("mdia", "hdlr").body().fourcc(8);
    var stbl = trak.need("mdia", "minf", "stbl");
    var entry = SampleEntry.of(stbl.need("stsd"));
    return switch (handler) {
      case "vide" -> {
        var table = SampleTable.of(stbl);
        yield entry.picture(perSecond(table.samples(), table, scale), bitRate(table, scale));
      }
      case "soun" -> entry.sound(bitRate(SampleTable.of(stbl), scale));
      default -> new Track.Other(entry.type());
    };
  }

  private static long bitRate(SampleTable table, long scale) {
    return Math.round(perSecond(8.0 * table.bytes(), table, scale));
  }

  private static double perSecond(double amount, SampleTable table, long scale) {
    return table.ticks() == 0 ? 0 : amount * scale / table.ticks();
  }

  long millis() {
    return millis(ticks, ticksPerSecond);
  }

  /** Turns ticks into milliseconds, rounded; a nonsense length comes out as the largest number. */
  static long millis(long ticks, long ticksPerSecond) {
    return Math.round(ticks * 1000.0 / ticksPerSecond);
  }
}
