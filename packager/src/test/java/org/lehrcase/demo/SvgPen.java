package org.lehrcase.demo;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.PathIterator;
import java.util.Locale;

/** A pen that writes an SVG drawing in true size: one unit is one millimetre. */
final class SvgPen implements Pen {
  private final StringBuilder body = new StringBuilder();
  private final double width;
  private final double height;

  SvgPen(double widthMm, double heightMm) {
    this.width = widthMm;
    this.height = heightMm;
  }

  @Override
  public void fill(Shape shape, Color color) {
    body.append("<path d=\"").append(data(shape)).append("\" fill=\"").append(hex(color));
    body.append("\"").append(opacity("fill", color)).append("/>\n");
  }

  @Override
  public void line(Shape shape, Color color, double wide, double... dash) {
    body.append("<path d=\"").append(data(shape)).append("\" fill=\"none\" stroke=\"");
    body.append(hex(color)).append("\" stroke-width=\"").append(number(wide)).append("\"");
    if (dash.length > 0) {
      body.append(" stroke-dasharray=\"");
      for (double d : dash) {
        body.append(number(d)).append(' ');
      }
      body.setCharAt(body.length() - 1, '"');
    }
    body.append(opacity("stroke", color)).append("/>\n");
  }

  @Override
  public void text(String text, double x, double y, Type type) {
    String anchor =
        switch (type.align()) {
          case LEFT -> "start";
          case CENTER -> "middle";
          case RIGHT -> "end";
        };
    String weight = type.face() == Type.Face.BOLD ? " font-weight=\"bold\"" : "";
    body.append(
        String.format(
            Locale.ROOT,
            "<text x=\"%s\" y=\"%s\" font-size=\"%s\" text-anchor=\"%s\" fill=\"%s\"%s>%s</text>%n",
            number(x),
            number(y),
            number(type.size()),
            anchor,
            hex(type.color()),
            weight,
            text.replace("&", "&amp;").replace("<", "&lt;")));
  }

  String document(String title) {
    String size = number(width) + "mm\" height=\"" + number(height) + "mm\"";
    return ("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\""
            + size
            + " viewBox=\"0 0 "
            + number(width)
            + " "
            + number(height)
            + "\" font-family=\"Lato, 'DejaVu Sans', sans-serif\" stroke-linejoin=\"round\""
            + " stroke-linecap=\"round\">\n<title>"
            + title
            + "</title>\n"
            + body
            + "</svg>\n")
        .replace("\r", "");
  }

  private static String data(Shape shape) {
    StringBuilder data = new StringBuilder();
    double[] c = new double[6];
    for (PathIterator path = shape.getPathIterator(null); !path.isDone(); path.next()) {
      int kind = path.currentSegment(c);
      data.append("MLQCZ".charAt(kind));
      int[] counts = {2, 2, 4, 6, 0};
      for (int i = 0; i < counts[kind]; i++) {
        data.append(i == 0 ? "" : " ").append(number(c[i]));
      }
    }
    return data.toString();
  }

  private static String opacity(String what, Color color) {
    return color.getAlpha() == 255
        ? ""
        : " " + what + "-opacity=\"" + number(color.getAlpha() / 255.0) + "\"";
  }

  private static String hex(Color color) {
    return String.format(Locale.ROOT, "#%06x", color.getRGB() & 0xFFFFFF);
  }

  private static String number(double value) {
    String text = String.format(Locale.ROOT, "%.2f", value);
    return text.endsWith(".00") ? text.substring(0, text.length() - 3) : text;
  }
}
