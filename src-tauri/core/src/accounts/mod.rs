//! What lessons came to: how each is settled, by a package, on an invoice or for nothing; what is open
//! and owed; and the year, as money that came in and as lessons earned, which are never mixed.

mod changed;
mod deferred;
mod overview;
mod papers;
mod settle;
mod store;
mod to_settle;
mod year;
mod year_paper;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use changed::{SettledOtherwise, changed};
pub use deferred::{OwedIn, OwedInLessons, PackageOwes, owed_in_lessons};
pub use overview::{Overview, Stands, overview};
pub use papers::{MoneyPaper, paper};
pub use settle::{Settle, SettleAll, Settled, Unsettle, settle, unsettle};
pub use to_settle::{AskSettle, SettleProposal, ToSettle, propose, to_settle};
pub use year::{
    MoneyYear, MoneyYearRow, MoneyYearSpent, MoneyYearStands, YearAsked, document, year,
};
pub use year_paper::year_paper;

/// How a lesson is settled.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum SettledBy {
    /// A prepaid lesson is used, or lost.
    Package,
    /// It stands on an invoice.
    Invoice,
    /// Nothing is charged.
    Free,
}

crate::db::words! {
    SettledBy { Package = "package", Invoice = "invoice", Free = "free" }
}
