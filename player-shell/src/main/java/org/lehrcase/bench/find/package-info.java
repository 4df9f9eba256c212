/**
 * Finding a passage: the image that is searched, how it is made from passages, opened in memory and
 * asked, and what else is asked beside it.
 *
 * <p>The desk makes images with {@link org.lehrcase.bench.find.ImageWriter} when it packs; the form
 * is the same on both sides and stands in {@code docs/format.md}. No image, no passage and no query
 * is ever written to a disk or a log here.
 */
@NullMarked
package org.lehrcase.bench.find;

import org.jspecify.annotations.NullMarked;
