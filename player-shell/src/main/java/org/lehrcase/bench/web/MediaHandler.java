package org.lehrcase.bench.web;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.lehrcase.bench.courses.CourseFile;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;

/**
 * Answers GET and HEAD for files of a course, whole or one range of them, with the conditional
 * fields of RFC 9110 section 13. Several ranges at once are answered with the whole, which the
 * standard allows and no browser asks of media.
 */
final class MediaHandler {
  private final MediaFinder finder;
  private final SegmentBuffers buffers = new SegmentBuffers();

  MediaHandler(MediaFinder finder) {
    this.finder = finder;
  }

  /** The edition and the file that an address names. */
  record Name(EditionId edition, AssetId asset) {
    /** Reads the last two steps of an address. */
    static Name of(String editionAndAsset) throws Trouble {
      String[] ids = editionAndAsset.split("/", -1);
      if (ids.length != 2 || !isHex(ids[0], EditionId.BYTES) || !isHex(ids[1], AssetId.BYTES)) {
        throw new Trouble(
            TroubleCode.NOT_FOUND, "There is no such file.", "Go back to My courses.");
      }
      return new Name(EditionId.ofHex(ids[0]), AssetId.ofHex(ids[1]));
    }
  }

  /** Returns the file if it is open and its medium is fast, so that no thread has to wait. */
  Optional<CourseFile> atOnce(Name name) {
    return finder.ifOpen(name.edition(), name.asset()).filter(file -> !file.pace().isSlow());
  }

  CourseFile find(Name name) throws Trouble, VaultException, IOException {
    return finder.find(name.edition(), name.asset());
  }

  static boolean isHex(String text, int bytes) {
    return text.length() == 2 * bytes && EntityTag.isHex(text);
  }

  void answer(CourseFile file, Request request, Response response, Callback callback)
      throws IOException, VaultException {
    HttpFields asked = request.getHeaders();
    EntityTag tag = new EntityTag(file.contentTag());
    HttpFields.Mutable headers = response.getHeaders();
    headers.put("Content-Security-Policy", SecurityHeaders.COURSE_POLICY);
    headers.put(HttpHeader.ETAG, tag.field());
    headers.put(HttpHeader.ACCEPT_RANGES, "bytes");
    List<String> ifMatch = values(asked, HttpHeader.IF_MATCH);
    if (!ifMatch.isEmpty() && !tag.matchesStrongly(ifMatch)) {
      Replies.empty(response, callback, 412);
    } else if (tag.matchesWeakly(values(asked, HttpHeader.IF_NONE_MATCH))) {
      Replies.empty(response, callback, 304);
    } else {
      headers.put(HttpHeader.CONTENT_TYPE, file.mediaType());
      send(file, choice(request, tag, file.clear().sizeBytes()), request, response, callback);
    }
  }

  /** Range is defined for GET only, and only if If-Range, when present, names our tag. */
  private static RangeChoice choice(Request request, EntityTag tag, long size) {
    HttpFields asked = request.getHeaders();
    boolean applies =
        request.getMethod().equals("GET") && tag.allowsRange(values(asked, HttpHeader.IF_RANGE));
    return applies
        ? RangeChoice.of(values(asked, HttpHeader.RANGE), size)
        : new RangeChoice.Whole();
  }

  private void send(
      CourseFile file, RangeChoice choice, Request request, Response response, Callback callback)
      throws IOException, VaultException {
    long size = file.clear().sizeBytes();
    RangeChoice.Span span = new RangeChoice.Span(0, size);
    if (choice instanceof RangeChoice.Unsatisfiable) {
      response.getHeaders().put(HttpHeader.CONTENT_RANGE, "bytes */" + size);
      Replies.empty(response, callback, 416);
      return;
    }
    if (choice instanceof RangeChoice.Span part) {
      span = part;
      response.setStatus(206);
      response.getHeaders().put(HttpHeader.CONTENT_RANGE, part.contentRange(size));
    }
    response.getHeaders().put(HttpHeader.CONTENT_LENGTH, span.to() - span.from());
    if (request.getMethod().equals("HEAD") || span.from() == span.to()) {
      Replies.empty(response, callback, response.getStatus() == 0 ? 200 : response.getStatus());
      return;
    }
    ClearCopier copier = new ClearCopier(file, span, buffers, response, callback);
    copier.openFirst();
    copier.iterate();
  }

  private static List<String> values(HttpFields fields, HttpHeader name) {
    return fields.getValuesList(name);
  }
}
