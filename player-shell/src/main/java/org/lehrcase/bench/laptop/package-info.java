/**
 * How this machine is recognised: its traits, read from the system, and the secret that they bind.
 * Traits never leave this package except into the binding; nothing here knows of licenses.
 */
@NullMarked
package org.lehrcase.bench.laptop;

import org.jspecify.annotations.NullMarked;
