package org.lehrcase.desk.sales;

import org.lehrcase.core.id.LessonId;

/**
 * A lesson's lasting identity: notes and positions of students hang on it, so it survives renaming
 * and renumbering.
 *
 * @param id drawn once, never shown
 * @param series the series it belongs to
 * @param number the number it has now
 * @param title the title it has now
 */
public record LessonEntry(LessonId id, String series, int number, String title) {}
