/**
 * An edition as a folder on a stick or a disk: its signed front page, where its parts lie, whether
 * they are whole, and what a key opens.
 *
 * <p>A folder is hostile input: names come from the signed front page only, links are refused,
 * every file is measured before it is read, and what was verified is what is used. A part that is
 * missing is "not here", which is not damage. Nothing here knows licenses or laptops beyond the
 * statement that says whose key signs, and nothing writes clear bytes.
 */
@NullMarked
package org.lehrcase.core.edition;

import org.jspecify.annotations.NullMarked;
