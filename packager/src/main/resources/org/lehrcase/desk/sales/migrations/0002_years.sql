-- Book-keeping for years: personal fields stand outside the chain, which holds a salted digest of them,
-- so that a person can be erased and the chain still verifies.

ALTER TABLE person ADD COLUMN salt BLOB CHECK (salt IS NULL OR length(salt) = 16);
ALTER TABLE person ADD COLUMN find TEXT NOT NULL DEFAULT '';
ALTER TABLE person ADD COLUMN erased INTEGER NOT NULL DEFAULT 0 CHECK (erased IN (0, 1));

-- What the shop's own books need of a sale: lines of "name<TAB>value".
CREATE TABLE sale (
  license_id  TEXT PRIMARY KEY REFERENCES license (id) ON DELETE RESTRICT,
  salt        BLOB NOT NULL CHECK (length(salt) = 16),
  facts       TEXT NOT NULL CHECK (length(facts) <= 4000)
) STRICT, WITHOUT ROWID;

-- What can be taken back until something of it was sent.
CREATE TABLE action (
  seq         INTEGER PRIMARY KEY REFERENCES event (seq) ON DELETE RESTRICT,
  license_id  TEXT NOT NULL REFERENCES license (id) ON DELETE RESTRICT,
  kind        TEXT NOT NULL,
  before      TEXT NOT NULL,
  state       TEXT NOT NULL CHECK (state IN ('OPEN', 'SENT', 'UNDONE'))
) STRICT;

CREATE INDEX action_by_license ON action (license_id, seq);

-- The signature of the desk under the newest event that it saw.
CREATE TABLE head (
  one        INTEGER PRIMARY KEY CHECK (one = 1),
  seq        INTEGER NOT NULL CHECK (seq >= 1),
  hash       BLOB NOT NULL CHECK (length(hash) = 32),
  signature  BLOB NOT NULL CHECK (length(signature) = 64)
) STRICT;

-- What still waits for the teacher.
CREATE TABLE waiting (
  id      TEXT PRIMARY KEY CHECK (length(id) = 32),
  kind    TEXT NOT NULL CHECK (kind IN ('CARD', 'SLIP')),
  text    TEXT NOT NULL CHECK (length(text) <= 65536),
  reason  TEXT NOT NULL,
  day     TEXT NOT NULL CHECK (day GLOB '????-??-??')
) STRICT, WITHOUT ROWID;

CREATE TABLE setting (
  name   TEXT PRIMARY KEY CHECK (length(name) BETWEEN 1 AND 100),
  value  TEXT NOT NULL CHECK (length(value) <= 4000)
) STRICT, WITHOUT ROWID;

CREATE INDEX license_by_person ON license (person_id);
CREATE INDEX event_by_kind ON event (kind, seq);
