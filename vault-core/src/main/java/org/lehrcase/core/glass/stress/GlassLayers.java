package org.lehrcase.core.glass.stress;

import org.lehrcase.core.glass.kind.FictiveTemperature;
import org.lehrcase.core.glass.kind.GlassKind;
import org.lehrcase.core.glass.kind.Material;
import org.lehrcase.core.glass.kind.RelaxationSpectrum;

/** Structure and flow of every layer under the temperatures that heat conduction gives. */
final class GlassLayers {
  private static final double LN_10 = Math.log(10);

  private final GlassKind glass;
  private final Material material;
  private final FictiveTemperature[] structure;
  private final ShearStep structuralShear;
  private final ShearStep plainShear;
  private final double[] structuralStrain;
  private final double[] plainStrain;

  GlassLayers(GlassKind glass, int nodes, double startC) {
    this.glass = glass;
    this.material = glass.material();
    this.structure = new FictiveTemperature[nodes];
    this.structuralShear = ShearStep.of(Relaxation.STRUCTURAL, material, nodes);
    this.plainShear = ShearStep.of(Relaxation.PLAIN, material, nodes);
    this.structuralStrain = new double[nodes];
    this.plainStrain = new double[nodes];
    // Cold glass has the structure of the time when it was last annealed.
    double fictiveC = Math.max(startC, glass.viscosity().strainC());
    for (int node = 0; node < nodes; node++) {
      structure[node] = new FictiveTemperature(glass.viscosity(), material.shearPa(), fictiveC);
    }
  }

  /** Goes on from one set of temperatures to the next. */
  void advance(double[] fromC, double[] toC, double seconds, boolean withStress) {
    double solid = material.expansionPerK();
    double extra = solid * (RelaxationSpectrum.LIQUID_TO_SOLID_EXPANSION - 1);
    for (int node = 0; node < structure.length; node++) {
      double fictive = structure[node].celsius();
      structure[node].advance(fromC[node], toC[node], seconds);
      if (withStress) {
        double elastic = solid * (toC[node] - fromC[node]);
        plainStrain[node] = elastic;
        structuralStrain[node] = elastic + extra * (structure[node].celsius() - fictive);
        structuralShear.prepare(node, structure[node].maxwellSeconds(), seconds);
        plainShear.prepare(node, plainSeconds((fromC[node] + toC[node]) / 2), seconds);
      }
    }
  }

  ShearStep shear(Relaxation relaxation) {
    return relaxation == Relaxation.STRUCTURAL ? structuralShear : plainShear;
  }

  double[] strain(Relaxation relaxation) {
    return relaxation == Relaxation.STRUCTURAL ? structuralStrain : plainStrain;
  }

  double fictiveC(int node) {
    return structure[node].celsius();
  }

  private double plainSeconds(double celsius) {
    return Math.exp(LN_10 * glass.viscosity().log10Annealed(celsius)) / material.shearPa();
  }
}
