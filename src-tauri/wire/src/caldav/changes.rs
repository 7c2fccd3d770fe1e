//! What became of a calendar: by the server's own account of it (RFC 6578), or by listing it.
//!
//! Nothing may look gone that is not. A listing counts as whole only if the server left nothing out, and
//! a resource as gone only if the server says so of it; one that was listed but not sent is asked for by
//! itself.

use std::collections::BTreeMap;

use carryover_core::calendar::remote::{Account, Changes, Stored, Trouble};
use carryover_core::kinds::{Day, Span};
use http::StatusCode;
use libdav::Depth;
use libdav::caldav::{CalendarComponent, GetCalendarResources, ListCalendarResources, TimeRange};
use libdav::dav::{Propfind, SyncCollection};
use libdav::names;
use libdav::requests::DavRequest;
use url::Url;

use super::OverHttps;
use super::address::Place;
use super::answer::Multistatus;
use super::ask::Unanswered;
use super::trouble::{refused, unreadable};

/// Resources fetched with one request. What they hold together must stay below the bound of an answer;
/// where it does not, fewer are asked for.
const BATCH: usize = 50;

/// Answers that one account of what changed may be cut into.
const PIECES: usize = 10_000;

/// Bytes of text that one call may bring together.
const ALTOGETHER: usize = 200 * 1_048_576;

/// Paths, with whether something is there.
type Listed = BTreeMap<String, bool>;

/// A listing, and the token for what comes after it.
type Synced = (Listed, String);

impl OverHttps {
    /// What changed since the token, or everything.
    pub(super) fn read_changes(
        &self,
        account: &Account,
        calendar: &Place,
        home: &Url,
        token: Option<&str>,
        within: Span,
    ) -> Result<Changes, Trouble> {
        if let Some(token) = token
            && let Some((listed, token)) = self.synced(account, calendar, Some(token))?
        {
            let (there, gone): (Vec<_>, Vec<_>) = listed.into_iter().partition(|(_, there)| *there);
            let mut gone: Vec<String> = gone.into_iter().map(|(path, _)| path).collect();
            let there = there.into_iter().map(|(path, _)| path).collect();
            let changed = self.fetch(account, calendar, home, there, &mut gone)?;
            let gone = gone.iter().map(|path| calendar.at(path).named(home)).collect();
            return Ok(Changes { token: Some(token), whole: false, changed, gone });
        }
        self.everything(account, calendar, home, within)
    }

    /// Everything that touches a span. The token is taken before the listing, so that what changes
    /// meanwhile is told once more instead of never.
    fn everything(
        &self,
        account: &Account,
        calendar: &Place,
        home: &Url,
        within: Span,
    ) -> Result<Changes, Trouble> {
        let seen = self.seen(account, calendar, Depth::Zero)?.ok_or(Trouble::NoCalendar)?;
        let calendar = &seen.place;
        let has = &seen.own().filter(|part| part.has.is_calendar).ok_or(Trouble::NoCalendar)?.has;
        let mut token = has.token.clone().filter(|_| has.syncs);
        let mut listed = None;
        if has.syncs && token.is_none() {
            (listed, token) = self.synced(account, calendar, None)?.unzip();
        }
        if listed.is_none() {
            listed = self.touching(account, calendar, within)?;
        }
        if listed.is_none() && has.syncs {
            (listed, token) = self.synced(account, calendar, None)?.unzip();
        }
        let listed = match listed {
            Some(listed) => listed,
            None => self.members(account, calendar)?,
        };
        let there = listed.into_iter().filter(|(_, there)| *there).map(|(path, _)| path).collect();
        let changed = self.fetch(account, calendar, home, there, &mut Vec::new())?;
        Ok(Changes { token, whole: true, changed, gone: Vec::new() })
    }

    /// The server's account of what changed, followed until it is complete; `None` when it gives none:
    /// the token is forgotten, or it does not know the request. Servers say that in many ways, so every
    /// refusal but that of the account counts as one; what is really wrong shows in the listing that
    /// follows.
    fn synced(
        &self,
        account: &Account,
        calendar: &Place,
        since: Option<&str>,
    ) -> Result<Option<Synced>, Trouble> {
        let mut token = since.map(str::to_owned);
        let mut listed = Listed::new();
        for _ in 0..PIECES {
            let mut ask = SyncCollection::new(&calendar.path);
            if let Some(token) = &token {
                ask = ask.with_sync_token(token);
            }
            let answer =
                match self.wire.ask(account, calendar, |server| ask.prepare_request(server)) {
                    Ok(answer) => answer,
                    Err(Unanswered::TooLarge(_)) => return Ok(None),
                    Err(Unanswered::For(trouble)) => return Err(trouble),
                };
            let forgotten = answer.status.is_client_error()
                || matches!(
                    answer.status,
                    StatusCode::INSUFFICIENT_STORAGE | StatusCode::NOT_IMPLEMENTED
                );
            if forgotten {
                return Ok(None);
            }
            let report = Multistatus::read(&answer)?;
            take(&report, &mut listed);
            let Some(next) = report.token.clone() else { return Ok(None) };
            if !report.is_truncated() {
                return Ok(Some((listed, next)));
            }
            // A server that stops half-way and does not say where it stopped.
            if token.as_deref() == Some(next.as_str()) {
                return Ok(None);
            }
            token = Some(next);
        }
        Err(unreadable(&calendar.host()))
    }

