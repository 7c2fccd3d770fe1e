//! Putting messages into the tray, in the transaction of what they are about: what each carries, to whom
//! it goes, and with which words it begins.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::list::from;
use super::render::{CALENDAR, Carried};
use super::store::{self, Kept};
use super::texts::{self, Value};
use super::{Addressee, MessageKind, MessageState};
use crate::app::{Reading, Writing};
use crate::calendar::{self, InvitationKind};
use crate::db::digest;
use crate::error::{Error, Result};
use crate::facilities;
use crate::home;
use crate::intake;
use crate::intake::written_to::{WrittenTo, written_to};
use crate::invoices::{self, DocumentKind, Invoice, InvoiceState, WhichInvoice, WhichReminder};
use crate::kinds::ids::{InvoiceId, LetterId, MessageId, PayerId, ReminderId, StudentId, VisitId};
use crate::kinds::zones::Zone;
use crate::kinds::{Currency, Day, Language, Span};
use crate::lessons::{self, Lesson, LessonState, ListLessons};
use crate::letters;
use crate::offers;
use crate::payers::{self, WhichPayer};
use crate::settings;
use crate::students::{self, Student};
use crate::visits::{self, ListVisits, Stage, Visit};

/// What messages are about.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum MessageOf {
    /// An issued letter.
    Letter {
        /// Which one.
        letter: LetterId,
    },
    /// An issued invoice or credit note.
    Invoice {
        /// Which one.
        invoice: InvoiceId,
    },
    /// A reminder of an invoice.
    Reminder {
        /// Which one.
        reminder: ReminderId,
    },
    /// The invitations of a visit that are due, a message each.
    Invitations {
        /// Of which visit.
        visit: VisitId,
    },
    /// An offer of a visit; it is noted as made.
    Offer {
        /// Of which visit.
        visit: VisitId,
        /// Its words.
        words: String,
    },
    /// The home plan of a visit.
    HomePlan {
        /// Of which visit.
        visit: VisitId,
    },
    /// What is to be known before a visit.
    BeforeVisit {
        /// Of which visit.
        visit: VisitId,
    },
    /// The questions before court, as a page to fill in at home.
    Questions {
        /// To whom.
        student: StudentId,
    },
    /// The question how the home plan of a visit goes.
    HomeReport {
        /// Of which visit.
        visit: VisitId,
    },
    /// The question when a student comes again, after a visit.
    ComeAgain {
        /// After which visit.
        visit: VisitId,
    },
    /// The coach\u{2019}s own words to a student.
    Words {
        /// To whom.
        student: StudentId,
    },
    /// A trial, to the coach.
    Trial {},
}

/// Messages to put into the tray.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PutMessages {
    /// What they are about.
    pub of: MessageOf,
}

/// Messages that are in the tray.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct PutMessage {
    /// Which ones.
    pub messages: Vec<MessageId>,
    /// Whether all of them were there already: nothing goes out twice for the same.
    pub already: bool,
}

/// A letter to issue and to put into the tray.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct IssueAndPut {
    /// Of which visit.
    pub visit: VisitId,
}

/// Issues a letter and puts it into the tray, both or nothing.
///
/// # Errors
/// Those of issuing a letter and of putting it.
pub fn issue_letter(db: &Writing<'_>, given: IssueAndPut) -> Result<PutMessage> {
    let issued = letters::issue(db, letters::OfVisit { visit: given.visit })?;
    put(db, PutMessages { of: MessageOf::Letter { letter: issued.letter } })
}

/// Issues an invoice and puts it into the tray, both or nothing.
///
/// # Errors
/// Those of issuing an invoice and of putting it.
pub fn issue_invoice(db: &Writing<'_>, given: invoices::Issue) -> Result<PutMessage> {
    let invoice = invoices::issue(db, given)?.id;
    put(db, PutMessages { of: MessageOf::Invoice { invoice } })
}

