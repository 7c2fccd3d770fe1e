//! A visit's life: opened, closed, opened again, called off.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::list::{ListVisits, list};
use super::{Stage, Visit, Which, show, store};
use crate::app::Writing;
use crate::error::{Error, Problems, Result};
use crate::goals::carry;
use crate::intake::head;
use crate::kinds::ids::VisitId;

/// A visit to call off.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CallOffVisit {
    /// Which one.
    pub visit: VisitId,
    /// Why.
    pub reason: String,
}

/// Opens a visit: every goal that is working, met or slipped is carried into it. An earlier visit
/// of the student that was left open is closed by it.
///
/// # Errors
/// `NotFound`; `NotPossible` when it has no days yet, or is open or over already, and while a blow to
/// the head keeps the student from play.
pub fn open(db: &Writing<'_>, which: Which) -> Result<Visit> {
    let visit = show(db, which)?;
    let refuse = |code, words: &str| Err(Error::not_possible(code, words));
    match visit.stage {
        Stage::Planned => {}
        Stage::Expected => {
            return refuse("no_days", "This visit is only expected. Give it its days first.");
        }
        Stage::Open => return refuse("open", "This visit is open already."),
        Stage::Closed => return refuse("closed", "This visit is closed. Open it again instead."),
        Stage::CalledOff => {
            return refuse("called_off", "This visit was called off. Plan a new one.");
        }
    }
    // A visit written down late began before today.
    let began = visit.days.map_or(db.today(), |days| days.last.min(db.today()));
    head::must_not_keep(db, visit.student, began)?;
    let others = list(db, ListVisits { student: Some(visit.student), ..ListVisits::default() })?;
    for left_open in others.iter().filter(|v| v.stage == Stage::Open && v.from() <= visit.from()) {
        carry::settle(db, left_open.id)?;
        store::set_closed(db, left_open.id, Some(db.today()))?;
    }
    store::set_opened(db, visit.id, db.today())?;
    let carried = carry::into_visit(db, visit.student, visit.id)?;
    db.label(format!(
        "Visit started: {}, {} carried",
        visit.name,
        crate::kinds::text::counted(i64::try_from(carried.len()).unwrap_or(0), "goal", "goals",)
    ));
    show(db, which)
}

/// Closes a visit. Blocks still open are ended; a goal kept at it closes with it.
///
/// # Errors
/// `NotFound`; `NotPossible` when it is not open.
pub fn close(db: &Writing<'_>, which: Which) -> Result<Visit> {
    let visit = show(db, which)?;
    if visit.stage != Stage::Open {
        return Err(Error::not_possible(
            "not_open",
            "This visit is not open, so there is nothing to close.",
        ));
    }
    carry::settle(db, visit.id)?;
    store::set_closed(db, visit.id, Some(db.today()))?;
    db.label(format!("Visit closed: {}", visit.name));
    show(db, which)
}

/// Opens a closed visit again, to write down what was forgotten. Goals are not carried anew.
///
/// # Errors
/// `NotFound`; `NotPossible` when it is not closed, or a later visit was opened since.
pub fn reopen(db: &Writing<'_>, which: Which) -> Result<Visit> {
    let visit = show(db, which)?;
    if visit.stage != Stage::Closed {
        return Err(Error::not_possible("not_closed", "This visit is not closed."));
    }
    let others = list(db, ListVisits { student: Some(visit.student), ..ListVisits::default() })?;
    let later = others.iter().any(|v| {
        matches!(v.stage, Stage::Open | Stage::Closed)
            && v.id != visit.id
            && v.from() > visit.from()
    });
    if later {
        return Err(Error::not_possible(
            "later_visit",
            "A later visit was started since, and its goals were carried from this one as it was. Write what was forgotten into the later visit.",
        ));
    }
    store::set_closed(db, visit.id, None)?;
    db.label(format!("Visit opened again: {}", visit.name));
    show(db, which)
}

/// Calls a visit off. Its lessons are left as they are, to be called off one by one with their own
/// reasons and costs.
///
/// # Errors
/// `NotFound`; `Refused` without a reason; `NotPossible` once it was started.
pub fn call_off(db: &Writing<'_>, call_off: CallOffVisit) -> Result<Visit> {
    let visit = show(db, Which { visit: call_off.visit })?;
    let mut p = Problems::new();
    let reason = p.reason("reason", &call_off.reason, "The reason");
    p.done()?;
    if !matches!(visit.stage, Stage::Expected | Stage::Planned) {
        return Err(Error::not_possible(
            "started",
            "This visit was started, so it cannot be called off. Close it instead.",
        ));
    }
    store::set_called_off(db, visit.id, db.today(), &reason)?;
    db.label(format!("Visit called off: {}", visit.name));
    show(db, Which { visit: call_off.visit })
}
