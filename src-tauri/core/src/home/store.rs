//! All SQL of home plans.

use rusqlite::{Row, params};

use super::plan::ReadLine;
use super::{HomeLine, HomePlan, HomeUnit, words};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::kinds::ids::{HomeLineId, HomePlanId, StudentId, VisitId};
use crate::kinds::{Day, Language};
use crate::visits::{self, Visit};

crate::db::words! {
    HomeUnit { Tries = "tries", Minutes = "minutes" }
}

pub(super) fn keep(
    db: &Writing<'_>,
    id: HomePlanId,
    visit: &Visit,
    warm_up: &str,
    note: &str,
) -> Result<()> {
    db.execute(
        "INSERT INTO home_plan (id, student, visit, warm_up, note) VALUES (?, ?, ?, ?, ?)
         ON CONFLICT (id) DO UPDATE SET warm_up = excluded.warm_up, note = excluded.note",
        params![id, visit.student, visit.id, warm_up, note],
    )?;
    Ok(())
}

/// Keeps these lines and no others; what was told of a line that stays is not touched.
pub(super) fn keep_lines(db: &Writing<'_>, plan: HomePlanId, lines: &[ReadLine]) -> Result<()> {
    let old: Vec<HomeLineId> =
        db.all("SELECT id FROM home_line WHERE plan = ?", [plan], |row| row.get("id"))?;
    for gone in old.iter().filter(|id| lines.iter().all(|line| line.id != **id)) {
        db.execute("DELETE FROM home_line WHERE id = ?", [gone])?;
    }
    for (place, line) in (1_i64..).zip(lines) {
        db.execute(
            "INSERT INTO home_line (id, plan, place, goal, what, amount, unit, a_week)
             VALUES (?, ?, ?, ?, ?, ?, ?, ?)
             ON CONFLICT (id) DO UPDATE SET place = excluded.place, goal = excluded.goal, what = excluded.what,
               amount = excluded.amount, unit = excluded.unit, a_week = excluded.a_week",
            params![line.id, plan, place, line.goal, line.what, line.amount, line.unit, line.a_week],
        )?;
    }
    Ok(())
}

pub(super) fn delete(db: &Writing<'_>, plan: HomePlanId) -> Result<()> {
    db.execute("DELETE FROM home_line WHERE plan = ?", [plan])?;
    db.execute("DELETE FROM home_plan WHERE id = ?", [plan])?;
    Ok(())
}

pub(super) fn tell(
    db: &Writing<'_>,
    line: HomeLineId,
    told: &str,
    told_on: Option<Day>,
) -> Result<()> {
    db.execute(
        "UPDATE home_line SET told = ?, told_on = ? WHERE id = ?",
        params![told, told_on, line],
    )?;
    Ok(())
}

/// The visit a line was made at, and what it is.
pub(super) fn line(db: &Reading<'_>, id: HomeLineId) -> Result<(VisitId, String)> {
    db.found(
        "line of a home plan",
        &id,
        "SELECT p.visit, l.what FROM home_line l JOIN home_plan p ON p.id = l.plan WHERE l.id = ?",
        [id],
        |row| Ok((row.get("visit")?, row.get("what")?)),
    )
}

pub(super) fn of_visit(db: &Reading<'_>, visit: VisitId) -> Result<Option<HomePlan>> {
    let plan = db.one("SELECT * FROM home_plan WHERE visit = ?", [visit], plan)?;
    plan.map(|plan| filled(db, plan)).transpose()
}

/// The plans of a student, in the order of their visits.
pub(super) fn of_student(db: &Reading<'_>, student: StudentId) -> Result<Vec<HomePlan>> {
    let plans = db.all(
        "SELECT p.* FROM home_plan p JOIN visit v ON v.id = p.visit
         WHERE p.student = ? ORDER BY v.first_day, v.id",
        [student],
        plan,
    )?;
    plans.into_iter().map(|plan| filled(db, plan)).collect()
}

fn filled(db: &Reading<'_>, mut plan: HomePlan) -> Result<HomePlan> {
    plan.when = visits::show(db, visits::Which { visit: plan.visit })?.when();
    plan.lines = db.all(
        "SELECT l.*, coalesce(g.title, '') AS title FROM home_line l LEFT JOIN goal g ON g.id = l.goal
         WHERE l.plan = ? ORDER BY l.place, l.id",
        [plan.id],
        a_line,
    )?;
    Ok(plan)
}

fn plan(row: &Row<'_>) -> rusqlite::Result<HomePlan> {
    Ok(HomePlan {
        id: row.get("id")?,
        student: row.get("student")?,
        visit: row.get("visit")?,
        when: String::new(),
        warm_up: row.get("warm_up")?,
        note: row.get("note")?,
        lines: Vec::new(),
    })
}

fn a_line(row: &Row<'_>) -> rusqlite::Result<HomeLine> {
    let what: String = row.get("what")?;
    let (amount, unit, a_week): (u32, HomeUnit, u32) =
        (row.get("amount")?, row.get("unit")?, row.get("a_week")?);
    Ok(HomeLine {
        id: row.get("id")?,
        goal: row.get("goal")?,
        title: row.get("title")?,
        words: words::line(Language::En, &what, amount, unit, a_week),
        what,
        amount,
        unit,
        a_week,
        told: row.get("told")?,
        told_on: row.get("told_on")?,
    })
}
