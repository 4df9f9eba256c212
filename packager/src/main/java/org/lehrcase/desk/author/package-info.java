/**
 * The teacher's course folder: what lies in it, what it means, and what is wrong with it.
 *
 * <p>Here live the conventions of names, the small YAML files, and the check that runs before
 * packing. Nothing here writes, seals or knows keys; how a film is built is the business of {@code
 * media}, and the tables and captions are read by the parsers that the bench uses too. Nothing
 * outside the course folder is ever opened, whatever a link or a name says.
 */
@NullMarked
package org.lehrcase.desk.author;

import org.jspecify.annotations.NullMarked;
