package org.lehrcase.desk.media;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.seal.ByteSource;

/**
 * An MP4 or QuickTime file, its boxes listed and its index read.
 *
 * @param container which of the two
 * @param boxes the boxes at the top of the file
 * @param moov the index
 */
record Movie(Container container, List<FileBox> boxes, Box moov) {
  /** Larger indexes are refused; 64 MiB describe some 200 hours. */
  static final int MAX_INDEX_BYTES = 64 << 20;

  private static final int MAX_TRACKS = 64;

  static Movie read(ByteSource source) throws IOException, MediaException {
    var boxes = FileBox.list(source);
    var indexes = boxes.stream().filter(b -> b.type().equals("moov")).toList();
    if (indexes.size() != 1) {
      throw MediaException.broken(
          indexes.isEmpty()
              ? "the film has no index; the recording was cut off before it was finished"
              : "the film has more than one index");
    }
    var index = indexes.get(0);
    if (index.sizeBytes() > MAX_INDEX_BYTES) {
      throw new MediaException(
          MediaException.Kind.TOO_LARGE,
          "the index takes " + index.sizeBytes() + " bytes, more than " + MAX_INDEX_BYTES);
    }
    var bytes = SourceBytes.read(source, index.start(), (int) index.sizeBytes());
    return new Movie(
        container(source, boxes), boxes, new Box("moov", bytes, bytes.from(index.headerBytes())));
  }

  private static Container container(ByteSource source, List<FileBox> boxes)
      throws IOException, MediaException {
    for (var box : boxes) {
      if (box.type().equals("ftyp") && box.sizeBytes() >= box.headerBytes() + 4) {
        var brand = SourceBytes.read(source, box.start() + box.headerBytes(), 4).fourcc(0);
        return brand.equals("qt  ") ? Container.QUICKTIME : Container.MP4;
      }
    }
    return Container.QUICKTIME;
  }

  IndexPlace indexPlace() throws MediaException {
    if (moov.find("mvex").isPresent()) {
      return IndexPlace.FRAGMENTS;
    }
    for (var box : boxes) {
      if (box.type().equals("mdat")) {
        return IndexPlace.END;
      }
      if (box.type().equals("moov")) {
        break;
      }
    }
    return IndexPlace.FRONT;
  }

  MediaInfo info(ByteSource source) throws IOException, MediaException {
    if (moov.find("cmov").isPresent()) {
      throw new MediaException(
          MediaException.Kind.UNSUPPORTED, "the index is compressed, which browsers cannot read");
    }
    var tracks = new ArrayList<MovieTrack>();
    for (var box : moov.children()) {
      if (box.type().equals("trak")) {
        tracks.add(MovieTrack.of(box));
      }
    }
    if (tracks.size() > MAX_TRACKS) {
      throw new MediaException(
          MediaException.Kind.TOO_LARGE, "more than " + MAX_TRACKS + " tracks in one film");
    }
    return new MediaInfo(
        container,
        source.sizeBytes(),
        durationMillis(source, tracks),
        indexPlace(),
        tracks.stream().map(MovieTrack::track).toList());
  }

  private long durationMillis(ByteSource source, List<MovieTrack> tracks)
      throws IOException, MediaException {
    var mvhd = moov.need("mvhd");
    var wide = mvhd.version() == 1;
    var scale = mvhd.body().u32(wide ? 20 : 12);
    var ticks = wide ? mvhd.body().u64(24) : mvhd.body().u32(16);
    if (scale == 0) {
      throw MediaException.broken("the film has no time scale");
    }
    if (ticks != 0 && ticks != 0xffffffffL) {
      return MovieTrack.millis(ticks, scale);
    }
    var longest = tracks.stream().mapToLong(MovieTrack::millis).max().orElse(0);
    return longest != 0 ? longest : new Fragments(this).durationMillis(source, tracks);
  }
}
