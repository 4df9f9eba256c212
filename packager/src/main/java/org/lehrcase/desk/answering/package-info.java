/**
 * Licensing buyers and answering laptop cards: every check, every refusal with its reason, and the
 * rule that the same card always gets the same letter.
 *
 * <p>Keys are derived here for the moment of use and never stored; what is stored goes to the sales
 * book.
 */
@NullMarked
package org.lehrcase.desk.answering;

import org.jspecify.annotations.NullMarked;
