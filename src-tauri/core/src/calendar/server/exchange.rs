//! One exchange with the server: what it stands on, the talk, and what came of it.

use std::collections::{HashMap, HashSet};

use chrono::{DateTime, Utc};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::account::{self, on_server};
use super::{Agreed, Entry, Says, Theirs, store, uid};
use crate::app::{Reading, Writing};
use crate::calendar::due::event;
use crate::calendar::read::is_ours;
use crate::calendar::remote::{self, Calendars, Changes, Expect, Stored, Trouble};
use crate::error::{Error, Result};
use crate::ical::{self, Event};
use crate::kinds::ids::{CalendarId, LessonId};
use crate::kinds::zones::{Zone, resolve};
use crate::kinds::{Instant, Span};
use crate::lessons::{self, Lesson, LessonState, ListLessons, WhichHour};
use crate::own_time::{self, CalendarPart, CalendarRole, NewParts, OwnCalendar};
use crate::settings;

/// Days back from today that calendars are read and lessons written.
const BACK: i64 = 31;
/// Days ahead that calendars are read.
const AHEAD: i64 = 550;

/// What an exchange stands on, read in one go.
pub struct Asked {
    account: remote::Account,
    within: Span,
    busy: Vec<AskedCalendar>,
    lessons: Option<AskedCalendar>,
    entries: Vec<Entry>,
    ours: Vec<Ours>,
    home: Zone,
}

struct AskedCalendar {
    id: CalendarId,
    name: String,
    href: String,
    token: Option<String>,
}

/// A lesson as it is to stand on the server.
struct Ours {
    lesson: LessonId,
    event: Event,
    says: Says,
}

/// What came of the talk with the server; as far as it got, if something stood in the way.
#[derive(Default)]
pub struct Outcome {
    busy: Vec<(CalendarId, Changes)>,
    lessons: Option<(CalendarId, Option<String>)>,
    now: Vec<EntryNow>,
    written: u32,
    removed: u32,
    /// What stood in the way of the whole.
    pub trouble: Option<Trouble>,
    /// What stood in the way of single calendars or lessons, a sentence each.
    pub notes: Vec<String>,
}

enum EntryNow {
    Is(Entry),
    Dropped(LessonId),
}

/// What an exchange did.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Exchanged {
    /// So many lessons were written.
    pub written: u32,
    /// So many were taken out.
    pub removed: u32,
    /// So many calendars were read.
    pub read: u32,
    /// Of so many lessons the server says something else.
    pub differs: u32,
    /// What stood in the way of single calendars or lessons, a sentence each.
    pub notes: Vec<String>,
}

/// Reads what an exchange stands on; `None` before a server was chosen.
///
/// # Errors
/// `Storage`.
pub fn ask(db: &Reading<'_>, password: &str, stamp: DateTime<Utc>) -> Result<Option<Asked>> {
    let account = account::account(db)?;
    if account.address.is_empty() {
        return Ok(None);
    }
    let (mut busy, mut lessons) = (Vec::new(), None);
    for calendar in on_server(db)? {
        let OwnCalendar { id, name, role, href: Some(href), .. } = calendar else { continue };
        let asked = AskedCalendar { id, name, href, token: own_time::calendar_token(db, id)? };
        match role {
            CalendarRole::Busy => busy.push(asked),
            CalendarRole::Lessons => lessons = Some(asked),
        }
    }
    let entries = store::all(db)?;
    let ours = if lessons.is_some() { ours(db, &entries, stamp)? } else { Vec::new() };
    Ok(Some(Asked {
        account: remote::Account {
            address: account.address,
            user: account.user,
            password: password.to_owned(),
        },
        within: Span { first: db.today().plus(-BACK), last: db.today().plus(AHEAD) },
        busy,
        lessons,
        entries,
        ours,
        home: own_time::home()?,
    }))
}

