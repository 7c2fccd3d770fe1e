//! Messages are handed to a mail server (RFC 5321, by lettre), over TLS from the first byte or required
//! STARTTLS; never in the open. Each step is taken by itself, so that a connection that breaks before the
//! message is begun is told from one that breaks while it is handed over.

use std::net::Ipv4Addr;
use std::time::Duration;

use carryover_core::outtray::MailTrouble;
use carryover_core::outtray::account::{Encryption, MailAccount};
use carryover_core::outtray::carry::{Came, Carrier, InTheWay, Line, Parcel, SignIn};
use lettre::Address;
use lettre::transport::smtp::Error;
use lettre::transport::smtp::authentication::{Credentials, Mechanism};
use lettre::transport::smtp::client::{
    Certificate, CertificateStore, SmtpConnection, TlsParameters,
};
use lettre::transport::smtp::commands::{Data, Mail, Rcpt, Rset};
use lettre::transport::smtp::extension::{ClientId, Extension, MailBodyParameter, MailParameter};
use lettre::transport::smtp::response::Response;
use rustls::pki_types::CertificateDer;

/// How long a server may take for one answer; RFC 5321 (4.5.3.2) lets it take minutes, a coach does not.
const PATIENCE: Duration = Duration::from_secs(30);

/// Mail servers.
pub struct OverSmtp {
    roots: Vec<CertificateDer<'static>>,
    patience: Duration,
}

impl OverSmtp {
    /// Trusts the certificate authorities that the operating system trusts, read now. The variables
    /// `SSL_CERT_FILE` and `SSL_CERT_DIR` name others.
    #[must_use]
    pub fn new() -> Self {
        Self::trusting(rustls_native_certs::load_native_certs().certs, PATIENCE)
    }

    /// Trusting only these authorities, with another patience.
    #[must_use]
    pub fn trusting(roots: Vec<CertificateDer<'static>>, patience: Duration) -> Self {
        Self { roots, patience }
    }

    fn tls(&self, host: &str) -> Result<TlsParameters, Error> {
        let mut tls =
            TlsParameters::builder(host.to_owned()).certificate_store(CertificateStore::None);
        for root in &self.roots {
            // What no reader can read vouches for nobody.
            if let Ok(root) = Certificate::from_der(root.to_vec()) {
                tls = tls.add_root_certificate(root);
            }
        }
        tls.build()
    }

    fn connect(&self, account: &MailAccount) -> Result<SmtpConnection, InTheWay> {
        let port = u16::try_from(account.port).unwrap_or_default();
        let at = (account.host.as_str(), port);
        let tls = self.tls(&account.host).map_err(|e| way_of(&e))?;
        // The machine's own name is nobody's business.
        let hello = ClientId::Ipv4(Ipv4Addr::LOCALHOST);
        let (patience, first) = (
            Some(self.patience),
            match account.encryption {
                Encryption::Tls => Some(&tls),
                Encryption::StartTls => None,
            },
        );
        let mut line =
            SmtpConnection::connect(at, patience, &hello, first, None).map_err(|e| way_of(&e))?;
        if account.encryption == Encryption::StartTls {
            if !line.can_starttls() {
                line.abort();
                return Err(InTheWay { trouble: MailTrouble::Plain, said: String::new() });
            }
            line.starttls(&tls, &hello).map_err(|e| way_of(&e))?;
        }
        Ok(line)
    }
}

impl Default for OverSmtp {
    fn default() -> Self {
        Self::new()
    }
}

impl Carrier for OverSmtp {
    fn open(&self, account: &MailAccount, sign_in: &SignIn) -> Result<Box<dyn Line>, InTheWay> {
        let mut line = self.connect(account)?;
        let who = Credentials::new(sign_in.user.clone(), sign_in.password.clone());
        line.auth(&[Mechanism::Plain, Mechanism::Login], &who).map_err(|e| {
            let way = way_of(&e);
            // A server that is only busy says so with a code of its own (RFC 4954, 6).
            let trouble = match e.is_permanent() || e.is_client() {
                true => MailTrouble::SignIn,
                false => way.trouble,
            };
            line.abort();
            InTheWay { trouble, ..way }
        })?;
        Ok(Box::new(Open { line }))
    }
}

struct Open {
    line: SmtpConnection,
}

/// At which step the server was.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Step {
    Mail,
    Recipient,
    Data,
    Message,
}

impl Line for Open {
    fn hand_over(&mut self, parcel: &Parcel) -> Came {
        match self.steps(parcel) {
            Ok(response) => Came::Accepted(said(&response)),
            Err(came) => came,
        }
    }
}

impl Open {
    fn steps(&mut self, parcel: &Parcel) -> Result<Response, Came> {
        let address = |typed: &str| {
            typed.parse::<Address>().map_err(|e| {
                Came::Refused(InTheWay { trouble: MailTrouble::Recipient, said: e.to_string() })
            })
        };
        let (from, to) = (address(&parcel.from)?, address(&parcel.to)?);
        let mut options = Vec::new();
        if !parcel.from.is_ascii() || !parcel.to.is_ascii() {
            if !self.line.server_info().supports_feature(Extension::SmtpUtfEight) {
                let way = InTheWay { trouble: MailTrouble::Letters, said: String::new() };
                return Err(Came::Refused(way));
            }
            options.push(MailParameter::SmtpUtfEight);
        }
        if !parcel.bytes.is_ascii()
            && self.line.server_info().supports_feature(Extension::EightBitMime)
        {
            options.push(MailParameter::Body(MailBodyParameter::EightBitMime));
        }
        self.command(Step::Mail, Mail::new(Some(from), options))?;
        self.command(Step::Recipient, Rcpt::new(to, Vec::new()))?;
        self.command(Step::Data, Data)?;
        let answer = self.line.message(&parcel.bytes);
        answer.map_err(|e| self.came(Step::Message, &e))
    }

