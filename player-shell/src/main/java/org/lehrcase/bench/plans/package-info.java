/**
 * A student's plan of sheets as a thing that is kept, handed on and studied: what it may hold, the
 * one file it travels in, the file for a course, its value studies.
 *
 * <p>Knows {@code bench.layers} and {@code bench.picture}; does not store and does not plan.
 */
@NullMarked
package org.lehrcase.bench.plans;

import org.jspecify.annotations.NullMarked;
