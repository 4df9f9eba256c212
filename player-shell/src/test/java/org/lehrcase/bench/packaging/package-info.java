/**
 * Recipes of the packages: the portable folder with its own Java runtime, the icon, the Debian
 * package. Called by the Maven profile {@code portable}; nothing of this is shipped, and nothing
 * here knows what the program does.
 */
@NullMarked
package org.lehrcase.bench.packaging;

import org.jspecify.annotations.NullMarked;
