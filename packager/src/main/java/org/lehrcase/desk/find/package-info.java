/**
 * What can be found in a course: its captions, papers, tables and names as passages with their
 * places, from which the packer makes the search image.
 *
 * <p>Reads the course folder and writes nothing; the form of the image is {@code bench.find}'s.
 */
@NullMarked
package org.lehrcase.desk.find;

import org.jspecify.annotations.NullMarked;
