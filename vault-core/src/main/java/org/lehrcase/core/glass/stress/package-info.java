/**
 * What a firing does to a block: temperature, structure and stress in every layer over time.
 *
 * <p>Takes the kiln's curve as given; who proposes it, and whether a kiln can run it, is decided
 * elsewhere. Tension is positive. {@code docs/physics.md} derives every equation.
 */
@NullMarked
package org.lehrcase.core.glass.stress;

import org.jspecify.annotations.NullMarked;
