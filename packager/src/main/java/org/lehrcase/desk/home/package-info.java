/**
 * The desk's home folder: the keys under their passphrase, the signed statement, the lock that
 * keeps a second desk out, and files that only their owner may read.
 *
 * <p>The root secret is never here; nor is anything written in the clear that opens an edition.
 */
@NullMarked
package org.lehrcase.desk.home;

import org.jspecify.annotations.NullMarked;
