/**
 * Keeping the books for years: acts on what was sold, each in the chain of events and to be taken
 * back until something of it was sent; people brought in from a shop's table; the table of a year.
 *
 * <p>No key is used here; what buyers get is written in {@code desk.answering}.
 */
@NullMarked
package org.lehrcase.desk.keeping;

import org.jspecify.annotations.NullMarked;
