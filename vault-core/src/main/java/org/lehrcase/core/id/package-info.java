/**
 * Public identifiers and the immutable octet string that carries them. Nothing secret lives here:
 * these values are printed, compared and stored freely.
 */
@NullMarked
package org.lehrcase.core.id;

import org.jspecify.annotations.NullMarked;
