//! What the program asks of calendars on a server, and what can stand in the way. The core asks,
//! the package `carryover-wire` answers by CalDAV (RFC 4791); tests answer from memory.

use std::fmt;

use crate::kinds::Span;

/// Who asks, and where.
#[derive(Clone)]
pub struct Account {
    /// Where to look for the calendars: an `https` address, of the server or of one calendar.
    /// Without TLS only on this machine itself.
    pub address: String,
    /// The name the coach signs in with; empty where the server asks for none.
    pub user: String,
    /// The password. It is never written down or shown.
    pub password: String,
}

impl fmt::Debug for Account {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Account")
            .field("address", &self.address)
            .field("user", &self.user)
            .finish_non_exhaustive()
    }
}

/// A calendar on the server.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Found {
    /// Its path on the server.
    pub href: String,
    /// What its owner calls it; empty when the server does not say.
    pub name: String,
    /// Whether this account may write into it, as far as the server says.
    pub writable: bool,
}

/// One resource of a calendar: the text of one event with all its exceptions.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stored {
    /// Its path on the server.
    pub href: String,
    /// Its version, as the server names it, quotes and all.
    pub etag: String,
    /// The iCalendar text.
    pub text: String,
}

/// What became of a calendar since it was last read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Changes {
    /// To ask for what changes from now on; `None` where the server keeps none (RFC 6578).
    pub token: Option<String>,
    /// Whether `changed` is everything there is. What is not among it is gone.
    pub whole: bool,
    /// What is new or has another text.
    pub changed: Vec<Stored>,
    /// The paths of what is gone; empty when `whole`.
    pub gone: Vec<String>,
}

/// What must be so on the server for something to be written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Expect {
    /// Nothing is there yet.
    Nothing,
    /// This version is there.
    Version(String),
}

/// What kept the server from doing what it was asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Trouble {
    /// The address is not one that can be asked; a sentence that says why.
    Address(String),
    /// Nobody answers: no network, no such name, no connection, or no answer in time.
    Away(String),
    /// The certificate is not to be trusted; a sentence that says why.
    Certificate(String),
    /// The name or the password is wrong.
    SignIn,
    /// This account may not do that.
    Forbidden,
    /// There is no calendar at the address.
    NoCalendar,
    /// Another version is on the server than was expected, or something where nothing was.
    OtherVersion,
    /// What was asked for is not there.
    Gone,
    /// The server has no room, or finds it too large.
    NoRoom,
    /// The server does not take it, or answers what cannot be read; what it said.
    Answer(String),
}

/// Calendars on a server. Each call goes over the network and may take until its time is out; none
/// may be made while a transaction is open. Implementations answer any fault of the server with
/// [`Trouble`], bound the size of what they read, and follow no redirection away from TLS.
pub trait Calendars: Send + Sync {
    /// The calendars of the account that hold events, in the order the server gives them.
    ///
    /// # Errors
    /// [`Trouble`]; `NoCalendar` when there is none.
    fn calendars(&self, account: &Account) -> Result<Vec<Found>, Trouble>;

    /// Makes a new calendar for events, beside the others.
    ///
    /// # Errors
    /// [`Trouble`].
    fn make(&self, account: &Account, name: &str) -> Result<Found, Trouble>;

    /// What changed in a calendar since `token`; everything when there is no token, the server
    /// keeps none or has forgotten it. Of everything, only what touches `within` need be given.
    ///
    /// # Errors
    /// [`Trouble`].
    fn changes(
        &self,
        account: &Account,
        calendar: &str,
        token: Option<&str>,
        within: Span,
    ) -> Result<Changes, Trouble>;

    /// One resource; `None` when it is not there.
    ///
    /// # Errors
    /// [`Trouble`].
    fn get(&self, account: &Account, href: &str) -> Result<Option<Stored>, Trouble>;

    /// Writes one resource and gives its new version, where the server names one and keeps the
    /// text as it was sent.
    ///
    /// # Errors
    /// [`Trouble`]; `OtherVersion` when what is there is not what is expected.
    fn put(
        &self,
        account: &Account,
        href: &str,
        text: &str,
        expect: &Expect,
    ) -> Result<Option<String>, Trouble>;

    /// Removes one resource of this version.
    ///
    /// # Errors
    /// [`Trouble`]; `OtherVersion` when another version is there, `Gone` when nothing is.
    fn remove(&self, account: &Account, href: &str, version: &str) -> Result<(), Trouble>;
}

/// Where passwords are kept on this machine: the operating system's keychain, where it has one.
/// Never a file of ours.
pub trait Secrets: Send + Sync {
    /// Whether passwords can be kept here; if not, a sentence that says why.
    ///
    /// # Errors
    /// The sentence.
    fn ready(&self) -> Result<(), String>;

    /// The password kept under a name; `None` when there is none.
    ///
    /// # Errors
    /// A sentence that says what kept it from being read.
    fn get(&self, name: &str) -> Result<Option<String>, String>;

    /// Keeps a password under a name.
    ///
    /// # Errors
    /// A sentence that says what kept it from being kept.
    fn keep(&self, name: &str, password: &str) -> Result<(), String>;

    /// Forgets the password of a name, if there is one.
    ///
    /// # Errors
    /// A sentence that says what kept it from being forgotten.
    fn forget(&self, name: &str) -> Result<(), String>;
}

impl Trouble {
    /// What it is, and what to do, as sentences.
    pub fn words(&self) -> String {
        match self {
            Trouble::Address(words) | Trouble::Certificate(words) => words.clone(),
            Trouble::Away(said) => {
                let words = "The server does not answer. What is to be written there waits; everything here goes on.";
                if said.is_empty() { words.to_owned() } else { format!("{words} ({said})") }
            }
            Trouble::SignIn => "The server does not take this name and password.".to_owned(),
            Trouble::Forbidden => {
                "The server does not let this account do that. Choose another calendar.".to_owned()
            }
            Trouble::NoCalendar => {
                "There is no calendar at this address. It is often under the settings of the calendar\u{2019}s provider, under CalDAV.".to_owned()
            }
            Trouble::OtherVersion => {
                "Someone else changed it meanwhile. It is looked at again with the next exchange.".to_owned()
            }
            Trouble::Gone => "It is no longer on the server.".to_owned(),
            Trouble::NoRoom => "The server has no room for it.".to_owned(),
            Trouble::Answer(said) => format!("The server answers what cannot be followed: {said}"),
        }
    }
}
