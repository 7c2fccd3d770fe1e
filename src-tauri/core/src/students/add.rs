//! Adding a student, and changing what is kept about one.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Profile, Student, Which, show, store};
use crate::app::Writing;
use crate::error::Result;
use crate::kinds::ids::StudentId;

/// A changed profile.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ChangeStudent {
    /// Which student.
    pub student: StudentId,
    /// All that is to be kept, changed or not.
    pub profile: Profile,
}

/// Adds a student.
///
/// # Errors
/// `Refused` with every field that is wrong.
pub fn add(db: &Writing<'_>, profile: Profile) -> Result<Student> {
    let profile = profile.read(db.today())?;
    let student = db.id();
    store::insert(db, student, &profile)?;
    db.label(format!("{} added", profile.name));
    show(db, Which { student })
}

/// Changes what is kept about a student.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong.
pub fn change(db: &Writing<'_>, change: ChangeStudent) -> Result<Student> {
    show(db, Which { student: change.student })?;
    let profile = change.profile.read(db.today())?;
    store::update(db, change.student, &profile)?;
    db.label(format!("{} changed", profile.name));
    show(db, Which { student: change.student })
}
