/**
 * How a laptop is recognised: traits of the machine, ten wraps of the laptop's secret over every
 * three of five traits, and what that secret keeps. Reading traits from a machine happens elsewhere
 * and comes in through {@link org.lehrcase.core.device.Traits}; no file is touched here.
 */
@NullMarked
package org.lehrcase.core.device;

import org.jspecify.annotations.NullMarked;
