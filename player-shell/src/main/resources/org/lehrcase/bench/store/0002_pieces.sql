-- What the student is making, the steps that are behind it, and the corrections that came by mail.
CREATE TABLE piece (
  id                 TEXT PRIMARY KEY CHECK (length(id) = 32),
  name               TEXT NOT NULL,
  edition            TEXT CHECK (length(edition) = 32),
  lesson             TEXT CHECK (length(lesson) = 32),
  next_step          TEXT NOT NULL,
  state              TEXT NOT NULL CHECK (state IN ('ACTIVE', 'DONE')),
  begun_at_millis    INTEGER NOT NULL,
  changed_at_millis  INTEGER NOT NULL,
  finished_at_millis INTEGER
) STRICT;
CREATE TABLE piece_step (
  piece          TEXT NOT NULL REFERENCES piece (id),
  text           TEXT NOT NULL,
  done_at_millis INTEGER NOT NULL
) STRICT;
CREATE INDEX piece_step_of ON piece_step (piece);
CREATE TABLE correction (
  digest             TEXT PRIMARY KEY CHECK (length(digest) = 32),
  edition            TEXT NOT NULL CHECK (length(edition) = 32),
  message            BLOB NOT NULL,
  arrived_at_millis  INTEGER NOT NULL
) STRICT;
CREATE INDEX correction_of ON correction (edition);