/// The lessons that are to stand on the server: those of the last days and to come, and those that
/// are there already.
fn ours(db: &Reading<'_>, entries: &[Entry], stamp: DateTime<Utc>) -> Result<Vec<Ours>> {
    let me = settings::show(db)?;
    let on = ListLessons { visit: None, from: Some(db.today().plus(-BACK)), to: None };
    let mut all = lessons::list(db, on)?;
    let listed: HashSet<LessonId> = all.iter().map(|l| l.id).collect();
    for entry in entries.iter().filter(|e| !listed.contains(&e.lesson)) {
        // One that was taken back by Undo is not there.
        if let Ok(lesson) = lessons::show(db, lessons::Which { lesson: entry.lesson }) {
            all.push(lesson);
        }
    }
    let stands = |l: &Lesson| !matches!(l.state, LessonState::CalledOff | LessonState::Missed);
    let mut ours = Vec::new();
    for lesson in all.iter().filter(|l| stands(l)) {
        let sequence = entries.iter().find(|e| e.lesson == lesson.id);
        let sequence = sequence.map_or(0, |e| e.agreed.sequence + 1);
        let summary = format!("Lesson: {}", lesson.names());
        let event = Event { organizer: None, ..event(lesson, &me, stamp, sequence, summary)? };
        ours.push(Ours { lesson: lesson.id, says: says(lesson, &event)?, event });
    }
    Ok(ours)
}

fn says(lesson: &Lesson, event: &Event) -> Result<Says> {
    let second = lesson.which == WhichHour::Second;
    let starts = resolve(event.starts, &event.zone).map_err(|e| Error::Fault(e.to_string()))?;
    let starts = starts.instant(second).to_utc();
    // A lesson lasts its minutes, whatever the clock does meanwhile.
    let ends = starts + chrono::Duration::minutes(i64::from(lesson.minutes));
    Ok(Says {
        starts: Instant::from_chrono(&starts),
        ends: Instant::from_chrono(&ends),
        place: event.place.clone(),
    })
}

/// How many lessons are not on the server as they stand here, those left out of which the coach has
/// yet to decide.
pub(super) fn to_write(db: &Reading<'_>, calendars: &[OwnCalendar]) -> Result<u32> {
    if !calendars.iter().any(|c| c.role == CalendarRole::Lessons) {
        return Ok(0);
    }
    let entries = store::all(db)?;
    let ours = ours(db, &entries, DateTime::<Utc>::UNIX_EPOCH)?;
    let by: HashMap<LessonId, &Entry> = entries.iter().map(|e| (e.lesson, e)).collect();
    let due = |o: &&Ours| by.get(&o.lesson).is_none_or(|e| e.theirs.is_none() && !e.stands_as(o));
    let stand: HashSet<LessonId> = ours.iter().map(|o| o.lesson).collect();
    let out = |e: &&Entry| e.theirs.is_none() && !stand.contains(&e.lesson);
    let many = ours.iter().filter(due).count() + entries.iter().filter(out).count();
    Ok(u32::try_from(many).unwrap_or(u32::MAX))
}

impl Entry {
    fn stands_as(&self, ours: &Ours) -> bool {
        self.agreed.says == ours.says && self.agreed.summary == ours.event.summary
    }
}

/// Talks with the server. Each step stands by itself, so whatever cuts it off, the outcome says what
/// was done until then; `go_on` is asked between steps.
pub fn exchange(asked: &Asked, server: &dyn Calendars, go_on: &dyn Fn() -> bool) -> Outcome {
    let mut talk = Talk { asked, server, outcome: Outcome::default() };
    if let Err(trouble) = talk.all(go_on) {
        talk.outcome.trouble = Some(trouble);
    }
    talk.outcome
}

struct Talk<'a> {
    asked: &'a Asked,
    server: &'a dyn Calendars,
    outcome: Outcome,
}

/// Whether nothing else can go well either.
fn ends_all(trouble: &Trouble) -> bool {
    matches!(
        trouble,
        Trouble::Address(_) | Trouble::Away(_) | Trouble::Certificate(_) | Trouble::SignIn
    )
}

