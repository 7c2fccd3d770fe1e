-- What stands under the lines of an invoice, the parts it is paid in, its structured file, reminders, costs passed on, and how a
-- lesson stood when it was settled.

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

CREATE TABLE invoice_part (
  id      TEXT PRIMARY KEY NOT NULL,
  invoice TEXT NOT NULL REFERENCES invoice (id),
  place   INTEGER NOT NULL CHECK (place > 0),
  day     TEXT NOT NULL,                              -- the last day to pay it
  amount  INTEGER NOT NULL CHECK (amount > 0),        -- in smallest units; all of them are what is due
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

CREATE TABLE cost_passed (
  id   TEXT PRIMARY KEY NOT NULL,
  cost TEXT NOT NULL REFERENCES cost (id),
  line TEXT NOT NULL,                                 -- the invoice line; no reference: a draft can be discarded
  day  TEXT NOT NULL
) STRICT;
CREATE INDEX cost_passed_cost ON cost_passed (cost);

ALTER TABLE cost ADD COLUMN tax INTEGER CHECK (tax >= 0); -- tax contained in it, in smallest units; NULL: not known

ALTER TABLE settled ADD COLUMN state TEXT;            -- how the lesson stood when it was settled; NULL: not known
ALTER TABLE settled ADD COLUMN minutes INTEGER;       -- and how long it was to be

-- What screens ask for after ten years, without going through every posting.

CREATE INDEX invoice_draft ON invoice (id) WHERE issued IS NULL;
CREATE INDEX posting_day ON posting (day);
CREATE INDEX posting_open ON posting (account, invoice, amount);
CREATE INDEX posting_standing ON posting (account, day, amount);
CREATE INDEX entry_currency ON entry (currency);

-- What was issued never changes.

CREATE TRIGGER invoice_extra_begins BEFORE INSERT ON invoice_extra
WHEN EXISTS (SELECT 1 FROM invoice WHERE id = NEW.invoice AND issued IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;
CREATE TRIGGER invoice_extra_stays BEFORE UPDATE ON invoice_extra
WHEN EXISTS (SELECT 1 FROM invoice WHERE id IN (OLD.invoice, NEW.invoice) AND issued IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;
CREATE TRIGGER invoice_extra_kept BEFORE DELETE ON invoice_extra
WHEN EXISTS (SELECT 1 FROM invoice WHERE id = OLD.invoice AND issued IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;
CREATE TRIGGER invoice_part_begins BEFORE INSERT ON invoice_part
WHEN EXISTS (SELECT 1 FROM invoice WHERE id = NEW.invoice AND issued IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;
CREATE TRIGGER invoice_part_stays BEFORE UPDATE ON invoice_part BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;
CREATE TRIGGER invoice_part_kept BEFORE DELETE ON invoice_part BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;
CREATE TRIGGER invoice_file_stays BEFORE UPDATE ON invoice_file BEGIN SELECT RAISE(ABORT, 'an issued invoice does not change'); END;
CREATE TRIGGER invoice_file_kept BEFORE DELETE ON invoice_file BEGIN SELECT RAISE(ABORT, 'an issued invoice does not go'); END;
CREATE TRIGGER reminder_stays BEFORE UPDATE ON reminder BEGIN SELECT RAISE(ABORT, 'a reminder does not change'); END;
