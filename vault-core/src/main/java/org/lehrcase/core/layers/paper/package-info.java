/**
 * True scale on paper: sizes in points, tiles over several pages, what a ruler on the print tells,
 * and how a picture fits a format. Draws nothing.
 */
@NullMarked
package org.lehrcase.core.layers.paper;

import org.jspecify.annotations.NullMarked;
