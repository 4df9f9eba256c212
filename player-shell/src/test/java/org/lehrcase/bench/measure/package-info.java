/**
 * Programs that measure the bench against other servers and on slow media. They are run by hand, as
 * docs/performance.md says; no test depends on them.
 */
@NullMarked
package org.lehrcase.bench.measure;

import org.jspecify.annotations.NullMarked;
