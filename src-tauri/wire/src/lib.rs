//! What the program asks of the network and of the machine it runs on: calendars on a server, and the
//! keychain that keeps their passwords. It answers the traits of `carryover_core::calendar::remote`;
//! the core itself knows no network and no async runtime.

pub mod caldav;
pub mod keychain;
