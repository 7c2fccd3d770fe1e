-- How the coach saw a clearance of which no paper is kept here: nobody's word alone is one.

ALTER TABLE clearance ADD COLUMN seen TEXT CHECK (length(seen) BETWEEN 1 AND 20000); -- NULL: the paper lies beside it, or it was recorded before this was asked
