-- Where each goal stands and when it moved, kept beside the evidence so that all students can be read
-- at once. Derived, never typed: no act writes these rows into the journal, no digest covers them, and
-- each can be dropped and derived anew. The triggers name every goal whose evidence changed; a reading
-- derives those from their evidence, and the next act keeps what was derived.

CREATE TABLE standing (
  goal  TEXT PRIMARY KEY NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('working', 'met', 'kept', 'slipped', 'raised', 'closed', 'set_aside')),
  why   TEXT NOT NULL,                                -- the reason, in words
  visit TEXT,                                         -- the last visit it was at; NULL: none yet
  since TEXT,                                         -- the last day of that visit; NULL while it is open
  rules INTEGER NOT NULL                              -- the edition of the rules it was derived by
) STRICT, WITHOUT ROWID;
CREATE INDEX standing_state ON standing (state, since);
CREATE INDEX standing_rules ON standing (rules);

CREATE TABLE standing_move (
  goal  TEXT NOT NULL,
  place INTEGER NOT NULL,                             -- its order among the goal's moves
  day   TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('met', 'kept', 'slipped', 'raised')), -- where to
  visit TEXT,                                         -- NULL: between visits
  why   TEXT NOT NULL,
  PRIMARY KEY (goal, place)
) STRICT, WITHOUT ROWID;
CREATE INDEX standing_move_day ON standing_move (day, state);

CREATE TABLE standing_due (
  goal TEXT PRIMARY KEY NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO standing_due (goal) SELECT id FROM goal;

CREATE TRIGGER standing_goal_new AFTER INSERT ON goal BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (NEW.id);
END;
CREATE TRIGGER standing_goal AFTER UPDATE ON goal BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (NEW.id);
END;
CREATE TRIGGER standing_goal_gone AFTER DELETE ON goal BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (OLD.id);
END;
CREATE TRIGGER standing_at_visit_new AFTER INSERT ON goal_visit BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (NEW.goal);
END;
CREATE TRIGGER standing_at_visit AFTER UPDATE ON goal_visit BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (NEW.goal);
END;
CREATE TRIGGER standing_at_visit_gone AFTER DELETE ON goal_visit BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (OLD.goal);
END;
CREATE TRIGGER standing_decision_new AFTER INSERT ON decision BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (NEW.goal);
END;
CREATE TRIGGER standing_decision AFTER UPDATE ON decision BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (NEW.goal);
END;
CREATE TRIGGER standing_decision_gone AFTER DELETE ON decision BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (OLD.goal);
END;
-- A goal with a block that is still open is always derived: one that begins, and each touch in it,
-- cost nothing here.
CREATE TRIGGER standing_block_new AFTER INSERT ON block WHEN NEW.ended IS NOT NULL BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (NEW.goal);
END;
CREATE TRIGGER standing_block AFTER UPDATE ON block BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (NEW.goal);
END;
CREATE TRIGGER standing_block_gone AFTER DELETE ON block BEGIN
  INSERT OR IGNORE INTO standing_due VALUES (OLD.goal);
END;
CREATE TRIGGER standing_try_new AFTER INSERT ON block_try
  WHEN (SELECT ended FROM block WHERE id = NEW.block) IS NOT NULL BEGIN
  INSERT OR IGNORE INTO standing_due SELECT goal FROM block WHERE id = NEW.block;
END;
CREATE TRIGGER standing_try AFTER UPDATE ON block_try
  WHEN (SELECT ended FROM block WHERE id = NEW.block) IS NOT NULL BEGIN
  INSERT OR IGNORE INTO standing_due SELECT goal FROM block WHERE id = NEW.block;
END;
CREATE TRIGGER standing_try_gone AFTER DELETE ON block_try
  WHEN (SELECT ended FROM block WHERE id = OLD.block) IS NOT NULL BEGIN
  INSERT OR IGNORE INTO standing_due SELECT goal FROM block WHERE id = OLD.block;
END;
CREATE TRIGGER standing_visit AFTER UPDATE ON visit BEGIN
  INSERT OR IGNORE INTO standing_due SELECT goal FROM goal_visit WHERE visit = NEW.id;
END;
CREATE INDEX block_open ON block (goal) WHERE ended IS NULL;

-- What is read for one day or one month finds its rows without walking through ten years.
CREATE INDEX visit_expected ON visit (expected_from) WHERE first_day IS NULL AND called_off IS NULL;
CREATE INDEX visit_running ON visit (last_day) WHERE opened IS NOT NULL AND closed IS NULL;
CREATE INDEX visit_last ON visit (last_day);
CREATE INDEX goal_title ON goal (title, id);
CREATE INDEX sighting_day ON sighting (day);
