/**
 * The help slip: gathers what a teacher needs to know when something does not work. Reads the bench
 * and changes nothing; never touches a key, a text of the course or the name of a file.
 */
@NullMarked
package org.lehrcase.bench.help;

import org.jspecify.annotations.NullMarked;
