/**
 * The kiln sheet: what a page, a paper and a calendar show of one firing in one kiln.
 *
 * <p>Asks {@code bench.firing} for figures and puts stack, clock, price, maps and the lesson's
 * schedule beside them; writes a firing of the log as text. Holds no physics, writes to no table,
 * and knows no server.
 */
@NullMarked
package org.lehrcase.bench.kilns;

import org.jspecify.annotations.NullMarked;
