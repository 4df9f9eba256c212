/**
 * Firings as JSON: reads a request field by field, has it planned and simulated, writes the answer.
 *
 * <p>Serves the command line and the pages alike. Holds no physics: that is {@code core.glass}.
 */
@NullMarked
package org.lehrcase.bench.firing;

import org.jspecify.annotations.NullMarked;
