/**
 * The cut list: glass is scored and snapped, so every cut runs from edge to edge of the part that
 * it divides. What comes out of a stock sheet, how few stock sheets will do, and in which order to
 * score.
 *
 * <p>Lengths are whole micrometres, so that sums are exact. Inside, pieces and stock are larger by
 * one kerf each way, which makes a saw's loss disappear from every sum.
 */
@NullMarked
package org.lehrcase.core.layers.cut;

import org.jspecify.annotations.NullMarked;
