/**
 * The student's reference picture: foreign bytes become upright sRGB pixels with nothing else in
 * them.
 *
 * <p>What a file claims is read and bounded before anything is decoded, and decoding happens in a
 * process of its own, with a memory and a time of its own. Value studies of a clean picture are
 * made here too. Stores nothing, and knows nothing of sheets.
 */
@NullMarked
package org.lehrcase.bench.picture;

import org.jspecify.annotations.NullMarked;
