/**
 * The generator of the invented demonstration course: drawn films, handouts, templates and lists.
 *
 * <p>Everything here is run by hand when the course changes; its results are committed under {@code
 * packager/demo}. Nothing of the shipped programs may live here or depend on it.
 */
@NullMarked
package org.lehrcase.demo;

import org.jspecify.annotations.NullMarked;
