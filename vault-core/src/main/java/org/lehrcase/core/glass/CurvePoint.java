package org.lehrcase.core.glass;

/**
 * A point of a firing over time.
 *
 * @param hours since the start
 * @param celsius temperature that the controller asks for, or that the kiln falls to
 */
public record CurvePoint(double hours, double celsius) {}
