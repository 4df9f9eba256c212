/**
 * The key schedule, one class per key: each can derive only what its role allows, and none prints
 * itself. Every label stands once, in {@link org.lehrcase.core.keys.KeyLabel}; the equations are in
 * {@code docs/format.md}, "Key schedule". No file is read or written here.
 */
@NullMarked
package org.lehrcase.core.keys;

import org.jspecify.annotations.NullMarked;
