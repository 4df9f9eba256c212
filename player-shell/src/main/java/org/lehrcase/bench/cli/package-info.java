/**
 * The bench's commands: parses arguments, calls the other packages, puts results into words and
 * exit codes. Decides nothing itself.
 */
@NullMarked
package org.lehrcase.bench.cli;

import org.jspecify.annotations.NullMarked;
