package org.lehrcase.desk.media;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.lehrcase.core.seal.ByteSource;

/** Reads the index of a WebM or Matroska film (RFC 9559): length, tracks, place of the cues. */
final class WebmProbe {
  private static final long SEGMENT = 0x18538067L;
  private static final long INFO = 0x1549a966L;
  private static final long TRACKS = 0x1654ae6bL;
  private static final long TRACK_ENTRY = 0xaeL;
  private static final long CLUSTER = 0x1f43b675L;
  private static final long CUES = 0x1c53bb6bL;
  private static final long DOC_TYPE = 0x4282L;
  private static final long TIMESTAMP_SCALE = 0x2ad7b1L;
  private static final long DURATION = 0x4489L;

  /** More elements than this in a film are refused: some 100 hours of two-second clusters. */
  private static final int MAX_ELEMENTS = 200_000;

  private static final int MAX_HEAD_BYTES = 4 << 20;

  private final ByteSource source;
  private final List<Track> tracks = new ArrayList<>();
  private long durationMillis;
  private IndexPlace index = IndexPlace.MISSING;

  WebmProbe(ByteSource source) {
    this.source = source;
  }

  MediaInfo info() throws IOException, MediaException {
    var first = head(0);
    var docType = EbmlElement.text(elements(0, first), DOC_TYPE);
    var at = first.headerBytes() + first.bodyBytes();
    var segment = head(at);
    if (segment.id() != SEGMENT) {
      throw MediaException.broken("the film has no segment after its head");
    }
    readSegment(at + segment.headerBytes(), end(at, segment));
    if (tracks.isEmpty()) {
      throw MediaException.broken("the film lists no pictures and no sound");
    }
    var container = docType.equals("webm") ? Container.WEBM : Container.MATROSKA;
    return new MediaInfo(container, source.sizeBytes(), durationMillis, index, tracks);
  }

  private void readSegment(long from, long to) throws IOException, MediaException {
    var at = from;
    var clusterSeen = false;
    for (var count = 0; at < to; count++) {
      if (count > MAX_ELEMENTS) {
        throw new MediaException(
            MediaException.Kind.TOO_LARGE, "more than " + MAX_ELEMENTS + " elements in the film");
      }
      var head = head(at);
      if (head.id() == CLUSTER) {
        clusterSeen = true;
      } else if (head.id() == CUES) {
        index = clusterSeen ? IndexPlace.END : IndexPlace.FRONT;
      } else if (head.id() == INFO) {
        readInfo(elements(at, head));
      } else if (head.id() == TRACKS) {
        readTracks(elements(at, head));
      }
      if (head.bodyBytes() == EbmlElement.Head.UNKNOWN_SIZE) {
        return; // a live recording: what follows can only be found by reading every frame
      }
      at = end(at, head);
    }
  }

  private void readInfo(List<EbmlElement> info) throws MediaException {
    var scaleNanos = EbmlElement.number(info, TIMESTAMP_SCALE, 1_000_000);
    durationMillis = Math.round(EbmlElement.real(info, DURATION) * scaleNanos / 1e6);
  }

  private void readTracks(List<EbmlElement> entries) throws MediaException {
    for (var entry : entries) {
      if (entry.id() == TRACK_ENTRY) {
        tracks.add(new WebmTrack(EbmlElement.split(entry.body())).track());
      }
    }
  }

  private EbmlElement.Head head(long at) throws IOException, MediaException {
    var count = (int) Math.max(0, Math.min(12, source.sizeBytes() - at));
    return EbmlElement.Head.of(SourceBytes.read(source, at, count));
  }

  /** The end of an element: of the file if the size is unknown; past the file is broken. */
  private long end(long at, EbmlElement.Head head) throws MediaException {
    var left = source.sizeBytes() - at - head.headerBytes();
    if (head.bodyBytes() > left) {
      throw MediaException.broken(
          String.format(
              Locale.ROOT,
              "the file ends at byte %d, but its part at byte %d needs more; the copy is incomplete",
              source.sizeBytes(),
              at));
    }
    return head.bodyBytes() == EbmlElement.Head.UNKNOWN_SIZE
        ? source.sizeBytes()
        : at + head.headerBytes() + head.bodyBytes();
  }

  private List<EbmlElement> elements(long at, EbmlElement.Head head)
      throws IOException, MediaException {
    if (head.bodyBytes() < 0 || head.bodyBytes() > MAX_HEAD_BYTES) {
      throw new MediaException(
          MediaException.Kind.TOO_LARGE, "the description of the film is larger than 4 MiB");
    }
    return EbmlElement.split(
        SourceBytes.read(source, at + head.headerBytes(), (int) head.bodyBytes()));
  }
}
