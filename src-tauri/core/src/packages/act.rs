//! What happens to a package besides its lessons: a new last day, a lesson on top, lessons to another
//! package, running out.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Package, PackageShown, Sold, WhichPackage, show, store};
use crate::app::Writing;
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::{PackageId, StudentId};
use crate::kinds::text::counted;
use crate::ledger::{self, Enter, EntryKind, LedgerAccount, Posting};
use crate::students;

/// A new last day for a package.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Extend {
    /// Which one.
    pub package: PackageId,
    /// The last day, as YYYY-MM-DD.
    pub until: String,
    /// Why.
    pub reason: String,
}

/// Lessons on top.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct GiveBonus {
    /// To which one.
    pub package: PackageId,
    /// How many.
    pub lessons: i64,
    /// Why.
    pub reason: String,
}

/// A package whose last day has passed.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Lapse {
    /// Which one.
    pub package: PackageId,
    /// Why: what was agreed.
    pub reason: String,
}

/// Lessons to someone else of the same payer.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MoveLessons {
    /// From which one.
    pub package: PackageId,
    /// To whom.
    pub student: StudentId,
    /// How many.
    pub lessons: i64,
    /// Why.
    pub reason: String,
}

/// Gives a package a new last day. The one before stays written down.
///
/// # Errors
/// `NotFound`; `Refused` without a reason, or with a day before it was sold.
pub fn extend(db: &Writing<'_>, given: Extend) -> Result<PackageShown> {
    let package = store::find(db, given.package)?;
    let mut p = Problems::new();
    let until = p.day("until", &given.until, "The last day");
    if package.sold.is_some_and(|sold| until < sold) {
        p.add("until", "before", "It would run out before it was sold.");
    }
    let reason = p.reason("reason", &given.reason, "The reason");
    p.done()?;
    store::extend(db, given.package, until, &reason, db.today())?;
    db.label(format!("{}: good until {}", package.words, until.words()));
    show(db, WhichPackage { package: given.package })
}

/// Gives lessons on top: what is owed is spread over all that are open from then on.
///
/// # Errors
/// `NotFound`; `Refused` without a reason or with no lesson; `NotPossible` before it is sold.
pub fn give_bonus(db: &Writing<'_>, given: GiveBonus) -> Result<PackageShown> {
    let package = sold(db, given.package)?;
    let mut p = Problems::new();
    let lessons = p.within_bounds("lessons", given.lessons, 1, 100, "The number of lessons");
    let reason = p.reason("reason", &given.reason, "The reason");
    p.done()?;
    let entry = entry_of(
        db,
        &package,
        EntryKind::Bonus,
        format!("{} on top: {reason}", counted(lessons, "lesson", "lessons")),
    );
    ledger::enter(db, &entry, &[], &[(given.package, lessons)])?;
    db.label(format!("{}: {} on top", package.words, counted(lessons, "lesson", "lessons")));
    show(db, WhichPackage { package: given.package })
}

/// Lets what is left of a package run out, once its last day has passed.
///
/// # Errors
/// `NotFound`; `Refused` without a reason; `NotPossible` before its last day has passed, or with nothing
/// left.
pub fn lapse(db: &Writing<'_>, given: Lapse) -> Result<PackageShown> {
    let package = sold(db, given.package)?;
    let mut p = Problems::new();
    let reason = p.reason("reason", &given.reason, "The reason");
    p.done()?;
    if !package.run_out {
        let words = "Its last day has not passed: nothing runs out yet.";
        return Err(Error::not_possible("not_run_out", words));
    }
    let released = release(db, &package, package.left)?;
    let entry = entry_of(
        db,
        &package,
        EntryKind::Lapsed,
        format!("{} ran out: {reason}", counted(package.left, "lesson", "lessons")),
    );
    let owed = Posting::on(LedgerAccount::Deferred, released).in_package(given.package);
    let lapsed = Posting::on(LedgerAccount::Lapsed, -released).in_package(given.package);
    ledger::enter(db, &entry, &[owed, lapsed], &[(given.package, -package.left)])?;
    db.label(format!("{}: {} ran out", package.words, package.left));
    show(db, WhichPackage { package: given.package })
}

/// Moves lessons to a package of someone else for whom the same payer pays, with what is owed of them.
///
/// # Errors
/// `NotFound`; `Refused` without a reason, or with more lessons than are left.
pub fn move_lessons(db: &Writing<'_>, given: MoveLessons) -> Result<PackageShown> {
    let package = sold(db, given.package)?;
    let student = students::show(db, students::Which { student: given.student })?;
    let mut p = Problems::new();
    let lessons = p.within_bounds("lessons", given.lessons, 1, 500, "The number of lessons");
    if given.lessons > package.left {
        let left = counted(package.left, "lesson is", "lessons are");
        p.add("lessons", "too_many", format!("Only {left} left."));
    }
    if store::students(db, package.id)?.iter().any(|known| known.student == given.student) {
        let words = "The package pays for their lessons as it is.";
        p.add("student", "theirs", words);
    }
    let reason = p.reason("reason", &given.reason, "The reason");
    p.done()?;
    let id: PackageId = db.id();
    store::insert(
        db,
        id,
        &Sold {
            payer: package.payer,
            words: package.words.clone(),
            lessons,
            minutes: package.minutes,
            currency: package.currency.clone(),
            price: 0,
            single: None,
            refund: package.refund,
            expires: package.expires,
            gift: package.gift,
        },
    )?;
    store::link(db, id, given.student)?;
    let moved = release(db, &package, lessons)?;
    let words = format!("{} moved: {reason}", counted(lessons, "lesson", "lessons"));
    let entry = entry_of(db, &package, EntryKind::Moved, words);
    let from = Posting::on(LedgerAccount::Deferred, moved).in_package(package.id);
    let to = Posting::on(LedgerAccount::Deferred, -moved).in_package(id);
    ledger::enter(db, &entry, &[from, to], &[(package.id, -lessons), (id, lessons)])?;
    db.label(format!("{}: {lessons} to {}", package.words, student.profile.name));
    show(db, WhichPackage { package: package.id })
}

fn sold(db: &Writing<'_>, id: PackageId) -> Result<Package> {
    let package = store::find(db, id)?;
    if package.sold.is_none() {
        let words = "This package is not sold yet: issue its invoice first.";
        return Err(Error::not_possible("not_sold", words));
    }
    Ok(package)
}

/// What of a package's price goes with so many lessons.
fn release(db: &Writing<'_>, package: &Package, lessons: i64) -> Result<i64> {
    let many = u32::try_from(lessons).ok().filter(|many| *many > 0);
    let owed = ledger::owed_of(db, package.id)?;
    match many.zip(owed).and_then(|(many, mut owed)| owed.release(many)) {
        Some(released) => Ok(released),
        None => Err(Error::not_possible("nothing_left", "No lesson of this package is left.")),
    }
}

fn entry_of(db: &Writing<'_>, package: &Package, kind: EntryKind, words: String) -> Enter {
    let id: PackageId = db.id();
    Enter {
        reference: format!("package:{}:{id}", package.id),
        day: db.today(),
        kind,
        words,
        currency: package.currency.clone(),
        reverses: None,
    }
}
