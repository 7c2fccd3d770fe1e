//! The out-tray: everything that goes out, what was sent to whom and when, and what came of it.
//!
//! A message is put into the tray in the same transaction as what it is about. The coach reads it, then
//! releases it: only then is it made whole, byte for byte, and nothing changes it any more. Whoever carries
//! it ([`carry`]) notes that it is going before the server is asked; a program that dies meanwhile finds it
//! *unsure*, and never sends it a second time by itself.

pub mod account;
pub mod carry;
pub mod follow_up;
pub mod texts;

mod about_money;
mod begun;
mod change;
mod list;
mod look;
mod put;
mod release;
mod render;
mod store;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use change::{Attach, EditMessage, TakeOff, attach, edit, take_off};
pub use list::{
    ListMessages, MessagesOf, Tray, TrayPart, astray, list, of_invoice, of_student, show,
};
pub use look::{MessageFile, MessageLook, MessageLooked, SeenPart, file, look, part};
pub use put::{IssueAndPut, MessageOf, PutMessage, PutMessages, issue_invoice, issue_letter, put};
pub use release::{Again, ReleaseMessages, Told, WithdrawMessage, again, release, tell, withdraw};

use crate::kinds::ids::{
    InvoiceId, MessageId, MessagePartId, MessageStepId, PayerId, StudentId, VisitId,
};
use crate::kinds::{Instant, Language};

/// What a message is about.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum MessageKind {
    /// A progress letter.
    Letter,
    /// An invoice or credit note.
    Invoice,
    /// A reminder of an invoice.
    Reminder,
    /// An invitation to a lesson, its change or its calling-off.
    Invitation,
    /// An offer of a visit.
    Offer,
    /// A home plan.
    HomePlan,
    /// What is to be known before a visit.
    BeforeVisit,
    /// The questions before court, as a page to fill in at home.
    Questions,
    /// The question how the home plan goes.
    HomeReport,
    /// The question when the student comes again.
    ComeAgain,
    /// The coach's own words.
    Words,
    /// A trial, to the coach.
    Trial,
}

/// What became of a message.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum MessageState {
    /// The coach has not read it yet; it can be changed.
    ToRead,
    /// Released; it goes out next.
    Waiting,
    /// It is handed to the mail server now.
    Going,
    /// The mail server took it. Whether it arrived, nobody says.
    Accepted,
    /// It was not taken for now; it is tried again.
    Again,
    /// It was refused; the coach decides.
    Stopped,
    /// The connection broke while it was handed over: it may have been sent.
    Unsure,
    /// Taken out of the tray; it was not sent.
    Withdrawn,
    /// The coach told it in another way.
    Told,
}

/// What stood in a message's way.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum MailTrouble {
    /// Nobody answers.
    Away,
    /// The certificate is not to be trusted.
    Certificate,
    /// The server offers no encryption.
    Plain,
    /// The name or the password is wrong.
    SignIn,
    /// The server does not let this account send, or from this address.
    Sender,
    /// There is no such address there.
    Recipient,
    /// That mailbox is full.
    Full,
    /// The server wants it tried again later.
    Later,
    /// The message is too large for the server.
    TooLarge,
    /// The server does not want what it says.
    Content,
    /// The server cannot do an address with such letters.
    Letters,
    /// The connection broke while it was handed over.
    Broke,
    /// The server said something else.
    Other,
}

crate::db::words! {
    MessageKind {
        Letter = "letter", Invoice = "invoice", Reminder = "reminder", Invitation = "invitation", Offer = "offer",
        HomePlan = "home_plan", BeforeVisit = "before_visit", Questions = "questions", HomeReport = "home_report",
        ComeAgain = "come_again", Words = "words", Trial = "trial",
    }
    MessageState {
        ToRead = "to_read", Waiting = "waiting", Going = "going", Accepted = "accepted", Again = "again",
        Stopped = "stopped", Unsure = "unsure", Withdrawn = "withdrawn", Told = "told",
    }
    MailTrouble {
        Away = "away", Certificate = "certificate", Plain = "plain", SignIn = "sign_in", Sender = "sender",
        Recipient = "recipient", Full = "full", Later = "later", TooLarge = "too_large", Content = "content",
        Letters = "letters", Broke = "broke", Other = "other",
    }
}

