-- Students with the people around them; facilities and their courts.

CREATE TABLE student (
  id       TEXT PRIMARY KEY NOT NULL,
  name     TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
  called   TEXT NOT NULL DEFAULT '',                  -- how a letter addresses the student; '' means by the first name
  folded   TEXT NOT NULL,                             -- the name in lower case without accents, for search
  email    TEXT NOT NULL DEFAULT '',
  phone    TEXT NOT NULL DEFAULT '',
  hand     TEXT CHECK (hand IN ('right', 'left')),    -- NULL: not asked yet
  plays    TEXT CHECK (plays IN ('singles', 'doubles', 'both')),
  zone     TEXT NOT NULL DEFAULT '',                  -- where the student lives, IANA name; '' means not asked yet
  born     TEXT,                                      -- a day; NULL: not told
  sport    TEXT NOT NULL DEFAULT 'racquetball',       -- a sport pack's id
  wants    TEXT NOT NULL DEFAULT '',                  -- what the student wants, in the student's own words
  about    TEXT NOT NULL DEFAULT '',                  -- the coach's own notes
  archived TEXT                                       -- the day put away; NULL: current
) STRICT;
CREATE INDEX student_folded ON student (folded);

CREATE TABLE student_contact (
  id       TEXT PRIMARY KEY NOT NULL,                 -- student id and role, joined by ':'
  student  TEXT NOT NULL REFERENCES student (id),
  role     TEXT NOT NULL CHECK (role IN ('guardian', 'payer')),
  name     TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
  relation TEXT NOT NULL DEFAULT '',                  -- as in mother, club, employer
  email    TEXT NOT NULL DEFAULT '',
  phone    TEXT NOT NULL DEFAULT '',
  address  TEXT NOT NULL DEFAULT '',
  UNIQUE (student, role)
) STRICT;

CREATE TABLE facility (
  id       TEXT PRIMARY KEY NOT NULL,
  name     TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
  town     TEXT NOT NULL DEFAULT '',
  zone     TEXT NOT NULL,                             -- IANA name: times on its courts are civil times in this zone
  address  TEXT NOT NULL DEFAULT '',
  notes    TEXT NOT NULL DEFAULT '',
  archived TEXT
) STRICT;

CREATE TABLE court (
  id       TEXT PRIMARY KEY NOT NULL,
  facility TEXT NOT NULL REFERENCES facility (id),
  name     TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
  notes    TEXT NOT NULL DEFAULT '',
  archived TEXT,
  UNIQUE (facility, name)
) STRICT;
