package org.lehrcase.desk.author;

import java.util.List;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.MaterialsList;
import org.lehrcase.core.glass.FiringSchedule;
import org.lehrcase.core.table.Problem;

/** Checks firing schedules and materials lists row by row. */
final class TableCheck {
  private final SourceAsset asset;
  private final List<Finding> findings;
  private final FiringCheck firings;

  TableCheck(SourceAsset asset, FiringCheck firings, List<Finding> findings) {
    this.asset = asset;
    this.firings = firings;
    this.findings = findings;
  }

  void run() {
    var text = BoundedText.read(asset.file(), asset.place(), BoundedText.MAX_BYTES, findings);
    if (text.isEmpty()) {
      return;
    }
    if (asset.role() == AssetRole.FIRING_SCHEDULE) {
      // A slip in a schedule breaks glass, so every one of them must be put right first.
      var schedule = FiringSchedule.parse(text.get());
      report(
          schedule.problems(),
          Severity.ERROR,
          "correct the row; students type these numbers into a kiln");
      if (schedule.problems().isEmpty()) {
        firings.run(asset, schedule);
      }
    } else {
      var list = MaterialsList.parse(text.get());
      report(
          list.problems(),
          list.rows().isEmpty() ? Severity.ERROR : Severity.DOUBT,
          "correct the row");
    }
  }

  private void report(List<Problem> problems, Severity severity, String whatToDo) {
    problems.stream()
        .limit(CaptionsCheck.MAX_SHOWN)
        .map(p -> Finding.of(severity, asset.place(), p, whatToDo))
        .forEach(findings::add);
  }
}
