//! Which server, and what its calendars are for. The password is never in the coach file.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::decide::{Difference, differences};
use super::{exchange, store};
use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::own_time::{self, CalendarRole, OwnCalendar, WhichCalendar};
use crate::settings;

/// The record among the settings.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub(super) struct Account {
    pub address: String,
    pub user: String,
}

const RECORD: &str = "calendar_account";

/// A calendar on the server.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OnServer {
    /// Its path there.
    pub href: String,
    /// What it is called.
    pub name: String,
}

/// The server and what its calendars are for.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SetAccount {
    /// Where the calendars are.
    pub address: String,
    /// The name the coach signs in with.
    #[serde(default)]
    pub user: String,
    /// Those that say when the coach is taken.
    #[serde(default)]
    pub busy: Vec<OnServer>,
    /// The one lessons are written into; nothing for none.
    #[serde(default)]
    pub lessons: Option<OnServer>,
}

/// The server as it is set up, and how far the two sides are apart.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct AccountShown {
    /// Where the calendars are; empty before a server was chosen.
    pub address: String,
    /// The name the coach signs in with.
    pub user: String,
    /// Its calendars that are made use of.
    pub calendars: Vec<OwnCalendar>,
    /// So many lessons are not on the server as they stand here.
    pub to_write: u32,
    /// Lessons of which the server says something else.
    pub differs: Vec<Difference>,
}

pub(super) fn account(db: &Reading<'_>) -> Result<Account> {
    Ok(settings::kept(db, RECORD)?.unwrap_or_default())
}

pub(super) fn on_server(db: &Reading<'_>) -> Result<Vec<OwnCalendar>> {
    Ok(own_time::calendars(db)?.into_iter().filter(|c| c.href.is_some()).collect())
}

/// The server as it is set up.
///
/// # Errors
/// `Storage`.
pub fn show(db: &Reading<'_>) -> Result<AccountShown> {
    let Account { address, user } = account(db)?;
    let calendars = on_server(db)?;
    let to_write = exchange::to_write(db, &calendars)?;
    Ok(AccountShown { address, user, calendars, to_write, differs: differences(db)? })
}

/// Chooses the server and what its calendars are for. Those that stay keep what is known of them.
/// Lessons that were written into another calendar before stay there.
///
/// # Errors
/// `Refused` with every field that is wrong.
pub fn set(db: &Writing<'_>, set: SetAccount) -> Result<AccountShown> {
    let mut p = Problems::new();
    let address = p.name("address", &set.address, "The address");
    let user = p.line("user", &set.user, "The name");
    if set.busy.is_empty() && set.lessons.is_none() {
        let words = "Choose at least one calendar.".to_owned();
        p.add("lessons", "empty", words);
    }
    p.done()?;
    let before = account(db)?;
    let moved = before.address != address || before.user != user;
    let wanted = |c: &OwnCalendar| {
        let same = |o: &OnServer| Some(&o.href) == c.href.as_ref();
        match c.role {
            CalendarRole::Busy => set.busy.iter().any(same),
            CalendarRole::Lessons => set.lessons.as_ref().is_some_and(same),
        }
    };
    let there = on_server(db)?;
    for calendar in there.iter().filter(|c| moved || !wanted(c)) {
        own_time::remove_calendar(db, WhichCalendar { calendar: calendar.id })?;
        if calendar.role == CalendarRole::Lessons {
            store::clear(db)?;
        }
    }
    let known = |role: CalendarRole, href: &str| {
        !moved && there.iter().any(|c| c.role == role && c.href.as_deref() == Some(href))
    };
    let all = set.busy.iter().map(|o| (CalendarRole::Busy, o));
    for (role, on) in all.chain(set.lessons.iter().map(|o| (CalendarRole::Lessons, o))) {
        if !known(role, &on.href) {
            let name = if on.name.trim().is_empty() { &on.href } else { &on.name };
            own_time::add_calendar(db, name.trim(), role, Some(&on.href))?;
        }
    }
    settings::keep(db, RECORD, &Account { address, user })?;
    db.label("Calendars on a server chosen");
    show(db)
}

/// Leaves the server: its calendars take nobody's time any more, and no lesson is written there.
/// What stands there stays.
///
/// # Errors
/// `Storage`.
pub fn leave(db: &Writing<'_>) -> Result<AccountShown> {
    for calendar in on_server(db)? {
        own_time::remove_calendar(db, WhichCalendar { calendar: calendar.id })?;
    }
    store::clear(db)?;
    settings::keep(db, RECORD, &Account::default())?;
    db.label("Calendars on a server left");
    show(db)
}
