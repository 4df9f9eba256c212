/**
 * The desk: the teacher's side. Only the program's entry point lives here; each feature has a
 * package of its own.
 */
@NullMarked
package org.lehrcase.desk;

import org.jspecify.annotations.NullMarked;