impl MailTrouble {
    /// What it is and what to do, as sentences; `said` is what the server said.
    pub fn words(self, said: &str) -> String {
        let words = match self {
            Self::Away => {
                "The mail server does not answer. It is tried again by itself; everything here goes on."
            }
            Self::Certificate => {
                "The mail server cannot prove that it is the one that was asked for, so nothing was sent to it. On a network that asks everyone to sign in first, sign in there; otherwise ask whoever runs the server."
            }
            Self::Plain => {
                "The mail server offers no encryption at this port, so neither password nor message was sent. Ask your provider for the port with TLS: often 465, or 587 with STARTTLS."
            }
            Self::SignIn => {
                "The mail server does not take this name and password. Some providers want a password made for this program alone, which their settings offer."
            }
            Self::Sender => {
                "The mail server does not let this account send from your address. Look whether the address and the account belong together."
            }
            Self::Recipient => {
                "The mail server says that there is no such address. Ask for the right one, then write to it."
            }
            Self::Full => {
                "That mailbox is full. It is tried again by itself; telling it in another way is quicker."
            }
            Self::Later => {
                "The mail server wants it tried again later, as many do the first time. It is, by itself."
            }
            Self::TooLarge => {
                "The mail server finds the message too large. Take off what it carries, or send that in another way."
            }
            Self::Content => {
                "The mail server does not want the message as it is, often because it takes it for advertising. Word it otherwise, or tell it in another way."
            }
            Self::Letters => {
                "The mail server cannot send to an address with such letters. Ask for another address."
            }
            Self::Broke => {
                "The connection broke while the message was handed over. It may have been sent: ask before you send it again."
            }
            Self::Other => "The mail server did not take it.",
        };
        match said {
            "" => words.to_owned(),
            said => format!("{words} (\u{201c}{said}\u{201d})"),
        }
    }
}

/// Someone a message goes to.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Addressee {
    /// Full name.
    pub name: String,
    /// The e-mail address; empty where none is known.
    pub address: String,
}

/// A field of a text that had no value.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct MessageGap {
    /// The field, as it stands in the text between braces.
    pub field: String,
    /// Why it has none, as a sentence.
    pub why: String,
}

/// A file that a message carries.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct MessagePart {
    /// Which one.
    pub id: MessagePartId,
    /// Its name.
    pub name: String,
    /// Its media type (RFC 6838).
    pub media: String,
    /// How many bytes.
    pub size: i64,
}

/// Something that became of a message.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct MessageStep {
    /// Which one.
    pub id: MessageStepId,
    /// When.
    pub at: Instant,
    /// What it became.
    pub state: MessageState,
    /// The same in words.
    pub words: String,
}

/// A message as a list shows it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct MessageLine {
    /// Which one.
    pub id: MessageId,
    /// The first of those that say the same to several people.
    pub together: MessageId,
    /// What it is about.
    pub kind: MessageKind,
    /// About whom.
    pub student: Option<StudentId>,
    /// To whom.
    pub to: Addressee,
    /// Its subject.
    pub subject: String,
    /// What became of it.
    pub state: MessageState,
    /// The same in words.
    pub stands: String,
    /// When that changed last.
    pub changed: Instant,
    /// When it is tried (again).
    pub next: Option<Instant>,
}

/// A message with what became of it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct MessageShown {
    /// Which, to whom, and where it stands.
    #[serde(flatten)]
    pub line: MessageLine,
    /// From whom.
    pub from: Addressee,
    /// The other adult who gets the same; an empty name for none.
    pub with: Addressee,
    /// Its language.
    pub language: Language,
    /// The plain text.
    pub words: String,
    /// Fields of the text that still have no value.
    pub gaps: Vec<MessageGap>,
    /// The files it carries.
    pub parts: Vec<MessagePart>,
    /// About which visit.
    pub visit: Option<VisitId>,
    /// About which invoice.
    pub invoice: Option<InvoiceId>,
    /// To which payer.
    pub payer: Option<PayerId>,
    /// What keeps it from being sent, a sentence each; it can still be told.
    pub against: Vec<String>,
    /// What became of it, the oldest first.
    pub steps: Vec<MessageStep>,
    /// Its Message-ID (RFC 5322), without brackets.
    pub mail_id: String,
    /// How often it was tried.
    pub tries: i64,
}

/// Which message.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichMessage {
    /// Which one.
    pub message: MessageId,
}

/// What a state is called.
pub(crate) fn state_words(state: MessageState, trouble: Option<MailTrouble>, said: &str) -> String {
    let troubled = |words: &str| match trouble {
        Some(trouble) => format!("{words} {}", trouble.words(said)),
        None => words.to_owned(),
    };
    match state {
        MessageState::ToRead => "To be read by you.".to_owned(),
        MessageState::Waiting => troubled("Released; it goes out next."),
        MessageState::Going => "It is handed to your mail server now.".to_owned(),
        MessageState::Accepted => "Your mail server took it.".to_owned(),
        MessageState::Again => troubled("Not yet."),
        MessageState::Stopped => troubled("Not sent."),
        MessageState::Unsure => MailTrouble::Broke.words(said),
        MessageState::Withdrawn if said.is_empty() => "Withdrawn; it was not sent.".to_owned(),
        MessageState::Withdrawn => format!("Withdrawn; it was not sent: {said}"),
        MessageState::Told => said.to_owned(),
    }
}
