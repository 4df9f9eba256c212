package org.lehrcase.core.glass.plan;

import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.glass.heat.Faces;
import org.lehrcase.core.glass.kind.GlassFigure;
import org.lehrcase.core.glass.kind.Viscosity;
import org.lehrcase.core.glass.say.Figure;
import org.lehrcase.core.glass.say.Phrase;
import org.lehrcase.core.glass.say.Quantity;
import org.lehrcase.core.glass.stress.KilnLeg;
import org.lehrcase.core.glass.stress.KilnPath;
import org.lehrcase.core.glass.stress.PeakTension;
import org.lehrcase.core.glass.stress.SimulatedFiring;

/** Finds what a careful kiln-former would want to know about a simulated firing. */
final class ReviewNotes {
  /** Twice the allowance of published practice. */
  private static final double HIGH_TENSION_MPA = 2 * AnnealRule.SURFACE_MPA;

  /** Twice what published practice leaves with structure counted, 0.35 to 0.40. */
  private static final double HIGH_RESIDUE_MPA = 0.8;

  private static final double LAG_AT_SOAK_K = 5;

  /**
   * log10 Pa s of a fusing glass at 700 and 760 °C, between which its surface clouds in an hour.
   */
  private static final double CLOUD_FROM_LOG10 = 6.1;

  private static final double CLOUD_TO_LOG10 = 5.0;
  private static final double CLOUD_HOURS = 1;
  private static final double WATCHED_HOURS = 8;

  private final FiringReview.Trial trial;
  private final KilnPath.Path path;
  private final SimulatedFiring simulated;
  private final double lidC;
  private final Viscosity viscosity;
  private final List<FiringWarning> notes = new ArrayList<>();

  ReviewNotes(
      FiringReview.Trial trial, KilnPath.Path path, SimulatedFiring simulated, double lidC) {
    this.trial = trial;
    this.path = path;
    this.simulated = simulated;
    this.lidC = lidC;
    this.viscosity = trial.glass().viscosity();
  }

  List<FiringWarning> all() {
    fusing();
    tension();
    residue();
    soak();
    clouding();
    lid();
    glass();
    faces();
    if (path.hours() > WATCHED_HOURS) {
      add(
          FiringWarning.Topic.UNATTENDED,
          "The firing takes {} h: be there at the top and at every change of stage, and have an"
              + " independent cut-off.",
          Figure.number(path.hours(), 0));
    }
    add(
        FiringWarning.Topic.ESTIMATE,
        "An estimate, ±30 %: the glass's figures and the kiln's evenness are not known better."
            + " Test first.");
    return notes;
  }

  private void fusing() {
    if (!simulated.bonded()) {
      add(
          FiringWarning.Topic.NOT_FUSED,
          "The sheets do not grow together: the core stays below {}, where this glass fuses"
              + " slowly. No stress of a block is computed.",
          Figure.celsius(viscosity.celsiusAt(7)));
    }
  }

  private void tension() {
    tension(simulated.main().heating(), "while heating");
    tension(simulated.main().cooling(), "while cooling");
  }

  private void tension(PeakTension peak, String when) {
    if (peak.mpa() > HIGH_TENSION_MPA) {
      add(
          FiringWarning.Topic.TENSION,
          "Up to {} MPa of tension "
              + when
              + ", {} below the top face on line {} at {}; published practice spends {} MPa.",
          Figure.number(peak.mpa(), 1),
          new Figure(peak.depthMm(), Quantity.LENGTH, 0),
          Figure.number(peak.line() + 1.0, 0),
          Figure.celsius(peak.kilnC()),
          Figure.number(AnnealRule.SURFACE_MPA, 1));
    }
  }

  private void residue() {
    double core = simulated.main().residualCoreMpa();
    if (core > HIGH_RESIDUE_MPA) {
      add(
          FiringWarning.Topic.RESIDUE,
          "{} MPa of tension stays in the core for good; published practice leaves about 0.4 MPa."
              + " The soak is too short or too cool, or the first slope too fast.",
          Figure.number(core, 1));
    }
  }

