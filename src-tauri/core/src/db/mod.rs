//! The coach file on disk: opening and locking it, bringing it to the newest schema, checking it,
//! backing it up and restoring it.

pub mod backup;
pub mod check;
pub mod digest;
pub mod migrate;
pub mod open;
mod words;

pub(crate) use words::words;

/// So many rows at most, as SQL takes it.
pub(crate) fn limit(most: usize) -> i64 {
    i64::try_from(most).unwrap_or(i64::MAX)
}
