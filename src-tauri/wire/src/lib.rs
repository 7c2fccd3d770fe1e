//! What the program asks of the network and of the machine it runs on: calendars on a server, a
//! mail server, and the keychain that keeps their passwords. It answers the traits of
//! `carryover_core::calendar::remote` and `outtray::carry`; the core itself knows no network and no async
//! runtime.

pub mod caldav;
pub mod keychain;
pub mod smtp;
