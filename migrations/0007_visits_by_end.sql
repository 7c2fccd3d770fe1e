-- Visits in the order of their end, with nothing else read: which of them have a letter, and which owe
-- one, is then told from indexes alone.

DROP INDEX visit_last;
CREATE INDEX visit_last ON visit (last_day, id);
