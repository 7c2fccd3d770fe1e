//! Calendars on a server by CalDAV (RFC 4791), over TLS.
//!
//! libdav writes the requests, `ask` sends one and bounds it, `answer` reads what comes back. `find`
//! looks for the calendars, `changes` reads them, `write` changes them. Which host gets the password is
//! decided in `address` alone.

mod address;
mod answer;
mod ask;
mod changes;
mod find;
mod trouble;
mod write;

use std::collections::HashMap;
use std::sync::Mutex;

use carryover_core::calendar::remote::{
    Account, Calendars, Changes, Expect, Found, Stored, Trouble,
};
use carryover_core::kinds::Span;
use rustls::pki_types::CertificateDer;
use url::Url;

use address::{Place, keeps_secret, leads_elsewhere, same_host};
pub use ask::Limits;
use ask::Wire;

/// Calendars on a server, over the network.
pub struct OverHttps {
    wire: Wire,
    /// Where the well-known address of a server leads, as far as it was asked.
    forwarded: Mutex<HashMap<String, Option<Place>>>,
}

impl OverHttps {
    /// Trusts the certificate authorities that the operating system trusts, read now. Where the system
    /// has none, every `https` address is answered with [`Trouble::Certificate`]. The environment
    /// variables `SSL_CERT_FILE` and `SSL_CERT_DIR` name others.
    ///
    /// # Errors
    /// A sentence, when the system gives no thread or no timer.
    pub fn new() -> Result<Self, String> {
        Self::with(Limits::default(), None)
    }

    /// With other limits, or trusting only these authorities.
    ///
    /// # Errors
    /// As [`OverHttps::new`].
    pub fn with(
        limits: Limits,
        authorities: Option<Vec<CertificateDer<'static>>>,
    ) -> Result<Self, String> {
        Ok(Self { wire: Wire::new(limits, authorities)?, forwarded: Mutex::default() })
    }

    /// The place that an href of the core names, if the password may go there: on the asked host, or
    /// where its well-known address leads.
    fn place(&self, account: &Account, href: &str) -> Result<(Place, Url), Trouble> {
        let asked = address::read(&account.address)?;
        if href.starts_with('/') {
            return Ok((
                Place { path: address::href(&asked, href)?, ..asked.clone() },
                asked.server,
            ));
        }
        let url = Url::parse(href)
            .map_err(|_| Trouble::Answer(format!("{href} is not an address of a calendar.")))?;
        let place = Place::of(&url);
        let told = keeps_secret(&url)
            && (same_host(&asked.server, &url)
                || self.forwarded(account, &asked)?.is_some_and(|to| to.server == place.server));
        if told { Ok((place, asked.server)) } else { Err(leads_elsewhere(&asked, &url)) }
    }
}

impl Calendars for OverHttps {
    fn calendars(&self, account: &Account) -> Result<Vec<Found>, Trouble> {
        let looked = self.look(account)?;
        if looked.calendars.is_empty() {
            return Err(Trouble::NoCalendar);
        }
        Ok(looked.calendars.into_iter().map(|(_, found)| found).collect())
    }

    fn make(&self, account: &Account, name: &str) -> Result<Found, Trouble> {
        self.make_calendar(account, name)
    }

    fn changes(
        &self,
        account: &Account,
        calendar: &str,
        token: Option<&str>,
        within: Span,
    ) -> Result<Changes, Trouble> {
        let (place, home) = self.place(account, calendar)?;
        self.read_changes(account, &place, &home, token, within)
    }

    fn get(&self, account: &Account, href: &str) -> Result<Option<Stored>, Trouble> {
        let (place, home) = self.place(account, href)?;
        self.get_one(account, &place, &home)
    }

    fn put(
        &self,
        account: &Account,
        href: &str,
        text: &str,
        expect: &Expect,
    ) -> Result<Option<String>, Trouble> {
        let (place, home) = self.place(account, href)?;
        self.put_one(account, &place, &home, text, expect)
    }

    fn remove(&self, account: &Account, href: &str, version: &str) -> Result<(), Trouble> {
        let (place, home) = self.place(account, href)?;
        self.remove_one(account, &place, &home, version)
    }
}
