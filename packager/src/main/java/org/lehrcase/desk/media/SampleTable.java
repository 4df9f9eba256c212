package org.lehrcase.desk.media;

/**
 * Adds up the tables of one track (ISO/IEC 14496-12, 8.6.1.2 and 8.7.3).
 *
 * @param samples number of frames or blocks of sound
 * @param ticks their length together, in units of the track's time scale
 * @param bytes their size together
 */
record SampleTable(long samples, long ticks, long bytes) {
  static SampleTable of(Box stbl) throws MediaException {
    var times = stbl.need("stts").body();
    var samples = 0L;
    var ticks = 0L;
    var entries = times.u32(4);
    for (var i = 0L; i < entries; i++) {
      var count = times.u32(8 + 8 * i);
      samples += count;
      ticks = addTicks(ticks, count, times.u32(12 + 8 * i));
    }
    return new SampleTable(samples, ticks, bytes(stbl));
  }

  private static long addTicks(long ticks, long count, long each) throws MediaException {
    try {
      return Math.addExact(ticks, Math.multiplyExact(count, each));
    } catch (ArithmeticException overflow) {
      throw MediaException.broken("the time table of a track adds up to more than any film");
    }
  }

  private static long bytes(Box stbl) throws MediaException {
    var found = stbl.find("stsz");
    if (found.isEmpty()) {
      return 0;
    }
    var sizes = found.get().body();
    var same = sizes.u32(4);
    var count = sizes.u32(8);
    if (same != 0) {
      return addTicks(0, count, same);
    }
    var sum = 0L;
    for (var i = 0L; i < count; i++) {
      sum += sizes.u32(12 + 4 * i);
    }
    return sum;
  }
}