impl Talk<'_> {
    fn all(&mut self, go_on: &dyn Fn() -> bool) -> std::result::Result<(), Trouble> {
        let asked = self.asked;
        for calendar in &asked.busy {
            if !go_on() {
                return Ok(());
            }
            if let Some(changes) = self.changes(calendar)? {
                self.outcome.busy.push((calendar.id, changes));
            }
        }
        let Some(calendar) = &asked.lessons else { return Ok(()) };
        if !go_on() {
            return Ok(());
        }
        let Some(changes) = self.changes(calendar)? else { return Ok(()) };
        let token = changes.token.clone();
        let mut entries: HashMap<LessonId, Entry> = HashMap::new();
        for entry in &asked.entries {
            let now = self.heard(entry, &changes);
            if now.as_ref() != Some(entry) {
                self.outcome.now.push(match &now {
                    Some(now) => EntryNow::Is(now.clone()),
                    None => EntryNow::Dropped(entry.lesson),
                });
            }
            entries.extend(now.map(|now| (now.lesson, now)));
        }
        self.outcome.lessons = Some((calendar.id, token));
        for ours in &asked.ours {
            if !go_on() {
                return Ok(());
            }
            let said = self.say(calendar, ours, entries.get(&ours.lesson));
            self.minor(said, &ours.event.summary)?;
        }
        let stand: HashSet<LessonId> = asked.ours.iter().map(|o| o.lesson).collect();
        let mut out: Vec<&Entry> =
            entries.values().filter(|e| !stand.contains(&e.lesson)).collect();
        out.sort_by_key(|e| e.lesson);
        for entry in out.into_iter().filter(|e| e.theirs.is_none()) {
            if !go_on() {
                return Ok(());
            }
            let taken = self.take_out(entry);
            self.minor(taken, &entry.agreed.summary)?;
        }
        Ok(())
    }

    /// A trouble with one lesson is noted, and the others go on.
    fn minor(
        &mut self,
        done: std::result::Result<(), Trouble>,
        of: &str,
    ) -> std::result::Result<(), Trouble> {
        match done {
            Err(trouble) if !ends_all(&trouble) => {
                self.outcome.notes.push(format!("{of}: {}", trouble.words()));
                Ok(())
            }
            done => done,
        }
    }

    /// What changed in a calendar; nothing when only this one cannot be read.
    fn changes(&mut self, of: &AskedCalendar) -> std::result::Result<Option<Changes>, Trouble> {
        let asked = self.asked;
        let token = of.token.as_deref();
        match self.server.changes(&asked.account, &of.href, token, asked.within) {
            Ok(changes) => Ok(Some(changes)),
            Err(trouble) if ends_all(&trouble) => Err(trouble),
            Err(trouble) => {
                self.outcome.notes.push(format!("{}: {}", of.name, trouble.words()));
                Ok(None)
            }
        }
    }

    fn ours(&self, lesson: LessonId) -> Option<&Ours> {
        self.asked.ours.iter().find(|o| o.lesson == lesson)
    }

    /// An entry after what the server told; `None` when nothing is left to keep in step.
    fn heard(&self, entry: &Entry, changes: &Changes) -> Option<Entry> {
        let ours = self.ours(entry.lesson);
        let changed = changes.changed.iter().find(|s| s.href == entry.href);
        let gone = changes.gone.contains(&entry.href)
            || (changes.whole && changed.is_none() && self.near(entry));
        match changed {
            Some(stored) if stored.etag != entry.etag => Some(self.compared(entry, stored, ours)),
            _ if gone && ours.is_none() => None,
            _ if gone => Some(Entry { theirs: Some(Theirs::Gone), ..entry.clone() }),
            _ => Some(settled(entry, ours)),
        }
    }

    /// Whether a listing of the days asked about holds the entry for sure.
    fn near(&self, entry: &Entry) -> bool {
        let day = |at: Instant| at.utc().date_naive();
        let within = self.asked.within;
        let (first, last) = (within.first.plus(2).date(), within.last.plus(-2).date());
        day(entry.agreed.says.starts) >= first && day(entry.agreed.says.ends) <= last
    }

    /// An entry beside a text of the server's.
    fn compared(&self, entry: &Entry, stored: &Stored, ours: Option<&Ours>) -> Entry {
        let mut now = Entry {
            etag: stored.etag.clone(),
            text: stored.text.clone(),
            theirs: None,
            ..entry.clone()
        };
        let theirs = self.read(entry.lesson, &stored.text);
        let Theirs::Other(says) = &theirs else {
            now.theirs = Some(theirs);
            return now;
        };
        if *says == entry.agreed.says {
            return now;
        }
        match ours {
            Some(ours) if *says == ours.says => now.agreed.says = says.clone(),
            _ => now.theirs = Some(theirs),
        }
        now
    }

    /// What a text of the server's says of a lesson.
    fn read(&self, lesson: LessonId, text: &str) -> Theirs {
        match ical::seen(text.as_bytes(), &uid(lesson), &self.asked.home) {
            Ok(Some(seen)) if seen.cancelled => Theirs::CalledOff,
            Ok(Some(seen)) if !seen.again => Theirs::Other(Says {
                starts: Instant::from_chrono(&seen.starts),
                ends: Instant::from_chrono(&seen.ends),
                place: seen.place,
            }),
            _ => Theirs::Unclear,
        }
    }

    /// Writes a lesson where it is not on the server as it stands here.
    fn say(
        &mut self,
        calendar: &AskedCalendar,
        ours: &Ours,
        entry: Option<&Entry>,
    ) -> std::result::Result<(), Trouble> {
        let Some(entry) = entry else {
            let href = format!("{}/{}.ics", calendar.href.trim_end_matches('/'), ours.lesson);
            let text = written(&[], ours)?;
            return match self.server.put(&self.asked.account, &href, &text, &Expect::Nothing) {
                Err(Trouble::OtherVersion) => self.adopt(ours, &href),
                put => self.put(ours, href, text, put?),
            };
        };
        if entry.theirs.is_some() || entry.stands_as(ours) {
            return Ok(());
        }
        // Its text was forgotten with someone who was on it; what others put there must stay.
        if entry.text.is_empty() {
            return self.again(ours, entry);
        }
        let expect = Expect::Version(entry.etag.clone());
        let text = written(entry.text.as_bytes(), ours)?;
        match self.server.put(&self.asked.account, &entry.href, &text, &expect) {
            Err(Trouble::OtherVersion | Trouble::Gone) => self.again(ours, entry),
            put => self.put(ours, entry.href.clone(), text, put?),
        }
    }

    /// What was written, with the version the server gave it. Where it gave none, or may have
    /// changed the text, it is asked.
    fn put(
        &mut self,
        ours: &Ours,
        href: String,
        text: String,
        etag: Option<String>,
    ) -> std::result::Result<(), Trouble> {
        let (etag, text) = match etag {
            Some(etag) => (etag, text),
            None => match self.server.get(&self.asked.account, &href)? {
                Some(stored) => (stored.etag, stored.text),
                None => return Err(Trouble::Gone),
            },
        };
        self.outcome.written += 1;
        self.is(ours, href, etag, text, None);
        Ok(())
    }

    fn is(
        &mut self,
        ours: &Ours,
        href: String,
        etag: String,
        text: String,
        theirs: Option<Theirs>,
    ) {
        let agreed = Agreed {
            says: ours.says.clone(),
            summary: ours.event.summary.clone(),
            sequence: ours.event.sequence,
        };
        let entry = Entry { lesson: ours.lesson, href, etag, agreed, theirs, text };
        self.outcome.now.push(EntryNow::Is(entry));
    }

    /// Something stands where a lesson is to be written: the lesson itself, when an answer was lost
    /// on its way here, or what the coach must decide about.
    fn adopt(&mut self, ours: &Ours, href: &str) -> std::result::Result<(), Trouble> {
        let Some(stored) = self.server.get(&self.asked.account, href)? else { return Ok(()) };
        let theirs = self.read(ours.lesson, &stored.text);
        let same = matches!(&theirs, Theirs::Other(says) if *says == ours.says);
        let theirs = if same { None } else { Some(theirs) };
        self.is(ours, stored.href, stored.etag, stored.text, theirs);
        Ok(())
    }

    /// The server holds another version than was known: where it says the same as before, ours is
    /// put into that one; else the coach decides.
    fn again(&mut self, ours: &Ours, entry: &Entry) -> std::result::Result<(), Trouble> {
        let Some(stored) = self.server.get(&self.asked.account, &entry.href)? else {
            let gone = Entry { theirs: Some(Theirs::Gone), ..entry.clone() };
            self.outcome.now.push(EntryNow::Is(gone));
            return Ok(());
        };
        let now = self.compared(entry, &stored, Some(ours));
        if now.theirs.is_some() || now.stands_as(ours) {
            self.outcome.now.push(EntryNow::Is(now));
            return Ok(());
        }
        let text = written(stored.text.as_bytes(), ours)?;
        let expect = Expect::Version(stored.etag);
        let put = self.server.put(&self.asked.account, &entry.href, &text, &expect)?;
        self.put(ours, entry.href.clone(), text, put)
    }

    /// Takes a lesson that no longer stands out of the calendar.
    fn take_out(&mut self, entry: &Entry) -> std::result::Result<(), Trouble> {
        let account = &self.asked.account;
        let done = match self.server.remove(account, &entry.href, &entry.etag) {
            Err(Trouble::OtherVersion) => {
                let Some(stored) = self.server.get(account, &entry.href)? else {
                    self.outcome.now.push(EntryNow::Dropped(entry.lesson));
                    return Ok(());
                };
                let now = self.compared(entry, &stored, None);
                if now.theirs.is_some() {
                    self.outcome.now.push(EntryNow::Is(now));
                    return Ok(());
                }
                self.server.remove(account, &entry.href, &stored.etag)
            }
            done => done,
        };
        match done {
            Ok(()) => self.outcome.removed += 1,
            Err(Trouble::Gone) => {}
            Err(trouble) => return Err(trouble),
        }
        self.outcome.now.push(EntryNow::Dropped(entry.lesson));
        Ok(())
    }
}

