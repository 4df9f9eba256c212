package org.lehrcase.demo;

import java.util.List;

/**
 * One lesson of the demo as a folder.
 *
 * @param id the short mark such as A2, also the name of its texts
 * @param folder where it stands, such as {@code brush/02 Far water}
 */
record Lesson(String id, String folder, String mark, String title, List<FiringPlan> firings) {
  static final List<Lesson> ALL =
      List.of(
          new Lesson(
              "A1",
              "brush/01 Looking into water",
              "Brush 1",
              "Looking into water",
              List.of(FiringPlan.F1)),
          new Lesson("A2", "brush/02 Far water", "Brush 2", "Far water", List.of(FiringPlan.F2)),
          new Lesson(
              "A3",
              "brush/03 Kelp, fish and coral",
              "Brush 3",
              "Kelp, fish and coral",
              List.of(FiringPlan.F3)),
          new Lesson(
              "B1",
              "kiln/01 Six sheets, one bed",
              "Kiln 1",
              "Six sheets, one bed",
              List.of(FiringPlan.F4)),
          new Lesson(
              "B2", "kiln/02 The long cool", "Kiln 2", "The long cool", List.of(FiringPlan.F5)));
}
