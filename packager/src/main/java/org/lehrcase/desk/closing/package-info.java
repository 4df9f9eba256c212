/**
 * Closing the shop: its rehearsal, the key to publish, and the page for the heir. Publishing opens
 * every edition for everybody, for ever, and makes nothing else possible.
 */
@NullMarked
package org.lehrcase.desk.closing;

import org.jspecify.annotations.NullMarked;
