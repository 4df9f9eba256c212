/**
 * Sheets and cut lists as JSON: reads a request field by field, has it planned, writes the answer.
 *
 * <p>Serves the command line and the pages alike. Holds no arithmetic: that is {@code core.layers}.
 */
@NullMarked
package org.lehrcase.bench.layers;

import org.jspecify.annotations.NullMarked;
