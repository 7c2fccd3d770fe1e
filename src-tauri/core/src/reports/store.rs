//! SQL of reports that read across everything.

use rusqlite::params;

use super::season::{Move, Moved, OftenSeen, WAITING, Waits};
use crate::app::Reading;
use crate::db::limit;
use crate::error::Result;
use crate::goals::state::State;
use crate::goals::{self, show};
use crate::kinds::ids::{GoalId, VisitId};
use crate::kinds::{Day, Span};
use crate::observations::ObservationKind;

/// Whose a goal is.
pub(super) struct Whose {
    pub name: String,
    /// Whether the student is not put away.
    pub current: bool,
}

/// Whose a goal is; `None` when it is gone.
pub(super) fn whose(db: &Reading<'_>, goal: GoalId) -> Result<Option<Whose>> {
    db.one(
        "SELECT s.name, s.archived IS NULL AS current FROM goal g JOIN student s ON s.id = g.student
         WHERE g.id = ?",
        [goal],
        |row| Ok(Whose { name: row.get("name")?, current: row.get("current")? }),
    )
}

/// How many kept moves lie in a span, those of some goals left out.
pub(super) fn moved(db: &Reading<'_>, span: Span, without: &str) -> Result<Moved> {
    let counts = db.all(
        "SELECT state, count(*) AS times FROM standing_move
         WHERE day BETWEEN ? AND ? AND goal NOT IN (SELECT value FROM json_each(?)) GROUP BY state",
        params![span.first, span.last, without],
        |row| Ok((row.get::<_, State>("state")?, row.get::<_, u32>("times")?)),
    )?;
    let mut moved = Moved::default();
    counts.into_iter().for_each(|(to, times)| moved.add(to, times));
    Ok(moved)
}

/// The newest kept moves of a span, those of some goals left out.
pub(super) fn moves(
    db: &Reading<'_>,
    span: Span,
    only: Option<State>,
    without: &str,
    most: usize,
) -> Result<Vec<Move>> {
    db.all(
        "SELECT m.state, m.goal, g.title, g.student, s.name, m.day, m.visit, m.why, v.first_day, v.last_day
         FROM standing_move m JOIN goal g ON g.id = m.goal JOIN student s ON s.id = g.student
           LEFT JOIN visit v ON v.id = m.visit
         WHERE m.day BETWEEN ?1 AND ?2 AND (?3 IS NULL OR m.state = ?3)
           AND m.goal NOT IN (SELECT value FROM json_each(?4))
         ORDER BY m.day DESC, s.name, g.title, m.place DESC LIMIT ?5",
        params![span.first, span.last, only, without, limit(most)],
        |row| {
            let first: Option<Day> = row.get("first_day")?;
            let days = first.zip(row.get("last_day")?).map(|(first, last)| Span { first, last });
            Ok(Move {
                to: row.get("state")?,
                goal: row.get("goal")?,
                title: row.get("title")?,
                student: row.get("student")?,
                name: row.get("name")?,
                day: row.get("day")?,
                visit: row.get("visit")?,
                when: days.map_or_else(String::new, Span::words),
                why: row.get("why")?,
            })
        },
    )
}

/// How many goals of current students wait by what is kept, some left out.
pub(super) fn waiting(db: &Reading<'_>, without: &str) -> Result<u32> {
    let mut all = 0;
    for state in WAITING {
        // Those of students put away are few, and are taken off.
        let these = db.one(
            "SELECT (SELECT count(*) FROM standing WHERE state = ?1 AND since IS NOT NULL
                       AND goal NOT IN (SELECT value FROM json_each(?2)))
                  - (SELECT count(*) FROM student s CROSS JOIN goal g ON g.student = s.id
                       CROSS JOIN standing st ON st.goal = g.id
                     WHERE s.archived IS NOT NULL AND st.state = ?1 AND st.since IS NOT NULL
                       AND g.id NOT IN (SELECT value FROM json_each(?2))) AS these",
            params![state, without],
            |row| row.get::<_, u32>("these"),
        )?;
        all += these.unwrap_or(0);
    }
    Ok(all)
}

/// The goals of current students that wait by what is kept, the longest wait first in each state,
/// some left out.
pub(super) fn waits(db: &Reading<'_>, without: &str, most: usize) -> Result<Vec<Waits>> {
    let mut waits = Vec::new();
    for state in WAITING {
        if waits.len() >= most {
            break;
        }
        let more: Vec<(GoalId, String, String, String, VisitId, Day)> = db.all(
            "SELECT st.goal, g.title, s.name, st.why, st.visit, st.since
             FROM standing st JOIN goal g ON g.id = st.goal JOIN student s ON s.id = g.student
             WHERE st.state = ? AND st.since IS NOT NULL AND s.archived IS NULL
               AND st.goal NOT IN (SELECT value FROM json_each(?))
             ORDER BY st.since, s.name, g.title LIMIT ?",
            params![state, without, limit(most - waits.len())],
            |row| {
                Ok((
                    row.get("goal")?,
                    row.get("title")?,
                    row.get("name")?,
                    row.get("why")?,
                    row.get("visit")?,
                    row.get("since")?,
                ))
            },
        )?;
        for (goal, title, name, why, visit, since) in more {
            let asks = show::stored(db, goals::Which { goal })?;
            waits.push(Waits {
                goal,
                title,
                criterion: asks.criterion,
                student: asks.student,
                name,
                state,
                why,
                visit,
                since,
            });
        }
    }
    Ok(waits)
}

/// Goals that go on and whose last visit is open, some left out: whether they wait depends on what was
/// tried there.
pub(super) fn at_open_visits(db: &Reading<'_>, without: &str) -> Result<Vec<GoalId>> {
    db.all(
        "SELECT goal FROM standing WHERE state IN ('working', 'met', 'slipped') AND since IS NULL
           AND visit IS NOT NULL AND goal NOT IN (SELECT value FROM json_each(?))",
        [without],
        |row| row.get("goal"),
    )
}

/// What was seen in a span, the most frequent first. Of each, the student and visit are those of the
/// newest sighting: SQLite takes the other columns from the row that has the greatest day.
pub(super) fn seen(
    db: &Reading<'_>,
    kind: ObservationKind,
    span: Span,
    most: usize,
) -> Result<Vec<OftenSeen>> {
    db.all(
        "SELECT o.words, count(*) AS times, count(DISTINCT o.student) AS students,
           max(si.day) AS day, si.visit, o.student, s.name
         FROM sighting si JOIN observation o ON o.id = si.observation JOIN student s ON s.id = o.student
         WHERE o.kind = ? AND si.day BETWEEN ? AND ?
         GROUP BY o.skill, o.folded ORDER BY times DESC, students DESC, o.folded LIMIT ?",
        params![kind, span.first, span.last, limit(most)],
        |row| {
            Ok(OftenSeen {
                kind,
                words: row.get("words")?,
                times: row.get("times")?,
                students: row.get("students")?,
                student: row.get("student")?,
                name: row.get("name")?,
                visit: row.get("visit")?,
                day: row.get("day")?,
            })
        },
    )
}
