/**
 * What to buy: the lesson's list for the student's format, enamel by weight, the student's own
 * prices, less what is in the drawer, for one piece or a class.
 */
@NullMarked
package org.lehrcase.core.layers.supplies;

import org.jspecify.annotations.NullMarked;
