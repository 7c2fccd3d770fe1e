//! Calendars over the network, against a server that answers what a test wrote for it.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod bounds;
mod certificates;
mod finding;
mod listing;
mod refusals;
mod script;
