package org.lehrcase.core.glass.kiln;

/**
 * A line as it is typed into the controller.
 *
 * @param number from 1
 * @param name what it is for
 * @param rate rate per hour in the controller's unit, or its code for free
 * @param target target in the controller's unit
 * @param hold hours and minutes, {@code h:mm}
 */
public record TypedLine(int number, String name, String rate, String target, String hold) {}
