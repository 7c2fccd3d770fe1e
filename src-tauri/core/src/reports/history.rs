//! What changed, when, for one thing: every act that wrote a row of it, with undo where that is
//! honest. One coach keeps a file, so who did it goes without saying.

use std::collections::HashSet;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::app::Reading;
use crate::app::journal::{Past, touching};
use crate::error::Result;

/// What has a history of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Thing {
    /// A student, with all that is kept about them.
    Student,
    /// A goal, with its words, blocks and decisions.
    Goal,
    /// A visit, with its lessons, blocks and letters.
    Visit,
    /// A facility, with its courts.
    Facility,
}

/// Whose history.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OfThing {
    /// What it is.
    pub thing: Thing,
    /// Its id.
    pub id: String,
    /// Look on from here, as the answer before said.
    #[serde(default)]
    pub before: Option<i64>,
    /// At most so many acts.
    #[serde(default = "fifty")]
    pub most: u32,
}

fn fifty() -> u32 {
    50
}

const STUDENT: &str = "
    SELECT ?1 AS id UNION ALL SELECT id FROM student_contact WHERE student = ?1
    UNION ALL SELECT id FROM student_fact WHERE student = ?1
    UNION ALL SELECT id FROM visit WHERE student = ?1
    UNION ALL SELECT id FROM goal WHERE student = ?1
    UNION ALL SELECT w.id FROM goal_words w JOIN goal g ON g.id = w.goal WHERE g.student = ?1
    UNION ALL SELECT b.id FROM block b JOIN goal g ON g.id = b.goal WHERE g.student = ?1
    UNION ALL SELECT d.id FROM decision d JOIN goal g ON g.id = d.goal WHERE g.student = ?1
    UNION ALL SELECT id FROM observation WHERE student = ?1
    UNION ALL SELECT s.id FROM sighting s JOIN observation o ON o.id = s.observation WHERE o.student = ?1
    UNION ALL SELECT id FROM jotting WHERE student = ?1
    UNION ALL SELECT id FROM lesson_student WHERE student = ?1
    UNION ALL SELECT lesson FROM lesson_student WHERE student = ?1
    UNION ALL SELECT l.id FROM letter l JOIN visit v ON v.id = l.visit WHERE v.student = ?1
    UNION ALL SELECT id FROM assessment WHERE student = ?1
    UNION ALL SELECT l.id FROM assessment_level l JOIN assessment a ON a.id = l.assessment WHERE a.student = ?1
    UNION ALL SELECT id FROM test_taken WHERE student = ?1
    UNION ALL SELECT id FROM home_plan WHERE student = ?1
    UNION ALL SELECT l.id FROM home_line l JOIN home_plan p ON p.id = l.plan WHERE p.student = ?1";

const GOAL: &str = "
    SELECT ?1 AS id UNION ALL SELECT id FROM goal_words WHERE goal = ?1
    UNION ALL SELECT id FROM goal_visit WHERE goal = ?1
    UNION ALL SELECT id FROM block WHERE goal = ?1
    UNION ALL SELECT m.id FROM block_miss m JOIN block b ON b.id = m.block WHERE b.goal = ?1
    UNION ALL SELECT id FROM decision WHERE goal = ?1";

const VISIT: &str = "
    SELECT ?1 AS id UNION ALL SELECT id FROM goal_visit WHERE visit = ?1
    UNION ALL SELECT id FROM block WHERE visit = ?1
    UNION ALL SELECT id FROM decision WHERE visit = ?1
    UNION ALL SELECT id FROM jotting WHERE visit = ?1
    UNION ALL SELECT id FROM sighting WHERE visit = ?1
    UNION ALL SELECT id FROM lesson_student WHERE visit = ?1
    UNION ALL SELECT lesson FROM lesson_student WHERE visit = ?1
    UNION ALL SELECT p.id FROM plan_line p JOIN lesson_student s ON s.lesson = p.lesson WHERE s.visit = ?1
    UNION ALL SELECT id FROM assessment WHERE visit = ?1
    UNION ALL SELECT id FROM test_taken WHERE visit = ?1
    UNION ALL SELECT id FROM letter WHERE visit = ?1
    UNION ALL SELECT id FROM home_plan WHERE visit = ?1
    UNION ALL SELECT l.id FROM home_line l JOIN home_plan p ON p.id = l.plan WHERE p.visit = ?1";

const FACILITY: &str = "SELECT ?1 AS id UNION ALL SELECT id FROM court WHERE facility = ?1";

/// What changed of a thing, newest first.
///
/// # Errors
/// `Storage`.
pub fn history(db: &Reading<'_>, of: OfThing) -> Result<Past> {
    let ids = match of.thing {
        Thing::Student => STUDENT,
        Thing::Goal => GOAL,
        Thing::Visit => VISIT,
        Thing::Facility => FACILITY,
    };
    let rows: HashSet<String> =
        db.all(ids, [&of.id], |row| row.get::<_, String>("id"))?.into_iter().collect();
    touching(db, &of.id, &rows, of.before, of.most)
}
