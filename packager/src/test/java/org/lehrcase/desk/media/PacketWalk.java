package org.lehrcase.desk.media;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;

/**
 * Cuts an MP4 into its coded packets by its own tables, the slow and plain way, so that what the
 * index points at can be compared with what another reader sees.
 */
final class PacketWalk {
  private final byte[] film;
  private final List<String> packets = new ArrayList<>();

  private PacketWalk(byte[] film) {
    this.film = film;
  }

  /** Returns "stream,bytes,hash" for every packet, streams one after the other. */
  static List<String> packets(byte[] film) throws MediaException, NoSuchAlgorithmException {
    var walk = new PacketWalk(film);
    var top = Box.split(Slice.of(film));
    var moov = top.stream().filter(b -> b.type().equals("moov")).findFirst().orElseThrow();
    var stream = 0;
    for (var box : moov.children()) {
      if (box.type().equals("trak")) {
        walk.track(stream++, box.need("mdia", "minf", "stbl"));
      }
    }
    return walk.packets;
  }

  private void track(int stream, Box stbl) throws MediaException, NoSuchAlgorithmException {
    var sizes = stbl.need("stsz").body();
    var runs = stbl.need("stsc").body();
    var offsets = offsets(stbl);
    var sample = 0;
    var run = 0;
    for (var chunk = 0; chunk < offsets.length; chunk++) {
      while (run + 1 < runs.u32(4) && runs.u32(8 + 12L * (run + 1)) <= chunk + 1) {
        run++;
      }
      var at = offsets[chunk];
      for (var i = 0; i < runs.u32(8 + 12L * run + 4); i++) {
        var same = (int) sizes.u32(4);
        var size = same != 0 ? same : (int) sizes.u32(12 + 4L * sample);
        packets.add(stream + "," + size + "," + hash((int) at, size));
        at += size;
        sample++;
      }
    }
  }

  private static long[] offsets(Box stbl) throws MediaException {
    var shortTable = stbl.find("stco");
    var table = shortTable.isPresent() ? shortTable.get().body() : stbl.need("co64").body();
    var offsets = new long[(int) table.u32(4)];
    for (var i = 0; i < offsets.length; i++) {
      offsets[i] = shortTable.isPresent() ? table.u32(8 + 4L * i) : table.u64(8 + 8L * i);
    }
    return offsets;
  }

  private String hash(int from, int size) throws NoSuchAlgorithmException {
    var digest = MessageDigest.getInstance("SHA-256");
    digest.update(ByteBuffer.wrap(film, from, size));
    return HexFormat.of().formatHex(digest.digest());
  }
}
