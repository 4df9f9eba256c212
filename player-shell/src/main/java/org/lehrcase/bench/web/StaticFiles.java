package org.lehrcase.bench.web;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The program's own pages and the few files of the PDF viewer, read from the program itself. Names
 * are plain (letters, digits, dot, hyphen, underscore) and types come from a list, so no name can
 * lead anywhere else. Safe for many threads.
 */
final class StaticFiles {
  static final String UI = "/ui/";
  private static final String VIEWER = "/META-INF/resources/webjars/pdfjs-dist/5.4.624/";
  private static final int MAX_FILE_BYTES = 4 << 20;
  private static final Pattern NAME =
      Pattern.compile("[a-zA-Z0-9_-][a-zA-Z0-9._-]*+(/[a-zA-Z0-9_-][a-zA-Z0-9._-]*+)*+");
  private static final Set<String> VIEWER_SCRIPTS = Set.of("pdf.min.mjs", "pdf.worker.min.mjs");
  private static final Pattern VIEWER_DATA =
      Pattern.compile(
          "(cmaps/[A-Za-z0-9-]+\\.bcmap|standard_fonts/[A-Za-z-]+\\.(pfb|ttf)"
              + "|wasm/[a-z0-9_]+\\.(wasm|js))");
  private static final Map<String, String> TYPES =
      Map.ofEntries(
          Map.entry("html", Replies.HTML),
          Map.entry("css", "text/css; charset=utf-8"),
          Map.entry("js", "text/javascript; charset=utf-8"),
          Map.entry("mjs", "text/javascript; charset=utf-8"),
          Map.entry("svg", "image/svg+xml"),
          Map.entry("png", "image/png"),
          Map.entry("ico", "image/x-icon"),
          Map.entry("mp4", "video/mp4"),
          Map.entry("woff2", "font/woff2"),
          Map.entry("ttf", "font/ttf"),
          Map.entry("json", "application/json"),
          Map.entry("txt", "text/plain; charset=utf-8"),
          Map.entry("wasm", "application/wasm"),
          Map.entry("pfb", "application/octet-stream"),
          Map.entry("bcmap", "application/octet-stream"));

  private final List<String> folders;

  /** Looks in the bench's own pages. */
  StaticFiles() {
    this(List.of(UI));
  }

  /** Looks in folders of the program, the first that has a file first. */
  StaticFiles(List<String> folders) {
    this.folders = List.copyOf(folders);
  }

  /** A file with its type. */
  record StaticFile(String mediaType, byte[] bytes) {
    @Override
    public boolean equals(@Nullable Object other) {
      return this == other;
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(this);
    }

    @Override
    public String toString() {
      return "StaticFile[" + mediaType + ", " + bytes.length + " bytes]";
    }
  }

  /**
   * Finds a page (of the first folder only) or a file beside it, for example {@code lesson.html} or
   * {@code js/store.js}.
   */
  Optional<StaticFile> page(String name) throws IOException {
    if (!NAME.matcher(name).matches()) {
      return Optional.empty();
    }
    for (String folder : folders) {
      boolean lent = !folder.equals(folders.get(0));
      Optional<StaticFile> found =
          lent && !name.contains("/") ? Optional.empty() : load(folder + name);
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  /** Finds a file of the PDF viewer; the scripts are the builds for older browsers. */
  Optional<StaticFile> viewer(String name) throws IOException {
    if (VIEWER_SCRIPTS.contains(name)) {
      return load(VIEWER + "legacy/build/" + name);
    }
    return VIEWER_DATA.matcher(name).matches() ? load(VIEWER + name) : Optional.empty();
  }

  private static Optional<StaticFile> load(String resource) throws IOException {
    String type = TYPES.get(resource.substring(resource.lastIndexOf('.') + 1));
    if (type == null) {
      return Optional.empty();
    }
    try (@Nullable InputStream in = StaticFiles.class.getResourceAsStream(resource)) {
      return in == null
          ? Optional.empty()
          : Optional.of(new StaticFile(type, in.readNBytes(MAX_FILE_BYTES)));
    }
  }
}
