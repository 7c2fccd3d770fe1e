-- The coach's calendars, here and on a server, and lessons that visiting students wish to share.

-- A calendar of the coach's: read from a file by hand, or on a server.
CREATE TABLE own_calendar (
  id      TEXT PRIMARY KEY NOT NULL,
  name    TEXT NOT NULL,
  role    TEXT NOT NULL CHECK (role IN ('busy', 'lessons')), -- it says when the coach is taken, or lessons are written into it
  href    TEXT,                                       -- its path on the server; NULL: it was read from a file
  removed TEXT                                        -- the day it was taken out
) STRICT;

-- Its texts, one for each resource; a file is one. Read from outside, so no act of the journal.
CREATE TABLE own_calendar_part (
  calendar TEXT NOT NULL REFERENCES own_calendar (id) ON DELETE CASCADE,
  href     TEXT NOT NULL,                             -- '' of a file
  etag     TEXT NOT NULL,                             -- its version on the server; '' of a file
  text     BLOB NOT NULL,
  PRIMARY KEY (calendar, href)
) STRICT;

-- What is known of it since it was read last.
CREATE TABLE own_calendar_known (
  calendar TEXT PRIMARY KEY NOT NULL REFERENCES own_calendar (id) ON DELETE CASCADE,
  read     TEXT NOT NULL,                             -- the instant
  until    TEXT NOT NULL,                             -- the day up to which its times are known
  events   INTEGER NOT NULL CHECK (events >= 0),      -- how many it holds, in those days or not
  notes    TEXT NOT NULL,                             -- what could not be read, a sentence a line
  token    TEXT                                       -- from what to ask its server for changes only (RFC 6578)
) STRICT;

-- When they say the coach is taken: worked out of the texts, anew each time they are read.
CREATE TABLE own_calendar_time (
  calendar TEXT NOT NULL REFERENCES own_calendar (id) ON DELETE CASCADE,
  starts   TEXT NOT NULL,                             -- an instant; of whole days the first of them
  ends     TEXT NOT NULL,                             -- an instant; of whole days the last of them
  whole    INTEGER NOT NULL CHECK (whole IN (0, 1)),  -- whether it is of whole days
  what     TEXT NOT NULL
) STRICT;
CREATE INDEX own_calendar_time_ends ON own_calendar_time (calendar, ends);

-- A lesson as it stands in the coach's calendar on the server, so that a change here is told from
-- one there. What is on the server is no act of the journal.
CREATE TABLE calendar_entry (
  lesson  TEXT PRIMARY KEY NOT NULL,                  -- no reference: the lesson may be gone by Undo, its entry still there
  href    TEXT NOT NULL,
  etag    TEXT NOT NULL,
  agreed  TEXT NOT NULL,                              -- JSON: what both sides said last
  theirs  TEXT NOT NULL DEFAULT '',                   -- JSON: what the server says otherwise, until the coach has decided; 'gone' when it is no longer there
  text    TEXT NOT NULL                               -- the server's text
) STRICT;

-- Lessons of a wish that others share, on one court.
CREATE TABLE wish_shared (
  id      TEXT PRIMARY KEY NOT NULL,
  visit   TEXT NOT NULL REFERENCES visit (id),        -- whose wish
  lessons INTEGER NOT NULL CHECK (lessons BETWEEN 1 AND 40) -- so many of the wish's lessons
) STRICT;
CREATE INDEX wish_shared_visit ON wish_shared (visit);

-- Who shares them.
CREATE TABLE wish_sharer (
  id     TEXT PRIMARY KEY NOT NULL,
  shared TEXT NOT NULL REFERENCES wish_shared (id),
  visit  TEXT NOT NULL REFERENCES visit (id),
  UNIQUE (shared, visit)
) STRICT;
