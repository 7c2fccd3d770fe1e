-- Prices, terms of tax, payers, the ledger, packages, invoices, and how each lesson was settled.
--
-- Whoever pays is a record of its own, and nothing here that the law has kept leads to a student: only
-- the links do (student_payer, package_student, settled), and they go when the student is erased.

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

CREATE TABLE student_payer (
  id      TEXT PRIMARY KEY NOT NULL REFERENCES student (id),
  payer   TEXT NOT NULL REFERENCES payer (id)
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

CREATE TABLE package_student (
  id      TEXT PRIMARY KEY NOT NULL,                  -- package id and student id, joined by ':'
  package TEXT NOT NULL REFERENCES package (id),
  student TEXT NOT NULL REFERENCES student (id),
  UNIQUE (package, student)
) STRICT;

CREATE TABLE package_extension (
  id      TEXT PRIMARY KEY NOT NULL,
  package TEXT NOT NULL REFERENCES package (id),
  until   TEXT NOT NULL,                              -- the new last day
  reason  TEXT NOT NULL CHECK (length(reason) >= 1),
  day     TEXT NOT NULL                               -- the day it was said
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
CREATE INDEX invoice_payer ON invoice (payer);
CREATE INDEX invoice_corrects ON invoice (corrects);
CREATE INDEX invoice_day ON invoice (day);

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
CREATE INDEX invoice_line_corrects ON invoice_line (corrects);
CREATE INDEX invoice_line_package ON invoice_line (package);

CREATE TABLE invoice_document (
  id     TEXT PRIMARY KEY NOT NULL REFERENCES invoice (id),
  pdf    BLOB NOT NULL,                               -- as issued, byte for byte
  sha256 TEXT NOT NULL,                               -- of pdf
  fonts  TEXT NOT NULL CHECK (json_valid(fonts))      -- fonts found on the machine that it used
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
CREATE INDEX entry_day ON entry (day);

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
CREATE INDEX posting_entry ON posting (entry);
CREATE INDEX posting_account ON posting (account, payer);
CREATE INDEX posting_invoice ON posting (invoice);
CREATE INDEX posting_package ON posting (package);

CREATE TABLE unit_move (
  id      TEXT PRIMARY KEY NOT NULL,
  entry   TEXT NOT NULL REFERENCES entry (id) DEFERRABLE INITIALLY DEFERRED,
  package TEXT NOT NULL REFERENCES package (id),
  lessons INTEGER NOT NULL CHECK (lessons <> 0)       -- above 0 more are owed, below 0 fewer
) STRICT;
CREATE INDEX unit_move_package ON unit_move (package);
CREATE INDEX unit_move_entry ON unit_move (entry);

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
) STRICT;
CREATE INDEX settled_lesson ON settled (lesson);
CREATE INDEX settled_line ON settled (line);

-- An entry balances, and what was entered stays: it is taken back by another entry. Postings and moves
-- of lessons are written before their entry, which is then checked.

CREATE TRIGGER entry_balances BEFORE INSERT ON entry
WHEN (SELECT coalesce(sum(amount), 0) FROM posting WHERE entry = NEW.id) <> 0
BEGIN SELECT RAISE(ABORT, 'the entry does not balance'); END;
CREATE TRIGGER entry_says_something BEFORE INSERT ON entry
WHEN NOT EXISTS (SELECT 1 FROM posting WHERE entry = NEW.id) AND NOT EXISTS (SELECT 1 FROM unit_move WHERE entry = NEW.id)
BEGIN SELECT RAISE(ABORT, 'the entry is empty'); END;
CREATE TRIGGER posting_closed BEFORE INSERT ON posting
WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry)
BEGIN SELECT RAISE(ABORT, 'the entry is closed'); END;
CREATE TRIGGER unit_move_closed BEFORE INSERT ON unit_move
WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry)
BEGIN SELECT RAISE(ABORT, 'the entry is closed'); END;
CREATE TRIGGER unit_move_owed BEFORE INSERT ON unit_move
WHEN NEW.lessons + (SELECT coalesce(sum(lessons), 0) FROM unit_move WHERE package = NEW.package) < 0
BEGIN SELECT RAISE(ABORT, 'the package has no lessons left'); END;
CREATE TRIGGER entry_stays BEFORE UPDATE ON entry BEGIN SELECT RAISE(ABORT, 'an entry does not change'); END;
CREATE TRIGGER posting_stays BEFORE UPDATE ON posting BEGIN SELECT RAISE(ABORT, 'an entry does not change'); END;
CREATE TRIGGER unit_move_stays BEFORE UPDATE ON unit_move BEGIN SELECT RAISE(ABORT, 'an entry does not change'); END;
CREATE TRIGGER entry_kept BEFORE DELETE ON entry BEGIN SELECT RAISE(ABORT, 'an entry does not go'); END;
CREATE TRIGGER posting_kept BEFORE DELETE ON posting BEGIN SELECT RAISE(ABORT, 'an entry does not go'); END;
CREATE TRIGGER unit_move_kept BEFORE DELETE ON unit_move BEGIN SELECT RAISE(ABORT, 'an entry does not go'); END;

-- What was issued never changes.

CREATE TRIGGER invoice_stays BEFORE UPDATE ON invoice WHEN OLD.issued IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;
CREATE TRIGGER invoice_kept BEFORE DELETE ON invoice WHEN OLD.issued IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'an issued invoice does not go'); END;
CREATE TRIGGER invoice_follows BEFORE UPDATE ON invoice
WHEN OLD.issued IS NULL AND NEW.issued IS NOT NULL AND NEW.place <> 1 + (SELECT coalesce(max(place), 0) FROM invoice WHERE series = NEW.series)
BEGIN SELECT RAISE(ABORT, 'the series would have a gap'); END;
CREATE TRIGGER invoice_in_order BEFORE UPDATE ON invoice
WHEN OLD.issued IS NULL AND NEW.issued IS NOT NULL AND NEW.day < (SELECT max(day) FROM invoice WHERE series = NEW.series)
BEGIN SELECT RAISE(ABORT, 'the series would go back in time'); END;
CREATE TRIGGER invoice_begins BEFORE INSERT ON invoice WHEN NEW.issued IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'an invoice begins as a draft'); END;
CREATE TRIGGER invoice_line_begins BEFORE INSERT ON invoice_line
WHEN EXISTS (SELECT 1 FROM invoice WHERE id = NEW.invoice AND issued IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;
CREATE TRIGGER invoice_line_stays BEFORE UPDATE ON invoice_line
WHEN EXISTS (SELECT 1 FROM invoice WHERE id IN (OLD.invoice, NEW.invoice) AND issued IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;
CREATE TRIGGER invoice_line_kept BEFORE DELETE ON invoice_line
WHEN EXISTS (SELECT 1 FROM invoice WHERE id = OLD.invoice AND issued IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;
CREATE TRIGGER invoice_document_stays BEFORE UPDATE ON invoice_document BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;
CREATE TRIGGER invoice_document_kept BEFORE DELETE ON invoice_document BEGIN SELECT RAISE(ABORT, 'an issued invoice does not go'); END;
