-- The schema a new coach file gets, as SQLite keeps it: what all migrations together come to.
-- Written from a new file; a test compares the two.
CREATE INDEX acknowledgement_student ON acknowledgement (student, version);

CREATE INDEX assessment_student ON assessment (student, day);

CREATE INDEX block_open ON block (goal) WHERE ended IS NULL;

CREATE INDEX block_visit ON block (visit);

CREATE INDEX clearance_student ON clearance (student);

CREATE INDEX consent_student ON consent (student, kind, day);

CREATE INDEX cost_day ON cost (day);

CREATE INDEX cost_passed_cost ON cost_passed (cost);

CREATE INDEX court_booking_day ON court_booking (day, facility);

CREATE INDEX decision_goal ON decision (goal);

CREATE INDEX entry_currency ON entry (currency);

CREATE INDEX entry_day ON entry (day);

CREATE INDEX facility_ahead_facility ON facility_ahead (facility, place);

CREATE INDEX facility_closure_facility ON facility_closure (facility, place);

CREATE INDEX facility_form_student ON facility_form (student, facility);

CREATE INDEX facility_hours_facility ON facility_hours (facility, place);

CREATE INDEX facility_rate_facility ON facility_rate (facility, place);

CREATE INDEX facility_release_facility ON facility_release (facility, place);

CREATE INDEX follow_up_left_student ON follow_up_left (student);

CREATE INDEX goal_student ON goal (student, rank);

CREATE INDEX goal_title ON goal (title, id);

CREATE INDEX goal_visit_visit ON goal_visit (visit);

CREATE INDEX goal_words_goal ON goal_words (goal, since);

CREATE INDEX home_line_plan ON home_line (plan, place);

CREATE INDEX incident_addition_incident ON incident_addition (incident);

CREATE INDEX incident_day ON incident (day);

CREATE INDEX incident_student ON incident (student);

CREATE INDEX injury_student ON injury (student);

CREATE INDEX intake_page_student ON intake_page (student);

CREATE INDEX invoice_corrects ON invoice (corrects);

CREATE INDEX invoice_day ON invoice (day);

CREATE INDEX invoice_draft ON invoice (id) WHERE issued IS NULL;

CREATE INDEX invoice_line_corrects ON invoice_line (corrects);

CREATE INDEX invoice_line_package ON invoice_line (package);

CREATE INDEX invoice_payer ON invoice (payer);

CREATE INDEX jotting_visit ON jotting (visit);

CREATE INDEX journal_acts ON journal (seq) WHERE act <> 'goals.touch';

CREATE UNIQUE INDEX journal_undoes ON journal (undoes) WHERE undoes IS NOT NULL;

CREATE INDEX lesson_day ON lesson (day, starts);

CREATE INDEX lesson_student_visit ON lesson_student (visit);

CREATE INDEX letter_issued ON letter (issued) WHERE issued IS NOT NULL;

CREATE UNIQUE INDEX letter_one_draft ON letter (visit) WHERE issued IS NULL;

CREATE INDEX letter_visit ON letter (visit);

CREATE INDEX message_bytes_message ON message_bytes (message);

CREATE UNIQUE INDEX message_cause ON message (cause) WHERE state <> 'withdrawn';

CREATE INDEX message_changed ON message (changed, id);

CREATE INDEX message_invoice ON message (invoice);

CREATE INDEX message_next ON message (next, id) WHERE next IS NOT NULL;

CREATE INDEX message_payer ON message (payer, changed);

CREATE INDEX message_state ON message (state, changed, id);

CREATE INDEX message_step_message ON message_step (message, at);

CREATE INDEX message_student ON message (student, changed);

CREATE INDEX message_together ON message (together);

CREATE INDEX message_visit ON message (visit);

CREATE INDEX offer_visit ON offer (visit, made);

CREATE INDEX own_calendar_time_ends ON own_calendar_time (calendar, ends);

CREATE INDEX plan_line_lesson ON plan_line (lesson, place);

CREATE INDEX posting_account ON posting (account, payer);

CREATE INDEX posting_day ON posting (day);

CREATE INDEX posting_entry ON posting (entry);

CREATE INDEX posting_invoice ON posting (invoice);

CREATE INDEX posting_open ON posting (account, invoice, amount);

CREATE INDEX posting_package ON posting (package);

CREATE INDEX posting_standing ON posting (account, day, amount);

CREATE INDEX readiness_student ON readiness (student, day);

CREATE INDEX settled_lesson ON settled (lesson);

CREATE INDEX settled_line ON settled (line);

CREATE INDEX sighting_day ON sighting (day);

CREATE INDEX sighting_observation ON sighting (observation, day);

CREATE INDEX sighting_visit ON sighting (visit);

CREATE INDEX standing_move_day ON standing_move (day, state);

CREATE INDEX standing_rules ON standing (rules);

CREATE INDEX standing_state ON standing (state, since);

CREATE INDEX student_fact_student ON student_fact (student, day);

CREATE INDEX student_folded ON student (folded);

CREATE INDEX test_taken_student ON test_taken (student, day);

CREATE INDEX unit_move_entry ON unit_move (entry);

CREATE INDEX unit_move_package ON unit_move (package);

CREATE INDEX visit_days ON visit (first_day, last_day);

CREATE INDEX visit_expected ON visit (expected_from) WHERE first_day IS NULL AND called_off IS NULL;

CREATE INDEX visit_last ON visit (last_day, id);

CREATE INDEX visit_running ON visit (last_day) WHERE opened IS NOT NULL AND closed IS NULL;

CREATE INDEX visit_student ON visit (student, first_day);

CREATE INDEX went_on_student ON went_on (student);

CREATE INDEX wish_shared_visit ON wish_shared (visit);

CREATE TABLE acknowledgement (
  id       TEXT PRIMARY KEY NOT NULL,
  version  TEXT NOT NULL REFERENCES notice_version (id),
  student  TEXT NOT NULL REFERENCES student (id),
  name     TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200), -- as typed, or as signed on paper
  relation TEXT NOT NULL CHECK (relation IN ('self', 'guardian')),
  as_what  TEXT NOT NULL DEFAULT '',                  -- mother, father
  day      TEXT NOT NULL,
  how      TEXT NOT NULL CHECK (how IN ('screen', 'paper')),
  scan     TEXT REFERENCES scan (id),
  seal     TEXT NOT NULL                              -- SHA-256 of the text's digest and all of the above
) STRICT;

