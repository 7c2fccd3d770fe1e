//! The coach's own mail account: where messages are handed over. Its password is not here: the machine's
//! keychain keeps it, or the coach types it.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::settings;

/// The name it is kept under.
const KEPT: &str = "mail";

/// How the connection is encrypted. Without encryption nothing is sent.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Encryption {
    /// From the first byte (implicit TLS, RFC 8314), mostly at port 465.
    #[default]
    Tls,
    /// From the first command on (STARTTLS, RFC 3207), mostly at port 587.
    StartTls,
}

/// The account; the form and the record are the same. An empty host: none was set.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct MailAccount {
    /// The server that takes messages.
    pub host: String,
    /// Its port.
    pub port: i64,
    /// How the connection is encrypted.
    pub encryption: Encryption,
    /// The name to sign in with; empty: the coach's own address.
    pub user: String,
}

impl Default for MailAccount {
    fn default() -> Self {
        Self {
            host: String::new(),
            port: 465,
            encryption: Encryption::default(),
            user: String::new(),
        }
    }
}

impl MailAccount {
    /// Whether one was set.
    pub fn is_set(&self) -> bool {
        !self.host.is_empty()
    }
}

/// The account.
///
/// # Errors
/// `Storage`.
pub fn show(db: &Reading<'_>) -> Result<MailAccount> {
    settings::kept(db, KEPT).map(Option::unwrap_or_default)
}

/// Sets the account; an empty host takes it away.
///
/// # Errors
/// `Refused` with every field that is wrong.
pub fn set(db: &Writing<'_>, given: MailAccount) -> Result<MailAccount> {
    let mut p = Problems::new();
    let host = p.line("host", &given.host, "The server").to_ascii_lowercase();
    let fine = host.chars().all(|c| c.is_ascii_alphanumeric() || matches!(c, '.' | '-' | ':'));
    if !fine || host.len() > 253 {
        let words =
            "That is no server\u{2019}s name. It looks like mail.example.org, without https.";
        p.add("host", "no_host", words);
    }
    let read = MailAccount {
        host,
        port: p.within_bounds("port", given.port, 1, 65_535, "The port"),
        encryption: given.encryption,
        user: p.line("user", &given.user, "The name"),
    };
    if read.is_set() && settings::show(db)?.email.is_empty() {
        let words = "Write your own e-mail address under Coach first: messages are from it.";
        p.add("host", "no_address", words);
    }
    p.done()?;
    settings::keep(db, KEPT, &read)?;
    db.label(if read.is_set() { "Mail account set" } else { "Mail account taken away" });
    show(db)
}
