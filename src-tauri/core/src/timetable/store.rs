//! SQL that reads across everyone: the days nearest to a week, and what is counted in a year.

use rusqlite::{named_params, params};

use super::ComesLater;
use super::year::CountedWhat;
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::ids::{LessonId, StudentId, VisitId};
use crate::kinds::{Day, Span};

/// How many of those who come later are named.
const MOST_LATER: u32 = 60;

/// Who has a lesson to come after a day, and when the next one is; the first to come first.
pub(super) fn lessons_to_come(db: &Reading<'_>, after: Day) -> Result<Vec<ComesLater>> {
    db.all(
        "SELECT ls.student, s.name, min(l.day) AS day
         FROM lesson l JOIN lesson_student ls ON ls.lesson = l.id JOIN student s ON s.id = ls.student
         WHERE l.day > ? AND l.state = 'planned'
         GROUP BY ls.student ORDER BY min(l.day), s.folded, ls.student LIMIT ?",
        params![after, MOST_LATER],
        |row| {
            Ok(ComesLater { student: row.get("student")?, name: row.get("name")?, day: row.get("day")? })
        },
    )
}

/// The day of a student's next lesson after a day, those called off or missed left out.
pub(super) fn next_lesson(db: &Reading<'_>, student: StudentId, after: Day) -> Result<Option<Day>> {
    let day = db.one(
        "SELECT min(l.day) AS day
         FROM visit v JOIN lesson_student ls ON ls.visit = v.id AND ls.student = v.student
           JOIN lesson l ON l.id = ls.lesson
         WHERE v.student = ?1 AND v.last_day > ?2 AND l.day > ?2
           AND l.state NOT IN ('called_off', 'missed')",
        params![student, after],
        |row| row.get::<_, Option<Day>>("day"),
    )?;
    Ok(day.flatten())
}

/// The last day before this one with a lesson or the end of a visit.
pub(super) fn last_before(db: &Reading<'_>, day: Day) -> Result<Option<Day>> {
    let lesson = db.one(
        "SELECT day FROM lesson WHERE day < ? AND state <> 'called_off' ORDER BY day DESC LIMIT 1",
        [day],
        |row| row.get("day"),
    )?;
    let visit = db.one(
        "SELECT last_day FROM visit WHERE last_day < ? AND called_off IS NULL
         ORDER BY last_day DESC LIMIT 1",
        [day],
        |row| row.get("last_day"),
    )?;
    Ok(lesson.max(visit))
}

/// The first day after this one with a lesson or the beginning of a visit.
pub(super) fn first_after(db: &Reading<'_>, day: Day) -> Result<Option<Day>> {
    let lesson: Option<Day> = db.one(
        "SELECT day FROM lesson WHERE day > ? AND state <> 'called_off' ORDER BY day LIMIT 1",
        [day],
        |row| row.get("day"),
    )?;
    let visit = db.one(
        "SELECT first_day FROM visit WHERE first_day > ? AND called_off IS NULL
         ORDER BY first_day LIMIT 1",
        [day],
        |row| row.get("first_day"),
    )?;
    Ok(lesson.into_iter().chain(visit).min())
}

/// What a visit with days counts as; what was called off is left out before.
const VISIT_IS: &str = "CASE WHEN v.opened IS NULL THEN 'agreed' ELSE 'held' END";
/// What a lesson counts as, of the states that are counted.
const LESSON_IS: &str =
    "CASE l.state WHEN 'planned' THEN 'to_come' WHEN 'missed' THEN 'missed' ELSE 'given' END";
/// Lessons that are counted, and visits.
const LESSONS: &str = "l.day BETWEEN :first AND :last AND l.state <> 'called_off'";
const VISITS: &str = "v.first_day BETWEEN :first AND :last AND v.called_off IS NULL";
const EXPECTED: &str =
    "v.first_day IS NULL AND v.called_off IS NULL AND v.expected_from BETWEEN :first AND :last";

/// A count of one person in one month.
pub(super) struct PersonCount {
    pub student: StudentId,
    pub name: String,
    pub month: u32,
    pub what: CountedWhat,
    pub many: u32,
}

