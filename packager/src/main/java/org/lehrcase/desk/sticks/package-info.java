/**
 * Sticks for buyers: program, editions, license, letter and start page on a mounted stick, read
 * back before any file gets its name; the paper letter that goes with it; the list of what went
 * out.
 *
 * <p>Nothing here decides who may open what: licenses and letters come from {@code answering} and
 * the sales book. Nothing clear of a course passes through; editions are copied as they are sealed.
 */
@NullMarked
package org.lehrcase.desk.sticks;

import org.jspecify.annotations.NullMarked;
