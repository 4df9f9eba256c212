/**
 * The kiln at hand: what its controller can be told, how it goes by itself, what it uses, and when
 * somebody has to stand beside it.
 *
 * <p>Takes plans as given and never changes soak or slopes to the faster side. Pure arithmetic:
 * clocks and calendars come in from outside.
 */
@NullMarked
package org.lehrcase.core.glass.kiln;

import org.jspecify.annotations.NullMarked;
