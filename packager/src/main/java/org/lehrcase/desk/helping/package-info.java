/**
 * Answers to help slips: what happened at a buyer's laptop, and a text to send back. Needs no
 * passphrase and touches neither keys nor the sales book.
 */
@NullMarked
package org.lehrcase.desk.helping;

import org.jspecify.annotations.NullMarked;
