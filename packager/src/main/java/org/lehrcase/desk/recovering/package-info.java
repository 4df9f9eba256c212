/**
 * Rebuilding a lost desk: the keys from two envelopes, the sales book from editions and from the
 * files that buyers hold. What is not in any of them stays unknown and is said.
 */
@NullMarked
package org.lehrcase.desk.recovering;

import org.jspecify.annotations.NullMarked;