/// What a message begins with, before it has a place in the tray.
struct Begun {
    /// What it is about; with the address it is the cause.
    about: String,
    kind: MessageKind,
    student: Option<StudentId>,
    payer: Option<PayerId>,
    visit: Option<VisitId>,
    invoice: Option<InvoiceId>,
    language: Language,
    to: Addressee,
    second: Option<Addressee>,
    values: Vec<(&'static str, Value)>,
    /// Words that are not one of the texts: subject and words.
    own: Option<(String, String)>,
    method: &'static str,
    parts: Vec<Carried>,
}

/// Puts messages into the tray, to be read by the coach. Those that are there already stay as they are.
///
/// # Errors
/// `NotFound`; `NotPossible` where nobody may be written to, or there is nothing to send.
pub fn put(db: &Writing<'_>, given: PutMessages) -> Result<PutMessage> {
    let begun = begun(db, &given.of)?;
    let mut messages = Vec::new();
    let mut new = Vec::new();
    for one in begun {
        let words = format!("{} to {}", kind_words(one.kind), one.to.name);
        let (ids, fresh) = put_one(db, one)?;
        messages.extend(ids);
        if fresh {
            new.push(words);
        }
    }
    if let Some(first) = new.first() {
        db.cannot_be_undone();
        db.label(match new.len() {
            1 => format!("In the out-tray: {first}"),
            many => format!("In the out-tray: {many} messages, as {first}"),
        });
    }
    Ok(PutMessage { messages, already: new.is_empty() })
}

/// What a kind of message is called.
pub(super) fn kind_words(kind: MessageKind) -> &'static str {
    match kind {
        MessageKind::Letter => "letter",
        MessageKind::Invoice => "invoice",
        MessageKind::Reminder => "reminder",
        MessageKind::Invitation => "invitation",
        MessageKind::Offer => "offer",
        MessageKind::HomePlan => "home plan",
        MessageKind::BeforeVisit => "what to know before the visit",
        MessageKind::Questions => "questions before court",
        MessageKind::HomeReport => "how the home plan goes",
        MessageKind::ComeAgain => "when to come again",
        MessageKind::Words => "a word",
        MessageKind::Trial => "a trial",
    }
}

pub(super) fn cause(about: &str, address: &str) -> String {
    format!("{about}:{}", address.to_lowercase())
}

/// The cause without the address of who gets it.
pub(super) fn about(m: &Kept) -> &str {
    let end = m.cause.len().saturating_sub(m.to.address.to_lowercase().len() + 1);
    m.cause.get(..end).unwrap_or(&m.cause)
}

/// A Message-ID that says nothing of this machine, and is the same when it is sent again.
pub(super) fn mail_id(id: MessageId, from: &str) -> String {
    let domain = from.rsplit_once('@').map_or("carryover.invalid", |(_, domain)| domain);
    format!("{id}.1@{domain}")
}

fn put_one(db: &Writing<'_>, begun: Begun) -> Result<(Vec<MessageId>, bool)> {
    let first: MessageId = db.id();
    // What is of no record has no cause but itself.
    let about = if begun.about.is_empty() { format!("itself:{first}") } else { begun.about };
    // Two adults of one address get one message.
    let apart = |second: &Addressee| {
        second.address.is_empty() || !second.address.eq_ignore_ascii_case(&begun.to.address)
    };
    let second = begun.second.filter(apart).unwrap_or_default();
    let everyone: Vec<(&Addressee, &Addressee)> = match second.name.as_str() {
        "" => vec![(&begun.to, &second)],
        _ => vec![(&begun.to, &second), (&second, &begun.to)],
    };
    let mut known = Vec::new();
    for (to, _) in &everyone {
        known.extend(store::of_cause(db, &cause(&about, &to.address))?);
    }
    if !known.is_empty() {
        known.dedup();
        return Ok((known, false));
    }
    let (subject, words) = match begun.own {
        Some(own) => own,
        None => texts::text(db, begun.kind, begun.language)?,
    };
    let (subject, words) =
        (texts::filled(&subject, &begun.values), texts::filled(&words, &begun.values));
    let gaps = texts::gaps(&[&subject, &words], &begun.values);
    let from = from(db)?;
    let mut ids = Vec::new();
    for (to, with) in everyone {
        let id = if ids.is_empty() { first } else { db.id() };
        let m = Kept {
            id,
            cause: cause(&about, &to.address),
            together: first,
            kind: begun.kind,
            student: begun.student,
            payer: begun.payer,
            visit: begun.visit,
            invoice: begun.invoice,
            language: begun.language,
            from: from.clone(),
            to: to.clone(),
            with: with.clone(),
            subject: subject.clone(),
            words: words.clone(),
            gaps: gaps.clone(),
            method: begun.method.to_owned(),
            mail_id: mail_id(id, &from.address),
            state: MessageState::ToRead,
            tries: 0,
            first_try: None,
            next: None,
            trouble: None,
            said: String::new(),
            changed: db.now(),
            sha256: None,
        };
        store::insert(db, &m)?;
        ids.push(id);
    }
    for (place, part) in (1..).zip(&begun.parts) {
        store::add_part(db, first, place, part)?;
    }
    Ok((ids, true))
}

