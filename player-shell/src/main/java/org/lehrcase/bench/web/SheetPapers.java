package org.lehrcase.bench.web;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.Optional;
import org.lehrcase.bench.courses.StudyLesson;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.kilns.MadePapers;
import org.lehrcase.bench.templates.PlanPapers;
import org.lehrcase.bench.templates.RulerAnswer;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;

/**
 * The papers of a plan of sheets. A plan of a lesson is saved for printing only if its teacher
 * allows that; a plan of the student's own always.
 */
final class SheetPapers {
  /** 300 subjects with long outlines stay below. */
  private static final int MOST_BYTES = 4 << 20;

  private final Bench bench;
  private final MadePapers papers;
  private final BuyerWords buyer;

  SheetPapers(Bench bench, MadePapers papers) {
    this.bench = bench;
    this.papers = papers;
    this.buyer = new BuyerWords(bench);
  }

  void addTo(JsonApi api) {
    api.on("POST sheets/paper", ask -> KilnQuestions.inFields(() -> make(ask.json(MOST_BYTES))));
    api.on(
        "POST sheets/ruler", ask -> KilnQuestions.inFields(() -> RulerAnswer.answer(ask.json())));
  }

  private JsonElement make(JsonObject request) throws FieldTrouble, Trouble, IOException {
    try {
      return KilnPapers.address(papers.keep(PlanPapers.make(request, stamp(request))));
    } catch (VaultException e) {
      throw Trouble.of(e);
    }
  }

  /** Returns the buyer's words, or refuses a lesson's plan that may not be saved. */
  String stamp(JsonObject request) throws FieldTrouble, Trouble, VaultException, IOException {
    Optional<Fields> from = new Fields(request, "").object("from");
    if (from.isEmpty() || from.get().text("e").isEmpty()) {
      return buyer.owner();
    }
    EditionId id = StudyQuestions.edition(from.get().text("e").orElse(""));
    OpenedEdition edition = bench.courses().open(id);
    if (from.get().text("a").isPresent()) {
      AssetId asset = AssetId.ofHex(StudyQuestions.hex(from.get().text("a").get(), AssetId.BYTES));
      if (edition.asset(asset).filter(one -> StudyLesson.mayPrint(edition, one)).isEmpty()) {
        throw notAllowed();
      }
    }
    return buyer.of(edition);
  }

  private static Trouble notAllowed() {
    return new Trouble(
        TroubleCode.NOT_ALLOWED,
        "The teacher does not allow saving this lesson's plan of sheets.",
        "Your format and your sheets are kept on the page.",
        "Trace from the screen, or ask the teacher to allow it.");
  }
}
