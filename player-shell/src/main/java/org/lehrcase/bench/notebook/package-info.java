/**
 * The student's notebook: what may stand in a note, how two copies of a notebook become one, and
 * what is taken out of it (a folder of Markdown and pictures, a PDF, the sealed copy on a stick).
 * No SQL, no server, no cipher of its own. Nothing of a course is kept here: a note knows its
 * lesson, second, page or line by number only, and a sketch is strokes without the picture below.
 */
@NullMarked
package org.lehrcase.bench.notebook;

import org.jspecify.annotations.NullMarked;
