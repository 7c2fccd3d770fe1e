//! The desk's talk with the coach's calendars: a file that is read, and a server, on a thread of its
//! own, so that nothing waits for the network. What came of a talk is written down when it is looked
//! at, by whoever holds the file then.

use std::collections::HashMap;
use std::path::PathBuf;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, PoisonError};

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Back, Desk};
use crate::app::Change;
use crate::calendar::remote::{Account, Calendars, Found, Secrets, Trouble};
use crate::calendar::server::{self, AccountShown, Asked, Exchanged, Outcome};
use crate::calendar::{self, not_too_large};
use crate::commands::{self, Nothing};
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::CalendarId;
use crate::kinds::{Clock, SystemClock};
use crate::outtray::carry::Carrier;
use crate::own_time::OwnCalendar;

/// A way to servers, and to this machine's keychain.
pub struct Beyond {
    /// Calendars on a server.
    pub calendars: Arc<dyn Calendars>,
    /// The keychain.
    pub secrets: Arc<dyn Secrets>,
    /// Mail servers.
    pub carrier: Arc<dyn Carrier>,
    /// The way back to the desk from a thread of its own.
    pub back: Back,
}

/// What the desk knows of its talk with a server.
#[derive(Default)]
pub(super) struct Talks {
    /// Passwords typed since the program began, by account.
    passwords: HashMap<String, String>,
    talk: Option<Talk>,
    /// The last that was looked at to its end.
    last: Option<CalendarTalk>,
}

struct Talk {
    file: Option<PathBuf>,
    stopped: Arc<AtomicBool>,
    said: Arc<Mutex<Option<Said>>>,
}

/// What a talk came to.
enum Said {
    Found(std::result::Result<Vec<Found>, Trouble>, Box<Typed>),
    Made(std::result::Result<Found, Trouble>),
    Exchanged(Box<Outcome>),
}

/// An account as it was typed.
struct Typed {
    account: Account,
    keep: bool,
}

/// Where a talk with the server is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum TalkStage {
    /// There was none yet.
    #[default]
    Silent,
    /// It goes on.
    Talking,
    /// It came to its end.
    Done,
    /// Something stood in its way.
    Failed,
}

/// A calendar found on the server.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct FoundCalendar {
    /// Its path there.
    pub href: String,
    /// What it is called; its path where the server gives no name.
    pub name: String,
    /// Whether lessons may be written into it.
    pub writable: bool,
}

/// A talk with the server, and what came of it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct CalendarTalk {
    /// Where it is.
    pub stage: TalkStage,
    /// The calendars it was asked for.
    pub found: Vec<FoundCalendar>,
    /// What an exchange did, as far as it got.
    pub exchanged: Option<Exchanged>,
    /// Whether it needs the password.
    pub password: bool,
    /// What stood in its way; empty when nothing did.
    pub trouble: String,
}

/// Calendars to look for.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FindCalendars {
    /// Where: an address of the server, or of a calendar.
    pub address: String,
    /// The name the coach signs in with.
    #[serde(default)]
    pub user: String,
    /// The password; empty for the one typed or kept before.
    #[serde(default)]
    pub password: String,
    /// Whether to keep it in this machine's keychain.
    #[serde(default)]
    pub keep: bool,
}

/// A calendar to make on the server.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MakeCalendar {
    /// Where.
    pub address: String,
    /// The name the coach signs in with.
    #[serde(default)]
    pub user: String,
    /// What it is to be called.
    pub name: String,
}

/// An exchange to begin.
#[derive(Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct BeginExchange {
    /// The password; empty for the one typed or kept before.
    pub password: String,
}

/// Whether this machine keeps passwords.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
pub struct Keychain {
    /// Whether it does.
    pub ready: bool,
    /// If not, why, as a sentence.
    pub words: String,
}

/// A calendar file to choose and read.
#[derive(Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct ChooseCalendar {
    /// The calendar it takes the place of; left out for a new one.
    pub calendar: Option<CalendarId>,
}

pub(super) fn read_file(desk: &mut Desk, which: ChooseCalendar) -> Result<Option<OwnCalendar>> {
    let chosen = desk.host.choose_to_open("Read a calendar file", "Calendar file", "ics");
    let Some(path) = chosen else { return Ok(None) };
    let doing = "Reading the calendar file";
    let size = std::fs::metadata(&path).map_err(|e| Error::storage(doing, e))?.len();
    not_too_large(size)?;
    let text = std::fs::read(&path).map_err(|e| Error::storage(doing, e))?;
    let name = super::name_of(&path);
    let read = desk.file()?.write("calendar.read", "Calendar file read", |db| {
        calendar::read_bytes(db, which.calendar, &name, text)
    })?;
    desk.changed.push(calendars_changed(read.value.id.to_string()));
    Ok(Some(read.value))
}

