package org.lehrcase.bench.firing;

import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.glass.kiln.ControllerFit;
import org.lehrcase.core.glass.kiln.FittedPlan;
import org.lehrcase.core.glass.plan.Block;
import org.lehrcase.core.glass.plan.FiringPlan;
import org.lehrcase.core.glass.plan.FiringPlanner;
import org.lehrcase.core.glass.plan.FiringReview;
import org.lehrcase.core.glass.plan.FiringTask;
import org.lehrcase.core.glass.plan.Limit;
import org.lehrcase.core.glass.plan.PlannedSegment;
import org.lehrcase.core.glass.plan.Stage;

/** A firing that was read, planned, fitted to the kiln and simulated. */
public final class ComputedFiring {
  private final FiringRequest request;
  private final FiringPlan plan;
  private final Optional<FittedPlan> fitted;
  private final List<PlannedSegment> lines;
  private final FiringReview review;

  private ComputedFiring(FiringRequest request) {
    this.request = request;
    this.plan = FiringPlanner.plan(request.wish());
    List<PlannedSegment> asked = request.segments().isEmpty() ? plan.segments() : typedIn(request);
    this.fitted =
        request.kiln().controller().map(c -> ControllerFit.fit(asked, c, request.kiln().pace()));
    this.lines = fitted.filter(FittedPlan::isRunnable).map(FittedPlan::lines).orElse(asked);
    this.review = review();
  }

  /**
   * Computes a request.
   *
   * @param request a request as {@code firing.schema.json} has it
   * @throws FieldTrouble naming the field that cannot be used
   */
  public static ComputedFiring of(JsonObject request) throws FieldTrouble {
    return of(RequestReader.read(request));
  }

  static ComputedFiring of(FiringRequest request) {
    return new ComputedFiring(request);
  }

  FiringRequest request() {
    return request;
  }

  /** Returns the block, as it was asked for. */
  public Block block() {
    return request.wish().block();
  }

  /** Returns the kiln of the request. */
  public KilnRequest kiln() {
    return request.kiln();
  }

  /** Returns what the rules propose, before any rounding. */
  public FiringPlan plan() {
    return plan;
  }

  /** Returns the plan as the controller can run it; empty if nothing was said of a controller. */
  public Optional<FittedPlan> fitted() {
    return fitted;
  }

  /** Returns the lines that the kiln will run. */
  public List<PlannedSegment> lines() {
    return lines;
  }

  /** Returns what these lines do to the block. */
  public FiringReview reviewed() {
    return review;
  }

  /** Says whether the kiln can run it. */
  public boolean isRunnable() {
    return fitted.map(FittedPlan::isRunnable).orElse(true);
  }

  static List<PlannedSegment> typedIn(FiringRequest request) {
    List<PlannedSegment> typed = new ArrayList<>();
    for (var segment : request.segments()) {
      typed.add(new PlannedSegment(Stage.OTHER, segment, Limit.AS_TYPED, Limit.AS_TYPED));
    }
    return typed;
  }

  private FiringReview review() {
    Block asked = block();
    boolean sheet = request.wish().task() == FiringTask.ENAMEL;
    Block whole =
        sheet
            ? new Block(
                asked.thicknessMm(), asked.faces(), true, asked.bareShelfMm(), asked.widestMm())
            : asked;
    return FiringReview.of(
        new FiringReview.Trial(
            request.wish().glass(),
            whole,
            request.kiln().pace(),
            lines.stream().map(PlannedSegment::segment).toList(),
            !request.segments().isEmpty() && !request.kiln().paceGiven()));
  }
}
