package org.lehrcase.demo;

import java.awt.Color;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** The curve draws itself over the block; fast cooling cracks it; the clock runs to the lid. */
final class LessonB2 implements Film {
  private static final Rectangle2D BOX = new Rectangle2D.Double(150, 96, 990, 300);
  private final FiringPlan plan = FiringPlan.F5;
  private final CurveView curve = new CurveView(plan, BOX, 15);

  @Override
  public String mark() {
    return "KILN 2";
  }

  @Override
  public String title() {
    return "The long cool";
  }

  @Override
  public List<String> titleLines() {
    return List.of("The long", "cool");
  }

  @Override
  public String promise() {
    return "Forty hours, and four short visits";
  }

  @Override
  public int seconds() {
    return 88;
  }

  @Override
  public void draw(Stage stage, double t) {
    if (t < 42) {
      firing(stage, t);
    } else if (t < 68) {
      CoolingScene.draw(stage.pen(), t - 42);
    } else {
      LidScene.draw(stage, t - 68);
    }
    double[] starts = {5, 21, 42, 56, 68};
    int step = 0;
    for (double start : starts) {
      step += t >= start ? 1 : 0;
    }
    stage.steps(step, starts.length);
    captions(stage, t);
    stage.card(this, 1 - Ease.rise(t, 4.2, 5.2), 0.5 * Math.sin(t * 0.9));
    stage.card(this, Ease.rise(t, 83.4, 84.4), 0.5 * Math.sin(t * 0.9));
  }

  private static void captions(Stage stage, double t) {
    stage.say(
        t, new double[] {5, 12}, "Slowly up", "100 then 110 °C an hour: loose sheets warm through");
    stage.say(t, new double[] {12, 17}, "665 °C, 75 minutes", "air leaves between the sheets");
    stage.say(
        t, new double[] {17, 21}, "798 °C, 25 minutes: be there", "six sheets become one block");
    stage.say(t, new double[] {21, 28}, "505 °C, 5 hours", "the same temperature everywhere");
    stage.say(t, new double[] {28, 42}, "Then 7, 12 and 38 °C an hour", "about 40 hours in all");
    stage.say(t, new double[] {42, 49}, "Cooled fast", "the top is cold while the inside is hot");
    stage.say(t, new double[] {49, 56}, "It pulls itself apart", "a crack runs");
    stage.say(t, new double[] {56, 68}, "Cooled slowly", "inside and top stay together");
    stage.say(
        t,
        new double[] {68, 77},
        "The clock runs on",
        "45 °C at the controller, then wait for the room");
    stage.say(t, new double[] {77, 83}, "Now the lid", "not before");
  }

  private double hourAt(double t) {
    double[][] keys = {
      {5.4, 0},
      {12, 6.2},
      {14, 7.3},
      {17, 8.6},
      {18.6, 9.1},
      {21, 9.6},
      {23, 10.5},
      {28, 15.6},
      {33, 26.6},
      {36, 31.2},
      {41, 39.9}
    };
    for (int i = 1; i < keys.length; i++) {
      if (t < keys[i][0]) {
        double share = Ease.line(t, keys[i - 1][0], keys[i][0]);
        return Ease.mix(keys[i - 1][1], keys[i][1], share);
      }
    }
    return plan.hours();
  }

  private void firing(Stage stage, double t) {
    FramePen pen = stage.pen();
    double hour = Math.min(hourAt(t), plan.hours());
    double celsius = plan.celsiusAt(hour);
    curve.grid(pen);
    curve.curve(pen, hour);
    labels(pen, hour);
    curve.now(pen, hour, Palette.CORAL);
    double lag = lag(hour);
    double hot = celsius / 800;
    Pen placed = pen.at(372, 452, 2.5);
    if (hour < 9.0) {
      double tall = Ease.mix(51, 46, Ease.rise(hour, 8.4, 9.0));
      loose(placed, tall, hot, Ease.rise(hour, 7.2, 9.0));
    } else {
      BlockView.draw(placed, 46, hot - lag, hot + lag);
    }
    pen.text(Math.round(celsius) + " °C", 348, 520, Type.light(38, Palette.INK).right());
    long whole = (long) hour;
    long minutes = (long) ((hour - whole) * 60);
    pen.text(
        whole + " h " + (minutes < 10 ? "0" : "") + minutes, 850, 520, Type.light(38, Palette.INK));
  }

  private static double lag(double hour) {
    return hour < 9.6 ? 0 : 0.02 * (1 - Ease.line(hour, 10, 15)) + 0.008;
  }

  private static void loose(Pen pen, double tall, double hot, double joined) {
    double row = tall / Reef.SHEETS;
    Color warm = BlockView.heat(hot);
    for (int i = 0; i < Reef.SHEETS; i++) {
      double gap = 0.9 * (1 - joined);
      pen.fill(Pen.soft(1, i * row + gap, 180, row - gap + joined * 0.2, 0.8), warm);
      pen.line(
          Pen.soft(1, i * row + gap, 180, row - gap, 0.8),
          Palette.alpha(Palette.INK, 0.5 * (1 - joined) + 0.08),
          0.4);
    }
  }

  private void labels(FramePen pen, double hour) {
    Object[][] marks = {
      {7.6, 665.0, "665 °C"}, {9.3, 798.0, "798 °C: be there"}, {13.0, 505.0, "505 °C, 5 h"},
      {21.0, 470.0, "7 °C an hour"}, {29.0, 402.0, "12 °C an hour"}, {35.6, 210.0, "38 °C an hour"}
    };
    for (Object[] mark : marks) {
      double at = (Double) mark[0];
      double shown = Ease.rise(hour, at, at + 0.8);
      boolean squeeze = at < 8;
      Type type = Type.bold(16, Palette.INK).faded(shown);
      pen.text(
          (String) mark[2],
          curve.x(at) + (squeeze ? -14 : 12),
          curve.y((Double) mark[1]) - 12,
          squeeze ? type.right() : type);
    }
  }

  @Override
  public List<Tone> tones() {
    List<Tone> tones = new ArrayList<>();
    double[][] at = {
      {0.6, 2}, {1.1, 5}, {5.4, 1}, {8.6, 3}, {12, 5}, {17, 7}, {18.6, 9}, {21.2, 6}, {23, 5},
      {28, 4}, {33, 3}, {36, 2}, {41, 0}, {42.4, 7}, {49.8, 0}, {56.4, 4}, {62, 5}, {68.4, 3},
      {72, 2}, {77.2, 7}, {78.2, 9}, {83.6, 5}, {84.2, 2}
    };
    for (double[] tone : at) {
      tones.add(Tone.step(tone[0], (int) tone[1]));
    }
    return tones;
  }
}