/// What is counted for each person and month; by name.
pub(super) fn counts_by_person(db: &Reading<'_>, span: Span) -> Result<Vec<PersonCount>> {
    db.all(
        &format!(
            "SELECT c.student, s.name, c.month, c.what, count(*) AS many FROM (
               SELECT ls.student, CAST(substr(l.day, 6, 2) AS INTEGER) AS month, {LESSON_IS} AS what
               FROM lesson l JOIN lesson_student ls ON ls.lesson = l.id WHERE {LESSONS}
               UNION ALL
               SELECT v.student, CAST(substr(v.first_day, 6, 2) AS INTEGER), {VISIT_IS}
               FROM visit v WHERE {VISITS}
               UNION ALL
               SELECT v.student, CAST(substr(v.expected_from, 6, 2) AS INTEGER), 'expected'
               FROM visit v WHERE {EXPECTED}
             ) c JOIN student s ON s.id = c.student
             GROUP BY s.folded, c.student, c.month, c.what ORDER BY s.folded, c.student, c.month"
        ),
        named_params! { ":first": span.first, ":last": span.last },
        |row| {
            Ok(PersonCount {
                student: row.get("student")?,
                name: row.get("name")?,
                month: row.get("month")?,
                what: row.get("what")?,
                many: row.get("many")?,
            })
        },
    )
}

/// What is counted in each month, each lesson once.
pub(super) fn counts(db: &Reading<'_>, span: Span) -> Result<Vec<(u32, CountedWhat, u32)>> {
    db.all(
        &format!(
            "SELECT month, what, count(*) AS many FROM (
               SELECT CAST(substr(l.day, 6, 2) AS INTEGER) AS month, {LESSON_IS} AS what
               FROM lesson l WHERE {LESSONS}
               UNION ALL
               SELECT CAST(substr(v.first_day, 6, 2) AS INTEGER), {VISIT_IS} FROM visit v WHERE {VISITS}
               UNION ALL
               SELECT CAST(substr(v.expected_from, 6, 2) AS INTEGER), 'expected'
               FROM visit v WHERE {EXPECTED}
             ) GROUP BY month, what"
        ),
        named_params! { ":first": span.first, ":last": span.last },
        |row| Ok((row.get("month")?, row.get("what")?, row.get("many")?)),
    )
}

/// The visits that a figure counts, in time.
pub(super) fn visits_counted(
    db: &Reading<'_>,
    span: Span,
    student: Option<StudentId>,
    what: CountedWhat,
) -> Result<Vec<VisitId>> {
    db.all(
        &format!(
            "SELECT id FROM (
               SELECT v.id, v.student, v.first_day AS at, {VISIT_IS} AS what FROM visit v WHERE {VISITS}
               UNION ALL
               SELECT v.id, v.student, v.expected_from, 'expected' FROM visit v WHERE {EXPECTED}
             ) WHERE what = :what AND (:student IS NULL OR student = :student) ORDER BY at, id"
        ),
        named_params! {
            ":first": span.first, ":last": span.last, ":student": student, ":what": what,
        },
        |row| row.get("id"),
    )
}

/// The lessons that a figure counts, in time.
pub(super) fn lessons_counted(
    db: &Reading<'_>,
    span: Span,
    student: Option<StudentId>,
    what: CountedWhat,
) -> Result<Vec<LessonId>> {
    db.all(
        &format!(
            "SELECT l.id FROM lesson l
             WHERE {LESSONS} AND {LESSON_IS} = :what
               AND (:student IS NULL OR EXISTS (SELECT 1 FROM lesson_student ls
                 WHERE ls.lesson = l.id AND ls.student = :student))
             ORDER BY l.day, l.starts, l.id"
        ),
        named_params! {
            ":first": span.first, ":last": span.last, ":student": student, ":what": what,
        },
        |row| row.get("id"),
    )
}

/// The first and the last day with something to count.
pub(super) fn ends(db: &Reading<'_>) -> Result<Option<Span>> {
    // Each of these is answered by the end of an index.
    let found = db.one(
        "SELECT min(first) AS first, max(last) AS last FROM (
           SELECT (SELECT min(day) FROM lesson WHERE state <> 'called_off') AS first,
             (SELECT max(day) FROM lesson WHERE state <> 'called_off') AS last
           UNION ALL
           SELECT (SELECT min(first_day) FROM visit WHERE called_off IS NULL),
             (SELECT max(first_day) FROM visit WHERE called_off IS NULL)
           UNION ALL
           SELECT (SELECT min(expected_from) FROM visit WHERE first_day IS NULL AND called_off IS NULL),
             (SELECT max(expected_from) FROM visit WHERE first_day IS NULL AND called_off IS NULL)
         )",
        [],
        |row| Ok((row.get::<_, Option<Day>>("first")?, row.get::<_, Option<Day>>("last")?)),
    )?;
    let ends = found.and_then(|(first, last)| first.zip(last));
    Ok(ends.map(|(first, last)| Span { first, last }))
}
