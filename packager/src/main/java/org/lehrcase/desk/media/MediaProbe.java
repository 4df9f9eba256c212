package org.lehrcase.desk.media;

import java.io.IOException;
import org.lehrcase.core.seal.ByteSource;

/** Reads what a film says about itself. The kind is recognised by content, never by name. */
public final class MediaProbe {
  private static final long EBML = 0x1a45dfa3L;

  private MediaProbe() {}

  /**
   * Reads the index of a film. Time and memory are bounded by the limits of this package, whatever
   * the file claims.
   *
   * @param source the whole file; stays open
   * @return what it says
   * @throws MediaException if the file is no film, is broken or is beyond a limit
   * @throws IOException if it cannot be read
   */
  public static MediaInfo probe(ByteSource source) throws IOException, MediaException {
    if (source.sizeBytes() < 12) {
      throw new MediaException(
          MediaException.Kind.UNKNOWN_FORMAT,
          "the file has only " + source.sizeBytes() + " bytes, too few for a film");
    }
    var head = SourceBytes.read(source, 0, 12);
    if (head.u32(0) == EBML) {
      return new WebmProbe(source).info();
    }
    if (!looksLikeBoxes(head)) {
      throw new MediaException(
          MediaException.Kind.UNKNOWN_FORMAT, "the file is neither MP4, QuickTime nor WebM");
    }
    return Movie.read(source).info(source);
  }

  /** Tells whether the first bytes are the start of an MP4 or QuickTime file. */
  static boolean looksLikeBoxes(Slice head) throws MediaException {
    return switch (head.fourcc(4)) {
      case "ftyp", "moov", "mdat", "free", "skip", "wide", "pnot" -> true;
      default -> false;
    };
  }
}