/// An entry whose lesson was meanwhile changed by hand to what the server says: there is nothing
/// left to decide.
fn settled(entry: &Entry, ours: Option<&Ours>) -> Entry {
    match (&entry.theirs, ours) {
        (Some(Theirs::Other(says)), Some(ours)) if *says == ours.says => {
            let agreed = Agreed { says: says.clone(), ..entry.agreed.clone() };
            Entry { agreed, theirs: None, ..entry.clone() }
        }
        _ => entry.clone(),
    }
}

/// The text of a lesson, put into the server's where there is one.
fn written(theirs: &[u8], ours: &Ours) -> std::result::Result<String, Trouble> {
    ical::merged(theirs, &ours.event).map_err(|e| Trouble::Answer(e.to_string()))
}

/// Writes down what came of an exchange.
///
/// # Errors
/// `Storage`.
pub fn keep(db: &Writing<'_>, outcome: Outcome) -> Result<Exchanged> {
    let mut done = Exchanged {
        written: outcome.written,
        removed: outcome.removed,
        read: u32::try_from(outcome.busy.len()).unwrap_or(u32::MAX),
        differs: 0,
        notes: outcome.notes,
    };
    let there = on_server(db)?;
    let still = |id: CalendarId| there.iter().any(|c| c.id == id);
    for (id, changes) in outcome.busy.into_iter().filter(|(id, _)| still(*id)) {
        let part =
            |s: Stored| CalendarPart { href: s.href, etag: s.etag, text: s.text.into_bytes() };
        let new = NewParts {
            whole: changes.whole,
            changed: changes.changed.into_iter().map(part).collect(),
            gone: changes.gone,
            token: changes.token,
        };
        own_time::keep_parts(db, id, new, &|uid| is_ours(db, uid))?;
    }
    if let Some((id, token)) = outcome.lessons.filter(|(id, _)| still(*id)) {
        for now in outcome.now {
            match now {
                EntryNow::Is(entry) => store::keep(db, &entry)?,
                EntryNow::Dropped(lesson) => store::drop(db, lesson)?,
            }
        }
        let new = NewParts { whole: false, changed: Vec::new(), gone: Vec::new(), token };
        own_time::keep_parts(db, id, new, &|_| true)?;
    }
    done.differs = store::to_decide(db)?;
    Ok(done)
}
