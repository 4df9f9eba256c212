/**
 * The kiln sheet: what a page, a paper and a calendar show of one firing in one kiln.
 *
 * <p>Asks {@code bench.firing} for figures and puts stack, clock, price, maps and the lesson's
 * schedule beside them. Holds no physics, keeps nothing, and knows no server: doors and tables are
 * elsewhere.
 */
@NullMarked
package org.lehrcase.bench.kilns;

import org.jspecify.annotations.NullMarked;
