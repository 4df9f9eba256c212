package org.lehrcase.core.glass.stress;

import org.lehrcase.core.glass.heat.Slab;
import org.lehrcase.core.glass.kind.GlassKind;

/**
 * What stands in the kiln.
 *
 * @param glass its kind
 * @param slab its shape for heat
 * @param fused whether it is one piece from the start; a stack of loose sheets has no stress of a
 *     block until it has grown together
 * @param startC temperature throughout at the start
 */
public record FiringLoad(GlassKind glass, Slab slab, boolean fused, double startC) {}
