-- The student's notebooks: notes, marks and loops by item and version, their pictures, and timers.
CREATE TABLE notebook (
  id             TEXT PRIMARY KEY CHECK (length(id) = 32),
  name           TEXT NOT NULL,
  made_at_millis INTEGER NOT NULL
) STRICT;
CREATE TABLE note (
  item              TEXT NOT NULL CHECK (length(item) = 32),
  version           TEXT NOT NULL CHECK (length(version) = 32),
  past              TEXT NOT NULL,
  notebook          TEXT NOT NULL REFERENCES notebook (id),
  kind              TEXT NOT NULL CHECK (kind IN ('NOTE', 'MARK', 'LOOP')),
  edition           TEXT CHECK (length(edition) = 32),
  lesson            TEXT CHECK (length(lesson) = 32),
  content           TEXT NOT NULL CHECK (json_valid(content)),
  deleted           INTEGER NOT NULL CHECK (deleted IN (0, 1)),
  sent              INTEGER NOT NULL CHECK (sent IN (0, 1)),
  made_at_millis    INTEGER NOT NULL,
  changed_at_millis INTEGER NOT NULL,
  PRIMARY KEY (item, version)
) STRICT;
CREATE INDEX note_of ON note (notebook, lesson);
CREATE TABLE note_before (
  item      TEXT NOT NULL,
  content   TEXT NOT NULL,
  at_millis INTEGER NOT NULL
) STRICT;
CREATE INDEX note_before_of ON note_before (item, at_millis);
CREATE TABLE note_picture (
  id             TEXT PRIMARY KEY CHECK (length(id) = 32),
  media_type     TEXT NOT NULL,
  picture        BLOB NOT NULL,
  kept_at_millis INTEGER NOT NULL
) STRICT;
CREATE TABLE timer (
  id             TEXT PRIMARY KEY CHECK (length(id) = 32),
  words          TEXT NOT NULL,
  length_seconds INTEGER NOT NULL CHECK (length_seconds > 0),
  ends_at_millis INTEGER NOT NULL
) STRICT;
