-- Progress letters: a draft while it is written, frozen once issued.

CREATE TABLE letter (
  id      TEXT PRIMARY KEY NOT NULL,
  visit   TEXT NOT NULL REFERENCES visit (id),
  draft   TEXT NOT NULL CHECK (json_valid(draft)),    -- its parts with the coach's own wording
  issued  TEXT,                                       -- the instant it was issued; NULL: a draft
  text    TEXT,                                       -- as issued: the words of the letter
  numbers TEXT CHECK (json_valid(numbers)),           -- as issued: the counts it was written from
  pdf     BLOB,                                       -- as issued: the document
  sha256  TEXT,                                       -- of pdf
  fonts   TEXT CHECK (json_valid(fonts)),             -- fonts found on the machine that it used: name and SHA-256
  CHECK ((issued IS NULL) = (text IS NULL)),
  CHECK ((issued IS NULL) = (numbers IS NULL)),
  CHECK ((issued IS NULL) = (pdf IS NULL)),
  CHECK ((issued IS NULL) = (sha256 IS NULL)),
  CHECK ((issued IS NULL) = (fonts IS NULL))
) STRICT;
CREATE INDEX letter_visit ON letter (visit);
CREATE UNIQUE INDEX letter_one_draft ON letter (visit) WHERE issued IS NULL;
CREATE TRIGGER letter_issued_stays BEFORE UPDATE ON letter WHEN OLD.issued IS NOT NULL
  BEGIN SELECT RAISE(ABORT, 'an issued letter never changes'); END;
CREATE TRIGGER letter_issued_keeps BEFORE DELETE ON letter WHEN OLD.issued IS NOT NULL
  BEGIN SELECT RAISE(ABORT, 'an issued letter is never deleted'); END;
