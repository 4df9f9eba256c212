/**
 * The editions that this bench knows: where they lie, whether they open, and what is in them. Finds
 * an edition again by its id when its stick comes back under another name. Knows nothing of HTTP.
 */
@NullMarked
package org.lehrcase.bench.courses;

import org.jspecify.annotations.NullMarked;
