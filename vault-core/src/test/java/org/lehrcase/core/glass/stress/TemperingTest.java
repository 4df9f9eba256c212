package org.lehrcase.core.glass.stress;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.glass.heat.Faces;
import org.lehrcase.core.glass.heat.HeatExchange;
import org.lehrcase.core.glass.heat.Slab;
import org.lehrcase.core.glass.kind.GlassKind;
import org.lehrcase.core.glass.kind.GlassKinds;

/**
 * The other end of the scale: panes blown cold in seconds. Nobody tempers in a studio kiln, but the
 * same equations must bear it.
 */
class TemperingTest {
  private static final GlassKind FLOAT = GlassKinds.byId("float").orElseThrow();

  private static StressOutcome blown(double mm, double fromC, double exchange, double refinement) {
    var blow =
        new KilnLeg(0, 20, 20, 600, Optional.empty(), Optional.of(new HeatExchange(exchange, 0)));
    var load = new FiringLoad(FLOAT, Slab.ofGlass(mm / 1000, Faces.BOTH), true, fromC);
    var accuracy = new FiringSimulation.Accuracy(24, refinement);
    return FiringSimulation.run(load, List.of(blow), accuracy).main();
  }

  @Test
  void aTemperedPaneIsPressedAtItsFacesTwiceAsHardAsItIsPulledInside() {
    // tempered panes show about 100 MPa in the face and half of it inside: from memory (80 %)
    StressOutcome pane = blown(6, 650, 250, 1);
    assertThat(pane.heating().mpa()).as("it is only cooled").isZero();
    assertThat(pane.cooling().mpa()).isEqualTo(pane.peak().mpa());
    assertThat(-pane.residualFaceMpa()).isBetween(70.0, 140.0);
    assertThat(-pane.residualFaceMpa() / pane.residualCoreMpa()).isCloseTo(2.0, within(0.3));
  }

  @Test
  void harderBlowingAndThickerPanesAreTemperedMore() {
    assertThat(blown(6, 650, 250, 1).residualCoreMpa())
        .isGreaterThan(blown(6, 650, 120, 1).residualCoreMpa());
    assertThat(blown(10, 650, 120, 1).residualCoreMpa())
        .isGreaterThan(blown(6, 650, 120, 1).residualCoreMpa());
  }

  @Test
  void aPaneThatStartsTooColdIsNotTempered() {
    assertThat(blown(6, 480, 250, 1).residualCoreMpa()).isLessThan(1);
    double plateau = blown(6, 680, 250, 1).residualCoreMpa();
    assertThat(blown(6, 720, 250, 1).residualCoreMpa())
        .isCloseTo(plateau, Percentage.withPercentage(4));
  }

  @Test
  void finerStepsChangeLittle() {
    double usual = blown(6, 650, 250, 1).residualCoreMpa();
    assertThat(usual)
        .isCloseTo(blown(6, 650, 250, 4).residualCoreMpa(), Percentage.withPercentage(2));
  }
}
