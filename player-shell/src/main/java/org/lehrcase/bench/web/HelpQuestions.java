package org.lehrcase.bench.web;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Optional;
import org.lehrcase.bench.help.HelpSlips;
import org.lehrcase.bench.help.QrSquares;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.slip.HelpSlip;
import org.lehrcase.core.slip.HelpSlipText;

/** Answers the page when a person asks for the help slip. */
final class HelpQuestions {
  private final HelpSlips slips;
  private final Clock clock;

  HelpQuestions(HelpSlips slips, Clock clock) {
    this.slips = slips;
    this.clock = clock;
  }

  void addTo(JsonApi api) {
    api.on("POST help-slip", this::slip);
    api.on("POST trial", ask -> trial());
  }

  /** What the page that tries a laptop cannot find out by itself. */
  private JsonElement trial() throws VaultException, IOException {
    HelpSlip slip = slips.write(LocalDate.now(clock), Optional.empty());
    JsonObject answer = new JsonObject();
    answer.addProperty("system", slip.program().system());
    answer.addProperty("java", slip.program().java());
    slip.room().freeMebibytes().ifPresent(free -> answer.addProperty("freeBytes", free << 20));
    slip.room()
        .stickKibibytesPerSecond()
        .ifPresent(pace -> answer.addProperty("stickBytesPerSecond", pace << 10));
    return answer;
  }

  private JsonElement slip(Ask ask) throws Trouble, VaultException, IOException {
    JsonObject json = ask.json();
    Optional<String> fault =
        json.has("code") ? Optional.of(Json.text(json, "code")) : Optional.empty();
    HelpSlip slip = slips.write(LocalDate.now(clock), fault);
    JsonObject answer = new JsonObject();
    answer.addProperty("fileName", "lehrcase-help-slip-" + slip.day() + ".txt");
    answer.addProperty("text", HelpSlipText.of(slip));
    answer.add("lines", Json.tree(HelpSlipText.lines(slip)));
    answer.add("code", Json.tree(QrSquares.rows(HelpSlipText.code(slip))));
    return answer;
  }
}
