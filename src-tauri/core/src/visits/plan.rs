//! Planning a visit with its days, expecting one without, and changing either.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Stage, Visit, Which, show, store};
use crate::app::Writing;
use crate::error::{Error, Problems, Result};
use crate::facilities;
use crate::kinds::Span;
use crate::kinds::ids::{FacilityId, StudentId, VisitId};
use crate::students;

/// A visit with its days.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PlanVisit {
    /// Whose.
    pub student: StudentId,
    /// Where; its zone is the visit's zone.
    pub facility: FacilityId,
    /// The first day, as YYYY-MM-DD.
    pub first_day: String,
    /// The last day, as YYYY-MM-DD.
    pub last_day: String,
    /// A word under its column.
    #[serde(default)]
    pub note: String,
}

/// A visit that is only expected.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ExpectVisit {
    /// Whose.
    pub student: StudentId,
    /// Where, if known.
    #[serde(default)]
    pub facility: Option<FacilityId>,
    /// The first day on which it may begin, as YYYY-MM-DD; for a month, its first day.
    pub from: String,
    /// The last such day; for a month, its last day.
    pub to: String,
    /// A word about it.
    #[serde(default)]
    pub note: String,
}

/// A change to a visit. An expected visit becomes a planned one by being given its days.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ChangeVisit {
    /// Which one.
    pub visit: VisitId,
    /// Where.
    pub facility: FacilityId,
    /// The first day, as YYYY-MM-DD.
    pub first_day: String,
    /// The last day, as YYYY-MM-DD.
    pub last_day: String,
    /// A word under its column.
    #[serde(default)]
    pub note: String,
}

/// The longest visit.
const LONGEST_DAYS: i64 = 120;

/// Plans a visit.
///
/// # Errors
/// `NotFound`; `Refused` when it ends before it starts or overlaps another of the student's.
pub fn plan(db: &Writing<'_>, plan: PlanVisit) -> Result<Visit> {
    let student = students::show(db, students::Which { student: plan.student })?;
    let facility = facilities::show(db, facilities::Which { facility: plan.facility })?;
    let mut p = Problems::new();
    let days = read_days(&mut p, &plan.first_day, &plan.last_day);
    let note = p.line("note", &plan.note, "The note");
    no_overlap(db, &mut p, plan.student, None, days)?;
    p.done()?;
    let visit = db.id();
    store::insert(db, visit, plan.student, Some(&facility), Some(days), None, &note)?;
    db.label(format!("Visit planned: {}, {}", student.profile.name, days.words()));
    show(db, Which { visit })
}

/// Expects a visit, so that the program reminds when it is time to ask.
///
/// # Errors
/// `NotFound`; `Refused` when the span is none.
pub fn expect(db: &Writing<'_>, expect: ExpectVisit) -> Result<Visit> {
    let student = students::show(db, students::Which { student: expect.student })?;
    let facility = expect
        .facility
        .map(|facility| facilities::show(db, facilities::Which { facility }))
        .transpose()?;
    let mut p = Problems::new();
    let first = p.day("from", &expect.from, "The first day it may begin");
    let last = p.day("to", &expect.to, "The last day it may begin");
    if !p.any() && last < first {
        p.add("to", "ends_before_start", "The span ends before it starts.");
    }
    let note = p.line("note", &expect.note, "The note");
    p.done()?;
    let (visit, span) = (db.id(), Span { first, last });
    store::insert(db, visit, expect.student, facility.as_ref(), None, Some(span), &note)?;
    db.label(format!("{} expected {}", student.profile.name, super::expected_words(span)));
    show(db, Which { visit })
}

/// Changes a visit's place, days or note; gives days to an expected one.
///
/// # Errors
/// `NotFound`; `Refused` as for [`plan`], or when lessons would lie outside; `NotPossible` when it
/// is closed or was called off.
pub fn change(db: &Writing<'_>, change: ChangeVisit) -> Result<Visit> {
    let before = show(db, Which { visit: change.visit })?;
    if matches!(before.stage, Stage::Closed | Stage::CalledOff) {
        return Err(Error::not_possible("over", "This visit is over. Open it again to change it."));
    }
    let facility = facilities::show(db, facilities::Which { facility: change.facility })?;
    let mut p = Problems::new();
    let days = read_days(&mut p, &change.first_day, &change.last_day);
    let note = p.line("note", &change.note, "The note");
    no_overlap(db, &mut p, before.student, Some(change.visit), days)?;
    if !p.any() && store::has_days_outside(db, change.visit, days)? {
        p.add(
            "first_day",
            "lessons_outside",
            "Lessons or blocks of this visit lie on other days. Move them first, or keep those days in the visit.",
        );
    }
    p.done()?;
    store::update(db, change.visit, &facility, days, &note)?;
    db.label(format!("Visit changed: {}, {}", before.name, days.words()));
    show(db, Which { visit: change.visit })
}

fn read_days(p: &mut Problems, first: &str, last: &str) -> Span {
    let fine = !p.any();
    let first = p.day("first_day", first, "The first day");
    let last = p.day("last_day", last, "The last day");
    let days = Span { first, last };
    if fine && !p.any() {
        if last < first {
            p.add(
                "last_day",
                "ends_before_start",
                format!("The visit ends on {} but starts on {}.", last.words(), first.words()),
            );
        } else if days.days() > LONGEST_DAYS {
            p.add(
                "last_day",
                "too_long",
                format!("That is {} days; a visit has at most {LONGEST_DAYS}.", days.days()),
            );
        }
    }
    days
}

fn no_overlap(
    db: &Writing<'_>,
    p: &mut Problems,
    student: StudentId,
    itself: Option<VisitId>,
    days: Span,
) -> Result<()> {
    if !p.any()
        && let Some(other) = store::overlapping(db, student, itself, days)?
    {
        p.add(
            "first_day",
            "overlaps",
            format!("There is a visit on some of these days already: {}.", other.words()),
        );
    }
    Ok(())
}
