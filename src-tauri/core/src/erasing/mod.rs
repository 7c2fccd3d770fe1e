//! What is kept about one person: a copy of it for them, and erasing it. The act spans everything that
//! knows a person, so it stands after all of it. Health answers can be erased alone, a report once its time is over; how rows and history go is `app/erase.rs`.
//!
//! What stays is named and kept apart: what the accounts need, if the coach says so, and what others'
//! records say of the person in free words, which only the coach can judge.

mod accounts;
mod act;
mod backups;
mod everything;
mod health;
mod kinds;
mod mentions;
mod store;
mod told;
mod would;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use accounts::{KeptForAccounts, LetGo, WhichKept, kept_for_accounts, let_go};
pub use act::{EraseStudent, Erased, erase};
pub use backups::{
    BackupKept, Backups, KeepBackups, backups, forget_backup, keep_backups_for, made, note_backup,
    note_backups,
};
pub use everything::{Document, Everything, document, everything};
pub use health::{EraseHealth, EraseReport, HealthKept, PartErased, erase_health, erase_report};
pub use kinds::{KindKept, without_words};
pub use mentions::{Mention, Mentions};
pub use would::{AccountsStay, WouldErase, would_erase};

/// Where a row is seen on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct SeenAt {
    /// What: student, lesson, goal, visit or facility.
    pub to: String,
    /// Which one.
    pub id: String,
}
