//! Taking a season from a CSV file: students, visits, goals and counts through the same acts a coach
//! would use, all in one act that can be undone whole.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::preview::{here, table, unknown};
use super::season_csv::{self, Columns, DateOrder, Kind as CsvKind, NotTaken, SeasonRow};
use crate::app::Writing;
use crate::error::{Error, Problems, Result};
use crate::facilities::{self, ListFacilities};
use crate::goals::blocks::{EnterTotal, enter_total};
use crate::goals::court::{Jot, jot};
use crate::goals::set::{SetGoal, set};
use crate::goals::show::{OfStudent, list as goals_of};
use crate::goals::{Condition, Counts, CriterionKind, Kind, Source};
use crate::kinds::ids::{FacilityId, GoalId, StudentId, VisitId};
use crate::kinds::text::{counted, folded};
use crate::kinds::{Day, Span};
use crate::students::{self, Profile};
use crate::visits::{self, PlanVisit, Stage};

/// A season to take.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TakeCsv {
    /// The file's bytes, in base64.
    pub content: String,
    /// Which column is what.
    pub columns: Columns,
    /// In which order day and month stand, where the file does not tell.
    #[serde(default = "unknown")]
    pub dates: DateOrder,
    /// Where visits were whose place the file does not name, or names as no facility here.
    pub facility: FacilityId,
    /// People who are the same though written differently: each name (or its key) becomes the other.
    #[serde(default)]
    pub same: BTreeMap<String, String>,
}

/// What was taken.
#[derive(Clone, Debug, Default, Serialize, Deserialize, JsonSchema)]
pub struct Taken {
    /// Students added.
    pub students_added: u32,
    /// Students who were here already.
    pub students_known: u32,
    /// Visits added.
    pub visits: u32,
    /// Goals added.
    pub goals: u32,
    /// Counts added.
    pub blocks: u32,
    /// The lines of the file that were taken.
    pub lines: Vec<u32>,
    /// What was not taken, and why.
    pub not_taken: Vec<NotTaken>,
    /// What was understood in a way worth knowing.
    pub notes: Vec<String>,
}

/// Takes a season.
///
/// # Errors
/// `Refused` when the file or the choice of columns is wrong, or nothing in it can be taken.
pub fn take(db: &Writing<'_>, ask: TakeCsv) -> Result<Taken> {
    facilities::show(db, facilities::Which { facility: ask.facility })?;
    let table = table(&ask.content)?;
    let preview = season_csv::take(&table, &ask.columns, ask.dates).map_err(|problems| {
        let mut p = Problems::new();
        for problem in problems {
            p.add("columns", &problem.code, problem.words);
        }
        p.done().err().unwrap_or_else(|| Error::Fault("a refusal without problems".to_owned()))
    })?;
    if preview.rows.is_empty() {
        return Err(Error::field(
            "content",
            "nothing_to_take",
            "Not one line of this file can be taken. The report says why for each.",
        ));
    }
    let mut taken = Taken { not_taken: preview.not_taken.clone(), ..Taken::default() };
    let here = here(db)?;
    let mut people: BTreeMap<String, Vec<&SeasonRow>> = BTreeMap::new();
    let same: BTreeMap<String, String> =
        ask.same.iter().map(|(a, b)| (season_csv::key_of(a), season_csv::key_of(b))).collect();
    for row in &preview.rows {
        people.entry(one_key(&same, &row.student_key)).or_default().push(row);
    }
    for (key, rows) in people {
        let student = if let Some(same) = here.iter().find(|known| known.key == key) {
            taken.students_known += 1;
            same.student
        } else {
            taken.students_added += 1;
            let seen = preview.students.iter().find(|s| s.key == key);
            let email = rows.iter().find_map(|row| row.email.clone());
            let name = seen.map_or_else(|| rows[0].student.clone(), |s| s.name.clone());
            students::add(
                db,
                Profile { name, email: email.unwrap_or_default(), ..Profile::default() },
            )?
            .id
        };
        one_person(db, &ask, student, &rows, &mut taken)?;
    }
    taken.lines.sort_unstable();
    taken.not_taken.sort_by_key(|not| not.line);
    db.label(format!(
        "Season taken from a file: {}, {}, {}",
        counted(i64::from(taken.students_added), "student added", "students added"),
        counted(i64::from(taken.visits), "visit", "visits"),
        counted(i64::from(taken.blocks), "count", "counts"),
    ));
    Ok(taken)
}

/// The key a name goes by: followed from same to same, and no further than there are names.
fn one_key(same: &BTreeMap<String, String>, key: &str) -> String {
    let mut key = key;
    for _ in 0..same.len() {
        match same.get(key) {
            Some(other) => key = other,
            None => break,
        }
    }
    key.to_owned()
}