CREATE TABLE assessment (
  id      TEXT PRIMARY KEY NOT NULL,
  student TEXT NOT NULL REFERENCES student (id),
  visit   TEXT REFERENCES visit (id),
  day     TEXT NOT NULL,
  sport   TEXT NOT NULL,                              -- the pack whose scale it uses
  note    TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE assessment_level (
  id         TEXT PRIMARY KEY NOT NULL,               -- assessment id and skill, joined by ':'
  assessment TEXT NOT NULL REFERENCES assessment (id),
  skill      TEXT NOT NULL,
  level      INTEGER NOT NULL CHECK (level BETWEEN 0 AND 4),
  note       TEXT NOT NULL DEFAULT '',
  UNIQUE (assessment, skill)
) STRICT;

CREATE TABLE backup_made (
  path TEXT PRIMARY KEY NOT NULL,                     -- where the coach had it put
  at   TEXT NOT NULL                                  -- the instant
) STRICT, WITHOUT ROWID;

CREATE TABLE "block" (
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

CREATE TABLE block_miss (
  id     TEXT PRIMARY KEY NOT NULL,
  block  TEXT NOT NULL REFERENCES block (id),
  reason TEXT NOT NULL CHECK (length(reason) BETWEEN 1 AND 200),
  times  INTEGER NOT NULL CHECK (times BETWEEN 1 AND 10000), -- misses put down to it
  UNIQUE (block, reason)
) STRICT;

CREATE TABLE block_try (
  id    TEXT PRIMARY KEY NOT NULL,
  block TEXT NOT NULL REFERENCES block (id),
  place INTEGER NOT NULL CHECK (place >= 1),          -- the order of touches
  made  INTEGER NOT NULL CHECK (made IN (0, 1)),
  taken_back INTEGER NOT NULL DEFAULT 0 CHECK (taken_back IN (0, 1)), also INTEGER CHECK (also IN (0, 1)), -- 1: a slip of the finger, not counted
  UNIQUE (block, place)
) STRICT;

CREATE TABLE calendar_entry (
  lesson  TEXT PRIMARY KEY NOT NULL,                  -- no reference: the lesson may be gone by Undo, its entry still there
  href    TEXT NOT NULL,
  etag    TEXT NOT NULL,
  agreed  TEXT NOT NULL,                              -- JSON: what both sides said last
  theirs  TEXT NOT NULL DEFAULT '',                   -- JSON: what the server says otherwise, until the coach has decided; 'gone' when it is no longer there
  text    TEXT NOT NULL                               -- the server's text
) STRICT;

CREATE TABLE certificate (
  id       TEXT PRIMARY KEY NOT NULL,
  kind     TEXT NOT NULL CHECK (kind IN ('first_aid', 'background_check', 'safeguarding', 'insurance', 'instructor', 'other')),
  words    TEXT NOT NULL CHECK (length(words) BETWEEN 1 AND 200),
  by_whom  TEXT NOT NULL DEFAULT '',
  number   TEXT NOT NULL DEFAULT '',
  since    TEXT,
  until    TEXT,                                      -- the last day it holds; NULL: no end
  scan     TEXT,                                      -- no reference: the scan is the coach's alone, nothing of a student's leads to it
  archived TEXT
) STRICT;

CREATE TABLE clearance (
  id         TEXT PRIMARY KEY NOT NULL,
  student    TEXT NOT NULL REFERENCES student (id),
  injury     TEXT REFERENCES injury (id),             -- NULL: about exercise, after the readiness questions
  by_whom    TEXT NOT NULL CHECK (length(by_whom) BETWEEN 1 AND 200),
  profession TEXT NOT NULL CHECK (length(profession) BETWEEN 1 AND 200),
  day        TEXT NOT NULL,                           -- the day it was written
  says       TEXT NOT NULL CHECK (length(says) >= 1), -- for what, with every limit
  until      TEXT,                                    -- the last day it holds; NULL: no end was written
  scan       TEXT REFERENCES scan (id),
  withdrawn  TEXT,                                    -- the day it was withdrawn
  why        TEXT NOT NULL DEFAULT ''
, seen TEXT CHECK (length(seen) BETWEEN 1 AND 20000)) STRICT;

CREATE TABLE consent (
  id        TEXT PRIMARY KEY NOT NULL,
  student   TEXT REFERENCES student (id),
  guest     TEXT,                                     -- the name of someone who is no student
  kind      TEXT NOT NULL CHECK (kind IN ('lessons', 'health_data', 'recording', 'publishing', 'photographs', 'messages', 'emergency_treatment', 'transport')),
  given     INTEGER NOT NULL CHECK (given IN (0, 1)),
  name      TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200), -- who answered
  relation  TEXT NOT NULL CHECK (relation IN ('self', 'guardian')),
  as_what   TEXT NOT NULL DEFAULT '',
  day       TEXT NOT NULL,
  how       TEXT NOT NULL CHECK (how IN ('screen', 'paper')),
  scan      TEXT REFERENCES scan (id),
  until     TEXT,                                     -- the last day it holds; NULL: until withdrawn
  withdrawn TEXT,                                     -- the day
  by_whom   TEXT NOT NULL DEFAULT '',                 -- who withdrew it
  CHECK ((student IS NULL) <> (guest IS NULL)),
  CHECK (withdrawn IS NULL OR given = 1)
) STRICT;

CREATE TABLE cost (
  id         TEXT PRIMARY KEY NOT NULL,
  kind       TEXT NOT NULL CHECK (kind IN ('drive', 'fare', 'lodging', 'meals', 'day_rate', 'court', 'equipment', 'dues', 'other')),
  day        TEXT NOT NULL,                           -- the first day
  last       TEXT NOT NULL,                           -- the last day; the same where it is one day
  words      TEXT NOT NULL CHECK (length(words) BETWEEN 1 AND 200), -- what it was, where and for which purpose
  town       TEXT NOT NULL DEFAULT '',
  currency   TEXT NOT NULL CHECK (length(currency) = 3),            -- ISO 4217
  amount     INTEGER NOT NULL CHECK (amount >= 0),    -- in the currency's smallest unit
  distance   TEXT,                                    -- of a drive: a decimal number
  unit       TEXT CHECK (unit IN ('mile', 'km')),
  worked     TEXT NOT NULL DEFAULT '',                -- how the amount was worked out, with rate and source; '': as typed
  receipt    TEXT,                                    -- no reference: the receipt is the coach's alone, nothing of a student's leads to it
  taken_back TEXT,                                    -- the day it was taken back; NULL: it counts
  why        TEXT NOT NULL DEFAULT '', tax INTEGER CHECK (tax >= 0),
  CHECK (day <= last),
  CHECK ((kind = 'drive') = (distance IS NOT NULL)),
  CHECK ((distance IS NULL) = (unit IS NULL))
) STRICT;

CREATE TABLE cost_passed (
  id   TEXT PRIMARY KEY NOT NULL,
  cost TEXT NOT NULL REFERENCES cost (id),
  line TEXT NOT NULL,                                 -- the invoice line; no reference: a draft can be discarded
  day  TEXT NOT NULL
) STRICT;

CREATE TABLE cost_rate (
  id       TEXT PRIMARY KEY NOT NULL,
  per      TEXT NOT NULL CHECK (per IN ('mile', 'km', 'day')),
  since    TEXT NOT NULL,                             -- the first day it holds
  until    TEXT,                                      -- the last; NULL: not known yet
  currency TEXT NOT NULL CHECK (length(currency) = 3),
  amount   TEXT NOT NULL,                             -- a decimal: rates have more places than a currency
  edge     TEXT,                                      -- percent of it on the first and the last day away; NULL: the whole
  source   TEXT NOT NULL CHECK (length(source) >= 1), -- who says so
  archived TEXT,                                      -- the day it was put away
  CHECK (until IS NULL OR since <= until)
) STRICT;

CREATE TABLE court (
  id       TEXT PRIMARY KEY NOT NULL,
  facility TEXT NOT NULL REFERENCES facility (id),
  name     TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
  notes    TEXT NOT NULL DEFAULT '',
  archived TEXT, ground TEXT, seen TEXT CHECK (seen IN ('yes', 'no')),
  UNIQUE (facility, name)
) STRICT;

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

CREATE TABLE emergency_contact (
  id       TEXT PRIMARY KEY NOT NULL REFERENCES student (id),
  name     TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
  relation TEXT NOT NULL DEFAULT '',
  phone    TEXT NOT NULL CHECK (length(phone) BETWEEN 1 AND 200),
  other    TEXT NOT NULL DEFAULT ''                   -- a second number
) STRICT;

CREATE TABLE entry (
  id       TEXT PRIMARY KEY NOT NULL,
  ref      TEXT NOT NULL UNIQUE,                      -- what it is an entry of: the same is never entered twice
  day      TEXT NOT NULL,
  kind     TEXT NOT NULL CHECK (kind IN ('invoice', 'credit_note', 'payment', 'applied', 'paid_back', 'write_off', 'lesson', 'late', 'lapsed', 'bonus', 'moved', 'reversal')),
  words    TEXT NOT NULL DEFAULT '',
  currency TEXT NOT NULL CHECK (length(currency) = 3),
  reverses TEXT UNIQUE REFERENCES entry (id)          -- what it takes back, once
) STRICT;

CREATE TABLE erasing (
  kind TEXT NOT NULL,                                 -- a table
  id   TEXT NOT NULL,                                 -- a row of it that goes, or loses what it says of the person
  PRIMARY KEY (kind, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE facility (
  id       TEXT PRIMARY KEY NOT NULL,
  name     TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
  town     TEXT NOT NULL DEFAULT '',
  zone     TEXT NOT NULL,                             -- IANA name: times on its courts are civil times in this zone
  address  TEXT NOT NULL DEFAULT '',
  notes    TEXT NOT NULL DEFAULT '',
  archived TEXT
, visitors TEXT) STRICT;

CREATE TABLE facility_ahead (
  id       TEXT PRIMARY KEY NOT NULL,
  facility TEXT NOT NULL REFERENCES facility (id),
  place    INTEGER NOT NULL CHECK (place >= 1),
  who      TEXT NOT NULL DEFAULT '',
  ground   TEXT NOT NULL DEFAULT '',
  amount   INTEGER NOT NULL CHECK (amount BETWEEN 0 AND 1000),
  unit     TEXT NOT NULL CHECK (unit IN ('hours', 'days', 'months')), -- hours as they pass, days and months on the calendar
  opens    TEXT                                       -- the time on that day; NULL: from midnight, and with hours
) STRICT;

CREATE TABLE facility_card (
  id            TEXT PRIMARY KEY NOT NULL REFERENCES facility (id),
  desk          TEXT NOT NULL DEFAULT '',             -- who is at the desk
  desk_phone    TEXT NOT NULL DEFAULT '',
  desk_email    TEXT NOT NULL DEFAULT '',
  entrance      TEXT NOT NULL DEFAULT '',             -- the exact address and entrance, as told to an ambulance
  phone         TEXT NOT NULL DEFAULT '',             -- where a telephone is, and the local emergency number
  defibrillator TEXT NOT NULL DEFAULT '',
  first_aid     TEXT NOT NULL DEFAULT '',
  hospital      TEXT NOT NULL DEFAULT '',             -- the nearest
  seen          TEXT                                  -- the day the coach looked
) STRICT;

CREATE TABLE facility_closure (
  id       TEXT PRIMARY KEY NOT NULL,
  facility TEXT NOT NULL REFERENCES facility (id),
  place    INTEGER NOT NULL CHECK (place >= 1),
  court    TEXT REFERENCES court (id),                -- NULL: all courts
  first    TEXT,                                      -- NULL: always
  last     TEXT,
  weekdays TEXT NOT NULL,
  starts   TEXT,                                      -- NULL: the whole day
  ends     TEXT,
  reason   TEXT NOT NULL DEFAULT '',
  CHECK ((first IS NULL) = (last IS NULL)),
  CHECK (first IS NULL OR first <= last),
  CHECK ((starts IS NULL) = (ends IS NULL))
) STRICT;

CREATE TABLE facility_form (
  id       TEXT PRIMARY KEY NOT NULL,
  student  TEXT NOT NULL REFERENCES student (id),
  facility TEXT NOT NULL REFERENCES facility (id),
  signed   TEXT NOT NULL,                             -- the day
  until    TEXT,                                      -- the last day it holds; NULL: no end was told
  kept     TEXT NOT NULL DEFAULT '',                  -- where the signed form is
  scan     TEXT REFERENCES scan (id)
) STRICT;

CREATE TABLE facility_hours (
  id       TEXT PRIMARY KEY NOT NULL,
  facility TEXT NOT NULL REFERENCES facility (id),
  place    INTEGER NOT NULL CHECK (place >= 1),
  weekdays TEXT NOT NULL,                             -- ISO 8601 numbers, as in 12345; '' every day
  opens    TEXT NOT NULL,
  closes   TEXT NOT NULL,                             -- 00:00 means midnight at the day's end
  first    TEXT,                                      -- the season's first day; NULL: always
  last     TEXT,
  CHECK ((first IS NULL) = (last IS NULL)),
  CHECK (first IS NULL OR first <= last)
) STRICT;

CREATE TABLE facility_policy (
  id            TEXT PRIMARY KEY NOT NULL REFERENCES facility (id),
  name          TEXT NOT NULL DEFAULT '',             -- of its policy or waiver
  link          TEXT NOT NULL DEFAULT '',
  seen          TEXT,                                 -- the day the coach read it
  form_needed   INTEGER NOT NULL CHECK (form_needed IN (0, 1)), -- each player signs the facility's own form
  form_where    TEXT NOT NULL DEFAULT '',             -- where to sign it, and where signed ones are
  observable    INTEGER NOT NULL CHECK (observable IN (0, 1)),  -- a minor's lesson must be seen from outside
  adult_present INTEGER NOT NULL CHECK (adult_present IN (0, 1)), -- another adult has to be there for a minor's lesson
  youngest      INTEGER CHECK (youngest BETWEEN 0 AND 99),      -- the age from which one may be on court; NULL: not told
  rules         TEXT NOT NULL DEFAULT ''              -- what else it says
) STRICT;

CREATE TABLE facility_rate (
  id       TEXT PRIMARY KEY NOT NULL,
  facility TEXT NOT NULL REFERENCES facility (id),
  place    INTEGER NOT NULL CHECK (place >= 1),
  who      TEXT NOT NULL DEFAULT '',                  -- '' everyone
  ground   TEXT NOT NULL DEFAULT '',                  -- '' every court
  weekdays TEXT NOT NULL,
  starts   TEXT,                                      -- NULL: all day
  ends     TEXT,
  hour     INTEGER NOT NULL CHECK (hour >= 0),        -- minor units
  CHECK ((starts IS NULL) = (ends IS NULL))
) STRICT;

CREATE TABLE facility_release (
  id       TEXT PRIMARY KEY NOT NULL,
  facility TEXT NOT NULL REFERENCES facility (id),
  place    INTEGER NOT NULL CHECK (place >= 1),
  ground   TEXT NOT NULL DEFAULT '',
  hours    INTEGER NOT NULL CHECK (hours BETWEEN 0 AND 2000), -- before the start, that hour included
  clock    TEXT NOT NULL CHECK (clock IN ('elapsed', 'wall')),
  later    TEXT NOT NULL CHECK (later IN ('full', 'fee', 'nothing')),
  fee      INTEGER NOT NULL DEFAULT 0 CHECK (fee >= 0) -- minor units, with 'fee'
) STRICT;

CREATE TABLE facility_rules (
  id           TEXT PRIMARY KEY NOT NULL REFERENCES facility (id),
  currency     TEXT NOT NULL DEFAULT '',              -- ISO 4217
  books_as     TEXT NOT NULL DEFAULT '',              -- what the coach is there: member, guest
  grid         INTEGER NOT NULL DEFAULT 0 CHECK (grid BETWEEN 0 AND 240),          -- minutes: bookings start on its multiples
  shortest     INTEGER NOT NULL DEFAULT 0 CHECK (shortest BETWEEN 0 AND 1440),     -- minutes of one booking
  longest      INTEGER NOT NULL DEFAULT 0 CHECK (longest BETWEEN 0 AND 1440),
  day_limit    INTEGER NOT NULL DEFAULT 0 CHECK (day_limit BETWEEN 0 AND 1440),    -- minutes a day
  week_limit   INTEGER NOT NULL DEFAULT 0 CHECK (week_limit BETWEEN 0 AND 10080),  -- minutes in any seven days
  day_bookings INTEGER NOT NULL DEFAULT 0 CHECK (day_bookings BETWEEN 0 AND 48),   -- bookings a day
  apart        INTEGER NOT NULL DEFAULT 0 CHECK (apart IN (0, 1)),                 -- 1: no two bookings in a row
  one_by_one   INTEGER NOT NULL DEFAULT 0 CHECK (one_by_one IN (0, 1)),            -- 1: one is played before the next is made
  people       INTEGER NOT NULL DEFAULT 0 CHECK (people BETWEEN 0 AND 100),        -- the most on a court
  booking_fee  INTEGER NOT NULL DEFAULT 0 CHECK (booking_fee >= 0),                -- minor units, for each booking
  guest_fee    INTEGER NOT NULL DEFAULT 0 CHECK (guest_fee >= 0),                  -- minor units, for each guest
  grace        INTEGER NOT NULL DEFAULT 0 CHECK (grace BETWEEN 0 AND 240),         -- minutes late until a court is lost
  weather_free INTEGER NOT NULL DEFAULT 0 CHECK (weather_free IN (0, 1)),          -- 1: a court rained out costs nothing
  youngest     INTEGER NOT NULL DEFAULT 0 CHECK (youngest BETWEEN 0 AND 100),      -- years: the youngest who may book
  needs        TEXT NOT NULL DEFAULT '',              -- what everyone on court needs, as in eye protection
  source       TEXT NOT NULL DEFAULT '',              -- where the rules stand
  source_seen  TEXT                                   -- the day they were read there
) STRICT;

CREATE TABLE facility_teaching (
  id           TEXT PRIMARY KEY NOT NULL REFERENCES facility (id),
  state        TEXT NOT NULL CHECK (state IN ('not_asked', 'asked', 'granted', 'refused')),
  by_whom      TEXT NOT NULL DEFAULT '',
  until        TEXT,                                  -- the last day; NULL: without end, or not told
  papers       TEXT NOT NULL DEFAULT '',              -- what must be shown, as in an insurance certificate
  papers_until TEXT,
  note         TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE follow_up_left (
  id  TEXT PRIMARY KEY NOT NULL,                      -- what was proposed, and about which record
  student TEXT REFERENCES student (id),               -- about whom; NULL: about nobody, as an invoice
  day TEXT NOT NULL                                   -- when the coach left it
) STRICT;

CREATE TABLE "goal" (
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
, landed TEXT) STRICT;

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

CREATE TABLE home_plan (
  id      TEXT PRIMARY KEY NOT NULL,
  student TEXT NOT NULL REFERENCES student (id),
  visit   TEXT NOT NULL UNIQUE REFERENCES visit (id), -- the visit after which it is done
  warm_up TEXT NOT NULL DEFAULT '',                   -- the standing warm-up, as it was then
  note    TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE incident (
  id              TEXT PRIMARY KEY NOT NULL,
  student         TEXT REFERENCES student (id),       -- NULL: someone who is no student
  lesson          TEXT REFERENCES lesson (id),
  person          TEXT NOT NULL DEFAULT '',           -- the name of whoever is no student
  role            TEXT NOT NULL DEFAULT '',           -- student, guest, opponent, bystander
  age             TEXT NOT NULL DEFAULT '',           -- as told
  guardian        TEXT NOT NULL DEFAULT '',           -- of a minor, with how to reach them
  day             TEXT NOT NULL,
  time            TEXT,                               -- NULL: not known
  facility        TEXT REFERENCES facility (id),
  place           TEXT NOT NULL DEFAULT '',           -- where exactly: court, corridor
  number          TEXT NOT NULL DEFAULT '',           -- the facility's own report number
  activity        TEXT NOT NULL DEFAULT '',
  happened        TEXT NOT NULL,                      -- in order, no opinion, no diagnosis
  body_part       TEXT NOT NULL DEFAULT '',           -- as the person says
  mechanism       TEXT NOT NULL DEFAULT '',
  equipment       TEXT NOT NULL DEFAULT '',           -- and eyewear worn
  first_aid       TEXT NOT NULL DEFAULT '',           -- and by whom
  called          TEXT NOT NULL CHECK (called IN ('yes', 'no', 'not_known')), -- the emergency service
  called_at       TEXT,                               -- time of day
  head            TEXT NOT NULL CHECK (head IN ('yes', 'no', 'not_known')),   -- a blow to the head, or signs after one
  head_cause      TEXT NOT NULL DEFAULT '',
  unconscious     TEXT NOT NULL DEFAULT '' CHECK (unconscious IN ('', 'yes', 'no', 'not_known')),
  memory          TEXT NOT NULL DEFAULT '' CHECK (memory IN ('', 'yes', 'no', 'not_known')),
  seizure         TEXT NOT NULL DEFAULT '' CHECK (seizure IN ('', 'yes', 'no', 'not_known')),
  earlier         TEXT NOT NULL DEFAULT '' CHECK (earlier IN ('', 'yes', 'no', 'not_known')), -- earlier concussions
  witnesses       TEXT NOT NULL DEFAULT '',           -- with how to reach them
  told            TEXT NOT NULL DEFAULT '',           -- who was told, and when
  follow_up       TEXT NOT NULL DEFAULT '',
  author          TEXT NOT NULL DEFAULT '',
  recorded        TEXT NOT NULL,                      -- instant
  signed          TEXT,                               -- instant; NULL: not signed yet
  signature       TEXT NOT NULL DEFAULT '',           -- as typed
  seal            TEXT NOT NULL DEFAULT '',           -- SHA-256 of all of the above at signing
  CHECK ((student IS NULL) = (person <> '')),
  CHECK ((signed IS NULL) = (seal = ''))
) STRICT;

CREATE TABLE incident_addition (
  id       TEXT PRIMARY KEY NOT NULL,
  incident TEXT NOT NULL REFERENCES incident (id),
  at       TEXT NOT NULL,                             -- instant
  words    TEXT NOT NULL CHECK (length(words) >= 1),
  author   TEXT NOT NULL
) STRICT;

CREATE TABLE injury (
  id       TEXT PRIMARY KEY NOT NULL,
  student  TEXT NOT NULL REFERENCES student (id),
  kind     TEXT NOT NULL CHECK (kind IN ('injury', 'restriction', 'head')),
  words    TEXT NOT NULL CHECK (length(words) >= 1),
  since    TEXT NOT NULL,                             -- the day it happened, or was told
  over     TEXT,                                      -- the day the student said it was over; NULL: goes on
  asks     INTEGER NOT NULL CHECK (asks IN (0, 1)),   -- no lesson before someone has cleared it; always so for the head
  incident TEXT REFERENCES incident (id),
  CHECK (kind <> 'head' OR asks = 1)
) STRICT;

CREATE TABLE intake (
  id               TEXT PRIMARY KEY NOT NULL REFERENCES student (id),
  asked            TEXT NOT NULL,                     -- the day it was last gone through
  experience       TEXT NOT NULL DEFAULT '',
  available        TEXT NOT NULL DEFAULT '',          -- when the student can usually come
  level_said       TEXT NOT NULL DEFAULT '',          -- how the student rates the own play
  level_seen       TEXT NOT NULL DEFAULT '',          -- what the coach makes of it
  racquet          TEXT NOT NULL DEFAULT '',
  grip             TEXT NOT NULL DEFAULT '',
  strings          TEXT NOT NULL DEFAULT '',          -- with their tension
  strung           TEXT,                              -- the day they were strung; NULL: not known
  eyewear          TEXT NOT NULL DEFAULT '',          -- the model; '' not asked or none
  eyewear_standard TEXT NOT NULL DEFAULT '',          -- as printed on it
  eyewear_seen     TEXT,                              -- the day the coach looked; NULL: nobody looked
  injuries_asked   TEXT                               -- the day injuries and restrictions were asked about; NULL: never
) STRICT;

CREATE TABLE intake_page (
  id      TEXT PRIMARY KEY NOT NULL,
  student TEXT NOT NULL REFERENCES student (id),
  token   TEXT NOT NULL UNIQUE,                       -- SHA-256 of what the page says of itself
  made    TEXT NOT NULL,                              -- the day
  until   TEXT NOT NULL,                              -- the last day its answers are read
  used    TEXT                                        -- the day answers were taken; NULL: not yet
) STRICT;

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

CREATE TABLE invoice (
  id        TEXT PRIMARY KEY NOT NULL,
  kind      TEXT NOT NULL CHECK (kind IN ('invoice', 'credit_note')),
  payer     TEXT NOT NULL REFERENCES payer (id),
  corrects  TEXT REFERENCES invoice (id),             -- of a credit note: the invoice
  currency  TEXT NOT NULL CHECK (length(currency) = 3),
  prices    TEXT NOT NULL CHECK (prices IN ('net', 'gross')),
  words     TEXT NOT NULL DEFAULT '',                 -- a remark above the lines
  step      INTEGER CHECK (step > 0),                 -- cash step to which what is due is rounded; NULL: none
  series    TEXT,                                     -- as issued: the series
  place     INTEGER CHECK (place > 0),                --   its place in the series, from 1 without a gap
  number    TEXT,                                     --   the number as printed
  day       TEXT,                                     --   the day of issue
  due       TEXT,                                     --   the last day to pay
  issued    TEXT,                                     --   the instant
  paper     TEXT CHECK (json_valid(paper)),           --   seller, buyer and sums, as printed
  net       INTEGER,                                  --   without tax
  tax       INTEGER,                                  --   tax
  gross     INTEGER,                                  --   with tax
  rounding  INTEGER,                                  --   what the cash step adds or takes off
  CHECK ((kind = 'credit_note') = (corrects IS NOT NULL)),
  CHECK ((issued IS NULL) = (number IS NULL)), CHECK ((issued IS NULL) = (series IS NULL)),
  CHECK ((issued IS NULL) = (place IS NULL)), CHECK ((issued IS NULL) = (day IS NULL)),
  CHECK ((issued IS NULL) = (due IS NULL)), CHECK ((issued IS NULL) = (paper IS NULL)),
  CHECK ((issued IS NULL) = (gross IS NULL)), CHECK ((issued IS NULL) = (net IS NULL)),
  CHECK ((issued IS NULL) = (tax IS NULL)), CHECK ((issued IS NULL) = (rounding IS NULL)),
  UNIQUE (series, place), UNIQUE (number)
) STRICT;

CREATE TABLE invoice_document (
  id     TEXT PRIMARY KEY NOT NULL REFERENCES invoice (id),
  pdf    BLOB NOT NULL,                               -- as issued, byte for byte
  sha256 TEXT NOT NULL,                               -- of pdf
  fonts  TEXT NOT NULL CHECK (json_valid(fonts))      -- fonts found on the machine that it used
) STRICT;

CREATE TABLE invoice_extra (
  id        TEXT PRIMARY KEY NOT NULL,
  invoice   TEXT NOT NULL REFERENCES invoice (id),
  place     INTEGER NOT NULL CHECK (place > 0),
  takes_off INTEGER NOT NULL CHECK (takes_off IN (0, 1)), -- 1: taken off the whole, 0: put on it
  words     TEXT NOT NULL CHECK (length(words) BETWEEN 1 AND 200), -- why, as printed
  amount    INTEGER NOT NULL CHECK (amount > 0),      -- as the prices of the invoice: without or with tax
  category  TEXT CHECK (category IN ('S', 'Z', 'E', 'AE', 'K', 'G', 'O', 'L', 'M')), -- NULL: not set, ask
  rate      TEXT,                                     -- percent
  why       TEXT NOT NULL DEFAULT '',                 -- why no tax is charged
  CHECK ((category IS NULL) = (rate IS NULL)),
  UNIQUE (invoice, place)
) STRICT;

CREATE TABLE invoice_file (
  id    TEXT PRIMARY KEY NOT NULL REFERENCES invoice (id),
  ubl   TEXT,                                         -- UBL 2.1, as issued; NULL: none could be made
  cii   TEXT,                                         -- CII D16B, as it lies in the document; NULL likewise
  lacks TEXT NOT NULL DEFAULT '',                     -- why none could be made, in words
  CHECK ((ubl IS NULL) = (cii IS NULL)),
  CHECK ((ubl IS NULL) = (lacks <> ''))
) STRICT;

CREATE TABLE invoice_line (
  id        TEXT PRIMARY KEY NOT NULL,
  invoice   TEXT NOT NULL REFERENCES invoice (id),
  place     INTEGER NOT NULL CHECK (place > 0),
  what      TEXT NOT NULL CHECK (what IN ('lesson', 'late', 'court', 'package', 'analysis', 'travel', 'other')),
  words     TEXT NOT NULL CHECK (length(words) BETWEEN 1 AND 500),
  day       TEXT,                                     -- the day of supply; NULL: that of the invoice
  facility  TEXT REFERENCES facility (id),
  quantity  TEXT NOT NULL,                            -- a decimal above 0
  price     TEXT NOT NULL,                            -- a decimal, for one
  allowance INTEGER NOT NULL DEFAULT 0 CHECK (allowance >= 0), -- taken off the line, in smallest units
  reason    TEXT NOT NULL DEFAULT '',                 -- why
  category  TEXT CHECK (category IN ('S', 'Z', 'E', 'AE', 'K', 'G', 'O', 'L', 'M')), -- NULL: not set, ask
  rate      TEXT,                                     -- percent
  why       TEXT NOT NULL DEFAULT '',                 -- why no tax is charged
  package   TEXT REFERENCES package (id),             -- the package that this line sells, or gives back
  lessons   INTEGER CHECK (lessons > 0),              -- of a credit note: lessons of the package given back
  corrects  TEXT REFERENCES invoice_line (id),        -- of a credit note: the line
  total     INTEGER,                                  -- as issued, in smallest units
  CHECK ((category IS NULL) = (rate IS NULL)),
  UNIQUE (invoice, place)
) STRICT;

CREATE TABLE invoice_part (
  id      TEXT PRIMARY KEY NOT NULL,
  invoice TEXT NOT NULL REFERENCES invoice (id),
  place   INTEGER NOT NULL CHECK (place > 0),
  day     TEXT NOT NULL,                              -- the last day to pay it
  amount  INTEGER NOT NULL CHECK (amount > 0),        -- in smallest units; all of them are what is due
  UNIQUE (invoice, place)
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
, erased TEXT REFERENCES journal (id) DEFERRABLE INITIALLY DEFERRED) STRICT;

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
  visit   TEXT NOT NULL REFERENCES visit (id), effort INTEGER CHECK (effort BETWEEN 0 AND 10),
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

CREATE TABLE message (
  id           TEXT PRIMARY KEY NOT NULL,
  cause        TEXT NOT NULL,                         -- what it is about and who gets it: nothing goes out twice for the same
  together     TEXT NOT NULL,                         -- the first message of those that say the same to several people; its own id mostly
  kind         TEXT NOT NULL CHECK (kind IN ('letter', 'invoice', 'reminder', 'invitation', 'offer', 'home_plan', 'before_visit', 'questions',
    'home_report', 'come_again', 'words', 'trial')),
  student      TEXT REFERENCES student (id),          -- about whom; NULL: about nobody, as an invoice
  payer        TEXT REFERENCES payer (id),            -- to whom, where it is about money
  visit        TEXT REFERENCES visit (id),            -- about which, if any
  invoice      TEXT,                                  -- about which, if any; no reference: what was issued never goes
  made         TEXT NOT NULL,                         -- when it was put into the tray
  language     TEXT NOT NULL,                         -- BCP 47
  from_name    TEXT NOT NULL,
  from_address TEXT NOT NULL DEFAULT '',              -- '' while the coach has none
  to_name      TEXT NOT NULL,
  to_address   TEXT NOT NULL DEFAULT '',              -- '' where none is known: it can be told, not sent
  with_name    TEXT NOT NULL DEFAULT '',              -- the other adult who gets the same; '' for none
  with_address TEXT NOT NULL DEFAULT '',
  subject      TEXT NOT NULL,
  words        TEXT NOT NULL,                         -- the plain text
  gaps         TEXT NOT NULL DEFAULT '[]',            -- fields that had no value, each with why, as JSON
  method       TEXT NOT NULL DEFAULT '' CHECK (method IN ('', 'REQUEST', 'CANCEL')), -- of a calendar object in it (RFC 5546)
  mail_id      TEXT NOT NULL UNIQUE,                  -- Message-ID (RFC 5322), without its brackets
  state        TEXT NOT NULL CHECK (state IN ('to_read', 'waiting', 'going', 'accepted', 'again', 'stopped', 'unsure', 'withdrawn', 'told')),
  tries        INTEGER NOT NULL DEFAULT 0 CHECK (tries >= 0), -- how often it was tried
  first_try    TEXT,                                  -- when it was tried first; NULL: never
  next         TEXT,                                  -- when it is tried (again); NULL: not by itself
  trouble      TEXT,                                  -- what stood in its way last; NULL: nothing
  said         TEXT NOT NULL DEFAULT '',              -- what the server said, or how it was told
  changed      TEXT NOT NULL,                         -- when its state changed last
  sha256       TEXT,                                  -- of the bytes as they go out; NULL while it can be changed
  size         INTEGER CHECK (size > 0),              -- of these bytes
  CHECK ((sha256 IS NULL) = (size IS NULL))
) STRICT;

CREATE TABLE message_bytes (
  id      TEXT PRIMARY KEY NOT NULL,                  -- of the part, or of the message
  message TEXT NOT NULL REFERENCES message (id) ON DELETE CASCADE,
  bytes   BLOB NOT NULL
) STRICT;

CREATE TABLE message_part (
  id      TEXT PRIMARY KEY NOT NULL,
  message TEXT NOT NULL REFERENCES message (id),      -- the first of those that say the same
  place   INTEGER NOT NULL CHECK (place > 0),
  name    TEXT NOT NULL,                              -- of its file
  type    TEXT NOT NULL,                              -- media type (RFC 6838)
  size    INTEGER NOT NULL CHECK (size >= 0),
  sha256  TEXT NOT NULL,
  UNIQUE (message, place)
) STRICT;

CREATE TABLE message_step (
  id      TEXT PRIMARY KEY NOT NULL,
  message TEXT NOT NULL REFERENCES message (id),
  at      TEXT NOT NULL,
  state   TEXT NOT NULL,                              -- what it became
  trouble TEXT,                                       -- what stood in its way; NULL: nothing
  said    TEXT NOT NULL DEFAULT ''                    -- what the server said, or how it was told
) STRICT;

CREATE TABLE message_text (
  id       TEXT PRIMARY KEY NOT NULL,                 -- kind and language
  kind     TEXT NOT NULL,
  language TEXT NOT NULL,
  subject  TEXT NOT NULL,
  words    TEXT NOT NULL,
  UNIQUE (kind, language)
) STRICT;

CREATE TABLE notice (
  id       TEXT PRIMARY KEY NOT NULL,
  title    TEXT NOT NULL CHECK (length(title) BETWEEN 1 AND 200),
  facility TEXT REFERENCES facility (id),             -- NULL: everywhere
  sport    TEXT NOT NULL DEFAULT '',                  -- '' every sport
  language TEXT NOT NULL CHECK (language IN ('en', 'de')),
  archived TEXT
) STRICT;

CREATE TABLE notice_version (
  id      TEXT PRIMARY KEY NOT NULL,
  notice  TEXT NOT NULL REFERENCES notice (id),
  version INTEGER NOT NULL CHECK (version >= 1),
  made    TEXT NOT NULL,                              -- the day
  text    TEXT NOT NULL CHECK (length(text) >= 1),    -- what is acknowledged, to the letter
  sha256  TEXT NOT NULL,                              -- of the text
  parts   TEXT NOT NULL,                              -- JSON: the same text by its ten parts
  UNIQUE (notice, version)
) STRICT;

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

CREATE TABLE own_calendar (
  id      TEXT PRIMARY KEY NOT NULL,
  name    TEXT NOT NULL,
  role    TEXT NOT NULL CHECK (role IN ('busy', 'lessons')), -- it says when the coach is taken, or lessons are written into it
  href    TEXT,                                       -- its path on the server; NULL: it was read from a file
  removed TEXT                                        -- the day it was taken out
) STRICT;

CREATE TABLE own_calendar_known (
  calendar TEXT PRIMARY KEY NOT NULL REFERENCES own_calendar (id) ON DELETE CASCADE,
  read     TEXT NOT NULL,                             -- the instant
  until    TEXT NOT NULL,                             -- the day up to which its times are known
  events   INTEGER NOT NULL CHECK (events >= 0),      -- how many it holds, in those days or not
  notes    TEXT NOT NULL,                             -- what could not be read, a sentence a line
  token    TEXT                                       -- from what to ask its server for changes only (RFC 6578)
) STRICT;

CREATE TABLE own_calendar_part (
  calendar TEXT NOT NULL REFERENCES own_calendar (id) ON DELETE CASCADE,
  href     TEXT NOT NULL,                             -- '' of a file
  etag     TEXT NOT NULL,                             -- its version on the server; '' of a file
  text     BLOB NOT NULL,
  PRIMARY KEY (calendar, href)
) STRICT;

CREATE TABLE own_calendar_time (
  calendar TEXT NOT NULL REFERENCES own_calendar (id) ON DELETE CASCADE,
  starts   TEXT NOT NULL,                             -- an instant; of whole days the first of them
  ends     TEXT NOT NULL,                             -- an instant; of whole days the last of them
  whole    INTEGER NOT NULL CHECK (whole IN (0, 1)),  -- whether it is of whole days
  what     TEXT NOT NULL
) STRICT;

CREATE TABLE package (
  id       TEXT PRIMARY KEY NOT NULL,
  payer    TEXT NOT NULL REFERENCES payer (id),
  words    TEXT NOT NULL CHECK (length(words) BETWEEN 1 AND 200),
  lessons  INTEGER NOT NULL CHECK (lessons BETWEEN 1 AND 500), -- as sold
  minutes  INTEGER CHECK (minutes BETWEEN 5 AND 480), -- of each lesson; NULL: any
  currency TEXT NOT NULL CHECK (length(currency) = 3),
  price    INTEGER NOT NULL CHECK (price >= 0),       -- as invoiced: net or gross, as the invoice says
  single   INTEGER CHECK (single >= 0),               -- what one such lesson costs on its own; NULL: not known
  refund   TEXT NOT NULL CHECK (refund IN ('in_part', 'at_single')), -- what is paid back of what is left
  expires  TEXT,                                      -- the last day, as sold; NULL: no end
  gift     INTEGER NOT NULL DEFAULT 0 CHECK (gift IN (0, 1)), -- nothing is paid for it
  CHECK (gift = 0 OR price = 0)
) STRICT;

CREATE TABLE package_extension (
  id      TEXT PRIMARY KEY NOT NULL,
  package TEXT NOT NULL REFERENCES package (id),
  until   TEXT NOT NULL,                              -- the new last day
  reason  TEXT NOT NULL CHECK (length(reason) >= 1),
  day     TEXT NOT NULL                               -- the day it was said
) STRICT;

CREATE TABLE package_student (
  id      TEXT PRIMARY KEY NOT NULL,                  -- package id and student id, joined by ':'
  package TEXT NOT NULL REFERENCES package (id),
  student TEXT NOT NULL REFERENCES student (id),
  UNIQUE (package, student)
) STRICT;

CREATE TABLE payer (
  id       TEXT PRIMARY KEY NOT NULL,
  name     TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
  address  TEXT NOT NULL DEFAULT '',                  -- postal, several lines
  country  TEXT NOT NULL DEFAULT '' CHECK (length(country) IN (0, 2)), -- ISO 3166-1 alpha-2
  email    TEXT NOT NULL DEFAULT '',
  tax_id   TEXT NOT NULL DEFAULT '',                  -- the payer's own number for value added tax
  language TEXT NOT NULL CHECK (language IN ('en', 'de')),
  archived TEXT
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

CREATE TABLE plan_template (
  id    TEXT PRIMARY KEY NOT NULL,
  name  TEXT NOT NULL UNIQUE CHECK (length(name) BETWEEN 1 AND 200),
  lines TEXT NOT NULL CHECK (json_valid(lines))       -- [{minutes, drill, words}, …]
) STRICT;

CREATE TABLE posting (
  id       TEXT PRIMARY KEY NOT NULL,
  entry    TEXT NOT NULL REFERENCES entry (id) DEFERRABLE INITIALLY DEFERRED,
  account  TEXT NOT NULL CHECK (account IN ('bank', 'cash', 'card', 'cheque', 'receivable', 'credit', 'to_pay_back', 'deferred', 'earned', 'lapsed', 'tax_due', 'rounding', 'written_off')),
  amount   INTEGER NOT NULL CHECK (amount <> 0 AND abs(amount) <= 1000000000000000), -- above 0 debit, below 0 credit
  day      TEXT NOT NULL,                             -- the day it counts for: of what is earned, that of the lesson
  payer    TEXT REFERENCES payer (id),
  invoice  TEXT REFERENCES invoice (id),
  package  TEXT REFERENCES package (id),
  what     TEXT CHECK (what IN ('lesson', 'late', 'court', 'package', 'analysis', 'travel', 'other')),
  facility TEXT REFERENCES facility (id),
  tax      TEXT NOT NULL DEFAULT ''                   -- category and rate, as in 'S 19'
) STRICT;

CREATE TABLE price (
  id       TEXT PRIMARY KEY NOT NULL,
  what     TEXT NOT NULL CHECK (what IN ('lesson', 'package', 'analysis', 'travel', 'other')),
  words    TEXT NOT NULL DEFAULT '' CHECK (length(words) <= 200), -- its name, where it needs one
  facility TEXT REFERENCES facility (id),             -- NULL: everywhere
  minutes  INTEGER CHECK (minutes BETWEEN 5 AND 480), -- length of a lesson; NULL: any
  sharing  INTEGER NOT NULL DEFAULT 1 CHECK (sharing BETWEEN 1 AND 20), -- so many share the lesson
  each     INTEGER NOT NULL DEFAULT 0 CHECK (each IN (0, 1)), -- 1: the amount is for each of them
  lessons  INTEGER CHECK (lessons BETWEEN 1 AND 500), -- of a package
  months   INTEGER CHECK (months BETWEEN 1 AND 120),  -- a package holds so many months; NULL: no end
  currency TEXT NOT NULL CHECK (length(currency) = 3),
  amount   INTEGER NOT NULL CHECK (amount >= 0),      -- in the currency's smallest unit
  since    TEXT NOT NULL,
  until    TEXT,                                      -- the last day it holds; NULL: not known yet
  CHECK (until IS NULL OR since <= until),
  CHECK ((what = 'package') = (lessons IS NOT NULL))
) STRICT;

CREATE TABLE readiness (
  id       TEXT PRIMARY KEY NOT NULL,
  student  TEXT NOT NULL REFERENCES student (id),
  day      TEXT NOT NULL,
  active   TEXT NOT NULL CHECK (active IN ('yes', 'no', 'not_known')),
  disease  TEXT NOT NULL CHECK (disease IN ('yes', 'no', 'not_known')),
  symptoms TEXT NOT NULL CHECK (symptoms IN ('yes', 'no', 'not_known')),
  answered TEXT NOT NULL,                             -- who answered
  rules    TEXT NOT NULL                              -- the decision table used
) STRICT;

CREATE TABLE reminder (
  id       TEXT PRIMARY KEY NOT NULL,
  invoice  TEXT NOT NULL REFERENCES invoice (id),
  place    INTEGER NOT NULL CHECK (place > 0),        -- the first, the second ... of this invoice
  day      TEXT NOT NULL,
  due      TEXT NOT NULL,                             -- the new day to pay by
  open     INTEGER NOT NULL CHECK (open > 0),         -- what was open, in smallest units
  interest INTEGER NOT NULL DEFAULT 0 CHECK (interest >= 0), -- interest told of, in smallest units
  pdf      BLOB NOT NULL,                             -- as written, byte for byte
  sha256   TEXT NOT NULL,                             -- of pdf
  UNIQUE (invoice, place)
) STRICT;

CREATE TABLE scan (
  id     TEXT PRIMARY KEY NOT NULL,
  name   TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
  media  TEXT NOT NULL CHECK (media IN ('application/pdf', 'image/png', 'image/jpeg')),
  sha256 TEXT NOT NULL,
  bytes  BLOB NOT NULL CHECK (length(bytes) BETWEEN 1 AND 8388608)
) STRICT;

CREATE TABLE setting (
  id    TEXT PRIMARY KEY NOT NULL,                    -- its name, as in coach.name
  value TEXT NOT NULL CHECK (json_valid(value))
) STRICT;

CREATE TABLE settled (
  id      TEXT PRIMARY KEY NOT NULL,                  -- lesson id and student id, joined by ':'
  lesson  TEXT NOT NULL REFERENCES lesson (id),
  student TEXT NOT NULL REFERENCES student (id),
  how     TEXT NOT NULL CHECK (how IN ('package', 'invoice', 'free')),
  rule    TEXT NOT NULL DEFAULT '',                   -- which rule of the coach's terms applied, in words
  reason  TEXT NOT NULL DEFAULT '',                   -- why otherwise, in the coach's words
  entry   TEXT,                                       -- no reference: the entry stays when the student goes
  line    TEXT,                                       -- no reference: the invoice stays too
  court   TEXT,                                       -- the line of the court
  day     TEXT NOT NULL
, state TEXT, minutes INTEGER) STRICT;

CREATE TABLE sighting (
  id          TEXT PRIMARY KEY NOT NULL,
  observation TEXT NOT NULL REFERENCES observation (id),
  visit       TEXT REFERENCES visit (id),             -- NULL: between visits
  lesson      TEXT REFERENCES lesson (id),
  day         TEXT NOT NULL,
  place       TEXT NOT NULL DEFAULT ''                -- where in play, as in "game 2" or "from the back wall"
) STRICT;

CREATE TABLE skill (
  id       TEXT PRIMARY KEY NOT NULL,
  sport    TEXT NOT NULL,                             -- a sport pack's id
  name     TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
  good_try TEXT NOT NULL DEFAULT '',                  -- what makes a try good
  UNIQUE (sport, name)
) STRICT;

CREATE TABLE standing (
  goal  TEXT PRIMARY KEY NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('working', 'met', 'kept', 'slipped', 'raised', 'closed', 'set_aside')),
  why   TEXT NOT NULL,                                -- the reason, in words
  visit TEXT,                                         -- the last visit it was at; NULL: none yet
  since TEXT,                                         -- the last day of that visit; NULL while it is open
  rules INTEGER NOT NULL                              -- the edition of the rules it was derived by
) STRICT, WITHOUT ROWID;

CREATE TABLE standing_due (
  goal TEXT PRIMARY KEY NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE standing_move (
  goal  TEXT NOT NULL,
  place INTEGER NOT NULL,                             -- its order among the goal's moves
  day   TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('met', 'kept', 'slipped', 'raised')), -- where to
  visit TEXT,                                         -- NULL: between visits
  why   TEXT NOT NULL,
  PRIMARY KEY (goal, place)
) STRICT, WITHOUT ROWID;

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
, usual_minutes INTEGER CHECK (usual_minutes BETWEEN 0 AND 10080), division TEXT, language TEXT CHECK (language IN ('de')), home TEXT, heard TEXT, enquired TEXT) STRICT;

CREATE TABLE student_contact (
  id       TEXT PRIMARY KEY NOT NULL,                 -- student id and role, joined by ':'
  student  TEXT NOT NULL REFERENCES student (id),
  role     TEXT NOT NULL CHECK (role IN ('guardian', 'payer')),
  name     TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
  relation TEXT NOT NULL DEFAULT '',                  -- as in mother, club, employer
  email    TEXT NOT NULL DEFAULT '',
  phone    TEXT NOT NULL DEFAULT '',
  address  TEXT NOT NULL DEFAULT '', born TEXT,
  UNIQUE (student, role)
) STRICT;

CREATE TABLE student_fact (
  id      TEXT PRIMARY KEY NOT NULL,
  student TEXT NOT NULL REFERENCES student (id),
  kind    TEXT NOT NULL CHECK (kind IN ('equipment', 'level', 'history')),
  day     TEXT NOT NULL,                              -- from when, or when
  words   TEXT NOT NULL CHECK (length(words) BETWEEN 1 AND 500)
) STRICT;

CREATE TABLE student_payer (
  id      TEXT PRIMARY KEY NOT NULL REFERENCES student (id),
  payer   TEXT NOT NULL REFERENCES payer (id)
) STRICT;

CREATE TABLE tax_rule (
  id       TEXT PRIMARY KEY NOT NULL,
  what     TEXT CHECK (what IN ('lesson', 'late', 'court', 'package', 'analysis', 'travel', 'other')), -- NULL: every kind
  facility TEXT REFERENCES facility (id),             -- NULL: everywhere
  category TEXT NOT NULL CHECK (category IN ('S', 'Z', 'E', 'AE', 'K', 'G', 'O', 'L', 'M')), -- UNTDID 5305
  rate     TEXT NOT NULL,                             -- percent, a decimal
  why      TEXT NOT NULL DEFAULT '',                  -- the reason, where no tax is charged
  since    TEXT NOT NULL,
  until    TEXT,
  CHECK (until IS NULL OR since <= until)
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

CREATE TABLE uncleared (
  act TEXT PRIMARY KEY NOT NULL                       -- an erasing after which the file was not yet written anew, to the last free page
) STRICT, WITHOUT ROWID;

CREATE TABLE unit_move (
  id      TEXT PRIMARY KEY NOT NULL,
  entry   TEXT NOT NULL REFERENCES entry (id) DEFERRABLE INITIALLY DEFERRED,
  package TEXT NOT NULL REFERENCES package (id),
  lessons INTEGER NOT NULL CHECK (lessons <> 0)       -- above 0 more are owed, below 0 fewer
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

CREATE TABLE went_on (
  id      TEXT PRIMARY KEY NOT NULL,                  -- student id and lesson id or day, joined by ':'
  student TEXT NOT NULL REFERENCES student (id),
  lesson  TEXT REFERENCES lesson (id),                -- NULL: on a day without a planned lesson
  day     TEXT NOT NULL,
  at      TEXT NOT NULL,                              -- instant
  reason  TEXT NOT NULL CHECK (length(reason) >= 1),
  missing TEXT NOT NULL                               -- JSON: what was missing, in words
) STRICT;

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

CREATE TABLE wish_shared (
  id      TEXT PRIMARY KEY NOT NULL,
  visit   TEXT NOT NULL REFERENCES visit (id),        -- whose wish
  lessons INTEGER NOT NULL CHECK (lessons BETWEEN 1 AND 40) -- so many of the wish's lessons
) STRICT;

CREATE TABLE wish_sharer (
  id     TEXT PRIMARY KEY NOT NULL,
  shared TEXT NOT NULL REFERENCES wish_shared (id),
  visit  TEXT NOT NULL REFERENCES visit (id),
  UNIQUE (shared, visit)
) STRICT;

CREATE TRIGGER acknowledgement_keeps BEFORE DELETE ON acknowledgement
WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE kind = 'acknowledgement' AND id = OLD.id)
BEGIN
  SELECT RAISE(ABORT, 'an acknowledgement is never deleted');
END;

CREATE TRIGGER acknowledgement_kept BEFORE UPDATE ON acknowledgement BEGIN
  SELECT RAISE(ABORT, 'an acknowledgement does not change');
END;

CREATE TRIGGER consent_kept BEFORE UPDATE ON consent
WHEN OLD.kind <> NEW.kind OR OLD.given <> NEW.given OR OLD.name <> NEW.name OR OLD.relation <> NEW.relation
  OR OLD.day <> NEW.day OR OLD.how <> NEW.how OR OLD.student IS NOT NEW.student OR OLD.guest IS NOT NEW.guest
BEGIN
  SELECT RAISE(ABORT, 'a consent can be withdrawn, not changed');
END;

CREATE TRIGGER entry_balances BEFORE INSERT ON entry
WHEN (SELECT coalesce(sum(amount), 0) FROM posting WHERE entry = NEW.id) <> 0
BEGIN SELECT RAISE(ABORT, 'the entry does not balance'); END;

CREATE TRIGGER entry_kept BEFORE DELETE ON entry BEGIN SELECT RAISE(ABORT, 'an entry does not go'); END;

CREATE TRIGGER entry_says_something BEFORE INSERT ON entry
WHEN NOT EXISTS (SELECT 1 FROM posting WHERE entry = NEW.id) AND NOT EXISTS (SELECT 1 FROM unit_move WHERE entry = NEW.id)
BEGIN SELECT RAISE(ABORT, 'the entry is empty'); END;

CREATE TRIGGER entry_stays BEFORE UPDATE ON entry BEGIN SELECT RAISE(ABORT, 'an entry does not change'); END;

CREATE TRIGGER incident_addition_kept BEFORE UPDATE ON incident_addition BEGIN
  SELECT RAISE(ABORT, 'an addition to a report does not change');
END;

CREATE TRIGGER incident_sealed BEFORE UPDATE ON incident
WHEN OLD.signed IS NOT NULL AND NOT EXISTS (SELECT 1 FROM erasing WHERE kind = 'incident' AND id = OLD.id)
BEGIN
  SELECT RAISE(ABORT, 'a signed incident report does not change');
END;

CREATE TRIGGER incident_sealed_keeps BEFORE DELETE ON incident
WHEN OLD.signed IS NOT NULL AND NOT EXISTS (SELECT 1 FROM erasing WHERE kind = 'incident' AND id = OLD.id)
BEGIN
  SELECT RAISE(ABORT, 'a signed incident report is never deleted');
END;

CREATE TRIGGER injury_head_keeps BEFORE DELETE ON injury
WHEN OLD.kind = 'head' AND NOT EXISTS (SELECT 1 FROM erasing WHERE kind = 'injury' AND id = OLD.id)
BEGIN
  SELECT RAISE(ABORT, 'a head injury that was written down stays');
END;

CREATE TRIGGER injury_head_kept BEFORE UPDATE ON injury
WHEN OLD.kind = 'head' AND (NEW.kind <> 'head' OR NEW.since <> OLD.since OR NEW.student <> OLD.student)
BEGIN
  SELECT RAISE(ABORT, 'a head injury stays one');
END;

CREATE TRIGGER invoice_begins BEFORE INSERT ON invoice WHEN NEW.issued IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'an invoice begins as a draft'); END;

CREATE TRIGGER invoice_document_kept BEFORE DELETE ON invoice_document BEGIN SELECT RAISE(ABORT, 'an issued invoice does not go'); END;

CREATE TRIGGER invoice_document_stays BEFORE UPDATE ON invoice_document BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;

CREATE TRIGGER invoice_extra_begins BEFORE INSERT ON invoice_extra
WHEN EXISTS (SELECT 1 FROM invoice WHERE id = NEW.invoice AND issued IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;

CREATE TRIGGER invoice_extra_kept BEFORE DELETE ON invoice_extra
WHEN EXISTS (SELECT 1 FROM invoice WHERE id = OLD.invoice AND issued IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;

CREATE TRIGGER invoice_extra_stays BEFORE UPDATE ON invoice_extra
WHEN EXISTS (SELECT 1 FROM invoice WHERE id IN (OLD.invoice, NEW.invoice) AND issued IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;

CREATE TRIGGER invoice_file_kept BEFORE DELETE ON invoice_file BEGIN SELECT RAISE(ABORT, 'an issued invoice does not go'); END;

CREATE TRIGGER invoice_file_stays BEFORE UPDATE ON invoice_file BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;

CREATE TRIGGER invoice_follows BEFORE UPDATE ON invoice
WHEN OLD.issued IS NULL AND NEW.issued IS NOT NULL AND NEW.place <> 1 + (SELECT coalesce(max(place), 0) FROM invoice WHERE series = NEW.series)
BEGIN SELECT RAISE(ABORT, 'the series would have a gap'); END;

CREATE TRIGGER invoice_in_order BEFORE UPDATE ON invoice
WHEN OLD.issued IS NULL AND NEW.issued IS NOT NULL AND NEW.day < (SELECT max(day) FROM invoice WHERE series = NEW.series)
BEGIN SELECT RAISE(ABORT, 'the series would go back in time'); END;

CREATE TRIGGER invoice_kept BEFORE DELETE ON invoice WHEN OLD.issued IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'an issued invoice does not go'); END;

CREATE TRIGGER invoice_line_begins BEFORE INSERT ON invoice_line
WHEN EXISTS (SELECT 1 FROM invoice WHERE id = NEW.invoice AND issued IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;

CREATE TRIGGER invoice_line_kept BEFORE DELETE ON invoice_line
WHEN EXISTS (SELECT 1 FROM invoice WHERE id = OLD.invoice AND issued IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;

CREATE TRIGGER invoice_line_stays BEFORE UPDATE ON invoice_line
WHEN EXISTS (SELECT 1 FROM invoice WHERE id IN (OLD.invoice, NEW.invoice) AND issued IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;

CREATE TRIGGER invoice_part_begins BEFORE INSERT ON invoice_part
WHEN EXISTS (SELECT 1 FROM invoice WHERE id = NEW.invoice AND issued IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;

CREATE TRIGGER invoice_part_kept BEFORE DELETE ON invoice_part BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;

CREATE TRIGGER invoice_part_stays BEFORE UPDATE ON invoice_part BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;

CREATE TRIGGER invoice_stays BEFORE UPDATE ON invoice WHEN OLD.issued IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;

CREATE TRIGGER journal_keeps BEFORE DELETE ON journal BEGIN SELECT RAISE(ABORT, 'the journal is only added to'); END;

CREATE TRIGGER journal_stays BEFORE UPDATE ON journal
  WHEN NOT (OLD.erased IS NULL AND NEW.erased IS NOT NULL AND NEW.label = '' AND NEW.changes = x''
            AND NEW.seq = OLD.seq AND NEW.id = OLD.id AND NEW.act = OLD.act AND NEW.at = OLD.at
            AND NEW.rows = OLD.rows AND NEW.honest = OLD.honest AND NEW.undoes IS OLD.undoes AND NEW.chain = OLD.chain
            AND EXISTS (SELECT 1 FROM erasing WHERE kind = 'journal' AND id = OLD.id))
  BEGIN SELECT RAISE(ABORT, 'the journal is only added to'); END;

CREATE TRIGGER letter_issued_keeps BEFORE DELETE ON letter
  WHEN OLD.issued IS NOT NULL AND NOT EXISTS (SELECT 1 FROM erasing WHERE kind = 'letter' AND id = OLD.id)
  BEGIN SELECT RAISE(ABORT, 'an issued letter is never deleted'); END;

CREATE TRIGGER letter_issued_stays BEFORE UPDATE ON letter WHEN OLD.issued IS NOT NULL
  BEGIN SELECT RAISE(ABORT, 'an issued letter never changes'); END;

CREATE TRIGGER message_bytes_kept BEFORE DELETE ON message_bytes
WHEN EXISTS (SELECT 1 FROM message WHERE id = OLD.id) -- those of a part go when the whole is made
BEGIN SELECT RAISE(ABORT, 'a message that was released does not change'); END;

CREATE TRIGGER message_bytes_stay BEFORE UPDATE ON message_bytes
BEGIN SELECT RAISE(ABORT, 'bytes do not change'); END;

CREATE TRIGGER message_kept BEFORE DELETE ON message
WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE kind = 'message' AND id = OLD.id)
BEGIN SELECT RAISE(ABORT, 'a message is withdrawn, not deleted'); END;

CREATE TRIGGER message_stays BEFORE UPDATE OF id, cause, together, kind, made, language, from_name, from_address, to_name, to_address,
  with_name, with_address, subject, words, gaps, method, mail_id, sha256, size ON message
WHEN OLD.sha256 IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'a message that was released does not change'); END;

CREATE TRIGGER message_step_kept BEFORE DELETE ON message_step
WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE kind = 'message_step' AND id = OLD.id)
BEGIN SELECT RAISE(ABORT, 'what became of a message is only added to'); END;

CREATE TRIGGER message_step_stays BEFORE UPDATE ON message_step
BEGIN SELECT RAISE(ABORT, 'what became of a message is only added to'); END;

CREATE TRIGGER notice_version_kept BEFORE UPDATE ON notice_version BEGIN
  SELECT RAISE(ABORT, 'a published notice does not change');
END;

CREATE TRIGGER posting_closed BEFORE INSERT ON posting
WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry)
BEGIN SELECT RAISE(ABORT, 'the entry is closed'); END;

CREATE TRIGGER posting_kept BEFORE DELETE ON posting BEGIN SELECT RAISE(ABORT, 'an entry does not go'); END;

CREATE TRIGGER posting_stays BEFORE UPDATE ON posting BEGIN SELECT RAISE(ABORT, 'an entry does not change'); END;

CREATE TRIGGER reminder_stays BEFORE UPDATE ON reminder BEGIN SELECT RAISE(ABORT, 'a reminder does not change'); END;

CREATE TRIGGER standing_at_visit AFTER UPDATE ON goal_visit BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (NEW.goal);
END;

CREATE TRIGGER standing_at_visit_gone AFTER DELETE ON goal_visit BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (OLD.goal);
END;

CREATE TRIGGER standing_at_visit_new AFTER INSERT ON goal_visit BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (NEW.goal);
END;

CREATE TRIGGER standing_block AFTER UPDATE ON block BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (NEW.goal);
END;

CREATE TRIGGER standing_block_gone AFTER DELETE ON block BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (OLD.goal);
END;

CREATE TRIGGER standing_block_new AFTER INSERT ON block WHEN NEW.ended IS NOT NULL BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (NEW.goal);
END;

CREATE TRIGGER standing_decision AFTER UPDATE ON decision BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (NEW.goal);
END;

CREATE TRIGGER standing_decision_gone AFTER DELETE ON decision BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (OLD.goal);
END;

CREATE TRIGGER standing_decision_new AFTER INSERT ON decision BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (NEW.goal);
END;

CREATE TRIGGER standing_goal AFTER UPDATE ON goal BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (NEW.id);
END;

CREATE TRIGGER standing_goal_gone AFTER DELETE ON goal BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (OLD.id);
END;

CREATE TRIGGER standing_goal_new AFTER INSERT ON goal BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (NEW.id);
END;

CREATE TRIGGER standing_try AFTER UPDATE ON block_try
  WHEN (SELECT ended FROM block WHERE id = NEW.block) IS NOT NULL BEGIN
  INSERT OR IGNORE INTO standing_due SELECT goal FROM block WHERE id = NEW.block;
END;

CREATE TRIGGER standing_try_gone AFTER DELETE ON block_try
  WHEN (SELECT ended FROM block WHERE id = OLD.block) IS NOT NULL BEGIN
  INSERT OR IGNORE INTO standing_due SELECT goal FROM block WHERE id = OLD.block;
END;

CREATE TRIGGER standing_try_new AFTER INSERT ON block_try
  WHEN (SELECT ended FROM block WHERE id = NEW.block) IS NOT NULL BEGIN
  INSERT OR IGNORE INTO standing_due SELECT goal FROM block WHERE id = NEW.block;
END;

CREATE TRIGGER standing_visit AFTER UPDATE ON visit BEGIN
  INSERT OR IGNORE INTO standing_due SELECT goal FROM goal_visit WHERE visit = NEW.id;
END;

CREATE TRIGGER unit_move_closed BEFORE INSERT ON unit_move
WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry)
BEGIN SELECT RAISE(ABORT, 'the entry is closed'); END;

CREATE TRIGGER unit_move_kept BEFORE DELETE ON unit_move BEGIN SELECT RAISE(ABORT, 'an entry does not go'); END;

CREATE TRIGGER unit_move_owed BEFORE INSERT ON unit_move
WHEN NEW.lessons + (SELECT coalesce(sum(lessons), 0) FROM unit_move WHERE package = NEW.package) < 0
BEGIN SELECT RAISE(ABORT, 'the package has no lessons left'); END;

CREATE TRIGGER unit_move_stays BEFORE UPDATE ON unit_move BEGIN SELECT RAISE(ABORT, 'an entry does not change'); END;
