//! One resource: reading, writing and removing it under a condition; and making a calendar.

use carryover_core::calendar::remote::{Account, Expect, Found, Stored, Trouble};
use http::header::ETAG;
use http::{Method, Request, StatusCode};
use libdav::caldav::{
    CalendarComponent, CreateCalendar, GetCalendarResources, supported_calendar_component_set,
};
use libdav::dav::{Delete, PutResource};
use libdav::requests::{DavRequest, xml_content_type_header};
use libdav::xmlutils::{XmlNode, normalise_newlines};
use libdav::{Depth, PropertyName, names};
use url::Url;

use super::OverHttps;
use super::address::Place;
use super::answer::Multistatus;
use super::trouble::{preconditions, refused, unreadable};

const TYPE: &str = "text/calendar; charset=utf-8";

/// RFC 4791 §5.3.1.
const MKCALENDAR: PropertyName = PropertyName::new(names::CALDAV, "mkcalendar");

/// Names tried for a new calendar's path.
const TRIES: usize = 20;

impl OverHttps {
    /// One resource.
    pub(super) fn get_one(
        &self,
        account: &Account,
        place: &Place,
        home: &Url,
    ) -> Result<Option<Stored>, Trouble> {
        let answer = self.wire.ask(account, place, |uri| {
            Request::builder()
                .method(Method::GET)
                .uri(uri)
                .header("Accept", "text/calendar")
                .body(String::new())
        })?;
        match answer.status {
            StatusCode::NOT_FOUND | StatusCode::GONE => return Ok(None),
            status if !status.is_success() => return Err(refused(&answer)),
            _ => {}
        }
        let Some(etag) = answer.header(ETAG).map(str::to_owned) else {
            return self.get_by_report(account, place, home);
        };
        let text = String::from_utf8(answer.body).map_err(|_| unreadable(&place.host()))?;
        let text = normalise_newlines(text.strip_prefix('\u{feff}').unwrap_or(&text));
        Ok(Some(Stored { href: place.named(home), etag, text }))
    }

    /// One resource of a server that does not tell its version with it. Asking for the version by itself
    /// would pair it with a text it is not of.
    fn get_by_report(
        &self,
        account: &Account,
        place: &Place,
        home: &Url,
    ) -> Result<Option<Stored>, Trouble> {
        let calendar = place.parent();
        let ask = GetCalendarResources::new(&calendar.path).with_hrefs([&place.path]);
        let answer = self.wire.ask(account, &calendar, |server| ask.prepare_request(server))?;
        let parts = Multistatus::read(&answer)?.parts;
        let part = parts.into_iter().find(|part| part.path == place.path);
        let whole = part.and_then(|part| Some((part.has.etag?, part.has.text?)));
        let Some((etag, text)) = whole else {
            return Err(Trouble::Answer(format!("{} does not tell versions apart.", place.host())));
        };
        Ok(Some(Stored { href: place.named(home), etag, text }))
    }

    /// Writes one resource. RFC 4791 §5.3.4 forbids a server that alters a text to answer with a strong
    /// version of it; not every server keeps to that, so the text is read back before the version is
    /// given out. What keeps it from being read back is no trouble: it is written.
    pub(super) fn put_one(
        &self,
        account: &Account,
        place: &Place,
        home: &Url,
        text: &str,
        expect: &Expect,
    ) -> Result<Option<String>, Trouble> {
        let put = PutResource::new(&place.path);
        let answer = self.wire.ask(account, place, |server| match expect {
            Expect::Nothing => put.create(text, TYPE).prepare_request(server),
            Expect::Version(etag) => put.update(text, TYPE, etag).prepare_request(server),
        })?;
        if !answer.status.is_success() {
            // Of what is not there yet this can only be said of its collection (RFC 4918 §9.7.1).
            let no_collection = *expect == Expect::Nothing
                && preconditions(&answer.body).is_empty()
                && matches!(answer.status, StatusCode::NOT_FOUND | StatusCode::CONFLICT);
            return Err(if no_collection { Trouble::NoCalendar } else { refused(&answer) });
        }
        let Some(etag) = answer.header(ETAG).filter(|etag| etag.starts_with('"')) else {
            return Ok(None);
        };
        let kept = self.get_one(account, place, home).ok().flatten();
        let kept =
            kept.is_some_and(|kept| kept.etag == etag && kept.text == normalise_newlines(text));
        Ok(kept.then(|| etag.to_owned()))
    }