fn begun(db: &Writing<'_>, of: &MessageOf) -> Result<Vec<Begun>> {
    Ok(match of {
        MessageOf::Letter { letter } => vec![of_letter(db, *letter)?],
        MessageOf::Invoice { invoice } => vec![of_invoice(db, *invoice)?],
        MessageOf::Reminder { reminder } => vec![of_reminder(db, *reminder)?],
        MessageOf::Invitations { visit } => of_invitations(db, *visit)?,
        MessageOf::Offer { visit, words } => vec![of_offer(db, *visit, words)?],
        MessageOf::HomePlan { visit } => vec![of_home_plan(db, *visit)?],
        MessageOf::BeforeVisit { visit } => vec![before_visit(db, *visit)?],
        MessageOf::Questions { student } => vec![questions(db, *student)?],
        MessageOf::HomeReport { visit } => {
            vec![after_visit(db, *visit, MessageKind::HomeReport, "home_report")?]
        }
        MessageOf::ComeAgain { visit } => {
            vec![after_visit(db, *visit, MessageKind::ComeAgain, "come_again")?]
        }
        MessageOf::Words { student } => {
            vec![to_student(db, *student, None, MessageKind::Words, String::new())?]
        }
        MessageOf::Trial {} => vec![trial(db)?],
    })
}

/// A message about a student, to whom it may go, with the fields that all have.
fn to_student(
    db: &Reading<'_>,
    student: StudentId,
    visit: Option<&Visit>,
    kind: MessageKind,
    about: String,
) -> Result<Begun> {
    let known = students::show(db, students::Which { student })?;
    let to = written_to(db, student, db.today())?;
    let name = addressed(&known, &to);
    let language = known.profile.language;
    let WrittenTo { first, second, against, .. } = to;
    let Some(first) = first else { return Err(Error::not_possible("nobody", against)) };
    let mut values = common(db, &name)?;
    values.push(("student", Ok(known.profile.name.clone())));
    if let Some(visit) = visit {
        values.push(("visit", days(visit, language)));
        values.push(("next_visit", next_visit(db, visit, language)?));
    }
    let reached = |reached: crate::intake::written_to::Reached| Addressee {
        name: reached.name,
        address: reached.email,
    };
    Ok(Begun {
        about,
        kind,
        student: Some(student),
        payer: None,
        visit: visit.map(|visit| visit.id),
        invoice: None,
        language,
        to: reached(first),
        second: second.map(reached),
        values,
        own: None,
        method: "",
        parts: Vec::new(),
    })
}

fn addressed(student: &Student, to: &WrittenTo) -> String {
    match &to.first {
        Some(guardian) if to.through => guardian.name.clone(),
        _ => offers::called(student).to_owned(),
    }
}

fn common(db: &Reading<'_>, name: &str) -> Result<Vec<(&'static str, Value)>> {
    let me = settings::show(db)?;
    let coach = match me.name.as_str() {
        "" => Err("Your name is not known yet; write it down under Coach.".to_owned()),
        name => Ok(name.to_owned()),
    };
    Ok(vec![("name", Ok(name.to_owned())), ("coach", coach), ("closing", Ok(me.closing))])
}

