/**
 * Sentences whose figures are numbers with a quantity until somebody reads them.
 *
 * <p>Nothing here looks for figures in a text: whoever writes a sentence says what each of its
 * figures is, and units are chosen when it is shown. Knows no glass and no kiln.
 */
@NullMarked
package org.lehrcase.core.glass.say;

import org.jspecify.annotations.NullMarked;
