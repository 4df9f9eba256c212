package org.lehrcase.desk.media;

import java.io.IOException;
import java.util.List;
import org.lehrcase.core.seal.ByteSource;

/**
 * Shows an MP4 or QuickTime film as if its index had always stood in front.
 *
 * <p>Nothing is decoded, encoded or written: the view gives the file type box, a copy of the index
 * in memory in which every chunk offset is moved, and then the rest of the file as it is.
 */
public final class FastStart {
  private static final long LARGEST_SHORT_OFFSET = 0xffffffffL;

  private final Movie movie;
  private final long fileBytes;
  private final long insertAt;
  private final FileBox index;

  private FastStart(Movie movie, long fileBytes, FileBox index) {
    this.movie = movie;
    this.fileBytes = fileBytes;
    this.index = index;
    var first = movie.boxes().get(0);
    this.insertAt = first.type().equals("ftyp") ? first.end() : 0;
  }

  /**
   * Returns the film with its index in front. What already starts at once, and what is no MP4, is
   * given back as it is. The same file always gives the same bytes.
   *
   * @param source the whole file; the view takes it over and closes it
   * @return the source itself or a view of it, as safe for many threads as the source is
   * @throws MediaException if the file is broken or has an index that cannot be moved; the source
   *     stays open then
   * @throws IOException if the file cannot be read
   */
  public static ByteSource view(ByteSource source) throws IOException, MediaException {
    if (source.sizeBytes() < 12 || !MediaProbe.looksLikeBoxes(SourceBytes.read(source, 0, 12))) {
      return source;
    }
    var movie = Movie.read(source);
    if (movie.indexPlace() != IndexPlace.END) {
      return source;
    }
    refuseWhatCannotMove(movie.moov());
    var index =
        movie.boxes().stream().filter(b -> b.type().equals("moov")).findFirst().orElseThrow();
    return new FastStart(movie, source.sizeBytes(), index).spliced(source);
  }

  private static void refuseWhatCannotMove(Box moov) throws MediaException {
    if (moov.find("cmov").isPresent()) {
      throw new MediaException(
          MediaException.Kind.UNSUPPORTED, "the index is compressed and cannot be moved");
    }
    if (moov.find("meta", "iloc").isPresent()) {
      throw new MediaException(
          MediaException.Kind.UNSUPPORTED, "the index points at pictures outside and stays behind");
    }
  }

  private ByteSource spliced(ByteSource source) throws MediaException {
    var moved = moved(false);
    if (largestOffset(moved) > LARGEST_SHORT_OFFSET) {
      moved = moved(true);
    }
    return new SplicedSource(
        source,
        List.of(
            SplicedSource.Piece.ofFile(0, insertAt),
            SplicedSource.Piece.ofMemory(moved),
            SplicedSource.Piece.ofFile(insertAt, index.start() - insertAt),
            SplicedSource.Piece.ofFile(index.end(), fileBytes - index.end())));
  }

  /** An upper bound that is enough: no chunk starts behind the end of the file that results. */
  private long largestOffset(byte[] moved) {
    return fileBytes - index.sizeBytes() + moved.length;
  }

  private byte[] moved(boolean wide) throws MediaException {
    var rewrite = new IndexRewrite(movie.moov(), wide);
    var movedBytes = rewrite.apply(offset -> offset).length;
    return rewrite.apply(offset -> newPlace(offset, movedBytes));
  }

  private long newPlace(long offset, long movedBytes) throws MediaException {
    if (offset < insertAt || offset >= fileBytes) {
      throw MediaException.broken("the index points at byte " + offset + ", where no picture is");
    }
    if (offset < index.start()) {
      return offset + movedBytes;
    }
    if (offset < index.end()) {
      throw MediaException.broken("the index points into itself");
    }
    return offset + movedBytes - index.sizeBytes();
  }
}
