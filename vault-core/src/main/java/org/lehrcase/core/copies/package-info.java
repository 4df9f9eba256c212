/**
 * Bringing an edition from one place to another: fetching what is missing or damaged from any copy,
 * keeping lessons on a disk, merging a folder of changes with an older edition.
 *
 * <p>Wherever bytes come from, they are a stranger's until they fit the signed front page; only
 * then do they get a name in the target. Needs no key and opens nothing. Knows no network: what is
 * not a folder is a {@link org.lehrcase.core.copies.CopySource} of the caller's.
 */
@NullMarked
package org.lehrcase.core.copies;

import org.jspecify.annotations.NullMarked;
