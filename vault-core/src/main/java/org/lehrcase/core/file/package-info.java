/**
 * Files of an edition folder as hostile or failing things: found without following links, measured
 * before they are read, and written whole or not at all.
 *
 * <p>Knows names and lengths only. What the bytes mean, whose they are and where they belong is
 * said by {@code edition}, {@code license} and {@code seal}; nothing here is ever clear media.
 */
@NullMarked
package org.lehrcase.core.file;

import org.jspecify.annotations.NullMarked;
