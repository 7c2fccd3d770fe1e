-- The coach's own time, what visiting students wish for, courts asked for, and what was offered and agreed.

-- What takes the coach's time besides lessons.
CREATE TABLE own_busy (
  id          TEXT PRIMARY KEY NOT NULL,
  what        TEXT NOT NULL,
  first       TEXT NOT NULL,
  last        TEXT,                                   -- of a span its last day; of what comes again the last it can be; NULL: the first alone, or without end
  starts      TEXT,                                   -- NULL: the whole day
  ends        TEXT,                                   -- 00:00 means midnight at the day's end
  zone        TEXT,                                   -- NULL: on the clock of wherever the coach is
  again       TEXT NOT NULL CHECK (again IN ('never', 'every_week', 'every_second_week', 'every_month', 'every_month_by_weekday')),
  weekdays    TEXT NOT NULL DEFAULT '',               -- ISO 8601 numbers; '' that of the first day
  except_days TEXT NOT NULL DEFAULT '',               -- days on which it does not take place, with spaces between
  removed     TEXT,                                   -- the day it was taken out
  CHECK ((starts IS NULL) = (ends IS NULL)),
  CHECK (last IS NULL OR first <= last)
) STRICT;

-- What the student of a visit wishes for; a row once it is known.
CREATE TABLE wish (
  id        TEXT PRIMARY KEY NOT NULL REFERENCES visit (id),
  lessons   INTEGER NOT NULL CHECK (lessons BETWEEN 1 AND 40),
  minutes   INTEGER NOT NULL CHECK (minutes BETWEEN 15 AND 480),   -- of each
  per_day   INTEGER NOT NULL CHECK (per_day BETWEEN 1 AND 6),
  rest      INTEGER NOT NULL DEFAULT 0 CHECK (rest BETWEEN 0 AND 720), -- minutes between two on a day
  arrives   TEXT,                                     -- on the first day, not before; NULL: any time
  leaves    TEXT,                                     -- on the last day, not after
  earliest  TEXT,                                     -- on every day
  latest    TEXT,
  best_from TEXT,                                     -- the hours liked best
  best_to   TEXT,
  court     TEXT REFERENCES court (id),               -- the court liked best
  weight    INTEGER NOT NULL DEFAULT 1 CHECK (weight BETWEEN 1 AND 3), -- what a lesson that finds no place counts
  note      TEXT NOT NULL DEFAULT ''
) STRICT;

-- Courts asked for. Which lessons one serves follows from where and when it is.
CREATE TABLE court_booking (
  id        TEXT PRIMARY KEY NOT NULL,
  facility  TEXT NOT NULL REFERENCES facility (id),
  court     TEXT REFERENCES court (id),               -- NULL: whichever is free
  day       TEXT NOT NULL,
  starts    TEXT NOT NULL,
  minutes   INTEGER NOT NULL CHECK (minutes BETWEEN 5 AND 1440),
  state     TEXT NOT NULL CHECK (state IN ('asked', 'confirmed', 'refused', 'released')),
  asked     TEXT,                                     -- days
  answered  TEXT,
  released  TEXT,
  reference TEXT NOT NULL DEFAULT '',                 -- the facility's own for it
  by_whom   TEXT NOT NULL DEFAULT '',                 -- who answered
  note      TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX court_booking_day ON court_booking (day, facility);

-- What was offered to a student, word for word, and what came of it. Only its answer changes.
CREATE TABLE offer (
  id       TEXT PRIMARY KEY NOT NULL,
  visit    TEXT NOT NULL REFERENCES visit (id),
  made     TEXT NOT NULL,                             -- the day
  state    TEXT NOT NULL CHECK (state IN ('offered', 'agreed', 'declined')),
  answered TEXT,
  words    TEXT NOT NULL,                             -- the message
  lessons  TEXT NOT NULL,                             -- JSON: each lesson as it was offered
  price    TEXT NOT NULL DEFAULT '',                  -- the whole, as in 340.00 EUR
  note     TEXT NOT NULL DEFAULT ''                   -- what the student said
) STRICT;
CREATE INDEX offer_visit ON offer (visit, made);

-- Calendar invitations that left the program: one row for each lesson and student.
CREATE TABLE invitation (
  id        TEXT PRIMARY KEY NOT NULL,
  lesson    TEXT NOT NULL REFERENCES lesson (id),
  student   TEXT NOT NULL REFERENCES student (id),
  sequence  INTEGER NOT NULL CHECK (sequence >= 0),   -- RFC 5545 (3.8.7.4)
  said      TEXT NOT NULL,                            -- what it said last of time and place, to tell whether it must be sent anew
  cancelled INTEGER NOT NULL DEFAULT 0 CHECK (cancelled IN (0, 1)),
  written   TEXT NOT NULL,                            -- the day
  UNIQUE (lesson, student)
) STRICT;
