/** Where the bench begins. Holds nothing but the entry point. */
@NullMarked
package org.lehrcase.bench;

import org.jspecify.annotations.NullMarked;
