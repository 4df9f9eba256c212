package org.lehrcase.bench.store;

import java.time.Clock;

/**
 * The tables of what a student writes while studying.
 *
 * @param names the named notebooks
 * @param notes what stands in them
 * @param pictures the student's own pictures
 * @param timers what rings
 */
public record Notebooks(
    NotebookTable names, NoteTable notes, NotePictureTable pictures, TimerTable timers) {
  Notebooks(Database database, Clock clock) {
    this(
        new NotebookTable(database, clock),
        new NoteTable(database, clock),
        new NotePictureTable(database, clock),
        new TimerTable(database, clock));
  }
}
