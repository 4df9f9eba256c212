/**
 * How a message is written down, signed and typed: a strict subset of CBOR (RFC 8949), COSE_Sign1
 * (RFC 9052), text armor in the manner of RFC 7468 and Base45 (RFC 9285). What a message means
 * belongs to {@code license} and {@code course}; no file is read here and no key is derived.
 */
@NullMarked
package org.lehrcase.core.message;

import org.jspecify.annotations.NullMarked;
