-- Following a piece for weeks: its plan, the state of its sheets, its pictures; what is in the drawer.
CREATE TABLE piece_plan (
  piece             TEXT PRIMARY KEY REFERENCES piece (id),
  plan              TEXT NOT NULL CHECK (json_valid(plan)),
  changed_at_millis INTEGER NOT NULL
) STRICT;
CREATE TABLE piece_sheet (
  piece             TEXT NOT NULL REFERENCES piece (id),
  sheet             INTEGER NOT NULL CHECK (sheet BETWEEN 1 AND 200),
  cut               INTEGER NOT NULL CHECK (cut IN (0, 1)),
  painted           INTEGER NOT NULL CHECK (painted IN (0, 1)),
  coats             INTEGER NOT NULL CHECK (coats BETWEEN 0 AND 99),
  fired             INTEGER NOT NULL CHECK (fired BETWEEN 0 AND 99),
  note              TEXT NOT NULL,
  changed_at_millis INTEGER NOT NULL,
  PRIMARY KEY (piece, sheet)
) STRICT;
CREATE TABLE piece_photo (
  id        TEXT PRIMARY KEY CHECK (length(id) = 32),
  piece     TEXT NOT NULL REFERENCES piece (id),
  caption   TEXT NOT NULL,
  picture   BLOB NOT NULL,
  at_millis INTEGER NOT NULL
) STRICT;
CREATE INDEX piece_photo_of ON piece_photo (piece);
CREATE TABLE supply (
  item              TEXT PRIMARY KEY,
  at_hand           REAL,
  pack              REAL,
  price             REAL,
  changed_at_millis INTEGER NOT NULL
) STRICT;
