/**
 * The papers of a plan of sheets, at true size: templates with their rulers, the plan on one page,
 * cut list, dams, cards, shopping list. Draws what {@code bench.layers} answers; plans nothing
 * itself, and keeps nothing.
 */
@NullMarked
package org.lehrcase.bench.templates;

import org.jspecify.annotations.NullMarked;
