-- The student's kilns and glasses, the block of a piece, and the log of firings.
CREATE TABLE own_figures (
  kind              TEXT NOT NULL CHECK (kind IN ('KILN', 'GLASS', 'BLOCK')),
  id                TEXT NOT NULL CHECK (length(id) BETWEEN 1 AND 32),
  name              TEXT NOT NULL,
  figures           TEXT NOT NULL CHECK (json_valid(figures)),
  changed_at_millis INTEGER NOT NULL,
  PRIMARY KEY (kind, id)
) STRICT;
CREATE TABLE firing (
  id                TEXT PRIMARY KEY CHECK (length(id) = 32),
  name              TEXT NOT NULL,
  piece             TEXT REFERENCES piece (id),
  setup             TEXT NOT NULL CHECK (json_valid(setup)),
  plan              TEXT NOT NULL CHECK (json_valid(plan)),
  outcome           TEXT NOT NULL CHECK (json_valid(outcome)),
  started_at_millis INTEGER NOT NULL,
  ended_at_millis   INTEGER
) STRICT;
CREATE TABLE firing_reading (
  firing    TEXT NOT NULL REFERENCES firing (id),
  at_millis INTEGER NOT NULL,
  celsius   REAL,
  note      TEXT NOT NULL
) STRICT;
CREATE INDEX firing_reading_of ON firing_reading (firing, at_millis);
CREATE TABLE firing_photo (
  id         TEXT PRIMARY KEY CHECK (length(id) = 32),
  firing     TEXT NOT NULL REFERENCES firing (id),
  media_type TEXT NOT NULL,
  picture    BLOB NOT NULL,
  at_millis  INTEGER NOT NULL
) STRICT;
CREATE INDEX firing_photo_of ON firing_photo (firing);
