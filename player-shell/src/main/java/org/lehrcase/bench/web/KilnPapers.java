package org.lehrcase.bench.web;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.time.Clock;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.kilns.MadePapers;
import org.lehrcase.bench.kilns.SheetPapers;
import org.lehrcase.bench.trouble.Trouble;

/** Makes the printed kiln sheet and the calendar, and says where the browser may fetch them. */
final class KilnPapers {
  private final MadePapers papers;
  private final Clock clock;

  KilnPapers(MadePapers papers, Clock clock) {
    this.papers = papers;
    this.clock = clock;
  }

  void addTo(JsonApi api) {
    api.on("POST firing/paper", ask -> KilnQuestions.inFields(() -> make(ask.json())));
  }

  private JsonElement make(JsonObject request) throws FieldTrouble, Trouble, IOException {
    return address(papers.keep(SheetPapers.make(request, clock)));
  }

  /** Returns where a kept paper is fetched. */
  static JsonObject address(String id) {
    var answer = new JsonObject();
    answer.addProperty("address", "print/made/" + id);
    return answer;
  }
}