    /// Removes one resource.
    pub(super) fn remove_one(
        &self,
        account: &Account,
        place: &Place,
        home: &Url,
        version: &str,
    ) -> Result<(), Trouble> {
        let ask = Delete::new(&place.path).with_etag(version);
        let answer = self.wire.ask(account, place, |server| ask.prepare_request(server))?;
        if answer.status.is_success() {
            return Ok(());
        }
        match refused(&answer) {
            // No version matches what is not there.
            Trouble::OtherVersion if self.get_one(account, place, home)?.is_none() => {
                Err(Trouble::Gone)
            }
            trouble => Err(trouble),
        }
    }

    /// Makes a calendar for events beside the others.
    pub(super) fn make_calendar(&self, account: &Account, name: &str) -> Result<Found, Trouble> {
        let looked = self.look(account)?;
        let home = looked.home.ok_or(Trouble::NoCalendar)?;
        let asked = super::address::read(&account.address)?.server;
        let slash = if home.path.ends_with('/') { "" } else { "/" };
        let stem = stem(name);
        for number in 1..=TRIES {
            let number = if number == 1 { String::new() } else { format!("-{number}") };
            let place = home.at(&format!("{}{slash}{stem}{number}/", home.path));
            let taken =
                |path: &String| path.trim_end_matches('/') == place.path.trim_end_matches('/');
            if looked.taken.iter().any(taken) || !self.made(account, &place, name)? {
                continue;
            }
            let seen = self.seen(account, &place, Depth::Zero)?.ok_or(Trouble::NoCalendar)?;
            let has = &seen.own().ok_or(Trouble::NoCalendar)?.has;
            return Ok(Found {
                href: place.named(&asked),
                name: has.name.clone().unwrap_or_else(|| name.to_owned()),
                writable: has.writable(),
            });
        }
        Err(Trouble::Answer(format!("{} finds no place for another calendar.", home.host())))
    }

    /// Makes a calendar at a path; `false` when something is there. By MKCALENDAR, which RFC 4791 has,
    /// or by the extended MKCOL of RFC 5689 where a server only knows that.
    fn made(&self, account: &Account, place: &Place, name: &str) -> Result<bool, Trouble> {
        let events = [CalendarComponent::VEvent];
        let prop = XmlNode::new(&names::PROP).with_children(vec![
            XmlNode::new(&names::DISPLAY_NAME).with_text(name),
            supported_calendar_component_set(&events),
        ]);
        let set = XmlNode::new(&names::SET).with_children(vec![prop]);
        let body = XmlNode::new(&MKCALENDAR).with_children(vec![set]).render_node();
        let (header, value) = xml_content_type_header();
        let answer = self.wire.ask(account, place, |uri| {
            let method = Method::from_bytes(b"MKCALENDAR")?;
            Request::builder().method(method).uri(uri).header(header, value).body(body)
        })?;
        if answer.status.is_success() {
            return Ok(true);
        }
        if self.seen(account, place, Depth::Zero)?.is_some_and(|seen| seen.own().is_some()) {
            return Ok(false);
        }
        if !matches!(answer.status, StatusCode::METHOD_NOT_ALLOWED | StatusCode::NOT_IMPLEMENTED) {
            return Err(refused(&answer));
        }
        let ask = CreateCalendar::new(&place.path).with_display_name(name).with_components(&events);
        let answer = self.wire.ask(account, place, |server| ask.prepare_request(server))?;
        if answer.status.is_success() { Ok(true) } else { Err(refused(&answer)) }
    }
}

/// The last part of a new calendar's path: the letters and digits of its name that any server takes.
fn stem(name: &str) -> String {
    let plain = |c: char| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { '-' };
    let dashed: String = name.chars().map(plain).collect();
    let words: Vec<&str> = dashed.split('-').filter(|word| !word.is_empty()).collect();
    let stem: String = words.join("-").chars().take(40).collect();
    if stem.is_empty() { "calendar".to_owned() } else { stem }
}

#[cfg(test)]
mod tests {
    use super::stem;

    #[test]
    fn a_path_is_made_of_plain_letters() {
        for (name, want) in [
            ("Lessons", "lessons"),
            ("Tennis & Padel: Zoë's <b>week</b>", "tennis-padel-zo-s-b-week-b"),
            ("../../etc", "etc"),
            ("李小龙", "calendar"),
            ("", "calendar"),
        ] {
            assert_eq!(stem(name), want);
        }
    }
}
