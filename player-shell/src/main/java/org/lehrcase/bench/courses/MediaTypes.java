package org.lehrcase.bench.courses;

import java.util.Set;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.AssetRole;

/** Which media types of a course a browser is told; anything else is bytes. */
final class MediaTypes {
  private static final Set<String> ALLOWED =
      Set.of(
          "video/mp4",
          "video/webm",
          "video/quicktime",
          "application/pdf",
          "image/svg+xml",
          "image/png",
          "image/jpeg",
          "text/csv");

  private MediaTypes() {}

  static String of(Asset asset) {
    if (asset.role() == AssetRole.CAPTIONS) {
      return "text/vtt; charset=utf-8";
    }
    if (asset.mediaType().equals("text/markdown")) {
      return "text/plain; charset=utf-8";
    }
    return ALLOWED.contains(asset.mediaType()) ? asset.mediaType() : "application/octet-stream";
  }
}
