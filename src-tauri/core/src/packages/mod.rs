//! Packages: prepaid lessons. What a package owes, in lessons and in money, is the sum of what the
//! ledger has of it; what is reserved follows from the lessons that are planned. A package comes into
//! being when its invoice is issued.

mod act;
mod show;
mod store;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use act::{Extend, GiveBonus, Lapse, MoveLessons, extend, give_bonus, lapse, move_lessons};
pub use show::{ListPackages, list, list_of_payer, show};
pub(crate) use store::{insert as keep, link};

use crate::kinds::Day;
use crate::kinds::ids::{EntryId, LessonId, PackageId, PayerId, StudentId};
use crate::ledger::EntryKind;
use crate::payers::PaysFor;
use crate::terms::PaidBackAs;

/// Which package.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichPackage {
    /// Which one.
    pub package: PackageId,
}

/// A package as sold.
#[derive(Clone, Debug)]
pub struct Sold {
    /// Who pays.
    pub payer: PayerId,
    /// Its name.
    pub words: String,
    /// Lessons.
    pub lessons: i64,
    /// The length of each; `None` any.
    pub minutes: Option<i64>,
    /// The currency.
    pub currency: String,
    /// What it costs, in smallest units, as invoiced.
    pub price: i64,
    /// What one such lesson costs on its own.
    pub single: Option<i64>,
    /// What is paid back of it.
    pub refund: PaidBackAs,
    /// The last day.
    pub expires: Option<Day>,
    /// Whether nothing is paid for it.
    pub gift: bool,
}

/// Something that happened to a package.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct PackageStep {
    /// The entry.
    pub entry: EntryId,
    /// The day.
    pub day: Day,
    /// What.
    pub kind: EntryKind,
    /// In words.
    pub words: String,
    /// Lessons more, or fewer.
    pub lessons: i64,
    /// Whether it was taken back.
    pub taken_back: bool,
    /// The lesson that it settled, while it does.
    pub lesson: Option<LessonId>,
    /// Whose.
    pub student: Option<StudentId>,
}

/// A new last day.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Extension {
    /// The last day from then on.
    pub until: Day,
    /// Why.
    pub reason: String,
    /// When it was said.
    pub day: Day,
}

/// A package and what it owes.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Package {
    /// Which one.
    pub id: PackageId,
    /// Who pays.
    pub payer: PayerId,
    /// The payer's name.
    pub paid_by: String,
    /// Whose lessons it pays for.
    pub students: Vec<PaysFor>,
    /// Its name.
    pub words: String,
    /// Lessons as sold.
    pub lessons: i64,
    /// The length of each; `None` any.
    pub minutes: Option<i64>,
    /// The currency.
    pub currency: String,
    /// What it cost, a decimal, as invoiced.
    pub price: String,
    /// What one such lesson costs on its own; empty while not known.
    pub single: String,
    /// What is paid back of it.
    pub refund: PaidBackAs,
    /// Whether nothing was paid for it.
    pub gift: bool,
    /// The day it was sold; `None` while its invoice is a draft.
    pub sold: Option<Day>,
    /// The last day; `None` without end.
    pub expires: Option<Day>,
    /// Whether that day has passed.
    pub run_out: bool,
    /// Lessons as sold, with those given on top.
    pub whole: i64,
    /// Lessons left.
    pub left: i64,
    /// Of these, those that planned lessons will use.
    pub reserved: i64,
    /// Lessons given.
    pub used: i64,
    /// Lessons lost: called off late, or missed.
    pub lost: i64,
    /// Lessons that ran out.
    pub lapsed: i64,
    /// What is owed in lessons, a decimal without tax.
    pub deferred: String,
    /// Where it stands, in a sentence.
    pub stands: String,
}

/// A package with its history.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct PackageShown {
    /// The package.
    pub package: Package,
    /// What happened to it, the oldest first.
    pub steps: Vec<PackageStep>,
    /// New last days, the oldest first.
    pub extensions: Vec<Extension>,
}
