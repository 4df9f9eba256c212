-- Places that came from another laptop, and places that went to one.
CREATE TABLE move (
  ask_digest     TEXT PRIMARY KEY CHECK (length(ask_digest) = 32),
  role           TEXT NOT NULL CHECK (role IN ('ASKED', 'TAKEN', 'PASSED')),
  ask            BLOB NOT NULL,
  seed           BLOB NOT NULL,
  card_digest    TEXT NOT NULL,
  bundle         TEXT NOT NULL,
  at_millis      INTEGER NOT NULL
) STRICT;
