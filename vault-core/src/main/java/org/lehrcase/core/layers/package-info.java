/**
 * From a picture to painted sheets of glass: what goes on which sheet, how large and how pale, what
 * to cut, which dams, what to buy. Plain arithmetic: no files, no clock, no pictures.
 *
 * <p>Sheet 1 is the front sheet, nearest to the viewer. Lengths are millimetres, masses grams,
 * unless a name says otherwise.
 */
@NullMarked
package org.lehrcase.core.layers;

import org.jspecify.annotations.NullMarked;
