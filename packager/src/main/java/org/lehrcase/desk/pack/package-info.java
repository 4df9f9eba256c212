/**
 * Packing: a course folder becomes the next edition of its series. Only what changed is sealed; the
 * edition appears as a whole or not at all; a pack that was ended continues with its whole files.
 *
 * <p>What must be remembered for the next edition (which part came from which bytes, and its key)
 * stays in the desk's home, the keys wrapped under a key of their own. Nothing here decides what a
 * course folder means, and no clear byte of a course is written here.
 */
@NullMarked
package org.lehrcase.desk.pack;

import org.jspecify.annotations.NullMarked;
