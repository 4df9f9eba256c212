/**
 * The three spare-key envelopes: the root secret in three shares on paper, any two of which rebuild
 * it, and the reading of what stands on them.
 *
 * <p>A share is never kept by the program: it goes to the printable file and nowhere else.
 */
@NullMarked
package org.lehrcase.desk.envelopes;

import org.jspecify.annotations.NullMarked;
