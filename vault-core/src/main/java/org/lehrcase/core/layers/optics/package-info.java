/**
 * Light in the block and in the loose pile: what moves when the head moves, how far paint must go
 * on past an edge, how much light comes through. Lengths in millimetres, angles in degrees in air.
 */
@NullMarked
package org.lehrcase.core.layers.optics;

import org.jspecify.annotations.NullMarked;
