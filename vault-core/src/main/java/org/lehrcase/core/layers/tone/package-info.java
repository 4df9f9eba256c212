/**
 * The reference picture as numbers: which way up it is, how light it is, into how few tones it can
 * be parted. Decodes nothing.
 */
@NullMarked
package org.lehrcase.core.layers.tone;

import org.jspecify.annotations.NullMarked;
