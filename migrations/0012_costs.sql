-- What the coach spends, and the rates by which drives and days away are counted.
-- Nothing of a student's leads here: it is the coach's own record.

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
  why        TEXT NOT NULL DEFAULT '',
  CHECK (day <= last),
  CHECK ((kind = 'drive') = (distance IS NOT NULL)),
  CHECK ((distance IS NULL) = (unit IS NULL))
) STRICT;
CREATE INDEX cost_day ON cost (day);

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
