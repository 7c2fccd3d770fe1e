-- Erasing: everything about one person goes out of the file, its history among it.
--
-- A trigger that refuses to change or delete a row lets it through when, and only when, the row's
-- table and id stand in `erasing`:
--   AND NOT EXISTS (SELECT 1 FROM erasing WHERE kind = '<its table>' AND id = OLD.id)
-- Each erasing writes down there what goes, and empties it before it is done.

CREATE TABLE erasing (
  kind TEXT NOT NULL,                                 -- a table
  id   TEXT NOT NULL,                                 -- a row of it that goes, or loses what it says of the person
  PRIMARY KEY (kind, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE uncleared (
  act TEXT PRIMARY KEY NOT NULL                       -- an erasing after which the file was not yet written anew, to the last free page
) STRICT, WITHOUT ROWID;

ALTER TABLE journal ADD COLUMN erased TEXT REFERENCES journal (id) DEFERRABLE INITIALLY DEFERRED; -- the act that erased its label and changes; NULL: whole

DROP TRIGGER journal_stays;
CREATE TRIGGER journal_stays BEFORE UPDATE ON journal
  WHEN NOT (OLD.erased IS NULL AND NEW.erased IS NOT NULL AND NEW.label = '' AND NEW.changes = x''
            AND NEW.seq = OLD.seq AND NEW.id = OLD.id AND NEW.act = OLD.act AND NEW.at = OLD.at
            AND NEW.rows = OLD.rows AND NEW.honest = OLD.honest AND NEW.undoes IS OLD.undoes AND NEW.chain = OLD.chain
            AND EXISTS (SELECT 1 FROM erasing WHERE kind = 'journal' AND id = OLD.id))
  BEGIN SELECT RAISE(ABORT, 'the journal is only added to'); END;

DROP TRIGGER letter_issued_keeps;
CREATE TRIGGER letter_issued_keeps BEFORE DELETE ON letter
  WHEN OLD.issued IS NOT NULL AND NOT EXISTS (SELECT 1 FROM erasing WHERE kind = 'letter' AND id = OLD.id)
  BEGIN SELECT RAISE(ABORT, 'an issued letter is never deleted'); END;

-- What the accounts need of someone who was erased. It names no row of theirs.
CREATE TABLE kept_for_accounts (
  id      TEXT PRIMARY KEY NOT NULL,
  name    TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200), -- as it stands on the account
  address TEXT NOT NULL DEFAULT '',                   -- postal, where one was known
  day     TEXT NOT NULL,                              -- of what was agreed, or offered
  what    TEXT NOT NULL CHECK (json_valid(what)),     -- [{day, starts, ends, place, court, fee, court_cost}, …]
  price   TEXT NOT NULL DEFAULT '',                   -- the whole, as in 340.00 EUR; '' when a part of it was not known
  state   TEXT NOT NULL CHECK (state IN ('offered', 'agreed')),
  until   TEXT NOT NULL,                              -- the last day it is kept
  reason  TEXT NOT NULL DEFAULT ''                    -- why, in the coach's words
) STRICT;

CREATE TABLE backup_made (
  path TEXT PRIMARY KEY NOT NULL,                     -- where the coach had it put
  at   TEXT NOT NULL                                  -- the instant
) STRICT, WITHOUT ROWID;
