
CREATE TABLE person (
  id     TEXT PRIMARY KEY CHECK (length(id) = 16),
  name   TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 100),
  email  TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(email) BETWEEN 3 AND 254),
  since  TEXT NOT NULL CHECK (since GLOB '????-??-??')
) STRICT;

CREATE TABLE license (
  id          TEXT PRIMARY KEY CHECK (length(id) = 32),
  person_id   TEXT NOT NULL REFERENCES person (id) ON DELETE RESTRICT,
  epoch       INTEGER NOT NULL CHECK (epoch >= 0),
  issue       INTEGER NOT NULL CHECK (issue >= 1),
  places      INTEGER NOT NULL CHECK (places BETWEEN 1 AND 99),
  moves       INTEGER NOT NULL CHECK (moves BETWEEN 0 AND 23),
  generation  INTEGER NOT NULL DEFAULT 0 CHECK (generation BETWEEN 0 AND 63),
  state       TEXT NOT NULL DEFAULT 'OPEN' CHECK (state IN ('OPEN', 'BLOCKED')),
  day         TEXT NOT NULL CHECK (day GLOB '????-??-??')
) STRICT;

CREATE TABLE license_series (
  license_id  TEXT NOT NULL REFERENCES license (id) ON DELETE RESTRICT,
  series      TEXT NOT NULL CHECK (length(series) BETWEEN 1 AND 40),
  PRIMARY KEY (license_id, series)
) STRICT, WITHOUT ROWID;

CREATE TABLE place (
  license_id   TEXT NOT NULL REFERENCES license (id) ON DELETE RESTRICT,
  id           TEXT NOT NULL CHECK (length(id) = 16),
  state        TEXT NOT NULL CHECK (state IN ('LIVE', 'RETIRED')),
  generation   INTEGER NOT NULL CHECK (generation BETWEEN 0 AND 63),
  card_digest  TEXT NOT NULL UNIQUE CHECK (length(card_digest) = 32),
  letter       BLOB NOT NULL CHECK (length(letter) BETWEEN 64 AND 1024),
  since        TEXT NOT NULL CHECK (since GLOB '????-??-??'),
  PRIMARY KEY (license_id, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE series (
  id     TEXT PRIMARY KEY CHECK (length(id) BETWEEN 1 AND 40),
  title  TEXT NOT NULL
) STRICT;

CREATE TABLE edition (
  id        TEXT PRIMARY KEY CHECK (length(id) = 32),
  series    TEXT NOT NULL REFERENCES series (id) ON DELETE RESTRICT,
  restores  INTEGER NOT NULL CHECK (restores >= 0),
  number    INTEGER NOT NULL CHECK (number >= 1),
  epoch     INTEGER NOT NULL CHECK (epoch >= 0),
  title     TEXT NOT NULL,
  day       TEXT NOT NULL CHECK (day GLOB '????-??-??'),
  folder    TEXT NOT NULL,
  UNIQUE (series, restores, number)
) STRICT;

CREATE TABLE lesson (
  id      TEXT PRIMARY KEY CHECK (length(id) = 32),
  series  TEXT NOT NULL REFERENCES series (id) ON DELETE RESTRICT,
  folder  INTEGER NOT NULL CHECK (folder BETWEEN 1 AND 999),
  number  INTEGER NOT NULL CHECK (number BETWEEN 1 AND 999),
  title   TEXT NOT NULL,
  UNIQUE (series, folder)
) STRICT;

CREATE INDEX lesson_by_series ON lesson (series, number);

CREATE TABLE event (
  seq       INTEGER PRIMARY KEY CHECK (seq >= 1),
  at        TEXT NOT NULL,
  kind      TEXT NOT NULL,
  subject   TEXT NOT NULL,
  detail    TEXT NOT NULL,
  previous  BLOB NOT NULL CHECK (length(previous) = 32),
  hash      BLOB NOT NULL UNIQUE CHECK (length(hash) = 32)
) STRICT;

CREATE TRIGGER event_is_never_changed BEFORE UPDATE ON event
BEGIN SELECT RAISE(ABORT, 'events are only ever added'); END;

CREATE TRIGGER event_is_never_removed BEFORE DELETE ON event
BEGIN SELECT RAISE(ABORT, 'events are only ever added'); END;

CREATE TRIGGER event_follows_the_last BEFORE INSERT ON event
WHEN NEW.seq <> (SELECT coalesce(max(seq), 0) + 1 FROM event)
BEGIN SELECT RAISE(ABORT, 'events are numbered without gaps'); END;

CREATE TRIGGER place_is_never_removed BEFORE DELETE ON place
BEGIN SELECT RAISE(ABORT, 'places are retired, not removed'); END;

CREATE TRIGGER place_letter_is_final BEFORE UPDATE ON place
WHEN NEW.letter IS NOT OLD.letter OR NEW.card_digest IS NOT OLD.card_digest
  OR NEW.id IS NOT OLD.id OR NEW.license_id IS NOT OLD.license_id
BEGIN SELECT RAISE(ABORT, 'a letter once written stays as it is'); END;

CREATE TRIGGER place_never_lives_again BEFORE UPDATE ON place
WHEN OLD.state = 'RETIRED' AND NEW.state = 'LIVE'
BEGIN SELECT RAISE(ABORT, 'a retired place stays retired'); END;

CREATE TRIGGER license_counters_never_fall BEFORE UPDATE ON license
WHEN NEW.issue < OLD.issue OR NEW.generation < OLD.generation
BEGIN SELECT RAISE(ABORT, 'counters never fall'); END;

CREATE TRIGGER place_limit BEFORE INSERT ON place
WHEN NEW.state = 'LIVE'
  AND (SELECT count(*) FROM place WHERE license_id = NEW.license_id AND state = 'LIVE')
      >= (SELECT places FROM license WHERE id = NEW.license_id)
BEGIN SELECT RAISE(ABORT, 'every place of this license is in use'); END;
PRAGMA application_id = 1279488866;
PRAGMA user_version = 1;
INSERT INTO person VALUES ('00000000000000a1', 'Ida Brandt', 'ida@studio.example', '2027-03-04');
INSERT INTO license VALUES ('000102030405060708090a0b0c0d0e0f', '00000000000000a1', 0, 1, 2, 2, 0, 'OPEN', '2027-03-04');
INSERT INTO license_series VALUES ('000102030405060708090a0b0c0d0e0f', 'brush');
