/**
 * The data folder: where it lies on each system, who holds it now, and everything opened from it.
 * Puts the other packages together; decides nothing itself.
 */
@NullMarked
package org.lehrcase.bench.home;

import org.jspecify.annotations.NullMarked;
