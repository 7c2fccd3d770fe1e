-- What each facility asks of whoever books and teaches there.

ALTER TABLE court ADD COLUMN ground TEXT;                    -- a kind of court that rules name, as in indoor; NULL: of no kind
ALTER TABLE court ADD COLUMN seen TEXT CHECK (seen IN ('yes', 'no')); -- whether it can be seen into from outside; NULL: not looked at

-- The rules of booking; a row once the coach has written any down. 0 and '' mean that none is known.
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

-- When it is open. Rows of a season, while it lasts, stand for those without one on their days.
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
CREATE INDEX facility_hours_facility ON facility_hours (facility, place);

-- When it, or one court of it, cannot be booked.
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
CREATE INDEX facility_closure_facility ON facility_closure (facility, place);

-- What an hour costs: the first row that fits.
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
CREATE INDEX facility_rate_facility ON facility_rate (facility, place);

-- How long before it a court can be booked: the first row that fits.
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
CREATE INDEX facility_ahead_facility ON facility_ahead (facility, place);

-- Until when a court can be given back, and what it costs after that.
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
CREATE INDEX facility_release_facility ON facility_release (facility, place);

-- Whether and on what terms the coach may teach there.
CREATE TABLE facility_teaching (
  id           TEXT PRIMARY KEY NOT NULL REFERENCES facility (id),
  state        TEXT NOT NULL CHECK (state IN ('not_asked', 'asked', 'granted', 'refused')),
  by_whom      TEXT NOT NULL DEFAULT '',
  until        TEXT,                                  -- the last day; NULL: without end, or not told
  papers       TEXT NOT NULL DEFAULT '',              -- what must be shown, as in an insurance certificate
  papers_until TEXT,
  note         TEXT NOT NULL DEFAULT ''
) STRICT;

-- Whom to ask, and where to turn in an emergency.
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
