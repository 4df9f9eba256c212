-- The student's plans of sheets with their earlier versions, and the pictures that they were drawn on.
CREATE TABLE plan (
  id                TEXT PRIMARY KEY CHECK (length(id) = 32),
  name              TEXT NOT NULL,
  body              TEXT NOT NULL CHECK (json_valid(body)),
  revision          INTEGER NOT NULL,
  changed_at_millis INTEGER NOT NULL
) STRICT;
CREATE TABLE plan_version (
  plan      TEXT NOT NULL REFERENCES plan (id) ON DELETE CASCADE,
  number    INTEGER NOT NULL,
  body      TEXT NOT NULL CHECK (json_valid(body)),
  at_millis INTEGER NOT NULL,
  PRIMARY KEY (plan, number)
) STRICT;
CREATE TABLE own_picture (
  id            TEXT PRIMARY KEY CHECK (length(id) = 32),
  width         INTEGER NOT NULL,
  height        INTEGER NOT NULL,
  source_width  INTEGER NOT NULL,
  source_height INTEGER NOT NULL,
  jpeg          BLOB NOT NULL,
  at_millis     INTEGER NOT NULL
) STRICT;
