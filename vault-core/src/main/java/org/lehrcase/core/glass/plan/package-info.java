/**
 * Proposes firings and judges them: what limits every line, in words, and what a careful
 * kiln-former would want to know about a schedule that somebody else wrote.
 *
 * <p>Knows blocks and glass, and a kiln only by its pace; what a controller can be told is decided
 * in {@code kiln}.
 */
@NullMarked
package org.lehrcase.core.glass.plan;

import org.jspecify.annotations.NullMarked;
