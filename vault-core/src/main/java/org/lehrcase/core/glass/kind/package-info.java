/**
 * Kinds of glass: their figures with where each comes from, and viscosity over temperature.
 *
 * <p>Knows no kiln, no block and no schedule. A figure never stands without its source, and no
 * annealing temperature is ever derived from an expansion number.
 */
@NullMarked
package org.lehrcase.core.glass.kind;

import org.jspecify.annotations.NullMarked;
