/** A real browser for the tests of bench and desk. */
@NullMarked
package org.lehrcase.bench.browser;

import org.jspecify.annotations.NullMarked;
