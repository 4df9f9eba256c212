/**
 * Small text files as people and their spreadsheets really write them: byte-order marks, old
 * encodings, semicolons, decimal commas, and a list of what is wrong instead of a refusal.
 *
 * <p>Knows nothing of courses, glass or sealed bytes; the packages that do know read their tables
 * through this one.
 */
@NullMarked
package org.lehrcase.core.table;

import org.jspecify.annotations.NullMarked;
