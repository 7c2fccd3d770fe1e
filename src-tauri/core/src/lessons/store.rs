//! All SQL of lessons.

use rusqlite::{Row, named_params, params};

use super::plan::Slot;
use super::{Attending, Lesson, LessonState, ListLessons, WhichHour};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::kinds::Time;
use crate::kinds::ids::{LessonId, RowId, StudentId, TemplateId, VisitId};

crate::db::words! {
    LessonState {
        Planned = "planned", Given = "given", CutShort = "cut_short", CalledOff = "called_off", Missed = "missed",
    }
    WhichHour { Once = "once", First = "first", Second = "second" }
}

pub(super) fn insert(db: &Writing<'_>, id: LessonId, slot: &Slot) -> Result<()> {
    db.execute(
        "INSERT INTO lesson (id, facility, court, day, starts, which, minutes, state)
         VALUES (?, ?, ?, ?, ?, ?, ?, 'planned')",
        params![id, slot.facility, slot.court, slot.day, slot.starts, slot.which, slot.minutes],
    )?;
    Ok(())
}

pub(super) fn update(db: &Writing<'_>, id: LessonId, slot: &Slot) -> Result<()> {
    db.execute(
        "UPDATE lesson SET facility = ?, court = ?, day = ?, starts = ?, which = ?, minutes = ? WHERE id = ?",
        params![slot.facility, slot.court, slot.day, slot.starts, slot.which, slot.minutes, id],
    )?;
    Ok(())
}

pub(super) fn attend(
    db: &Writing<'_>,
    lesson: LessonId,
    student: StudentId,
    visit: VisitId,
) -> Result<()> {
    db.execute(
        "INSERT INTO lesson_student (id, lesson, student, visit) VALUES (?, ?, ?, ?)",
        params![format!("{lesson}:{student}"), lesson, student, visit],
    )?;
    Ok(())
}

pub(super) fn settle(
    db: &Writing<'_>,
    id: LessonId,
    state: LessonState,
    given: Option<u32>,
    reason: &str,
) -> Result<()> {
    db.execute(
        "UPDATE lesson SET state = ?, given = ?, reason = ? WHERE id = ?",
        params![state, given, reason, id],
    )?;
    Ok(())
}

pub(super) fn note(
    db: &Writing<'_>,
    id: LessonId,
    done: &str,
    landed: &str,
    next: &str,
) -> Result<()> {
    db.execute(
        "UPDATE lesson SET done = ?, landed = ?, next = ? WHERE id = ?",
        params![done, landed, next, id],
    )?;
    Ok(())
}

pub(super) fn set_effort(
    db: &Writing<'_>,
    lesson: LessonId,
    student: StudentId,
    effort: Option<u8>,
) -> Result<()> {
    db.execute(
        "UPDATE lesson_student SET effort = ? WHERE lesson = ? AND student = ?",
        params![effort, lesson, student],
    )?;
    Ok(())
}

const LESSON: &str = "SELECT l.*, f.name AS place, f.zone, coalesce(c.name, '') AS court_name
    FROM lesson l JOIN facility f ON f.id = l.facility LEFT JOIN court c ON c.id = l.court";

pub(super) fn find(db: &Reading<'_>, id: LessonId) -> Result<Lesson> {
    let mut lesson = db.found("lesson", &id, &format!("{LESSON} WHERE l.id = ?"), [id], lesson)?;
    add_students(db, &mut lesson)?;
    Ok(lesson)
}

pub(super) fn list(db: &Reading<'_>, ask: ListLessons) -> Result<Vec<Lesson>> {
    // Each question finds its lessons by an index of its own. No day comes before '' or after '~'.
    let of_visit = "l.id IN (SELECT lesson FROM lesson_student WHERE visit = :visit)";
    let of_visit = if ask.visit.is_some() { of_visit } else { ":visit IS NULL" };
    let mut lessons = db.all(
        &format!(
            "{LESSON} WHERE {of_visit} AND l.day BETWEEN :from AND :to
             ORDER BY l.day, l.starts, l.id"
        ),
        named_params! {
            ":visit": ask.visit,
            ":from": ask.from.map_or_else(String::new, |day| day.to_string()),
            ":to": ask.to.map_or_else(|| "~".to_owned(), |day| day.to_string()),
        },
        lesson,
    )?;
    for lesson in &mut lessons {
        add_students(db, lesson)?;
    }
    Ok(lessons)
}

fn add_students(db: &Reading<'_>, lesson: &mut Lesson) -> Result<()> {
    lesson.students = db.all(
        "SELECT ls.student, s.name, ls.visit, ls.effort FROM lesson_student ls JOIN student s ON s.id = ls.student
         WHERE ls.lesson = ? ORDER BY s.folded, s.id",
        [lesson.id],
        |row| {
            Ok(Attending {
                student: row.get("student")?,
                name: row.get("name")?,
                visit: row.get("visit")?,
                effort: row.get("effort")?,
            })
        },
    )?;
    Ok(())
}

fn lesson(row: &Row<'_>) -> rusqlite::Result<Lesson> {
    let (starts, minutes): (Time, u32) = (row.get("starts")?, row.get("minutes")?);
    Ok(Lesson {
        id: row.get("id")?,
        students: Vec::new(),
        facility: row.get("facility")?,
        place: row.get("place")?,
        court: row.get("court")?,
        court_name: row.get("court_name")?,
        zone: row.get("zone")?,
        day: row.get("day")?,
        starts,
        ends: starts.plus(minutes),
        which: row.get("which")?,
        minutes,
        state: row.get("state")?,
        given: row.get("given")?,
        reason: row.get("reason")?,
        done: row.get("done")?,
        landed: row.get("landed")?,
        next: row.get("next")?,
    })
}

pub(super) fn plan_lines(db: &Reading<'_>, lesson: LessonId) -> Result<Vec<super::LessonLine>> {
    db.all(
        "SELECT minutes, drill, goal, words FROM plan_line WHERE lesson = ? ORDER BY place",
        [lesson],
        |row| {
            Ok(super::LessonLine {
                minutes: row.get("minutes")?,
                drill: row.get("drill")?,
                goal: row.get("goal")?,
                words: row.get("words")?,
            })
        },
    )
}

pub(super) fn replace_plan_lines(
    db: &Writing<'_>,
    lesson: LessonId,
    lines: &[super::LessonLine],
) -> Result<()> {
    db.execute("DELETE FROM plan_line WHERE lesson = ?", [lesson])?;
    for (place, line) in (1_i64..).zip(lines) {
        let id: RowId = db.id();
        db.execute(
            "INSERT INTO plan_line (id, lesson, place, minutes, drill, goal, words) VALUES (?, ?, ?, ?, ?, ?, ?)",
            params![id, lesson, place, line.minutes, line.drill, line.goal, line.words],
        )?;
    }
    Ok(())
}

pub(super) fn keep_template(db: &Writing<'_>, name: &str, lines: &str) -> Result<()> {
    let id: TemplateId = db.id();
    db.execute(
        "INSERT INTO plan_template (id, name, lines) VALUES (?, ?, ?)
         ON CONFLICT (name) DO UPDATE SET lines = excluded.lines",
        params![id, name, lines],
    )?;
    Ok(())
}

/// Templates by name, each with its lines as JSON.
pub(super) fn templates(db: &Reading<'_>) -> Result<Vec<(TemplateId, String, String)>> {
    db.all("SELECT id, name, lines FROM plan_template ORDER BY name", [], |row| {
        Ok((row.get("id")?, row.get("name")?, row.get("lines")?))
    })
}
