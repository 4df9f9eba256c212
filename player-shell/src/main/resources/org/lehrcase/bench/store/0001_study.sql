-- Identifiers are lower-case hexadecimal; times are milliseconds since 1970, UTC.
CREATE TABLE laptop (
  only              INTEGER PRIMARY KEY CHECK (only = 1),
  wraps             BLOB NOT NULL,
  previous          BLOB,
  written_at_millis INTEGER NOT NULL
) STRICT;
CREATE TABLE license (
  id                 TEXT PRIMARY KEY CHECK (length(id) = 32),
  root               TEXT NOT NULL CHECK (length(root) = 64),
  issue              INTEGER NOT NULL,
  message            BLOB NOT NULL,
  accepted_at_millis INTEGER NOT NULL
) STRICT;
CREATE TABLE place (
  card_digest    TEXT PRIMARY KEY CHECK (length(card_digest) = 32),
  state          TEXT NOT NULL CHECK (state IN ('ASKED', 'ACTIVE', 'PASSED', 'SHUT')),
  license        TEXT,
  place          TEXT,
  generation     INTEGER,
  seed           BLOB NOT NULL,
  card           BLOB NOT NULL,
  letter         BLOB,
  secret         BLOB,
  made_at_millis INTEGER NOT NULL
) STRICT;
CREATE TABLE root (
  public_key           TEXT NOT NULL CHECK (length(public_key) = 64),
  role                 TEXT NOT NULL CHECK (role IN ('DESK', 'ISSUE')),
  name                 TEXT NOT NULL,
  serial               INTEGER NOT NULL,
  statement            BLOB NOT NULL,
  first_seen_at_millis INTEGER NOT NULL,
  PRIMARY KEY (public_key, role)
) STRICT;
CREATE TABLE edition (
  id              TEXT PRIMARY KEY CHECK (length(id) = 32),
  folder          TEXT NOT NULL,
  series          TEXT NOT NULL,
  root            TEXT NOT NULL CHECK (length(root) = 64),
  title           TEXT NOT NULL,
  restores        INTEGER NOT NULL,
  number          INTEGER NOT NULL,
  added_at_millis INTEGER NOT NULL
) STRICT;
CREATE TABLE position (
  lesson           TEXT PRIMARY KEY CHECK (length(lesson) = 32),
  edition          TEXT NOT NULL CHECK (length(edition) = 32),
  seconds          REAL NOT NULL CHECK (seconds >= 0),
  kept_at_millis   INTEGER NOT NULL
) STRICT;
CREATE TABLE setting (
  name  TEXT PRIMARY KEY,
  value TEXT NOT NULL
) STRICT;
