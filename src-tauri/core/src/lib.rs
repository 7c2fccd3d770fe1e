//! Carryover's core: the whole program without a window.
//!
//! A coach's record of visiting students lives in one *coach file* (SQLite). This crate opens it,
//! holds every rule about it, and offers one door: the table in [`commands`]. It knows no window,
//! no network and no async runtime.
//!
//! Order of knowledge (a module may use those before it, never those after it):
//! kinds, error → db, app → input, settings → print, sports, load, money → ical → students, facilities → own_time, intake, prices → goals →
//! visits, lessons, games → ready → observations, assessments → home, planner → planning, bookings, offers → timetable → costs, payers, terms → ledger → packages → invoices →
//! payments → accounts → trips → letters, calendar, keeping → outtray → reports, exchange, calc → bank → erasing → commands → desk. A test in
//! the workspace's `tests` package checks it.

pub mod accounts;
pub mod app;
pub mod assessments;
pub mod bank;
pub mod bookings;
pub mod calc;
pub mod calendar;
pub mod commands;
pub mod costs;
pub mod db;
pub mod desk;
pub mod erasing;
pub mod error;
pub mod exchange;
pub mod facilities;
pub mod games;
pub mod goals;
pub mod home;
pub mod ical;
pub mod input;
pub mod intake;
pub mod invoices;
pub mod keeping;
pub mod kinds;
pub mod ledger;
pub mod lessons;
pub mod letters;
pub mod load;
pub mod money;
pub mod observations;
pub mod offers;
pub mod outtray;
pub mod own_time;
pub mod packages;
pub mod payers;
pub mod payments;
pub mod planner;
pub mod planning;
pub mod prices;
pub mod print;
pub mod ready;
pub mod reports;
pub mod settings;
pub mod sports;
pub mod students;
pub mod terms;
pub mod timetable;
pub mod trips;
pub mod visits;
