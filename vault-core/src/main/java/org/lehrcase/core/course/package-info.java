/**
 * The course as both sides see it: the contents of an edition (lessons in order, their assets by
 * role, the moments hung on a video) and the text files that a teacher writes by hand (captions,
 * chapters, materials lists).
 *
 * <p>Everything here is a value or a pure parser. Files, folders and keys stay out: the folder on
 * the stick is {@code edition}, the sealed bytes are {@code seal}. The encodings are those of
 * {@code docs/format.md}, section "Contents".
 */
@NullMarked
package org.lehrcase.core.course;

import org.jspecify.annotations.NullMarked;
