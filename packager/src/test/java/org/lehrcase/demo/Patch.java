package org.lehrcase.demo;

import java.awt.Color;
import java.awt.Shape;

/**
 * One painted patch of a sheet in millimetres from the sheet's upper left corner.
 *
 * @param outline whether the patch's edge belongs on the template
 */
record Patch(Shape shape, Color own, boolean outline) {
  /** Returns the color as it is painted on the sheet, paler the deeper the sheet lies. */
  Color shown(int sheet) {
    return Palette.onSheet(own, sheet);
  }
}