    fn command(&mut self, step: Step, command: impl std::fmt::Display) -> Result<(), Came> {
        let answer = self.line.command(command);
        answer.map(drop).map_err(|e| self.came(step, &e))
    }

    /// What an error at a step means. A server that answers leaves the connection of use.
    fn came(&mut self, step: Step, error: &Error) -> Came {
        if error.is_permanent() || error.is_transient() {
            // 421: the server closes the connection (RFC 5321, 3.8); what follows is a new one.
            let way = InTheWay { trouble: refusal(step, error), said: deepest(error) };
            let closing = error.status().is_some_and(|code| code.to_string() == "421");
            if closing || self.line.command(Rset).is_err() {
                self.line.abort();
            }
            return if error.is_permanent() { Came::Refused(way) } else { Came::Later(way) };
        }
        self.line.abort();
        match step {
            Step::Message => Came::Unsure(plainly(error)),
            Step::Mail | Step::Recipient | Step::Data => Came::Closed(way_of(error)),
        }
    }
}

/// What a refusal is about, by its step and its codes (RFC 5321, 4.2.3; enhanced: RFC 3463).
fn refusal(step: Step, error: &Error) -> MailTrouble {
    let said = deepest(error);
    let code = error.status().map(|code| code.to_string()).unwrap_or_default();
    let detail = enhanced(&said);
    match (detail, code.as_str()) {
        (Some((_, 2, 2)), _) | (None, "452") => MailTrouble::Full,
        (Some((_, 3, 4) | (_, 2, 3)), _) | (None, "552") => MailTrouble::TooLarge,
        (Some((_, 6, 7)), _) => MailTrouble::Letters,
        _ if error.is_transient() => MailTrouble::Later,
        (Some((_, 1, 7 | 8)), _) => MailTrouble::Sender,
        (Some((_, 1, _)), _) => MailTrouble::Recipient,
        _ => match step {
            Step::Mail => MailTrouble::Sender,
            Step::Recipient if code == "550" || code == "551" || code == "553" => {
                MailTrouble::Recipient
            }
            Step::Data | Step::Message => MailTrouble::Content,
            Step::Recipient => MailTrouble::Other,
        },
    }
}

/// The enhanced code with which an answer begins: "5.1.1".
fn enhanced(said: &str) -> Option<(u16, u16, u16)> {
    said.split_whitespace().find_map(|word| {
        let mut parts = word.split('.').map(str::parse::<u16>);
        let code = (parts.next()?.ok()?, parts.next()?.ok()?, parts.next()?.ok()?);
        (matches!(code.0, 2 | 4 | 5) && parts.next().is_none()).then_some(code)
    })
}

fn said(response: &Response) -> String {
    let words: Vec<&str> = response.message().collect();
    short(&words.join(" "))
}

/// What happened to a connection, in words; else what the system says of it.
fn plainly(error: &Error) -> String {
    use std::io::ErrorKind;
    let mut at: Option<&(dyn std::error::Error + 'static)> = Some(error);
    while let Some(e) = at {
        let kind = e.downcast_ref::<std::io::Error>().map(std::io::Error::kind);
        let words = match kind {
            Some(ErrorKind::UnexpectedEof | ErrorKind::ConnectionReset) => "the line was cut",
            Some(ErrorKind::ConnectionAborted | ErrorKind::BrokenPipe) => "the line was cut",
            Some(ErrorKind::TimedOut | ErrorKind::WouldBlock) => "no answer came in time",
            Some(ErrorKind::ConnectionRefused) => "nobody answers at this port",
            Some(ErrorKind::NetworkUnreachable | ErrorKind::HostUnreachable) => {
                "there is no way to it"
            }
            _ => "",
        };
        if !words.is_empty() {
            return words.to_owned();
        }
        at = e.source();
    }
    deepest(error)
}

/// What lies at the bottom of an error: what the server said, or the system.
fn deepest(error: &Error) -> String {
    let mut at: &dyn std::error::Error = error;
    while let Some(below) = at.source() {
        at = below;
    }
    short(&at.to_string())
}

/// What others say is shown on one line, and not without end.
fn short(said: &str) -> String {
    let line = carryover_core::kinds::text::line(said);
    if line.chars().count() <= 300 { line } else { line.chars().take(300).chain(['…']).collect() }
}

/// What TLS found wrong, however deep it lies: an input error keeps what caused it inside, not below.
fn tls_of(error: &Error) -> Option<&rustls::Error> {
    let mut at: Option<&(dyn std::error::Error + 'static)> = Some(error);
    while let Some(e) = at {
        if let Some(tls) = e.downcast_ref::<rustls::Error>() {
            return Some(tls);
        }
        let inside = e.downcast_ref::<std::io::Error>().and_then(|io| io.get_ref());
        at = match inside {
            Some(inside) => Some(inside as &(dyn std::error::Error + 'static)),
            None => e.source(),
        };
    }
    None
}

/// What kept a connection from being opened.
fn way_of(error: &Error) -> InTheWay {
    let said = plainly(error);
    let trouble = if let Some(tls) = tls_of(error) {
        match tls {
            // Whoever answers does not speak TLS at this port.
            rustls::Error::InvalidMessage(_) => MailTrouble::Plain,
            _ => MailTrouble::Certificate,
        }
    } else if error.is_tls() {
        MailTrouble::Certificate
    } else if error.is_transient() {
        MailTrouble::Later
    } else if error.is_permanent() {
        MailTrouble::Other
    } else {
        MailTrouble::Away
    };
    InTheWay { trouble, said }
}
