-- The schema a new coach file gets, as SQLite keeps it: what all migrations together come to.
-- Written from a new file; a test compares the two.
CREATE INDEX block_visit ON block (visit);

CREATE INDEX decision_goal ON decision (goal);

CREATE INDEX goal_student ON goal (student, rank);

CREATE INDEX goal_visit_visit ON goal_visit (visit);

CREATE INDEX goal_words_goal ON goal_words (goal, since);

CREATE INDEX jotting_visit ON jotting (visit);

CREATE UNIQUE INDEX journal_undoes ON journal (undoes) WHERE undoes IS NOT NULL;

CREATE INDEX lesson_day ON lesson (day, starts);

CREATE INDEX lesson_student_visit ON lesson_student (visit);

CREATE UNIQUE INDEX letter_one_draft ON letter (visit) WHERE issued IS NULL;

CREATE INDEX letter_visit ON letter (visit);

CREATE INDEX student_folded ON student (folded);

CREATE INDEX visit_days ON visit (first_day, last_day);

CREATE INDEX visit_student ON visit (student, first_day);

CREATE TABLE block (
  id         TEXT PRIMARY KEY NOT NULL,
  goal       TEXT NOT NULL REFERENCES goal (id),
  visit      TEXT NOT NULL REFERENCES visit (id),
  lesson     TEXT REFERENCES lesson (id),
  place      INTEGER NOT NULL CHECK (place >= 1),     -- its order among the goal's blocks at this visit
  kind       TEXT NOT NULL CHECK (kind IN ('retest', 'practice', 'end_test', 'look_back')),
  condition  TEXT NOT NULL CHECK (condition IN ('fed', 'live', 'set_game', 'match')),
  source     TEXT NOT NULL CHECK (source IN ('counted_live', 'total_entered', 'game_chances', 'told')),
  day        TEXT NOT NULL,                           -- the day it was played
  uncounted  INTEGER NOT NULL CHECK (uncounted >= 0), -- first tries that are not counted
  made       INTEGER,                                 -- of an entered total; NULL when counted live
  tries      INTEGER CHECK (tries BETWEEN 0 AND 10000),
  ended      TEXT,                                    -- when it was ended; NULL: still open
  UNIQUE (goal, visit, place),
  CHECK ((made IS NULL) = (tries IS NULL)),
  CHECK (made IS NULL OR made BETWEEN 0 AND tries),
  CHECK ((source = 'counted_live') = (made IS NULL))
) STRICT;

CREATE TABLE block_try (
  id    TEXT PRIMARY KEY NOT NULL,
  block TEXT NOT NULL REFERENCES block (id),
  place INTEGER NOT NULL CHECK (place >= 1),          -- the order of touches
  made  INTEGER NOT NULL CHECK (made IN (0, 1)),
  taken_back INTEGER NOT NULL DEFAULT 0 CHECK (taken_back IN (0, 1)), -- 1: a slip of the finger, not counted
  UNIQUE (block, place)
) STRICT;

CREATE TABLE court (
  id       TEXT PRIMARY KEY NOT NULL,
  facility TEXT NOT NULL REFERENCES facility (id),
  name     TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
  notes    TEXT NOT NULL DEFAULT '',
  archived TEXT,
  UNIQUE (facility, name)
) STRICT;

