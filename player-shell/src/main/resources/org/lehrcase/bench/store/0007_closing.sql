-- Keys that shops published when they closed. They are no secret.
CREATE TABLE closing_key (
  closing_check  TEXT PRIMARY KEY CHECK (length(closing_check) = 32),
  epoch          INTEGER NOT NULL,
  published      BLOB NOT NULL CHECK (length(published) = 32),
  at_millis      INTEGER NOT NULL
) STRICT;
