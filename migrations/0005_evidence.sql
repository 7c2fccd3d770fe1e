-- Evidence in depth: criteria of other kinds, what is seen, levels and tests, plans of lessons,
-- work at home, effort. Rows written before this keep every value they had: a digest leaves NULL
-- out, so a new column that is NULL changes no row.

CREATE TABLE goal_new (
  id        TEXT PRIMARY KEY NOT NULL,
  student   TEXT NOT NULL REFERENCES student (id),
  title     TEXT NOT NULL CHECK (length(title) BETWEEN 1 AND 200),
  skill     TEXT NOT NULL DEFAULT '',                 -- a pack's skill id or the id of the coach's own; '' for none
  condition TEXT NOT NULL CHECK (condition IN ('fed', 'live', 'set_game', 'match')),
  counts    TEXT NOT NULL CHECK (counts IN ('cue', 'result', 'choice')), -- the one thing that counts as a yes
  need      INTEGER NOT NULL,                         -- the criterion, by its kind
  of        INTEGER NOT NULL,
  uncounted INTEGER NOT NULL CHECK (uncounted BETWEEN 0 AND 20),        -- first tries of a retest that are not counted
  rank      INTEGER NOT NULL,                         -- order of priority among the student's goals, 1 first
  set_on    TEXT NOT NULL,
  came_from TEXT REFERENCES goal (id),                -- the goal this one was raised from
  criterion TEXT CHECK (criterion IN ('rate', 'at_most')), -- NULL: need of of tries; rate: need in a hundred, over at
                                                      -- least so many chances; at_most: need a game, in each of the last of
  least     INTEGER,                                  -- the least number of chances of a rate
  apart     TEXT CHECK (apart IN ('result', 'choice')), -- the second fact that is counted apart; NULL: none
  CHECK (CASE WHEN criterion IS NULL THEN need BETWEEN 1 AND of AND of BETWEEN 1 AND 1000 AND least IS NULL
              WHEN criterion = 'rate' THEN need BETWEEN 1 AND 100 AND of = 100 AND least BETWEEN 1 AND 1000
              ELSE need BETWEEN 0 AND 100 AND of BETWEEN 1 AND 20 AND least IS NULL END),
  CHECK (apart IS NULL OR (apart <> counts AND counts <> 'cue'))
) STRICT;
INSERT INTO goal_new (id, student, title, skill, condition, counts, need, of, uncounted, rank, set_on, came_from)
  SELECT id, student, title, skill, condition, counts, need, of, uncounted, rank, set_on, came_from FROM goal;
DROP TABLE goal;
ALTER TABLE goal_new RENAME TO goal;
CREATE INDEX goal_student ON goal (student, rank);

CREATE TABLE block_new (
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
  made       INTEGER,                                 -- of an entered total; NULL when counted live or a whole game
  tries      INTEGER CHECK (tries BETWEEN 0 AND 10000),
  ended      TEXT,                                    -- when it was ended; NULL: still open
  also       INTEGER CHECK (also BETWEEN 0 AND tries), -- of an entered total: the second fact; NULL: not counted
  in_game    INTEGER CHECK (in_game BETWEEN 0 AND 1000), -- the block is one whole game: how often it happened in it
  UNIQUE (goal, visit, place),
  CHECK ((made IS NULL) = (tries IS NULL)),
  CHECK (made IS NULL OR made BETWEEN 0 AND tries),
  CHECK ((source = 'counted_live') = (made IS NULL AND in_game IS NULL)),
  CHECK (in_game IS NULL OR made IS NULL)
) STRICT;
INSERT INTO block_new (id, goal, visit, lesson, place, kind, condition, source, day, uncounted, made, tries, ended)
  SELECT id, goal, visit, lesson, place, kind, condition, source, day, uncounted, made, tries, ended FROM block;
DROP TABLE block;
ALTER TABLE block_new RENAME TO block;
CREATE INDEX block_visit ON block (visit);

ALTER TABLE block_try ADD COLUMN also INTEGER CHECK (also IN (0, 1)); -- the second fact; NULL: not counted apart

CREATE TABLE block_miss (
  id     TEXT PRIMARY KEY NOT NULL,
  block  TEXT NOT NULL REFERENCES block (id),
  reason TEXT NOT NULL CHECK (length(reason) BETWEEN 1 AND 200),
  times  INTEGER NOT NULL CHECK (times BETWEEN 1 AND 10000), -- misses put down to it
  UNIQUE (block, reason)
) STRICT;

ALTER TABLE goal_words ADD COLUMN landed TEXT;        -- the day on which the coach saw this cue land; NULL: not yet

CREATE TABLE observation (
  id      TEXT PRIMARY KEY NOT NULL,
  student TEXT NOT NULL REFERENCES student (id),
  kind    TEXT NOT NULL CHECK (kind IN ('strength', 'fault')),
  skill   TEXT NOT NULL DEFAULT '',                   -- as in goal
  words   TEXT NOT NULL CHECK (length(words) BETWEEN 1 AND 200),
  folded  TEXT NOT NULL,                              -- words in lower case without accents: the same thing seen again
  goal    TEXT REFERENCES goal (id),                  -- the goal it became; NULL: none
  UNIQUE (student, kind, skill, folded)
) STRICT;

CREATE TABLE sighting (
  id          TEXT PRIMARY KEY NOT NULL,
  observation TEXT NOT NULL REFERENCES observation (id),
  visit       TEXT REFERENCES visit (id),             -- NULL: between visits
  lesson      TEXT REFERENCES lesson (id),
  day         TEXT NOT NULL,
  place       TEXT NOT NULL DEFAULT ''                -- where in play, as in "game 2" or "from the back wall"
) STRICT;
CREATE INDEX sighting_observation ON sighting (observation, day);
CREATE INDEX sighting_visit ON sighting (visit);

