/**
 * The kiln's side of a course: firing schedules, read from tables and drawn over time.
 *
 * <p>Temperatures are degrees Celsius, rates degrees Celsius per hour, times minutes or hours, each
 * by name; Fahrenheit exists only in the file. Knows nothing of editions, keys or pages.
 */
@NullMarked
package org.lehrcase.core.glass;

import org.jspecify.annotations.NullMarked;