  /** The longest hold on the way down is the soak. */
  private void soak() {
    int line = SoakLine.of(trial.lines(), viscosity);
    if (line < 0) {
      boolean hot = path.legs().stream().anyMatch(l -> l.toC() > viscosity.annealingC());
      if (hot) {
        add(
            FiringWarning.Topic.SOAK,
            "There is no soak after the top: stress of the fast way down stays in the glass.");
      }
      return;
    }
    double soakC = trial.lines().get(line).targetC().orElse(0);
    if (soakC < viscosity.strainC()) {
      add(
          FiringWarning.Topic.SOAK,
          "The soak at {} lies below the strain point, {}: it cannot undo what a fast way down has"
              + " frozen in. Soak at {}, or ask the maker.",
          Figure.celsius(soakC),
          Figure.celsius(viscosity.strainC()),
          Figure.celsius(viscosity.strainC() + AnnealRule.SOAK_ABOVE_STRAIN_K));
    }
    for (SimulatedFiring.LineLag lag : simulated.lags()) {
      if (lag.line() == line && lag.atEndK() > LAG_AT_SOAK_K) {
        add(
            FiringWarning.Topic.CORE,
            "At the end of the soak the core is still {} away from the kiln.",
            Figure.kelvin(lag.atEndK()));
      }
    }
  }

  private void clouding() {
    double fromC = viscosity.celsiusAt(CLOUD_FROM_LOG10);
    double toC = viscosity.celsiusAt(CLOUD_TO_LOG10);
    double hours = 0;
    for (KilnLeg leg : path.legs()) {
      double low = Math.min(leg.fromC(), leg.toC());
      double high = Math.max(leg.fromC(), leg.toC());
      double inside = Math.min(high, toC) - Math.max(low, fromC);
      boolean held = high == low && low > fromC && low < toC;
      double share = held ? 1 : Math.max(0, inside) / Math.max(high - low, 1e-9);
      hours += share * leg.seconds() / 3600;
    }
    if (hours > CLOUD_HOURS) {
      add(
          FiringWarning.Topic.CLOUDING,
          "{} h between {} and {}: the surface may cloud.",
          Figure.number(hours, 1),
          Figure.celsius(fromC),
          Figure.celsius(toC));
    }
  }

  private void lid() {
    add(
        FiringWarning.Topic.LID,
        "Open the lid when the kiln shows {} or less and the core has followed.",
        Figure.celsius(Math.floor(lidC)));
    double core = simulated.endCoreC();
    if (core > lidC + LAG_AT_SOAK_K) {
      add(
          FiringWarning.Topic.CORE,
          "When the kiln shows {} the core is still at {}: wait longer.",
          Figure.celsius(lidC),
          Figure.celsius(core));
    }
  }

  private void glass() {
    List<GlassFigure> weak = trial.glass().weakFigures();
    if (!weak.isEmpty()) {
      add(
          FiringWarning.Topic.GLASS_FIGURES,
          Phrase.plain(
              "Not confirmed for "
                  + trial.glass().name()
                  + ": "
                  + String.join(", ", words(weak))
                  + ". Put in the figures of the maker's sheet before you rely on this."));
    }
    if (trial.glass().isStrainPredicted()) {
      add(
          FiringWarning.Topic.GLASS_FIGURES,
          "The strain point, {}, is predicted from annealing and softening point; the maker's is"
              + " better.",
          Figure.celsius(viscosity.strainC()));
    }
    boolean beyond =
        trial.glass().table().isPresent()
            && trial.glass().table().get().at(trial.block().tableThicknessMm()).isEmpty();
    if (beyond) {
      add(
          FiringWarning.Topic.MAKERS_TABLE,
          "The maker's table ends before {}, which this block counts as.",
          new Figure(trial.block().tableThicknessMm(), Quantity.LENGTH, 0));
    }
  }

  private static List<String> words(List<GlassFigure> figures) {
    List<String> words = new ArrayList<>();
    for (GlassFigure figure : figures) {
      words.add(figure.words());
    }
    return words;
  }

  private void faces() {
    if (trial.block().faces() == Faces.BOTH) {
      add(
          FiringWarning.Topic.FACES,
          "Both faces are taken to cool alike. On a solid shelf or on fibre, or with elements in"
              + " the lid only, it is one face: everything takes about four times as long.");
    }
  }

  private void add(FiringWarning.Topic topic, String words, Figure... figures) {
    add(topic, Phrase.of(words, figures));
  }

  private void add(FiringWarning.Topic topic, Phrase says) {
    notes.add(new FiringWarning(topic, says));
  }
}
