/**
 * Programs that measure the desk against other tools. They are run by hand, as docs/performance.md
 * says; no test depends on them.
 */
@NullMarked
package org.lehrcase.desk.measure;

import org.jspecify.annotations.NullMarked;