fn days(visit: &Visit, language: Language) -> Value {
    match visit.days {
        Some(days) => Ok(language.span(days)),
        None => Err("The visit has no days yet.".to_owned()),
    }
}

fn next_visit(db: &Reading<'_>, visit: &Visit, language: Language) -> Result<Value> {
    let ask = ListVisits { student: Some(visit.student), ..ListVisits::default() };
    let after = |v: &&Visit| {
        v.id != visit.id
            && matches!(v.stage, Stage::Planned | Stage::Expected)
            && v.from() > visit.from()
    };
    let all = visits::list(db, ask)?;
    let next = all.iter().filter(after).min_by_key(|v| v.from());
    Ok(match next.and_then(|v| v.days.or(v.expected)) {
        Some(span) => Ok(language.span(span)),
        None => Err("No next visit is planned.".to_owned()),
    })
}

fn pdf((name, bytes): (String, Vec<u8>)) -> Carried {
    Carried { name, media: "application/pdf".to_owned(), bytes }
}

fn of_letter(db: &Reading<'_>, letter: LetterId) -> Result<Begun> {
    let issued = letters::show(db, letters::Which { letter })?;
    let visit = visits::show(db, visits::Which { visit: issued.visit })?;
    let about = format!("letter:{letter}");
    let begun = to_student(db, visit.student, Some(&visit), MessageKind::Letter, about)?;
    Ok(Begun { parts: vec![pdf(letters::document(db, letter)?)], ..begun })
}

fn of_home_plan(db: &Reading<'_>, visit: VisitId) -> Result<Begun> {
    let shown = visits::show(db, visits::Which { visit })?;
    let (name, bytes) = home::document(db, home::OfVisit { visit })?;
    // A plan that changed is another message.
    let about =
        format!("home_plan:{visit}:{}", digest::sha256(&bytes).get(..16).unwrap_or_default());
    let begun = to_student(db, shown.student, Some(&shown), MessageKind::HomePlan, about)?;
    Ok(Begun { parts: vec![pdf((name, bytes))], ..begun })
}

/// The page of a student goes as a file; it is made once a message, as each has its own token.
fn questions(db: &Writing<'_>, student: StudentId) -> Result<Begun> {
    let about = format!("questions:{student}:{}", db.today());
    let begun = to_student(db, student, None, MessageKind::Questions, about)?;
    if store::of_cause(db, &cause(&begun.about, &begun.to.address))?.is_some() {
        return Ok(begun);
    }
    let page = intake::page::make(db, intake::page::MakePage { student })?;
    let media = "text/html; charset=utf-8".to_owned();
    let part = Carried { name: page.name, media, bytes: page.html.into_bytes() };
    Ok(Begun { parts: vec![part], ..begun })
}

fn after_visit(db: &Reading<'_>, visit: VisitId, kind: MessageKind, about: &str) -> Result<Begun> {
    let shown = visits::show(db, visits::Which { visit })?;
    to_student(db, shown.student, Some(&shown), kind, format!("{about}:{visit}"))
}

fn of_offer(db: &Writing<'_>, visit: VisitId, words: &str) -> Result<Begun> {
    let shown = visits::show(db, visits::Which { visit })?;
    let made = offers::make(db, offers::MakeOffer { visit, words: words.to_owned() })?;
    let about = format!("offer:{}", made.id);
    let begun = to_student(db, shown.student, Some(&shown), MessageKind::Offer, about)?;
    let when = shown.days.map(|days| begun.language.span(days)).unwrap_or_default();
    let subject = match begun.language {
        Language::En => format!("Lessons {when}"),
        Language::De => format!("Stunden {when}"),
    };
    Ok(Begun { own: Some((subject.trim().to_owned(), made.words)), ..begun })
}

