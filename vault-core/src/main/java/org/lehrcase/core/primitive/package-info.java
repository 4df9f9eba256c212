/**
 * Thin doors to standard constructions: SHA-256, HMAC, HKDF (RFC 5869), AES key wrap (RFC 3394),
 * HPKE (RFC 9180), Ed25519 (RFC 8032), X25519, Argon2id (RFC 9106) and threshold shares. Our own
 * types go in and come out; the library's types never leave. No key schedule, no format, no I/O.
 */
@NullMarked
package org.lehrcase.core.primitive;

import org.jspecify.annotations.NullMarked;
