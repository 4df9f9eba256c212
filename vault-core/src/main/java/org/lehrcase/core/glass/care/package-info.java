/**
 * Cautions for people beside a kiln, as data that pages and prints show where they matter.
 *
 * <p>They point to makers' instructions, local codes and licensed trades, never replace them, and
 * never call a piece safe for food or strong enough for anything.
 */
@NullMarked
package org.lehrcase.core.glass.care;

import org.jspecify.annotations.NullMarked;
