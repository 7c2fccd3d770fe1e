//! What a message begins with: to whom it goes, which fields its text has, and what it carries.

use super::list::from;
use super::put::{MessageOf, cause};
use super::render::{CALENDAR, Carried};
use super::texts::Value;
use super::{Addressee, MessageKind, about_money, store};
use crate::app::{Reading, Writing};
use crate::calendar::{self, InvitationKind};
use crate::db::digest;
use crate::error::{Error, Result};
use crate::facilities;
use crate::home;
use crate::intake;
use crate::intake::written_to::{WrittenTo, written_to};
use crate::kinds::Language;
use crate::kinds::ids::{InvoiceId, LetterId, PayerId, StudentId, VisitId};
use crate::kinds::zones::Zone;
use crate::lessons::{self, Lesson, LessonState, ListLessons};
use crate::letters;
use crate::offers;
use crate::settings;
use crate::students::{self, Student};
use crate::visits::{self, ListVisits, Stage, Visit};

/// What a message begins with, before it has a place in the tray.
pub(super) struct Begun {
    /// What it is about; with the address it is the cause.
    pub about: String,
    pub kind: MessageKind,
    pub student: Option<StudentId>,
    pub payer: Option<PayerId>,
    pub visit: Option<VisitId>,
    pub invoice: Option<InvoiceId>,
    pub language: Language,
    pub to: Addressee,
    pub second: Option<Addressee>,
    pub values: Vec<(&'static str, Value)>,
    /// Words that are not one of the texts: subject and words.
    pub own: Option<(String, String)>,
    pub method: &'static str,
    pub parts: Vec<Carried>,
}

/// What messages begin with.
///
/// # Errors
/// `NotFound`; `NotPossible` where nobody may be written to, or there is nothing to send.
pub(super) fn begun(db: &Writing<'_>, of: &MessageOf) -> Result<Vec<Begun>> {
    Ok(match of {
        MessageOf::Letter { letter } => vec![of_letter(db, *letter)?],
        MessageOf::Invoice { invoice } => vec![about_money::of_invoice(db, *invoice)?],
        MessageOf::Reminder { reminder } => vec![about_money::of_reminder(db, *reminder)?],
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
            let mut begun = to_student(db, *student, None, MessageKind::Words, String::new())?;
            begun.values.push(("your_words", Err("Type what you have to say.".to_owned())));
            vec![begun]
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
    let mut values = common(db, &name, language)?;
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

/// The fields that all messages have.
pub(super) fn common(
    db: &Reading<'_>,
    name: &str,
    language: Language,
) -> Result<Vec<(&'static str, Value)>> {
    let me = settings::show(db)?;
    let closing = letters::closing_in(&me, language);
    let coach = match me.name.as_str() {
        "" => Err("Your name is not known yet; write it down under Coach.".to_owned()),
        name => Ok(name.to_owned()),
    };
    Ok(vec![("name", Ok(name.to_owned())), ("coach", coach), ("closing", Ok(closing))])
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

/// A document as a file.
pub(super) fn pdf((name, bytes): (String, Vec<u8>)) -> Carried {
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
