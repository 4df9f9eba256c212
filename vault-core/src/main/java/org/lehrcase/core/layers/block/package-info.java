/**
 * The block before and after the kiln: sheets and their weight, the height between dams, the dams
 * themselves, and whether all of it stands on the shelf. Temperatures are the business of {@code
 * glass}.
 */
@NullMarked
package org.lehrcase.core.layers.block;

import org.jspecify.annotations.NullMarked;
