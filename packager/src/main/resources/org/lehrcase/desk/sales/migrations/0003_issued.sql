-- The license file as it was issued last, so that a second stick gets the same bytes. Its rows open
-- nothing without a key letter; a letter is kept in the same way.

CREATE TABLE issued (
  license_id  TEXT PRIMARY KEY REFERENCES license (id) ON DELETE RESTRICT,
  message     BLOB NOT NULL CHECK (length(message) BETWEEN 64 AND 4194304)
) STRICT, WITHOUT ROWID;
