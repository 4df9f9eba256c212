/**
 * Light copies of the films of a course, made by an encoder that the teacher has installed: which
 * films want one, how long making them will take, the child program and what it is told, and where
 * finished copies are kept until the next pack.
 *
 * <p>Light copies are clear films on the teacher's own disk, inside the desk's home. Nothing here
 * seals anything, and no film leaves by this package.
 */
@NullMarked
package org.lehrcase.desk.light;

import org.jspecify.annotations.NullMarked;
