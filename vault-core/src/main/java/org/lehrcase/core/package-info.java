/**
 * What both sides agree on. Only the errors of reading foreign bytes stand here; everything else
 * has a room of its own below.
 */
@NullMarked
package org.lehrcase.core;

import org.jspecify.annotations.NullMarked;
