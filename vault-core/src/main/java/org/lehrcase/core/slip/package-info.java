/**
 * Slips: what a bench tells the desk when something does not work. Plain statements about program,
 * machine and copies; no key, no content, no name of a file, nothing that anybody relies on, and
 * therefore not signed.
 */
@NullMarked
package org.lehrcase.core.slip;

import org.jspecify.annotations.NullMarked;
