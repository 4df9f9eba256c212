package org.lehrcase.demo;

import java.awt.AlphaComposite;
import java.awt.Color;
import java.awt.Composite;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;

/** The same fish over the same arch, once see-through and once opaque. */
final class OverlapScene {
  private OverlapScene() {}

  /** Draws {@code t} seconds into the scene of 18 seconds. */
  static void draw(FramePen pen, double t) {
    one(pen, 110, Ease.rise(t, 1, 5), 0.5, "see-through", Ease.rise(t, 0, 0.8));
    one(pen, 660, Ease.rise(t, 8, 12), 1, "opaque", Ease.rise(t, 0, 0.8));
    double note = Ease.rise(t, 5.5, 6.5);
    pen.line(Pen.dot(352, 330, 96), Palette.alpha(Palette.CORAL, note), 3.5, 10, 8);
    pen.text("muddy", 352, 206, Type.bold(20, Palette.CORAL).centered().faded(note));
    double clean = Ease.rise(t, 12.4, 13.4);
    pen.text("clean", 902, 206, Type.bold(20, Palette.DEEP).centered().faded(clean));
  }

  private static void one(
      FramePen pen, double x, double swim, double cover, String name, double shown) {
    Graphics2D g = pen.graphics();
    Shape clip = g.getClip();
    Shape frame = Pen.soft(x, 112, 510, 420, 12);
    g.clip(frame);
    pen.sheet(6, new AffineTransform(3.6, 0, 0, 3.6, x - 60, 90), shown);
    pen.at(x - 190, 60, 3.6).fill(Reef.archShape(), Palette.alpha(new Color(0x2C5468), shown));
    List<Patch> fish = new ArrayList<>();
    Fauna.goldFish(fish, 0, 0, 62);
    Composite before = g.getComposite();
    g.setComposite(AlphaComposite.getInstance(AlphaComposite.SRC_OVER, (float) cover));
    Pen placed = pen.at(Ease.mix(x - 160, x + 262, swim), 330, 3.6);
    for (Patch patch : fish) {
      placed.fill(patch.shape(), patch.own());
    }
    g.setComposite(before);
    g.setClip(clip);
    pen.line(frame, Palette.alpha(Palette.FOAM, shown), 5);
    pen.fill(Pen.soft(x + 165, 548, 180, 42, 21), Palette.alpha(Palette.DEEP, shown));
    pen.text(name, x + 255, 576, Type.regular(20, Palette.FOAM).centered().faded(shown));
  }
}
