//! Finds the calendars of an account from whatever address a person has for it.

use std::collections::HashSet;

use carryover_core::calendar::remote::{Account, Found, Trouble};
use http::{Method, Request, StatusCode};
use libdav::Depth;
use libdav::dav::Propfind;
use libdav::names;
use libdav::requests::DavRequest;
use url::Url;

use super::OverHttps;
use super::address::{self, Place, WELL_KNOWN, leads_elsewhere, located, same_host};
use super::answer::{Multistatus, PRIVILEGES, Part};
use super::ask::{Unanswered, redirection};

/// Redirections followed from the well-known address.
const REDIRECTIONS: usize = 5;

/// What was found from an address.
pub(super) struct Looked {
    /// The calendars for events, with where they are.
    pub calendars: Vec<(Place, Found)>,
    /// The collection that holds them, into which a new one would go.
    pub home: Option<Place>,
    /// The paths that are taken in it.
    pub taken: HashSet<String>,
}

impl OverHttps {
    /// Looks at the address itself; then where the server's well-known address leads (RFC 6764); then at
    /// the server's root. At each: is it a calendar, does it hold calendars, does it lead to them?
    pub(super) fn look(&self, account: &Account) -> Result<Looked, Trouble> {
        let asked = address::read(&account.address)?;
        let root = asked.at("/");
        let mut first = None;
        let mut empty = None;
        let mut begin: Vec<Option<Place>> = vec![Some(asked.clone()), None, Some(root.clone())];
        if asked == root {
            begin.remove(0);
        }
        for from in begin {
            let from = match from {
                Some(place) => Ok(Some(place)),
                None => self.forwarded(account, &asked),
            };
            let looked = match from {
                Ok(Some(place)) => self.look_from(account, &asked.server, &place),
                Ok(None) => continue,
                Err(trouble) => Err(trouble),
            };
            match looked {
                Ok(Some(looked)) if !looked.calendars.is_empty() => return Ok(looked),
                Ok(Some(looked)) => empty = empty.or(Some(looked)),
                Ok(None) => {}
                // The same would come of any other address there.
                Err(trouble @ (Trouble::SignIn | Trouble::Away(_) | Trouble::Certificate(_))) => {
                    return Err(trouble);
                }
                Err(trouble) => first = first.or(Some(trouble)),
            }
        }
        match (empty, first) {
            (Some(looked), _) => Ok(looked),
            (None, Some(trouble)) => Err(trouble),
            (None, None) => Err(Trouble::NoCalendar),
        }
    }

    /// What there is from one place; `None` when it leads to no calendars.
    fn look_from(
        &self,
        account: &Account,
        home_server: &Url,
        place: &Place,
    ) -> Result<Option<Looked>, Trouble> {
        let Some(seen) = self.seen(account, place, Depth::Zero)? else { return Ok(None) };
        let at = seen.place.clone();
        let own = seen.own();
        if let Some(part) = own.filter(|part| part.has.is_calendar) {
            let holds = part.has.holds_events();
            let calendars = holds.then(|| found(home_server, &at, part)).into_iter().collect();
            return Ok(Some(Looked {
                calendars,
                taken: HashSet::from([at.path.clone()]),
                home: Some(at.parent()),
            }));
        }
        // Some servers say it of every resource, so the calendars below an address come first; but what
        // the root holds is not the account's.
        if at.path != "/" && own.is_none_or(|part| part.has.homes.is_empty()) {
            let looked = self.look_in(account, home_server, &at)?;
            if looked.as_ref().is_some_and(|looked| !looked.calendars.is_empty()) {
                return Ok(looked);
            }
        }
        let mut homes = own.map(|part| part.has.homes.clone()).unwrap_or_default();
        let mut said_by = at.clone();
        if homes.is_empty()
            && let Some(principal) = own.and_then(|part| part.has.principal.clone())
        {
            let principal = led(&at, &principal)?;
            if let Some(seen) = self.seen(account, &principal, Depth::Zero)? {
                homes = seen.own().map(|part| part.has.homes.clone()).unwrap_or_default();
                said_by = seen.place;
            }
        }
        let mut all: Option<Looked> = None;
        for home in homes {
            let home = led(&said_by, &home)?;
            let Some(looked) = self.look_in(account, home_server, &home)? else { continue };
            match &mut all {
                None => all = Some(looked),
                Some(all) => {
                    all.calendars.extend(looked.calendars);
                    all.taken.extend(looked.taken);
                }
            }
        }
        Ok(all)
    }