/// What calendars say is no act of the journal, so it is told to the page by this.
fn calendars_changed(id: String) -> Change {
    Change { kind: "own_calendar".to_owned(), id }
}

pub(super) fn keychain(desk: &mut Desk, _: Nothing) -> Result<Keychain> {
    let ready = desk.beyond()?.secrets.ready();
    Ok(Keychain { ready: ready.is_ok(), words: ready.err().unwrap_or_default() })
}

fn key(address: &str, user: &str) -> String {
    format!("{user} at {address}")
}

/// The password of an account: as typed now, or before, or as the keychain has it.
fn password(desk: &Desk, address: &str, user: &str, typed: &str) -> Option<String> {
    if !typed.is_empty() {
        return Some(typed.to_owned());
    }
    let key = key(address, user);
    let before = desk.talks.passwords.get(&key).cloned();
    before.or_else(|| desk.beyond().ok()?.secrets.get(&key).ok().flatten())
}

pub(super) fn find(desk: &mut Desk, find: FindCalendars) -> Result<CalendarTalk> {
    let mut p = Problems::new();
    let address = p.name("address", &find.address, "The address");
    let user = p.line("user", &find.user, "The name");
    p.done()?;
    let Some(password) = password(desk, &address, &user, &find.password) else {
        return Err(Error::field("password", "empty", "The server asks for the password."));
    };
    let account = Account { address, user, password };
    let typed = Box::new(Typed { account, keep: find.keep });
    begin(desk, move |calendars, _| {
        let found = calendars.calendars(&typed.account);
        Said::Found(found, typed)
    })
}

pub(super) fn make(desk: &mut Desk, make: MakeCalendar) -> Result<CalendarTalk> {
    let mut p = Problems::new();
    let name = p.name("name", &make.name, "The calendar\u{2019}s name");
    p.done()?;
    let password = password(desk, &make.address, &make.user, "").unwrap_or_default();
    let account = Account { address: make.address, user: make.user, password };
    begin(desk, move |calendars, _| Said::Made(calendars.make(&account, &name)))
}

pub(super) fn exchange(desk: &mut Desk, with: BeginExchange) -> Result<CalendarTalk> {
    let account = desk.file()?.read(server::show)?;
    let Some(password) = password(desk, &account.address, &account.user, &with.password) else {
        let talk = CalendarTalk {
            stage: TalkStage::Failed,
            password: true,
            trouble: "The password is needed. This machine does not keep it.".to_owned(),
            ..CalendarTalk::default()
        };
        desk.talks.last = Some(talk.clone());
        return Ok(talk);
    };
    let stamp = SystemClock.now().utc();
    let asked = desk.file()?.read(|db| server::ask(db, &password, stamp))?;
    let Some(asked) = asked else {
        return Err(Error::not_possible("no_server", "No calendar on a server was chosen yet."));
    };
    desk.talks.passwords.insert(key(&account.address, &account.user), password);
    begin(desk, move |calendars, go_on| talked(&asked, calendars, go_on))
}

fn talked(asked: &Asked, calendars: &dyn Calendars, go_on: &dyn Fn() -> bool) -> Said {
    Said::Exchanged(Box::new(server::exchange(asked, calendars, go_on)))
}

/// Begins a talk on a thread of its own; one at a time.
fn begin(
    desk: &mut Desk,
    talk: impl FnOnce(&dyn Calendars, &dyn Fn() -> bool) -> Said + Send + 'static,
) -> Result<CalendarTalk> {
    look(desk, Nothing {})?;
    if desk.talks.talk.is_some() {
        let words = "The calendars are being talked to already. Wait a moment, or stop that first.";
        return Err(Error::not_possible("talking", words));
    }
    let calendars = Arc::clone(&desk.beyond()?.calendars);
    let (stopped, said) = (Arc::new(AtomicBool::new(false)), Arc::new(Mutex::new(None)));
    let (own_stopped, own_said) = (Arc::clone(&stopped), Arc::clone(&said));
    std::thread::Builder::new()
        .name("calendars".to_owned())
        .spawn(move || {
            let came = talk(calendars.as_ref(), &|| !own_stopped.load(Ordering::Relaxed));
            *own_said.lock().unwrap_or_else(PoisonError::into_inner) = Some(came);
        })
        .map_err(|e| Error::Fault(e.to_string()))?;
    let file = desk.open.as_ref().map(|file| file.path().to_owned());
    desk.talks.talk = Some(Talk { file, stopped, said });
    Ok(CalendarTalk { stage: TalkStage::Talking, ..CalendarTalk::default() })
}

