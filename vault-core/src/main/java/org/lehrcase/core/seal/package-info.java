/**
 * Part files: the sealed form of everything that weighs something in an edition.
 *
 * <p>Here live the header and the segment arithmetic of a part, the writer ({@link
 * org.lehrcase.core.seal.PartSealer}), the random-access readers ({@link
 * org.lehrcase.core.seal.PartReader} for one file, {@link org.lehrcase.core.seal.AssetReader} for
 * several seen as one) and the digest list that ties a file to its address. Every byte of the form
 * is described in {@code docs/format.md}, "Parts".
 *
 * <p>What must not live here: where files lie in an edition folder, who may have which key, and
 * anything that stores clear bytes. No public method takes a nonce, and no part is ever patched in
 * place; it is sealed again under a fresh salt.
 */
@NullMarked
package org.lehrcase.core.seal;

import org.jspecify.annotations.NullMarked;
