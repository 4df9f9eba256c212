package org.lehrcase.desk.author;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.lehrcase.core.course.AssetRole;

/**
 * What a file is by its name.
 *
 * @param role what it is for
 * @param mediaType media type under which a browser is to receive it
 */
record FileKind(AssetRole role, String mediaType) {
  private static final Pattern CAPTION_LANGUAGE =
      Pattern.compile(
          "\\.([a-z]{2,3}(?:-[a-z0-9]{2,8}){0,3})\\.(?:vtt|srt)$", Pattern.CASE_INSENSITIVE);

  /** The ending of a light copy of the film with the same stem. */
  static final String LIGHT_MP4 = ".light.mp4";

  /** Endings, the more telling ones first. */
  private static final List<Ending> ENDINGS =
      List.of(
          new Ending(".chapters.vtt", AssetRole.CHAPTERS, "text/vtt"),
          new Ending(".chapters.txt", AssetRole.CHAPTERS, "text/plain"),
          new Ending(".template.svg", AssetRole.TEMPLATE, "image/svg+xml"),
          new Ending(".template.pdf", AssetRole.TEMPLATE, "application/pdf"),
          new Ending(".template.png", AssetRole.TEMPLATE, "image/png"),
          new Ending(".firing.csv", AssetRole.FIRING_SCHEDULE, "text/csv"),
          new Ending(".materials.csv", AssetRole.MATERIALS_LIST, "text/csv"),
          new Ending(".layers.yaml", AssetRole.LAYER_PLAN, "application/yaml"),
          new Ending(".fault.md", AssetRole.FAULT_CARD, "text/markdown"),
          new Ending(LIGHT_MP4, AssetRole.VIDEO, "video/mp4"),
          new Ending(".mp4", AssetRole.VIDEO, "video/mp4"),
          new Ending(".m4v", AssetRole.VIDEO, "video/mp4"),
          new Ending(".mov", AssetRole.VIDEO, "video/mp4"),
          new Ending(".webm", AssetRole.VIDEO, "video/webm"),
          new Ending(".vtt", AssetRole.CAPTIONS, "text/vtt"),
          new Ending(".srt", AssetRole.CAPTIONS, "application/x-subrip"),
          new Ending(".pdf", AssetRole.HANDOUT, "application/pdf"),
          new Ending(".md", AssetRole.HANDOUT, "text/markdown"),
          new Ending(".png", AssetRole.IMAGE, "image/png"),
          new Ending(".jpg", AssetRole.IMAGE, "image/jpeg"),
          new Ending(".jpeg", AssetRole.IMAGE, "image/jpeg"));

  private record Ending(String ending, AssetRole role, String mediaType) {}

  /** Returns what a name says; empty if it says nothing known. */
  static Optional<FileKind> ofName(String name) {
    var lower = name.toLowerCase(Locale.ROOT);
    return ENDINGS.stream()
        .filter(e -> lower.endsWith(e.ending))
        .findFirst()
        .map(e -> new FileKind(e.role, e.mediaType));
  }

  /** Returns the BCP 47 tag in a caption file's name, in its usual case; empty if there is none. */
  static String captionLanguage(String name) {
    Matcher tag = CAPTION_LANGUAGE.matcher(name);
    if (!tag.find()) {
      return "";
    }
    var locale = Locale.forLanguageTag(tag.group(1));
    var language = locale.getLanguage();
    var known = !locale.getDisplayLanguage(Locale.ENGLISH).equals(language);
    return known ? locale.toLanguageTag() : "";
  }

  /** Returns the name without the ending that told what the file is. */
  static String stem(String name) {
    var lower = name.toLowerCase(Locale.ROOT);
    return ENDINGS.stream()
        .filter(e -> lower.endsWith(e.ending))
        .findFirst()
        .map(e -> name.substring(0, name.length() - e.ending.length()))
        .orElse(name);
  }
}