    /// The events that touch a span, by the server's calendar query; `None` when it does not answer it,
    /// or not with all.
    fn touching(
        &self,
        account: &Account,
        calendar: &Place,
        within: Span,
    ) -> Result<Option<Listed>, Trouble> {
        // A day more on either side: where an event has no zone, the server takes its times for its own.
        let at = |day: Day| format!("{}T000000Z", day.date().format("%Y%m%d")).parse();
        let (Ok(from), Ok(until)) = (at(within.first.plus(-1)), at(within.last.plus(2))) else {
            return Ok(None);
        };
        let ask = ListCalendarResources::new(&calendar.path).with_component_and_time_range(
            CalendarComponent::VEvent,
            TimeRange::Between(from, until),
        );
        let answer = match self.wire.ask(account, calendar, |server| ask.prepare_request(server)) {
            Ok(answer) => answer,
            Err(Unanswered::TooLarge(_)) => return Ok(None),
            Err(Unanswered::For(trouble)) => return Err(trouble),
        };
        if answer.status != StatusCode::MULTI_STATUS {
            return Ok(None);
        }
        let listing = Multistatus::read(&answer)?;
        let mut listed = Listed::new();
        take(&listing, &mut listed);
        Ok((!listing.is_truncated()).then_some(listed))
    }

    /// Everything in the collection.
    fn members(&self, account: &Account, calendar: &Place) -> Result<Listed, Trouble> {
        let ask = Propfind::new(&calendar.path)
            .with_depth(Depth::One)
            .with_properties(&[&names::GETETAG]);
        let answer = self.wire.ask(account, calendar, |server| ask.prepare_request(server))?;
        let listing = Multistatus::read(&answer)?;
        if listing.is_truncated() {
            return Err(Trouble::Answer(format!(
                "{} does not list the whole calendar: it holds too much.",
                calendar.host()
            )));
        }
        let mut listed = Listed::new();
        take(&listing, &mut listed);
        Ok(listed)
    }

    /// The texts of what is listed, events alone; what is not there any more, or is no event, is added
    /// to what is gone.
    fn fetch(
        &self,
        account: &Account,
        calendar: &Place,
        home: &Url,
        paths: Vec<String>,
        gone: &mut Vec<String>,
    ) -> Result<Vec<Stored>, Trouble> {
        let mut fetched = Vec::with_capacity(paths.len());
        let mut bytes = 0;
        let mut batches: Vec<Vec<String>> = paths.chunks(BATCH).rev().map(<[_]>::to_vec).collect();
        while let Some(mut batch) = batches.pop() {
            let ask = GetCalendarResources::new(&calendar.path).with_hrefs(&batch);
            let answer =
                match self.wire.ask(account, calendar, |server| ask.prepare_request(server)) {
                    Ok(answer) => answer,
                    Err(Unanswered::TooLarge(_)) if batch.len() > 1 => {
                        let second = batch.split_off(batch.len() / 2);
                        batches.extend([second, batch]);
                        continue;
                    }
                    Err(why) => return Err(why.into()),
                };
            let mut sent = BTreeMap::new();
            if answer.status == StatusCode::MULTI_STATUS {
                for part in Multistatus::read(&answer)?.parts {
                    sent.insert(part.path.clone(), part);
                }
            } else if answer.status.is_server_error()
                && answer.status != StatusCode::NOT_IMPLEMENTED
            {
                return Err(refused(&answer));
            }
            for path in batch {
                let part = sent.remove(&path);
                let not_there = part.as_ref().and_then(|part| part.status).is_some_and(is_gone);
                let whole = part.and_then(|part| Some((part.has.etag?, part.has.text?)));
                let at = calendar.at(&path);
                let stored = match whole {
                    _ if not_there => None,
                    Some((etag, text)) => Some(Stored { href: at.named(home), etag, text }),
                    // Listed, but not sent: asked for by itself, and gone only if that says so.
                    None => self.get_one(account, &at, home)?,
                };
                match stored.filter(|stored| is_event(&stored.text)) {
                    Some(stored) => {
                        bytes += stored.text.len();
                        fetched.push(stored);
                    }
                    None => gone.push(path),
                }
            }
            if bytes > ALTOGETHER {
                return Err(Trouble::Answer(format!(
                    "The calendar at {} holds more than {} MB.",
                    calendar.host(),
                    ALTOGETHER / 1_048_576
                )));
            }
        }
        Ok(fetched)
    }
}

/// Adds what an answer lists. Collections are none of a calendar's events, and neither is the calendar
/// itself.
fn take(report: &Multistatus, listed: &mut Listed) {
    for part in &report.parts {
        if !report.is_own(part) && !part.path.ends_with('/') {
            listed.insert(part.path.clone(), !part.status.is_some_and(is_gone));
        }
    }
}

fn is_gone(status: StatusCode) -> bool {
    matches!(status, StatusCode::NOT_FOUND | StatusCode::GONE)
}

/// Whether a text holds an event; a task or a note is none.
fn is_event(text: &str) -> bool {
    text.lines().any(|line| line.trim_end().eq_ignore_ascii_case("BEGIN:VEVENT"))
}
