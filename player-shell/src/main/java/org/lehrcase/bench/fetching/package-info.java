/**
 * Places outside this laptop's courses to fetch parts of an edition from: a folder, another stick,
 * a plain web address. The only room of the bench that may speak to a network, and only when a
 * person names an address. Nothing that comes from there is believed: {@code core.copies} proves
 * it.
 */
@NullMarked
package org.lehrcase.bench.fetching;

import org.jspecify.annotations.NullMarked;
