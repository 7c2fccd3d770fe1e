-- The out-tray: messages, what they carry, what became of them, and the coach's own texts.

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
CREATE UNIQUE INDEX message_cause ON message (cause) WHERE state <> 'withdrawn';
CREATE INDEX message_next ON message (next, id) WHERE next IS NOT NULL;
CREATE INDEX message_state ON message (state, changed, id);
CREATE INDEX message_changed ON message (changed, id);
CREATE INDEX message_together ON message (together);
CREATE INDEX message_student ON message (student, changed);
CREATE INDEX message_payer ON message (payer, changed);
CREATE INDEX message_invoice ON message (invoice);
CREATE INDEX message_visit ON message (visit);

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

-- The bytes: of a part while the message can be changed, then of the message as it goes out. The digests above are of them, so
-- they are in no changeset of the journal a second time.
CREATE TABLE message_bytes (
  id      TEXT PRIMARY KEY NOT NULL,                  -- of the part, or of the message
  message TEXT NOT NULL REFERENCES message (id) ON DELETE CASCADE,
  bytes   BLOB NOT NULL
) STRICT;
CREATE INDEX message_bytes_message ON message_bytes (message);

CREATE TABLE message_step (
  id      TEXT PRIMARY KEY NOT NULL,
  message TEXT NOT NULL REFERENCES message (id),
  at      TEXT NOT NULL,
  state   TEXT NOT NULL,                              -- what it became
  trouble TEXT,                                       -- what stood in its way; NULL: nothing
  said    TEXT NOT NULL DEFAULT ''                    -- what the server said, or how it was told
) STRICT;
CREATE INDEX message_step_message ON message_step (message, at);

CREATE TABLE message_text (
  id       TEXT PRIMARY KEY NOT NULL,                 -- kind and language
  kind     TEXT NOT NULL,
  language TEXT NOT NULL,
  subject  TEXT NOT NULL,
  words    TEXT NOT NULL,
  UNIQUE (kind, language)
) STRICT;

CREATE INDEX letter_issued ON letter (issued) WHERE issued IS NOT NULL;
ALTER TABLE facility ADD COLUMN visitors TEXT;         -- what it asks of visitors, as the coach tells them; NULL: not written down

CREATE TABLE follow_up_left (
  id  TEXT PRIMARY KEY NOT NULL,                      -- what was proposed, and about which record
  student TEXT REFERENCES student (id),               -- about whom; NULL: about nobody, as an invoice
  day TEXT NOT NULL                                   -- when the coach left it
) STRICT;
CREATE INDEX follow_up_left_student ON follow_up_left (student);

-- What was released never changes; what became of it is added.

CREATE TRIGGER message_stays BEFORE UPDATE OF id, cause, together, kind, made, language, from_name, from_address, to_name, to_address,
  with_name, with_address, subject, words, gaps, method, mail_id, sha256, size ON message
WHEN OLD.sha256 IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'a message that was released does not change'); END;
CREATE TRIGGER message_kept BEFORE DELETE ON message
WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE kind = 'message' AND id = OLD.id)
BEGIN SELECT RAISE(ABORT, 'a message is withdrawn, not deleted'); END;
CREATE TRIGGER message_bytes_stay BEFORE UPDATE ON message_bytes
BEGIN SELECT RAISE(ABORT, 'bytes do not change'); END;
CREATE TRIGGER message_bytes_kept BEFORE DELETE ON message_bytes
WHEN EXISTS (SELECT 1 FROM message WHERE id = OLD.id) -- those of a part go when the whole is made
BEGIN SELECT RAISE(ABORT, 'a message that was released does not change'); END;
CREATE TRIGGER message_step_stays BEFORE UPDATE ON message_step
BEGIN SELECT RAISE(ABORT, 'what became of a message is only added to'); END;
CREATE TRIGGER message_step_kept BEFORE DELETE ON message_step
WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE kind = 'message_step' AND id = OLD.id)
BEGIN SELECT RAISE(ABORT, 'what became of a message is only added to'); END;
