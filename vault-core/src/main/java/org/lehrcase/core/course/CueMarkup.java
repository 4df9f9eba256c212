package org.lehrcase.core.course;

import java.util.Locale;
import java.util.regex.Pattern;

/** The small markup inside captions: WebVTT's, and what SubRip files carry. */
final class CueMarkup {

  private static final Pattern ANY_TAG = Pattern.compile("<[^>]*>");
  private static final Pattern POSITION_CODE = Pattern.compile("\\{\\\\[^}]*}");
  private static final Pattern FONT_TAG =
      Pattern.compile("</?font[^>]*>", Pattern.CASE_INSENSITIVE);
  private static final Pattern ESCAPED_STYLE =
      Pattern.compile("&lt;(/?)([biu])&gt;", Pattern.CASE_INSENSITIVE);

  private CueMarkup() {}

  /** WebVTT markup to plain text: tags away, the seven escapes of section 4.2.2 resolved. */
  static String plain(String markup) {
    return ANY_TAG
        .matcher(markup)
        .replaceAll("")
        .replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&lrm;", "")
        .replace("&rlm;", "")
        .replace("&nbsp;", "\u00A0")
        .replace("&quot;", "\"")
        .replace("&amp;", "&")
        .strip();
  }

  /** SubRip text to WebVTT markup: bold, italic and underline kept, everything else as text. */
  static String ofSubRip(String text) {
    String bare = POSITION_CODE.matcher(text).replaceAll("");
    bare = FONT_TAG.matcher(bare).replaceAll("");
    String escaped = bare.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    return ESCAPED_STYLE
        .matcher(escaped)
        .replaceAll(tag -> "<" + tag.group(1) + tag.group(2).toLowerCase(Locale.ROOT) + ">");
  }
}
