/**
 * Corrections to editions that are already sold: signed notes pinned to a time or a page, sealed
 * for the buyers of that edition. Packing a corrected course again is the work of {@code
 * desk.pack}.
 */
@NullMarked
package org.lehrcase.desk.correcting;

import org.jspecify.annotations.NullMarked;
