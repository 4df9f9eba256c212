/**
 * Heat inside a block: one-dimensional conduction from its faces, and the closed forms of it.
 *
 * <p>Knows nothing of stress, schedules or controllers; SI units unless a name says otherwise.
 */
@NullMarked
package org.lehrcase.core.glass.heat;

import org.jspecify.annotations.NullMarked;
