-- Places whose keys were given up, with the slip for the teacher; how many places had gone when the secret was renewed.
CREATE TABLE given_back (
  card_digest    TEXT PRIMARY KEY CHECK (length(card_digest) = 32),
  slip           BLOB NOT NULL,
  at_millis      INTEGER NOT NULL
) STRICT;
ALTER TABLE laptop ADD COLUMN renewed_after INTEGER NOT NULL DEFAULT 0;
