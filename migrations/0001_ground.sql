-- The ground: what every later table leans on.
-- Ids are UUIDv7 as text. Days are YYYY-MM-DD, instants RFC 3339 in UTC with a numeric offset.

CREATE TABLE journal (
  seq      INTEGER PRIMARY KEY,                       -- the order of acts
  id       TEXT NOT NULL UNIQUE,
  act      TEXT NOT NULL,                             -- the command, as in goals.touch
  label    TEXT NOT NULL,                             -- what it did, in words: the history line and the Undo label
  at       TEXT NOT NULL,                             -- when it was recorded
  rows     TEXT NOT NULL CHECK (json_valid(rows)),    -- [[table, id, "insert"|"update"|"delete", digest or null], …]
  changes  BLOB NOT NULL,                             -- SQLite changeset: the old and new values of each row
  honest   INTEGER NOT NULL CHECK (honest IN (0, 1)), -- 1: undoing it is honest; 0: it left the program
  undoes   TEXT REFERENCES journal (id),              -- the act that this one undid, NULL for a first-hand act
  chain    TEXT NOT NULL                              -- SHA-256 over the chain before and this row
) STRICT;
CREATE UNIQUE INDEX journal_undoes ON journal (undoes) WHERE undoes IS NOT NULL;
CREATE TRIGGER journal_stays BEFORE UPDATE ON journal BEGIN SELECT RAISE(ABORT, 'the journal is only added to'); END;
CREATE TRIGGER journal_keeps BEFORE DELETE ON journal BEGIN SELECT RAISE(ABORT, 'the journal is only added to'); END;

CREATE TABLE setting (
  id    TEXT PRIMARY KEY NOT NULL,                    -- its name, as in coach.name
  value TEXT NOT NULL CHECK (json_valid(value))
) STRICT;