fn before_visit(db: &Reading<'_>, visit: VisitId) -> Result<Begun> {
    let shown = visits::show(db, visits::Which { visit })?;
    let first = shown.from().map(|day| day.to_string()).unwrap_or_default();
    let about = format!("before_visit:{visit}:{first}");
    let mut begun = to_student(db, shown.student, Some(&shown), MessageKind::BeforeVisit, about)?;
    let student = students::show(db, students::Which { student: shown.student })?;
    let theirs = Zone::parse(&student.profile.zone).ok();
    let ask = ListLessons { visit: Some(visit), from: None, to: None };
    let lines: Vec<String> = lessons::list(db, ask)?
        .iter()
        .filter(|lesson| lesson.state == LessonState::Planned)
        .map(|lesson| when(lesson, begun.language, theirs.as_ref()))
        .collect();
    begun.values.push((
        "lessons",
        if lines.is_empty() {
            Err("The visit has no lessons to come.".to_owned())
        } else {
            Ok(lines.join("\n"))
        },
    ));
    let place = shown
        .facility
        .map(|facility| facilities::show(db, facilities::Which { facility }))
        .transpose()?;
    let no_place = || Err("The visit has no place yet.".to_owned());
    begun.values.push((
        "place",
        place.as_ref().map_or_else(no_place, |f| Ok(named(&f.place.name, &f.place.town))),
    ));
    begun.values.push((
        "visitors",
        match place.as_ref().map(|f| (f.place.visitors.as_str(), &f.place.name)) {
            None => no_place(),
            Some(("", name)) => Err(format!(
                "What {name} asks of visitors is not written down; it is, or not, under Places."
            )),
            Some((visitors, _)) => Ok(visitors.to_owned()),
        },
    ));
    Ok(begun)
}

fn named(name: &str, town: &str) -> String {
    if town.is_empty() { name.to_owned() } else { format!("{name}, {town}") }
}

/// When a lesson is, with its court.
fn when(lesson: &Lesson, language: Language, theirs: Option<&Zone>) -> String {
    let when = offers::on_both_clocks(lesson, theirs, language);
    if lesson.court_name.is_empty() { when } else { format!("{when}, {}", lesson.court_name) }
}

fn of_invitations(db: &Writing<'_>, visit: VisitId) -> Result<Vec<Begun>> {
    let which = visits::Which { visit };
    let shown = visits::show(db, which)?;
    let student = students::show(db, students::Which { student: shown.student })?;
    let theirs = Zone::parse(&student.profile.zone).ok();
    let mut all = Vec::new();
    for one in calendar::invitations(db, which, db.now().utc())? {
        let about = format!("invitation:{}:{}:{}", one.lesson.id, shown.student, one.sequence);
        let mut begun =
            to_student(db, shown.student, Some(&shown), MessageKind::Invitation, about)?;
        let said = match (one.kind, begun.language) {
            (InvitationKind::New, Language::En) => "Our lesson",
            (InvitationKind::Changed, Language::En) => "Our lesson is at another time or place",
            (InvitationKind::CalledOff, Language::En) => "Called off",
            (InvitationKind::New, Language::De) => "Unsere Stunde",
            (InvitationKind::Changed, Language::De) => "Unsere Stunde hat sich geändert",
            (InvitationKind::CalledOff, Language::De) => "Abgesagt",
        };
        begun.values.push(("said", Ok(said.to_owned())));
        begun.values.push(("lesson", Ok(when(&one.lesson, begun.language, theirs.as_ref()))));
        begun.values.push(("place", Ok(one.lesson.place.clone())));
        begun.method = match one.kind {
            InvitationKind::CalledOff => "CANCEL",
            InvitationKind::New | InvitationKind::Changed => "REQUEST",
        };
        begun.parts = vec![Carried {
            name: one.name,
            media: CALENDAR.to_owned(),
            bytes: one.text.into_bytes(),
        }];
        all.push(begun);
    }
    calendar::written(db, which)?;
    Ok(all)
}

/// A message about money goes to whoever pays, and leads to no student.
fn to_payer(
    db: &Reading<'_>,
    invoice: &Invoice,
    kind: MessageKind,
    about: String,
) -> Result<Begun> {
    let payer = payers::show(db, WhichPayer { payer: invoice.payer })?;
    let mut values = common(db, &payer.form.name)?;
    values.push(("number", Ok(invoice.number.clone())));
    Ok(Begun {
        about,
        kind,
        student: None,
        payer: Some(payer.id),
        visit: None,
        invoice: Some(invoice.id),
        language: payer.form.language,
        to: Addressee { name: payer.form.name, address: payer.form.email },
        second: None,
        values,
        own: None,
        method: "",
        parts: Vec::new(),
    })
}

