package org.lehrcase.desk.sales;

import org.lehrcase.core.id.LessonId;

/**
 * A lesson's lasting identity: notes and positions of students hang on it, so it survives renaming
 * and renumbering.
 *
 * @param id drawn once, never shown
 * @param series the series it belongs to
 * @param folder the number of its folder in every edition, 1 to 999, so that renumbering moves no
 *     file
 * @param number the number it has now
 * @param title the title it has now
 */
public record LessonEntry(LessonId id, String series, int folder, int number, String title) {}
