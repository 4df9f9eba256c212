/**
 * What is said between desk and bench: statement, license, laptop card, key letter, the two
 * messages of a move, and the keys file of an edition. Every type that can be held here has been
 * verified; none of them touches a screen, a database or the clock. Stored files of editions are
 * hostile input until their index verifies.
 */
@NullMarked
package org.lehrcase.core.license;

import org.jspecify.annotations.NullMarked;