fn of_invoice(db: &Reading<'_>, id: InvoiceId) -> Result<Begun> {
    let invoice = invoices::show(db, WhichInvoice { invoice: id })?;
    if invoice.state == InvoiceState::Draft {
        let words = "This is a draft still. Issue it, then it can be sent.";
        return Err(Error::not_possible("draft", words));
    }
    let mut begun = to_payer(db, &invoice, MessageKind::Invoice, format!("invoice:{id}"))?;
    let (en, credit) = (begun.language == Language::En, invoice.kind == DocumentKind::CreditNote);
    let document = match (en, credit) {
        (true, false) => "Invoice",
        (true, true) => "Credit note",
        (false, false) => "Rechnung",
        (false, true) => "Gutschrift",
    };
    begun.values.push(("document", Ok(document.to_owned())));
    begun.values.push(("pay", Ok(pay(&invoice, begun.language))));
    begun.parts.push(pdf(invoices::file(db, WhichInvoice { invoice: id })?));
    if invoice.file_lacks.is_empty() {
        let which =
            invoices::WhichInvoiceFile { invoice: id, syntax: invoices::InvoiceSyntax::Ubl };
        let (name, bytes) = invoices::structured_file(db, which)?;
        begun.parts.push(Carried { name, media: "application/xml".to_owned(), bytes });
    }
    Ok(begun)
}

/// What is to be paid by when, as a sentence.
fn pay(invoice: &Invoice, language: Language) -> String {
    let open = format!("{} {}", invoice.open, invoice.currency);
    let due = invoice.due.map(|day| on(day, language)).unwrap_or_default();
    let nothing =
        Currency::parse(&invoice.currency).and_then(|c| c.minor(&invoice.open)) == Some(0);
    match (language, invoice.kind, nothing) {
        (Language::En, DocumentKind::CreditNote, _) => "There is nothing to pay.".to_owned(),
        (Language::De, DocumentKind::CreditNote, _) => "Es ist nichts zu zahlen.".to_owned(),
        (Language::En, _, true) => "It is paid already.".to_owned(),
        (Language::De, _, true) => "Sie ist bereits bezahlt.".to_owned(),
        (Language::En, ..) => format!("Please pay {open} by {due}."),
        (Language::De, ..) => format!("Bitte zahlen Sie {open} bis {due}."),
    }
}

fn on(day: Day, language: Language) -> String {
    language.span(Span { first: day, last: day })
}

fn of_reminder(db: &Reading<'_>, reminder: ReminderId) -> Result<Begun> {
    let which = WhichReminder { reminder };
    let id = invoices::of_reminder(db, which)?;
    let invoice = invoices::show(db, WhichInvoice { invoice: id })?;
    let mut begun = to_payer(db, &invoice, MessageKind::Reminder, format!("reminder:{reminder}"))?;
    if let Some(told) = invoice.reminders.iter().find(|told| told.id == reminder) {
        begun.values.push(("amount", Ok(format!("{} {}", told.open, invoice.currency))));
        begun.values.push(("due", Ok(on(told.due, begun.language))));
    }
    begun.parts.push(pdf(invoices::reminder_file(db, which)?));
    Ok(begun)
}

fn trial(db: &Reading<'_>) -> Result<Begun> {
    let me = from(db)?;
    let words = format!(
        "This is a trial. It went out through your own mail account, and whoever you write to sees your messages as you see this one.\n\n{}",
        me.name
    );
    Ok(Begun {
        about: String::new(),
        kind: MessageKind::Trial,
        student: None,
        payer: None,
        visit: None,
        invoice: None,
        language: Language::En,
        to: me,
        second: None,
        values: Vec::new(),
        own: Some(("A trial of your mail account".to_owned(), words)),
        method: "",
        parts: Vec::new(),
    })
}