fn one_person(
    db: &Writing<'_>,
    ask: &TakeCsv,
    student: StudentId,
    rows: &[&SeasonRow],
    taken: &mut Taken,
) -> Result<()> {
    let mut by_visit: BTreeMap<chrono::NaiveDate, Vec<&SeasonRow>> = BTreeMap::new();
    for row in rows {
        by_visit.entry(row.arrive).or_default().push(row);
    }
    for (arrive, rows) in by_visit {
        let depart = rows.iter().map(|row| row.depart).max().unwrap_or(arrive);
        let Some(days) = Day::from_date(arrive)
            .zip(Day::from_date(depart))
            .map(|(first, last)| Span { first, last })
        else {
            continue;
        };
        match visit(db, ask, student, days, &rows) {
            Ok(visit) => {
                taken.visits += 1;
                counts(db, student, visit, days, rows, taken)?;
                if days.last < db.today() {
                    visits::close(db, visits::Which { visit })?;
                }
            }
            Err(Error::Refused(problems)) => {
                let why = problems.iter().map(|p| p.words.clone()).collect::<Vec<_>>().join(" ");
                taken.not_taken.extend(rows.iter().map(|row| not_taken(row, "visit", &why)));
            }
            Err(other) => return Err(other),
        }
    }
    Ok(())
}

fn not_taken(row: &SeasonRow, code: &str, words: &str) -> NotTaken {
    NotTaken { line: row.line, column: None, code: code.to_owned(), words: words.to_owned() }
}

/// Plans the visit and opens it; one in the future is only planned when nothing was counted.
fn visit(
    db: &Writing<'_>,
    ask: &TakeCsv,
    student: StudentId,
    days: Span,
    rows: &[&SeasonRow],
) -> Result<VisitId> {
    let named = rows.iter().find_map(|row| row.place.as_deref()).map(folded);
    let places = facilities::list(db, ListFacilities::default())?;
    let facility = named
        .and_then(|name| places.iter().find(|f| folded(&f.place.name) == name).map(|f| f.id))
        .unwrap_or(ask.facility);
    let plan = PlanVisit {
        student,
        facility,
        first_day: days.first.to_string(),
        last_day: days.last.to_string(),
        note: String::new(),
    };
    let visit = visits::plan(db, plan)?;
    if visit.stage == Stage::Planned {
        visits::open(db, visits::Which { visit: visit.id })?;
    }
    Ok(visit.id)
}

fn counts(
    db: &Writing<'_>,
    student: StudentId,
    visit: VisitId,
    days: Span,
    mut rows: Vec<&SeasonRow>,
    taken: &mut Taken,
) -> Result<()> {
    // A retest comes first and an end test last, whatever the order of the lines.
    rows.sort_by_key(|row| match row.kind {
        CsvKind::Retest => 0,
        CsvKind::Practice => 1,
        CsvKind::EndTest => 2,
    });
    for row in rows {
        let (goal, new) = goal(db, student, visit, days, row)?;
        taken.goals += u32::from(new);
        let mut kind = match row.kind {
            CsvKind::Retest => Kind::Retest,
            CsvKind::Practice => Kind::Practice,
            CsvKind::EndTest => Kind::EndTest,
        };
        if kind == Kind::Retest && new {
            kind = Kind::Practice;
            taken.notes.push(format!(
                "Line {}: the first count ever at \u{201c}{}\u{201d} is kept as practice; there was nothing to retest yet.",
                row.line, row.goal
            ));
        }
        let day = if kind == Kind::EndTest { days.last } else { days.first };
        let entered = enter_total(
            db,
            EnterTotal {
                goal,
                visit,
                lesson: None,
                kind,
                condition: None,
                made: i64::from(row.count.made),
                tries: i64::from(row.count.tries),
                also: None,
                in_game: None,
                day: day.to_string(),
                source: Source::TotalEntered,
            },
        );
        match entered {
            Ok(_) => {
                taken.blocks += 1;
                taken.lines.push(row.line);
                if let Some(words) = row.note.clone().filter(|words| !words.trim().is_empty()) {
                    jot(db, Jot { visit, lesson: None, goal: Some(goal), words })?;
                }
            }
            Err(Error::NotPossible { code, words }) => {
                taken.not_taken.push(not_taken(row, code, &words))
            }
            Err(Error::Refused(problems)) => {
                let why = problems.iter().map(|p| p.words.clone()).collect::<Vec<_>>().join(" ");
                taken.not_taken.push(not_taken(row, "count", &why));
            }
            Err(other) => return Err(other),
        }
    }
    Ok(())
}

/// The student's goal of this title and condition, set at this visit if there is none yet.
fn goal(
    db: &Writing<'_>,
    student: StudentId,
    visit: VisitId,
    days: Span,
    row: &SeasonRow,
) -> Result<(GoalId, bool)> {
    let condition = row.condition.unwrap_or(Condition::Fed);
    let title = folded(&row.goal);
    let same = goals_of(db, OfStudent { student })?.into_iter().find(|g| {
        folded(&g.goal.title) == title && (row.condition.is_none() || g.goal.condition == condition)
    });
    if let Some(same) = same {
        return Ok((same.goal.id, false));
    }
    let (need, of) = row.criterion.map_or((8, 10), |c| (i64::from(c.made), i64::from(c.tries)));
    let shown = set(
        db,
        SetGoal {
            student,
            visit: Some(visit),
            title: row.goal.chars().take(crate::input::NAME).collect(),
            skill: String::new(),
            condition,
            counts: Counts::Result,
            criterion: CriterionKind::Of,
            need,
            of,
            least: 0,
            apart: None,
            uncounted: 3,
            cue: row.cue.clone().unwrap_or_default().chars().take(crate::input::NAME).collect(),
            aim: String::new(),
            day: days.first.to_string(),
        },
    )?;
    Ok((shown.goal.id, true))
}