CREATE TABLE decision (
  id     TEXT PRIMARY KEY NOT NULL,
  goal   TEXT NOT NULL REFERENCES goal (id),
  visit  TEXT REFERENCES visit (id),                  -- NULL: between visits
  day    TEXT NOT NULL,
  kind   TEXT NOT NULL CHECK (kind IN ('carry_on', 'raise', 'close', 'set_aside', 'take_up')),
  reason TEXT NOT NULL DEFAULT '',
  raised_to TEXT REFERENCES goal (id),
  CHECK ((kind = 'raise') = (raised_to IS NOT NULL)),
  CHECK (kind NOT IN ('close', 'set_aside') OR reason <> '')
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

CREATE TABLE goal (
  id        TEXT PRIMARY KEY NOT NULL,
  student   TEXT NOT NULL REFERENCES student (id),
  title     TEXT NOT NULL CHECK (length(title) BETWEEN 1 AND 200),
  skill     TEXT NOT NULL DEFAULT '',                 -- a pack's skill id or the id of the coach's own; '' for none
  condition TEXT NOT NULL CHECK (condition IN ('fed', 'live', 'set_game', 'match')),
  counts    TEXT NOT NULL CHECK (counts IN ('cue', 'result', 'choice')), -- the one thing that counts as a yes
  need      INTEGER NOT NULL CHECK (need BETWEEN 1 AND of),             -- the criterion: need of of
  of        INTEGER NOT NULL CHECK (of BETWEEN 1 AND 1000),
  uncounted INTEGER NOT NULL CHECK (uncounted BETWEEN 0 AND 20),        -- first tries of a retest that are not counted
  rank      INTEGER NOT NULL,                         -- order of priority among the student's goals, 1 first
  set_on    TEXT NOT NULL,
  came_from TEXT REFERENCES goal (id)                 -- the goal this one was raised from
) STRICT;

CREATE TABLE goal_visit (
  id    TEXT PRIMARY KEY NOT NULL,                    -- goal id and visit id, joined by ':'
  goal  TEXT NOT NULL REFERENCES goal (id),
  visit TEXT NOT NULL REFERENCES visit (id),
  how   TEXT NOT NULL CHECK (how IN ('set', 'carried')), -- set at this visit, or carried into it
  UNIQUE (goal, visit)
) STRICT;

CREATE TABLE goal_words (
  id    TEXT PRIMARY KEY NOT NULL,
  goal  TEXT NOT NULL REFERENCES goal (id),
  since TEXT NOT NULL,                                -- the day from which these words were in force
  cue   TEXT NOT NULL,
  aim   TEXT NOT NULL
) STRICT;

CREATE TABLE jotting (
  id      TEXT PRIMARY KEY NOT NULL,
  student TEXT NOT NULL REFERENCES student (id),
  visit   TEXT NOT NULL REFERENCES visit (id),
  lesson  TEXT REFERENCES lesson (id),
  goal    TEXT REFERENCES goal (id),
  day     TEXT NOT NULL,
  words   TEXT NOT NULL CHECK (words <> '')
) STRICT;

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

CREATE TABLE lesson (
  id        TEXT PRIMARY KEY NOT NULL,
  facility  TEXT NOT NULL REFERENCES facility (id),
  court     TEXT REFERENCES court (id),               -- NULL: no court yet
  day       TEXT NOT NULL,
  starts    TEXT NOT NULL,                            -- HH:MM on the facility's clock
  which     TEXT NOT NULL CHECK (which IN ('once', 'first', 'second')), -- the hour a clock change repeats
  minutes   INTEGER NOT NULL CHECK (minutes BETWEEN 5 AND 600),
  state     TEXT NOT NULL CHECK (state IN ('planned', 'given', 'cut_short', 'called_off', 'missed')),
  given     INTEGER CHECK (given BETWEEN 0 AND minutes), -- minutes taught, when cut short
  reason    TEXT NOT NULL DEFAULT '',                 -- why cut short, called off or missed
  done      TEXT NOT NULL DEFAULT '',                 -- the lesson note: what was done
  landed    TEXT NOT NULL DEFAULT '',                 --   the cue that landed
  next      TEXT NOT NULL DEFAULT ''                  --   what is next
) STRICT;

CREATE TABLE lesson_student (
  id      TEXT PRIMARY KEY NOT NULL,                  -- lesson id and student id, joined by ':'
  lesson  TEXT NOT NULL REFERENCES lesson (id),
  student TEXT NOT NULL REFERENCES student (id),
  visit   TEXT NOT NULL REFERENCES visit (id),
  UNIQUE (lesson, student)
) STRICT;

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

CREATE TABLE setting (
  id    TEXT PRIMARY KEY NOT NULL,                    -- its name, as in coach.name
  value TEXT NOT NULL CHECK (json_valid(value))
) STRICT;

CREATE TABLE skill (
  id       TEXT PRIMARY KEY NOT NULL,
  sport    TEXT NOT NULL,                             -- a sport pack's id
  name     TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
  good_try TEXT NOT NULL DEFAULT '',                  -- what makes a try good
  UNIQUE (sport, name)
) STRICT;

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

CREATE TABLE visit (
  id            TEXT PRIMARY KEY NOT NULL,
  student       TEXT NOT NULL REFERENCES student (id),
  facility      TEXT REFERENCES facility (id),        -- NULL: not known yet
  zone          TEXT NOT NULL DEFAULT '',             -- of the facility; '' while it is not known
  first_day     TEXT,                                 -- NULL: only expected
  last_day      TEXT,
  expected_from TEXT,                                 -- while only expected: the span in which it may fall
  expected_to   TEXT,
  note          TEXT NOT NULL DEFAULT '',             -- a word under its column, as in late flight
  opened        TEXT,                                 -- the day the carried goals were opened; NULL: not yet
  closed        TEXT,                                 -- the day it was closed; NULL: not yet
  called_off    TEXT,                                 -- the day it was called off
  reason        TEXT NOT NULL DEFAULT '',             -- why it was called off
  CHECK ((first_day IS NULL) = (last_day IS NULL)),
  CHECK (first_day IS NULL OR first_day <= last_day),
  CHECK (first_day IS NOT NULL OR (expected_from IS NOT NULL AND expected_to IS NOT NULL)),
  CHECK (expected_from IS NULL OR expected_from <= expected_to),
  CHECK (opened IS NULL OR first_day IS NOT NULL),
  CHECK (closed IS NULL OR opened IS NOT NULL)
) STRICT;

CREATE TRIGGER journal_keeps BEFORE DELETE ON journal BEGIN SELECT RAISE(ABORT, 'the journal is only added to'); END;

CREATE TRIGGER journal_stays BEFORE UPDATE ON journal BEGIN SELECT RAISE(ABORT, 'the journal is only added to'); END;

CREATE TRIGGER letter_issued_keeps BEFORE DELETE ON letter WHEN OLD.issued IS NOT NULL
  BEGIN SELECT RAISE(ABORT, 'an issued letter is never deleted'); END;

CREATE TRIGGER letter_issued_stays BEFORE UPDATE ON letter WHEN OLD.issued IS NOT NULL
  BEGIN SELECT RAISE(ABORT, 'an issued letter never changes'); END;
