/**
 * How large and how pale a sheet is painted: scale by distance, contrast that the air leaves, and
 * what that means for tint and for the amount of paint.
 */
@NullMarked
package org.lehrcase.core.layers.perspective;

import org.jspecify.annotations.NullMarked;
