/**
 * The backup of a desk: one encrypted file, made while others work, proved by a rehearsal.
 *
 * <p>Nothing here derives a key of a course; the keys of the desk travel as the file that they are.
 */
@NullMarked
package org.lehrcase.desk.safe;

import org.jspecify.annotations.NullMarked;
