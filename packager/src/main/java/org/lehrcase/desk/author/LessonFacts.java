package org.lehrcase.desk.author;

import java.util.Optional;

/**
 * What a lesson says about itself in words, every text fit for the contents.
 *
 * @param title from the folder's name, or from {@code lesson.yaml}
 * @param summary a few sentences, or empty
 * @param block heading under which the lesson stands together with its neighbours, if any
 */
public record LessonFacts(String title, String summary, Optional<String> block) {}
