/**
 * Back from an edition to a course folder, for a teacher whose course was lost. The only place of
 * the desk that writes clear course material, and only into a folder that was named.
 */
@NullMarked
package org.lehrcase.desk.unpacking;

import org.jspecify.annotations.NullMarked;