CREATE TABLE assessment (
  id      TEXT PRIMARY KEY NOT NULL,
  student TEXT NOT NULL REFERENCES student (id),
  visit   TEXT REFERENCES visit (id),
  day     TEXT NOT NULL,
  sport   TEXT NOT NULL,                              -- the pack whose scale it uses
  note    TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX assessment_student ON assessment (student, day);

CREATE TABLE assessment_level (
  id         TEXT PRIMARY KEY NOT NULL,               -- assessment id and skill, joined by ':'
  assessment TEXT NOT NULL REFERENCES assessment (id),
  skill      TEXT NOT NULL,
  level      INTEGER NOT NULL CHECK (level BETWEEN 0 AND 4),
  note       TEXT NOT NULL DEFAULT '',
  UNIQUE (assessment, skill)
) STRICT;

CREATE TABLE test_taken (
  id      TEXT PRIMARY KEY NOT NULL,
  student TEXT NOT NULL REFERENCES student (id),
  visit   TEXT REFERENCES visit (id),
  day     TEXT NOT NULL,
  sport   TEXT NOT NULL,
  test    TEXT NOT NULL,                              -- a pack's test
  parts   TEXT NOT NULL CHECK (json_valid(parts)),    -- what was counted, part by part: {part: number as text}
  total   TEXT NOT NULL,                              -- a decimal number
  note    TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX test_taken_student ON test_taken (student, day);

CREATE TABLE drill (
  id      TEXT PRIMARY KEY NOT NULL,                  -- the coach's own
  sport   TEXT NOT NULL,
  name    TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
  skill   TEXT NOT NULL DEFAULT '',
  purpose TEXT NOT NULL DEFAULT '',
  layout  TEXT NOT NULL DEFAULT '',                   -- who stands where, what is fed
  steps   TEXT NOT NULL DEFAULT '',                   -- progressions, one a line, easiest first
  archived TEXT,
  UNIQUE (sport, name)
) STRICT;

CREATE TABLE plan_line (
  id      TEXT PRIMARY KEY NOT NULL,
  lesson  TEXT NOT NULL REFERENCES lesson (id),
  place   INTEGER NOT NULL CHECK (place >= 1),
  minutes INTEGER NOT NULL CHECK (minutes BETWEEN 1 AND 600),
  drill   TEXT NOT NULL DEFAULT '',                   -- a pack's drill or the coach's own; '' for none
  goal    TEXT REFERENCES goal (id),
  words   TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX plan_line_lesson ON plan_line (lesson, place);

CREATE TABLE plan_template (
  id    TEXT PRIMARY KEY NOT NULL,
  name  TEXT NOT NULL UNIQUE CHECK (length(name) BETWEEN 1 AND 200),
  lines TEXT NOT NULL CHECK (json_valid(lines))       -- [{minutes, drill, words}, …]
) STRICT;

CREATE TABLE home_plan (
  id      TEXT PRIMARY KEY NOT NULL,
  student TEXT NOT NULL REFERENCES student (id),
  visit   TEXT NOT NULL UNIQUE REFERENCES visit (id), -- the visit after which it is done
  warm_up TEXT NOT NULL DEFAULT '',                   -- the standing warm-up, as it was then
  note    TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE home_line (
  id      TEXT PRIMARY KEY NOT NULL,
  plan    TEXT NOT NULL REFERENCES home_plan (id),
  place   INTEGER NOT NULL CHECK (place >= 1),
  goal    TEXT REFERENCES goal (id),
  what    TEXT NOT NULL CHECK (length(what) BETWEEN 1 AND 200), -- the shot or exercise
  amount  INTEGER NOT NULL CHECK (amount BETWEEN 1 AND 500),
  unit    TEXT NOT NULL CHECK (unit IN ('tries', 'minutes')),
  a_week  INTEGER NOT NULL CHECK (a_week BETWEEN 1 AND 14),     -- how often
  told    TEXT NOT NULL DEFAULT '',                   -- the report back in the student's words; always as told
  told_on TEXT                                        -- the day it was told
) STRICT;
CREATE INDEX home_line_plan ON home_line (plan, place);

-- The student's own rating of a lesson, 0 to 10; NULL: not asked.
ALTER TABLE lesson_student ADD COLUMN effort INTEGER CHECK (effort BETWEEN 0 AND 10);

ALTER TABLE student ADD COLUMN usual_minutes INTEGER CHECK (usual_minutes BETWEEN 0 AND 10080); -- on court in a usual week; NULL: not known
ALTER TABLE student ADD COLUMN division TEXT;         -- the division played in, of the pack's list or in the coach's words
ALTER TABLE student ADD COLUMN language TEXT CHECK (language IN ('de')); -- of the letters; NULL: English

CREATE TABLE student_fact (
  id      TEXT PRIMARY KEY NOT NULL,
  student TEXT NOT NULL REFERENCES student (id),
  kind    TEXT NOT NULL CHECK (kind IN ('equipment', 'level', 'history')),
  day     TEXT NOT NULL,                              -- from when, or when
  words   TEXT NOT NULL CHECK (length(words) BETWEEN 1 AND 500)
) STRICT;
CREATE INDEX student_fact_student ON student_fact (student, day);

-- What changed is read without the tries: they are many, and each stands in its block.
CREATE INDEX journal_acts ON journal (seq) WHERE act <> 'goals.touch';
