/**
 * How a buyer's laptop comes to open what was bought: license, laptop card, key letter; recognised
 * by content wherever they are dropped. Decides what opens; knows nothing of HTTP.
 */
@NullMarked
package org.lehrcase.bench.opening;

import org.jspecify.annotations.NullMarked;
