package org.lehrcase.desk.author;

import java.io.IOException;
import java.nio.file.Path;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Rendition;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.FileSource;
import org.lehrcase.desk.media.FastStart;
import org.lehrcase.desk.media.MediaException;

/**
 * One file of a lesson as it lies in the course folder.
 *
 * @param file the real file, any link already followed; always inside the course folder
 * @param place the path inside the course folder with forward slashes, for reports
 * @param role what the file is for
 * @param mediaType media type under which a browser is to receive it, without parameters
 * @param language BCP 47 tag of captions, empty if the name says none or the file has no language
 * @param rendition in which copies of the edition the file travels
 */
public record SourceAsset(
    Path file,
    String place,
    AssetRole role,
    String mediaType,
    String language,
    Rendition rendition) {

  /** Describes a file that belongs to every copy. */
  public SourceAsset(Path file, String place, AssetRole role, String mediaType, String language) {
    this(file, place, role, mediaType, language, Rendition.COMMON);
  }

  /**
   * Returns the same file as one of two forms.
   *
   * @param form in which copies it travels
   */
  public SourceAsset as(Rendition form) {
    return new SourceAsset(file, place, role, mediaType, language, form);
  }

  /**
   * Returns the name to show, fit for the contents: form C, no control characters, not too long.
   */
  public String name() {
    return FileNames.shown(place.substring(place.lastIndexOf('/') + 1));
  }

  /**
   * Opens the bytes to pack: of a film with its index in front, of anything else as they are. The
   * same file always gives the same bytes.
   *
   * @return the bytes; whoever opens them closes them
   * @throws IOException if the file is gone, unreadable, or a film too broken to be packed
   */
  public ByteSource open() throws IOException {
    var source = FileSource.open(file);
    if (role != AssetRole.VIDEO) {
      return source;
    }
    try {
      return FastStart.view(source);
    } catch (MediaException e) {
      if (e.kind() == MediaException.Kind.UNSUPPORTED) {
        return source;
      }
      source.close();
      throw new IOException(place + ": " + e.getMessage(), e);
    } catch (IOException e) {
      source.close();
      throw e;
    }
  }
}