    /// The calendars directly in a collection.
    fn look_in(
        &self,
        account: &Account,
        home_server: &Url,
        home: &Place,
    ) -> Result<Option<Looked>, Trouble> {
        let Some(seen) = self.seen(account, home, Depth::One)? else { return Ok(None) };
        let calendars = seen.parts.iter().filter(|part| part.has.holds_events());
        let calendars = calendars.map(|part| found(home_server, &seen.place, part)).collect();
        let taken = seen.parts.iter().map(|part| part.path.clone()).collect();
        Ok(Some(Looked { calendars, home: Some(seen.place.clone()), taken }))
    }

    /// What a place says of itself, and of what it holds; `None` where nothing speaks of calendars.
    pub(super) fn seen(
        &self,
        account: &Account,
        place: &Place,
        depth: Depth,
    ) -> Result<Option<Multistatus>, Trouble> {
        let ask = Propfind::new(&place.path).with_depth(depth).with_properties(&[
            &names::RESOURCETYPE,
            &names::DISPLAY_NAME,
            &names::CURRENT_USER_PRINCIPAL,
            &names::CALENDAR_HOME_SET,
            &names::SUPPORTED_CALENDAR_COMPONENT_SET,
            &names::SUPPORTED_REPORT_SET,
            &names::SYNC_TOKEN,
            &PRIVILEGES,
        ]);
        let answer = self.wire.ask(account, place, |server| ask.prepare_request(server))?;
        let nothing = matches!(
            answer.status,
            StatusCode::NOT_FOUND
                | StatusCode::GONE
                | StatusCode::METHOD_NOT_ALLOWED
                | StatusCode::NOT_IMPLEMENTED
                | StatusCode::BAD_REQUEST
        );
        // A page for people.
        let page = answer.status.is_success() && answer.status != StatusCode::MULTI_STATUS;
        if nothing || page {
            return Ok(None);
        }
        Multistatus::read(&answer).map(Some)
    }

    /// Where the server's well-known address leads; `None` where it leads nowhere. Asked once.
    pub(super) fn forwarded(
        &self,
        account: &Account,
        asked: &Place,
    ) -> Result<Option<Place>, Trouble> {
        let known = |all: &OverHttps| {
            let all = all.forwarded.lock().unwrap_or_else(std::sync::PoisonError::into_inner);
            all.get(asked.server.as_str()).cloned()
        };
        if let Some(place) = known(self) {
            return Ok(place);
        }
        let leads = self.well_known(account, asked)?;
        let mut all = self.forwarded.lock().unwrap_or_else(std::sync::PoisonError::into_inner);
        all.insert(asked.server.as_str().to_owned(), leads.clone());
        Ok(leads)
    }

    /// Asks the well-known address, without the password: it is told to no host on the way, and to the
    /// asked one only if that one wants it. What is asked last is only whether it leads on.
    fn well_known(&self, account: &Account, asked: &Place) -> Result<Option<Place>, Trouble> {
        let mut place = asked.at(WELL_KNOWN);
        for _ in 0..REDIRECTIONS {
            let get = |who: Option<&Account>| -> Result<_, Trouble> {
                let request = Request::builder().method(Method::GET).uri(place.uri()?);
                let request =
                    request.body(String::new()).map_err(|e| Trouble::Address(e.to_string()))?;
                match self.wire.send(&place, request, who) {
                    Ok(answer) => Ok(Some(answer)),
                    // A page for people may be of any size.
                    Err(Unanswered::TooLarge(_)) => Ok(None),
                    Err(Unanswered::For(trouble)) => Err(trouble),
                }
            };
            let mut answer = get(None)?;
            let wants = |answer: &super::ask::Answer| answer.status == StatusCode::UNAUTHORIZED;
            if answer.as_ref().is_some_and(wants) && place.server == asked.server {
                answer = get(Some(account))?;
            }
            let Some(location) = answer.as_ref().and_then(redirection) else { return Ok(None) };
            let to = located(&place, location)?;
            place = Place::of(&to);
            if place.path != WELL_KNOWN {
                return Ok(Some(place));
            }
        }
        Ok(None)
    }
}

/// A calendar as the core is told of it.
fn found(home_server: &Url, at: &Place, part: &Part) -> (Place, Found) {
    let mut place = at.at(&part.path);
    if !place.path.ends_with('/') {
        place.path.push('/');
    }
    let found = Found {
        href: place.named(home_server),
        name: part.has.name.clone().unwrap_or_default(),
        writable: part.has.writable(),
    };
    (place, found)
}

/// Where a server says that something of the account is: on itself, or the coach has to decide.
fn led(at: &Place, to: &str) -> Result<Place, Trouble> {
    match Url::parse(to) {
        Ok(url) if !same_host(&at.server, &url) => Err(leads_elsewhere(at, &url)),
        _ => Ok(at.at(&address::href(at, to)?)),
    }
}
