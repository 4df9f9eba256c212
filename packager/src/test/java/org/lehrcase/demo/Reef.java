package org.lehrcase.demo;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;

/** The picture: six painted sheets, 180 x 130 mm, sheet 1 nearest to the eye. */
final class Reef {
  static final double WIDTH_MM = 180;
  static final double HEIGHT_MM = 130;
  static final int SHEETS = 6;
  private static final String[] NAMES = {
    "",
    "near kelp",
    "fan coral and sponge",
    "gold fish",
    "rock ledge and shoal",
    "far arch",
    "water light"
  };
  private static final List<List<Patch>> PAINTED =
      inside(List.of(List.of(), kelp(), coral(), fish(), ledge(), arch(), light()));

  private Reef() {}

  /** Returns the patches of sheet 1 to 6 in painting order. */
  static List<Patch> sheet(int number) {
    return PAINTED.get(number);
  }

  /** Returns what is painted on sheet 1 to 6. */
  static String name(int number) {
    return NAMES[number];
  }

  private static List<List<Patch>> inside(List<List<Patch>> sheets) {
    Area glass = new Area(Pen.box(0, 0, WIDTH_MM, HEIGHT_MM));
    List<List<Patch>> all = new ArrayList<>();
    for (List<Patch> sheet : sheets) {
      List<Patch> cut = new ArrayList<>();
      for (Patch patch : sheet) {
        Area shape = new Area(patch.shape());
        shape.intersect(glass);
        cut.add(new Patch(shape, patch.own(), patch.outline()));
      }
      all.add(List.copyOf(cut));
    }
    return List.copyOf(all);
  }

  private static List<Patch> kelp() {
    List<Patch> on = new ArrayList<>();
    Flora.frond(on, new Flora.Frond(17, 128, 9, 0.2, 1.0), new Color(0x35522B));
    Flora.frond(on, new Flora.Frond(33, 84, -6, 1.7, 0.86), new Color(0x4E6A2C));
    Flora.frond(on, new Flora.Frond(168, 112, -8, 2.9, 0.95), new Color(0x3D5A2B));
    on.add(new Patch(Flora.mound(0, 46, 9), new Color(0x2D3F3A), true));
    on.add(new Patch(Flora.mound(150, 184, 8), new Color(0x2D3F3A), true));
    return on;
  }

  private static List<Patch> coral() {
    List<Patch> on = new ArrayList<>();
    on.add(new Patch(Flora.mound(96, 176, 15), new Color(0x7A4A55), true));
    on.add(new Patch(Flora.fan(138, 120, 46), new Color(0xD9432F), true));
    Flora.tubes(on, 108, 121, new Color(0xB5386A));
    Flora.dome(on, 160, 122, 13, new Color(0xE88A4C));
    return on;
  }

  private static List<Patch> fish() {
    List<Patch> on = new ArrayList<>();
    Fauna.goldFish(on, 66, 50, 36);
    Fauna.goldFish(on, 94, 70, 30);
    Fauna.goldFish(on, 54, 82, 26);
    return on;
  }

  private static List<Patch> ledge() {
    List<Patch> on = new ArrayList<>();
    Path2D ledge = new Path2D.Double();
    ledge.moveTo(-2, 132);
    ledge.lineTo(-2, 101);
    ledge.curveTo(14, 94, 22, 99, 36, 104);
    ledge.curveTo(48, 108, 60, 104, 76, 112);
    ledge.curveTo(90, 119, 112, 116, 126, 122);
    ledge.lineTo(126, 132);
    ledge.closePath();
    on.add(new Patch(ledge, new Color(0x4B3554), true));
    Path2D shade = new Path2D.Double(ledge);
    shade.transform(new AffineTransform(1, 0, 0.1, 0.9, -13, 20));
    on.add(new Patch(shade, new Color(0x3A2945), false));
    Flora.frond(on, new Flora.Frond(46, 62, 5, 0.9, 0.6), new Color(0x35603F));
    Flora.tubes(on, 22, 103, new Color(0x7D3F86));
    double[][] shoal = {
      {112, 30}, {122, 25}, {131, 31}, {121, 37}, {141, 26}, {134, 40}, {151, 33}
    };
    for (double[] at : shoal) {
      on.add(new Patch(Fauna.smallFish(at[0], at[1], 9), new Color(0x17408A), true));
    }
    return on;
  }

  private static List<Patch> arch() {
    List<Patch> on = new ArrayList<>();
    on.add(new Patch(archShape(), new Color(0x16394F), true));
    Path2D rib = new Path2D.Double();
    rib.moveTo(90, 70);
    rib.curveTo(98, 56, 112, 52, 126, 56);
    rib.curveTo(114, 58, 104, 64, 98, 78);
    rib.closePath();
    on.add(new Patch(rib, new Color(0x3F6B80), false));
    on.add(new Patch(Flora.mound(60, 186, 22), new Color(0x1D4A5C), true));
    return on;
  }

  /** Returns the outline of the far arch, also shown alone in lesson 2. */
  static Shape archShape() {
    Path2D path = new Path2D.Double(Path2D.WIND_EVEN_ODD);
    path.moveTo(78, 122);
    path.curveTo(80, 98, 84, 66, 100, 54);
    path.curveTo(112, 46, 124, 50, 132, 47);
    path.curveTo(146, 44, 158, 60, 160, 82);
    path.curveTo(162, 98, 166, 112, 170, 122);
    path.lineTo(146, 122);
    path.curveTo(145, 104, 146, 92, 141, 82);
    path.curveTo(135, 71, 119, 70, 112, 80);
    path.curveTo(104, 92, 106, 108, 104, 122);
    path.closePath();
    return path;
  }

  private static List<Patch> light() {
    List<Patch> on = new ArrayList<>();
    Color top = new Color(0xE6F7EE);
    Color low = new Color(0x0E6F83);
    int bands = 44;
    for (int i = 0; i < bands; i++) {
      double y = i * HEIGHT_MM / bands;
      double height = HEIGHT_MM / bands + (i == bands - 1 ? 0 : 0.4);
      Color tone = Palette.mix(top, low, Math.pow((i + 0.5) / bands, 0.9));
      on.add(new Patch(Pen.box(0, y, WIDTH_MM, height), tone, false));
    }
    double[][] rays = {{52, 8, 14, 26}, {74, 12, 52, 40}, {96, 7, 100, 20}, {116, 11, 140, 34}};
    for (double[] ray : rays) {
      Shape beam =
          Pen.polygon(ray[0], 0, ray[0] + ray[1], 0, ray[2] + ray[3], HEIGHT_MM, ray[2], HEIGHT_MM);
      on.add(new Patch(beam, new Color(255, 255, 255, 70), true));
    }
    Path2D ridge = new Path2D.Double();
    ridge.moveTo(0, 130);
    ridge.lineTo(0, 108);
    ridge.curveTo(30, 96, 52, 112, 84, 106);
    ridge.curveTo(112, 100, 150, 112, 180, 102);
    ridge.lineTo(180, 130);
    ridge.closePath();
    on.add(new Patch(ridge, new Color(0x0F6878), true));
    return on;
  }
}
