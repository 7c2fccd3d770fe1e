-- What is asked, agreed and written down before anyone steps on court, and what happened there.

ALTER TABLE student ADD COLUMN home TEXT;             -- the town they come from; NULL: not asked
ALTER TABLE student ADD COLUMN heard TEXT;            -- how they heard of the coach; NULL: not asked
ALTER TABLE student ADD COLUMN enquired TEXT;         -- the day they first asked; NULL: not known
ALTER TABLE student_contact ADD COLUMN born TEXT;     -- the birth date of a guardian; NULL: not told

-- A signed form or a letter on paper, as a picture or a PDF.
CREATE TABLE scan (
  id     TEXT PRIMARY KEY NOT NULL,
  name   TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
  media  TEXT NOT NULL CHECK (media IN ('application/pdf', 'image/png', 'image/jpeg')),
  sha256 TEXT NOT NULL,
  bytes  BLOB NOT NULL CHECK (length(bytes) BETWEEN 1 AND 8388608)
) STRICT;

-- What was asked of a student besides the profile; a row once it was gone through.
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

-- Whom to call.
CREATE TABLE emergency_contact (
  id       TEXT PRIMARY KEY NOT NULL REFERENCES student (id),
  name     TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
  relation TEXT NOT NULL DEFAULT '',
  phone    TEXT NOT NULL CHECK (length(phone) BETWEEN 1 AND 200),
  other    TEXT NOT NULL DEFAULT ''                   -- a second number
) STRICT;

-- What happened, sealed once it is signed.
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
CREATE INDEX incident_day ON incident (day);
CREATE INDEX incident_student ON incident (student);

-- What came to be known after a report was signed.
CREATE TABLE incident_addition (
  id       TEXT PRIMARY KEY NOT NULL,
  incident TEXT NOT NULL REFERENCES incident (id),
  at       TEXT NOT NULL,                             -- instant
  words    TEXT NOT NULL CHECK (length(words) >= 1),
  author   TEXT NOT NULL
) STRICT;
CREATE INDEX incident_addition_incident ON incident_addition (incident);

-- Injuries and restrictions in the student's words.
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
CREATE INDEX injury_student ON injury (student);

-- What a named professional wrote about a return to play, or about exercise.
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
) STRICT;
CREATE INDEX clearance_student ON clearance (student);

-- Answers to the readiness questions, each time they were asked.
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
CREATE INDEX readiness_student ON readiness (student, day);

-- A text about injury, liability and health data, for a place and a sport, in one language.
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

CREATE TRIGGER notice_version_kept BEFORE UPDATE ON notice_version BEGIN
  SELECT RAISE(ABORT, 'a published notice does not change');
END;

-- Who accepted which text.
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
CREATE INDEX acknowledgement_student ON acknowledgement (student, version);

CREATE TRIGGER acknowledgement_kept BEFORE UPDATE ON acknowledgement BEGIN
  SELECT RAISE(ABORT, 'an acknowledgement does not change');
END;

-- One answer to one question of consent, of a student or of a guest.
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
CREATE INDEX consent_student ON consent (student, kind, day);

CREATE TRIGGER consent_kept BEFORE UPDATE ON consent
WHEN OLD.kind <> NEW.kind OR OLD.given <> NEW.given OR OLD.name <> NEW.name OR OLD.relation <> NEW.relation
  OR OLD.day <> NEW.day OR OLD.how <> NEW.how OR OLD.student IS NOT NEW.student OR OLD.guest IS NOT NEW.guest
BEGIN
  SELECT RAISE(ABORT, 'a consent can be withdrawn, not changed');
END;

-- A facility's own forms and rules about safety and minors; a row once somebody looked.
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

-- The facility's own form, signed by a student.
CREATE TABLE facility_form (
  id       TEXT PRIMARY KEY NOT NULL,
  student  TEXT NOT NULL REFERENCES student (id),
  facility TEXT NOT NULL REFERENCES facility (id),
  signed   TEXT NOT NULL,                             -- the day
  until    TEXT,                                      -- the last day it holds; NULL: no end was told
  kept     TEXT NOT NULL DEFAULT '',                  -- where the signed form is
  scan     TEXT REFERENCES scan (id)
) STRICT;
CREATE INDEX facility_form_student ON facility_form (student, facility);

-- The coach's own papers.
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

-- Going on court although something was missing, and why.
CREATE TABLE went_on (
  id      TEXT PRIMARY KEY NOT NULL,                  -- student id and lesson id or day, joined by ':'
  student TEXT NOT NULL REFERENCES student (id),
  lesson  TEXT REFERENCES lesson (id),                -- NULL: on a day without a planned lesson
  day     TEXT NOT NULL,
  at      TEXT NOT NULL,                              -- instant
  reason  TEXT NOT NULL CHECK (length(reason) >= 1),
  missing TEXT NOT NULL                               -- JSON: what was missing, in words
) STRICT;
CREATE INDEX went_on_student ON went_on (student);

-- A signed report does not change; what is known later is added.
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
CREATE TRIGGER acknowledgement_keeps BEFORE DELETE ON acknowledgement
WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE kind = 'acknowledgement' AND id = OLD.id)
BEGIN
  SELECT RAISE(ABORT, 'an acknowledgement is never deleted');
END;
CREATE TRIGGER incident_addition_kept BEFORE UPDATE ON incident_addition BEGIN
  SELECT RAISE(ABORT, 'an addition to a report does not change');
END;
-- A blow to the head that was written down is not written away.
CREATE TRIGGER injury_head_kept BEFORE UPDATE ON injury
WHEN OLD.kind = 'head' AND (NEW.kind <> 'head' OR NEW.since <> OLD.since OR NEW.student <> OLD.student)
BEGIN
  SELECT RAISE(ABORT, 'a head injury stays one');
END;
CREATE TRIGGER injury_head_keeps BEFORE DELETE ON injury
WHEN OLD.kind = 'head' AND NOT EXISTS (SELECT 1 FROM erasing WHERE kind = 'injury' AND id = OLD.id)
BEGIN
  SELECT RAISE(ABORT, 'a head injury that was written down stays');
END;

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

-- Pages that students fill in at home; the answers of each count once.
CREATE TABLE intake_page (
  id      TEXT PRIMARY KEY NOT NULL,
  student TEXT NOT NULL REFERENCES student (id),
  token   TEXT NOT NULL UNIQUE,                       -- SHA-256 of what the page says of itself
  made    TEXT NOT NULL,                              -- the day
  until   TEXT NOT NULL,                              -- the last day its answers are read
  used    TEXT                                        -- the day answers were taken; NULL: not yet
) STRICT;
CREATE INDEX intake_page_student ON intake_page (student);
