//! The coach file on disk: opening and locking it, bringing it to the newest schema, checking it,
//! backing it up and restoring it.

pub mod backup;
pub mod check;
pub mod digest;
pub mod migrate;
pub mod open;
mod words;

pub(crate) use words::words;
