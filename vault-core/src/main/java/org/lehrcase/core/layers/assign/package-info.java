/**
 * Which subject goes on which sheet: what hides what, how far away it looks, how few sheets will do
 * and why, the best plan, and another sheet count from a plan that exists.
 *
 * <p>Subjects are known by their place in the scene's list. Shapes come from {@code outline}; how
 * large or how pale a sheet is painted is the business of {@code perspective}.
 */
@NullMarked
package org.lehrcase.core.layers.assign;

import org.jspecify.annotations.NullMarked;
