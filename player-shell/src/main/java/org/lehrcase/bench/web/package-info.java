/**
 * The loopback server: who may ask (the guard), what is static, the JSON API, and media decrypted
 * on the fly. Binds to 127.0.0.1 only. No decision about licenses or editions is taken here.
 */
@NullMarked
package org.lehrcase.bench.web;

import org.jspecify.annotations.NullMarked;