/// Where the talk is; what came of it is written down the first time it is seen.
pub(super) fn look(desk: &mut Desk, _: Nothing) -> Result<CalendarTalk> {
    let Some(talk) = &desk.talks.talk else {
        return Ok(desk.talks.last.clone().unwrap_or_default());
    };
    let came = talk.said.lock().unwrap_or_else(PoisonError::into_inner).take();
    let Some(came) = came else {
        // A thread that fell over says nothing any more.
        if Arc::strong_count(&talk.said) == 1 {
            desk.talks.talk = None;
            return Err(Error::Fault("the talk with the calendars broke off".to_owned()));
        }
        return Ok(CalendarTalk { stage: TalkStage::Talking, ..CalendarTalk::default() });
    };
    let file = talk.file.clone();
    desk.talks.talk = None;
    let seen = written_down(desk, came, file)?;
    desk.talks.last = Some(seen.clone());
    Ok(seen)
}

fn written_down(desk: &mut Desk, came: Said, file: Option<PathBuf>) -> Result<CalendarTalk> {
    let mut seen = CalendarTalk { stage: TalkStage::Done, ..CalendarTalk::default() };
    let trouble = match came {
        Said::Found(Ok(found), typed) => {
            seen.found = found.into_iter().map(shown).collect();
            remember(desk, &typed)
        }
        Said::Made(Ok(made)) => {
            seen.found = vec![shown(made)];
            String::new()
        }
        Said::Found(Err(trouble), _) | Said::Made(Err(trouble)) => {
            seen.stage = TalkStage::Failed;
            seen.password = trouble == Trouble::SignIn;
            trouble.words()
        }
        Said::Exchanged(outcome) => {
            let trouble = outcome.trouble.clone();
            // The file it was for may have been put away meanwhile: the next exchange sees to it.
            if desk.open.as_ref().is_some_and(|open| Some(open.path()) == file.as_deref()) {
                let kept =
                    desk.file()?.write("calendar.exchange", "Calendars exchanged", |db| {
                        server::keep(db, *outcome)
                    })?;
                seen.exchanged = Some(kept.value);
                desk.changed.push(calendars_changed(String::new()));
            }
            if let Some(trouble) = &trouble {
                seen.stage = TalkStage::Failed;
                seen.password = *trouble == Trouble::SignIn;
            }
            trouble.map(|trouble| trouble.words()).unwrap_or_default()
        }
    };
    seen.trouble = trouble;
    Ok(seen)
}

fn shown(found: Found) -> FoundCalendar {
    let name = if found.name.trim().is_empty() { found.href.clone() } else { found.name };
    FoundCalendar { href: found.href, name, writable: found.writable }
}

/// Keeps a password that the server took: while the program runs, and in the keychain where that
/// was asked for. Gives what kept it from being kept, or nothing.
fn remember(desk: &mut Desk, typed: &Typed) -> String {
    let Account { address, user, password } = &typed.account;
    let key = key(address, user);
    desk.talks.passwords.insert(key.clone(), password.clone());
    match desk.beyond() {
        Ok(beyond) if typed.keep => beyond.secrets.keep(&key, password).err().unwrap_or_default(),
        _ => String::new(),
    }
}

pub(super) fn stop(desk: &mut Desk, _: Nothing) -> Result<CalendarTalk> {
    if let Some(talk) = &desk.talks.talk {
        talk.stopped.store(true, Ordering::Relaxed);
    }
    look(desk, Nothing {})
}

pub(super) fn leave(desk: &mut Desk, _: Nothing) -> Result<AccountShown> {
    let account = desk.file()?.read(server::show)?;
    let left = commands::call(desk.file()?, "calendar.leave", serde_json::json!({}))?;
    desk.changed.extend(left.changes);
    let key = key(&account.address, &account.user);
    desk.talks.passwords.remove(&key);
    desk.talks.last = None;
    if let Ok(beyond) = desk.beyond() {
        // A keychain that is locked keeps a password that is of no use any more.
        let _ = beyond.secrets.forget(&key);
    }
    desk.file()?.read(server::show)
}
