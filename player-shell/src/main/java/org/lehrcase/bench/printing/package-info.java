/**
 * Save for printing: the one way by which a paper leaves the bench in the clear, with the buyer's
 * name in its margin. Works in memory only; whether it is allowed is decided elsewhere.
 */
@NullMarked
package org.lehrcase.bench.printing;

import org.jspecify.annotations.NullMarked;
