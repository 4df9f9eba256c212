package org.lehrcase.demo;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBufferedFile;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.state.PDExtendedGraphicsState;

/** The embedded fonts and opacities that the pages of one PDF share. */
final class PaperFonts {
  private final PDDocument document;
  private final Map<Type.Face, PDFont> fonts = new EnumMap<>(Type.Face.class);
  private final Map<Integer, PDExtendedGraphicsState> opacities = new HashMap<>();

  PaperFonts(PDDocument document) throws IOException {
    this.document = document;
    for (Type.Face face : Type.Face.values()) {
      var file = FramePen.FONTS.resolve(face.file + ".ttf").toFile();
      TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBufferedFile(file));
      font.setEnableGsub(false); // ligatures would be missing in searched and copied text
      fonts.put(face, PDType0Font.load(document, font, true));
    }
  }

  PDDocument document() {
    return document;
  }

  PDFont font(Type.Face face) {
    return fonts.get(face);
  }

  PDExtendedGraphicsState opacity(int of255) {
    return opacities.computeIfAbsent(
        of255,
        alpha -> {
          PDExtendedGraphicsState state = new PDExtendedGraphicsState();
          state.setNonStrokingAlphaConstant(alpha / 255f);
          state.setStrokingAlphaConstant(alpha / 255f);
          return state;
        });
  }

  /** Returns the width of a line in the unit of the type's size. */
  double width(String text, Type type) {
    try {
      return font(type.face()).getStringWidth(text) / 1000 * type.size();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Breaks text at spaces so that no line is wider than {@code width}. */
  List<String> wrap(String text, Type type, double width) {
    List<String> lines = new ArrayList<>();
    String line = "";
    for (String word : text.split(" ")) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (width(longer, type) > width && !line.isEmpty()) {
        lines.add(line);
        line = word;
      } else {
        line = longer;
      }
    }
    lines.add(line);
    return lines;
  }
}
