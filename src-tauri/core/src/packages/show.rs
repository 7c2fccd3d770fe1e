//! Packages and what they owe.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Package, PackageShown, PackageStep, WhichPackage, store};
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::Day;
use crate::kinds::ids::{PayerId, StudentId};
use crate::kinds::text::counted;
use crate::ledger;

/// Whose packages.
#[derive(Clone, Copy, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct ListPackages {
    /// Of a student; left out for everyone's.
    pub student: Option<StudentId>,
}

/// Packages: those that run out first on top.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>, of: ListPackages) -> Result<Vec<Package>> {
    let all = match of.student {
        Some(student) => store::of_student(db, student)?,
        None => store::all(db)?,
    };
    completed(db, all)
}

/// The packages that a payer paid for.
///
/// # Errors
/// `Storage`.
pub fn list_of_payer(db: &Reading<'_>, payer: PayerId) -> Result<Vec<Package>> {
    completed(db, store::of_payer(db, payer)?)
}

/// One package with its history.
///
/// # Errors
/// `NotFound`.
pub fn show(db: &Reading<'_>, which: WhichPackage) -> Result<PackageShown> {
    let found = store::find(db, which.package)?;
    let mut package = completed(db, vec![found.clone()])?.pop().unwrap_or(found);
    let steps = ledger::entries_of_package(db, which.package)?;
    let extensions = store::extensions(db, which.package)?;
    package.stands = stands(&package);
    let mut shown = Vec::new();
    for (entry, lessons) in steps {
        let settled = store::settled_by(db, entry.id)?;
        shown.push(PackageStep {
            entry: entry.id,
            day: entry.day,
            kind: entry.kind,
            words: entry.words,
            lessons,
            taken_back: entry.reversed,
            lesson: settled.map(|(lesson, _)| lesson),
            student: settled.map(|(_, student)| student),
        });
    }
    Ok(PackageShown { package, steps: shown, extensions })
}

fn completed(db: &Reading<'_>, mut all: Vec<Package>) -> Result<Vec<Package>> {
    for package in &mut all {
        package.students = store::students(db, package.id)?;
    }
    // What is reserved: each planned lesson takes from the package that it would be settled with.
    let students: std::collections::BTreeSet<StudentId> =
        all.iter().flat_map(|package| package.students.iter().map(|s| s.student)).collect();
    for student in students {
        for (day, minutes) in store::planned(db, student)? {
            let theirs = |package: &&mut Package| {
                package.students.iter().any(|s| s.student == student)
                    && package.left > package.reserved
                    && package.pays_for(day, minutes)
            };
            if let Some(package) = all.iter_mut().find(theirs) {
                package.reserved += 1;
            }
        }
    }
    for package in &mut all {
        package.stands = stands(package);
    }
    Ok(all)
}

impl Package {
    /// Whether it may pay for a lesson of a length on a day, if one is left.
    pub fn pays_for(&self, day: Day, minutes: i64) -> bool {
        self.sold.is_some()
            && self.minutes.is_none_or(|length| length == minutes)
            && self.expires.is_none_or(|last| day <= last)
    }
}

fn stands(package: &Package) -> String {
    if package.sold.is_none() {
        return "Not sold yet: its invoice is a draft.".to_owned();
    }
    let mut words = format!("{} left", counted(package.left, "lesson", "lessons"));
    if package.reserved > 0 {
        words.push_str(&format!(", {} of them planned", package.reserved));
    }
    if let Some(last) = package.expires {
        let until = if package.run_out { "ran out on" } else { "good until" };
        words.push_str(&format!(", {until} {}", last.words()));
    }
    words.push('.');
    words
}
