package org.lehrcase.bench.printing;

import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A drawing with the buyer's name small at its lower edge. Nothing else of it is changed, so that a
 * template keeps its true size.
 */
public final class SvgStamp {
  private static final Pattern ROOT =
      Pattern.compile("<(?<prefix>[A-Za-z_][\\w.-]*+:)?+svg(?<attributes>(\\s[^<>]*+)?+)>");
  private static final Pattern VIEW =
      Pattern.compile(
          "\\bviewBox\\s*=\\s*[\"']\\s*(?<x>[-+.\\deE]+)[\\s,]+(?<y>[-+.\\deE]+)[\\s,]+"
              + "(?<w>[+.\\deE]+)[\\s,]+(?<h>[+.\\deE]+)");
  private static final Pattern HEIGHT = Pattern.compile("\\bheight\\s*=\\s*[\"']\\s*(?<h>[.\\d]+)");

  private SvgStamp() {}

  /**
   * Stamps a drawing.
   *
   * @param svg the drawing
   * @param words what stands in it
   * @return the drawing with the words; as it was if it is not in the usual form
   */
  public static byte[] of(byte[] svg, String words) {
    String text = new String(svg, StandardCharsets.UTF_8);
    Matcher root = ROOT.matcher(text);
    if (!root.find() || root.group("attributes").stripTrailing().endsWith("/")) {
      return svg.clone();
    }
    String prefix = root.group("prefix") == null ? "" : root.group("prefix");
    int end = text.lastIndexOf("</" + prefix + "svg");
    if (end < root.end()) {
      return svg.clone();
    }
    String stamped =
        text.substring(0, end)
            + words(prefix, root.group("attributes"), words)
            + text.substring(end);
    return stamped.getBytes(StandardCharsets.UTF_8);
  }

  private static String words(String prefix, String attributes, String words) {
    double left = 0;
    double bottom = 100;
    double tall = 100;
    Matcher view = VIEW.matcher(attributes);
    Matcher height = HEIGHT.matcher(attributes);
    try {
      if (view.find()) {
        left = Double.parseDouble(view.group("x"));
        tall = Double.parseDouble(view.group("h"));
        bottom = Double.parseDouble(view.group("y")) + tall;
      } else if (height.find()) {
        tall = Double.parseDouble(height.group("h"));
        bottom = tall;
      }
    } catch (NumberFormatException e) {
      tall = 100;
    }
    double size = tall / 90;
    return "<"
        + prefix
        + "text x=\""
        + (left + size)
        + "\" y=\""
        + (bottom - size)
        + "\" font-family=\"sans-serif\" font-size=\""
        + size
        + "\" fill=\"#777\" stroke=\"none\">"
        + escaped(words)
        + "</"
        + prefix
        + "text>";
  }

  private static String escaped(String words) {
    return words.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
