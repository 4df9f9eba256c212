/**
 * Shapes of subjects on the picture, and whether two of them overlap. No subject has a name or a
 * depth here, and nothing is drawn.
 */
@NullMarked
package org.lehrcase.core.layers.outline;

import org.jspecify.annotations.NullMarked;
