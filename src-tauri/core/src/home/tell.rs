//! What the student tells of a line of the home plan. It is kept as told, and moves nothing.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{HomePlan, of_visit, store};
use crate::app::Writing;
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::HomeLineId;

/// A report back.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TellHome {
    /// The line it is about.
    pub line: HomeLineId,
    /// What the student told; empty takes the report away.
    pub told: String,
    /// The day it was told, as YYYY-MM-DD; left out for today.
    #[serde(default)]
    pub day: String,
}

/// Writes down what the student told of a line; gives its plan.
///
/// # Errors
/// `NotFound`; `Refused` when the day is none or still to come, or the report is too long.
pub fn tell(db: &Writing<'_>, tell: TellHome) -> Result<HomePlan> {
    let (visit, what) = store::line(db, tell.line)?;
    let mut p = Problems::new();
    let told = p.note("told", &tell.told, "What the student told");
    let day = p.day_or_none("day", Some(&tell.day), "The day").unwrap_or_else(|| db.today());
    if day > db.today() {
        p.add("day", "in_future", "The day it was told is still to come.");
    }
    p.done()?;
    let told_on = (!told.is_empty()).then_some(day);
    store::tell(db, tell.line, &told, told_on)?;
    db.label(if told.is_empty() {
        format!("Report taken away: {what}")
    } else {
        format!("As told by the student: {what}")
    });
    of_visit(db, visit)?
        .ok_or_else(|| Error::NotFound { what: "home plan", id: tell.line.to_string() })
}
