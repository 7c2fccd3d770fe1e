//! What may be written now, by rules the coach sets: before a visit, after a letter was issued, when an
//! invoice is overdue, how the home plan goes, when a student was last seen long ago. Nothing of it is
//! written by itself, and nothing is proposed twice for the same cause.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{MessageState, store};
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::home;
use crate::intake::notices;
use crate::invoices::{self, InvoiceState, InvoicesOf, WhichInvoice};
use crate::kinds::ids::{InvoiceId, LetterId, StudentId, VisitId};
use crate::kinds::text::counted;
use crate::kinds::zones::{Zone, local_of, resolve};
use crate::kinds::{Instant, Span, Time};
use crate::settings;
use crate::students;
use crate::terms;
use crate::visits::{self, ListVisits, Stage, Visit};

/// The name the rules are kept under.
const KEPT: &str = "follow_ups";

/// An issued letter is proposed for so many days.
const LETTERS: i64 = 60;

/// How long after it is due to be asked a student is proposed, in days: whoever was not seen for years is
/// not proposed each morning.
const STILL: i64 = 42;

/// When what is proposed; the form and the record are the same. 0 stands for never.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct FollowUpRules {
    /// What is to be known before a visit: so many days before it.
    pub before_visit: i64,
    /// The letter that was issued and not sent.
    pub letters: bool,
    /// A reminder of an invoice, as often as the terms say.
    pub overdue: bool,
    /// How the home plan goes: so many days after the visit.
    pub home_report: i64,
    /// When a student comes again: so many weeks after the last visit.
    pub come_again: i64,
    /// Whether messages to students wait for the morning where they live.
    pub quiet: bool,
    /// From when on it is quiet there, as HH:MM.
    pub quiet_from: String,
    /// Until when.
    pub quiet_to: String,
}

/// A week, two weeks, nine weeks; quiet from nine to seven (common practice, no source).
impl Default for FollowUpRules {
    fn default() -> Self {
        Self {
            before_visit: 7,
            letters: true,
            overdue: true,
            home_report: 14,
            come_again: 9,
            quiet: true,
            quiet_from: "21:00".to_owned(),
            quiet_to: "07:00".to_owned(),
        }
    }
}

/// What is proposed to be written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum FollowUpKind {
    /// What is to be known before a visit.
    BeforeVisit,
    /// The questions before court.
    Questions,
    /// A letter that was issued.
    Letter,
    /// A reminder.
    Overdue,
    /// How the home plan goes.
    HomeReport,
    /// When the student comes again.
    ComeAgain,
}

/// Something that may be written now.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct FollowUp {
    /// What it is about; the same is not proposed twice.
    pub key: String,
    /// What.
    pub kind: FollowUpKind,
    /// As a sentence.
    pub what: String,
    /// Why.
    pub why: String,
    /// To which student.
    pub student: Option<StudentId>,
    /// About which visit.
    pub visit: Option<VisitId>,
    /// About which invoice.
    pub invoice: Option<InvoiceId>,
    /// Which letter.
    pub letter: Option<LetterId>,
}

/// What may be written now, and what lies in the tray.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct FollowUps {
    /// Proposals.
    pub proposals: Vec<FollowUp>,
    /// How many messages are to be read.
    pub to_read: u32,
    /// How many need the coach.
    pub needs: u32,
    /// How many are released and not handed over yet.
    pub on_its_way: u32,
}

/// A proposal that the coach leaves.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LeaveFollowUp {
    /// What it is about.
    pub key: String,
}

/// The rules.
///
/// # Errors
/// `Storage`.
pub fn rules(db: &Reading<'_>) -> Result<FollowUpRules> {
    settings::kept(db, KEPT).map(Option::unwrap_or_default)
}

/// Sets the rules.
///
/// # Errors
/// `Refused` with every field that is wrong.
pub fn set_rules(db: &Writing<'_>, given: FollowUpRules) -> Result<FollowUpRules> {
    let mut p = Problems::new();
    let read = FollowUpRules {
        before_visit: p.within_bounds(
            "before_visit",
            given.before_visit,
            0,
            60,
            "The number of days",
        ),
        home_report: p.within_bounds(
            "home_report",
            given.home_report,
            0,
            120,
            "The number of days",
        ),
        come_again: p.within_bounds("come_again", given.come_again, 0, 104, "The number of weeks"),
        quiet_from: p.time("quiet_from", &given.quiet_from, "From when it is quiet").to_string(),
        quiet_to: p.time("quiet_to", &given.quiet_to, "Until when it is quiet").to_string(),
        ..given
    };
    p.done()?;
    settings::keep(db, KEPT, &read)?;
    db.label("Rules of writing set");
    rules(db)
}

/// The moment before which a message does not go out: now, or the morning where the student lives.
///
/// # Errors
/// `NotFound`.
pub(super) fn not_before(db: &Writing<'_>, student: Option<StudentId>) -> Result<Instant> {
    let now = db.now();
    let rules = rules(db)?;
    let Some(student) = student.filter(|_| rules.quiet) else { return Ok(now) };
    let known = students::show(db, students::Which { student })?;
    let zone = Zone::parse(&known.profile.zone).ok();
    Ok(zone.and_then(|zone| morning(now, &zone, &rules)).unwrap_or(now))
}

/// When it is quiet no more in a zone; `None` where it is not quiet there.
fn morning(now: Instant, zone: &Zone, rules: &FollowUpRules) -> Option<Instant> {
    let (from, to) = (Time::parse(&rules.quiet_from)?, Time::parse(&rules.quiet_to)?);
    let there = local_of(&now.utc(), zone).ok()?;
    let time = there.time();
    let (evening, night) = (time >= from.time(), time < to.time());
    let quiet = if from.time() < to.time() { evening && night } else { evening || night };
    if !quiet {
        return None;
    }
    let day = if night { there.date() } else { there.date().succ_opt()? };
    let at = resolve(day.and_time(to.time()), zone).ok()?.instant(false);
    Some(Instant::from_chrono(&at))
}

/// What may be written now.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>) -> Result<FollowUps> {
    let rules = rules(db)?;
    let mut all = Vec::new();
    before_visits(db, &rules, &mut all)?;
    if rules.letters {
        letters_issued(db, &mut all)?;
    }
    if rules.overdue {
        overdue(db, &mut all)?;
    }
    after_visits(db, &rules, &mut all)?;
    let mut proposals = Vec::new();
    for one in all {
        if !store::is_left(db, &one.key)? {
            proposals.push(one);
        }
    }
    Ok(FollowUps {
        proposals,
        to_read: store::count(db, MessageState::ToRead)?,
        on_its_way: super::carry::left(db)?,
        needs: store::count(db, MessageState::Stopped)? + store::count(db, MessageState::Unsure)?,
    })
}

fn of_visit(visit: &Visit, kind: FollowUpKind, about: &str, what: String, why: String) -> FollowUp {
    FollowUp {
        key: format!("{about}:{}", visit.id),
        kind,
        what,
        why,
        student: Some(visit.student),
        visit: Some(visit.id),
        invoice: None,
        letter: None,
    }
}

fn before_visits(db: &Reading<'_>, rules: &FollowUpRules, all: &mut Vec<FollowUp>) -> Result<()> {
    if rules.before_visit == 0 {
        return Ok(());
    }
    let today = db.today();
    let soon = Span { first: today, last: today.plus(rules.before_visit) };
    for visit in visits::around(db, soon)? {
        let Some(days) = visit.days.filter(|days| days.first > today) else { continue };
        if visit.stage != Stage::Planned {
            continue;
        }
        let why =
            format!("The visit begins in {}.", counted(days.first.since(today), "day", "days"));
        if !store::has_about(db, &format!("before_visit:{}:", visit.id))? {
            let what = format!("Write to {} what to know before the visit.", visit.name);
            all.push(of_visit(
                &visit,
                FollowUpKind::BeforeVisit,
                "before_visit",
                what,
                why.clone(),
            ));
        }
        let missing = notices::missing_on(db, visit.student, visit.facility, days.first, false)?;
        if !missing.is_empty() && !store::has_about(db, &format!("questions:{}:", visit.student))? {
            let what = format!("Send {} the questions before court.", visit.name);
            let why = format!("{why} {}", missing.join(" "));
            all.push(of_visit(&visit, FollowUpKind::Questions, "questions", what, why));
        }
    }
    Ok(())
}

fn letters_issued(db: &Reading<'_>, all: &mut Vec<FollowUp>) -> Result<()> {
    let since = db.today().plus(-LETTERS);
    for (letter, visit) in store::letters_not_sent(db, since)? {
        let shown = visits::show(db, visits::Which { visit })?;
        let what = format!("Send {} the letter.", shown.name);
        let why = format!(
            "It was issued after the visit of {}, and neither sent nor told.",
            shown.when()
        );
        all.push(FollowUp {
            key: format!("letter:{letter}"),
            letter: Some(letter),
            ..of_visit(&shown, FollowUpKind::Letter, "letter", what, why)
        });
    }
    Ok(())
}

fn overdue(db: &Reading<'_>, all: &mut Vec<FollowUp>) -> Result<()> {
    let after = terms::show(db)?.remind_after;
    let open = invoices::list(db, InvoicesOf { payer: None, open: true })?.invoices;
    for invoice in open.iter().filter(|invoice| invoice.state == InvoiceState::Overdue) {
        let late = invoice.due.map(|due| db.today().since(due)).unwrap_or_default();
        let due = after.iter().filter(|days| **days <= late).count();
        if due == 0 {
            continue;
        }
        if invoices::reminded(db, WhichInvoice { invoice: invoice.id })? >= due {
            continue;
        }
        all.push(FollowUp {
            key: format!("overdue:{}:{due}", invoice.id),
            kind: FollowUpKind::Overdue,
            what: format!("Remind {} of invoice {}.", invoice.name, invoice.number),
            why: format!(
                "{} {} open, {} late.",
                invoice.open,
                invoice.currency,
                counted(late, "day", "days")
            ),
            student: None,
            visit: None,
            invoice: Some(invoice.id),
            letter: None,
        });
    }
    Ok(())
}

fn after_visits(db: &Reading<'_>, rules: &FollowUpRules, all: &mut Vec<FollowUp>) -> Result<()> {
    let today = db.today();
    // The days on which a visit must have ended for something to be asked now.
    let ended = |days: i64| Span { first: today.plus(-days - STILL), last: today.plus(-days) };
    if rules.home_report > 0 {
        let span = ended(rules.home_report);
        for visit in closed_in(db, span)? {
            let Some(plan) = home::of_visit(db, visit.id)? else { continue };
            let told = plan.lines.iter().any(|line| !line.told.is_empty());
            let asked = store::has_about(db, &format!("home_report:{}:", visit.id))?;
            if told || asked || plan.lines.is_empty() || comes_again(db, &visit)? == Comes::Came {
                continue;
            }
            let what = format!("Ask {} how the home plan goes.", visit.name);
            let why = format!("Nothing was told of it since the visit of {}.", visit.when());
            all.push(of_visit(&visit, FollowUpKind::HomeReport, "home_report", what, why));
        }
    }
    if rules.come_again > 0 {
        for visit in closed_in(db, ended(rules.come_again * 7))? {
            let asked = store::has_about(db, &format!("come_again:{}:", visit.id))?;
            if asked || comes_again(db, &visit)? != Comes::No {
                continue;
            }
            let weeks = visit.days.map(|days| today.since(days.last) / 7).unwrap_or_default();
            let what = format!("Ask {} when to go on.", visit.name);
            let why = format!(
                "Last seen {} ago, and no visit is planned or expected.",
                counted(weeks, "week", "weeks")
            );
            all.push(of_visit(&visit, FollowUpKind::ComeAgain, "come_again", what, why));
        }
    }
    Ok(())
}

fn closed_in(db: &Reading<'_>, span: Span) -> Result<Vec<Visit>> {
    let closed = |visit: &Visit| {
        visit.stage == Stage::Closed && visit.days.is_some_and(|days| span.holds(days.last))
    };
    Ok(visits::around(db, span)?.into_iter().filter(closed).collect())
}

/// Whether a student comes, or came, again after a visit.
#[derive(PartialEq, Eq)]
enum Comes {
    No,
    Will,
    Came,
}

fn comes_again(db: &Reading<'_>, visit: &Visit) -> Result<Comes> {
    let ask = ListVisits { student: Some(visit.student), from: visit.from(), to: None };
    let later = visits::list(db, ask)?;
    let later = later.iter().filter(|v| v.id != visit.id && v.from() >= visit.from());
    Ok(later.fold(Comes::No, |comes, v| match v.stage {
        Stage::Open | Stage::Closed => Comes::Came,
        Stage::Planned | Stage::Expected if comes == Comes::No => Comes::Will,
        _ => comes,
    }))
}

/// Leaves a proposal; it does not come again for the same cause.
///
/// # Errors
/// `NotPossible` when it is not proposed now.
pub fn leave(db: &Writing<'_>, given: LeaveFollowUp) -> Result<FollowUps> {
    let all = list(db)?;
    let Some(one) = all.proposals.iter().find(|one| one.key == given.key) else {
        return Err(Error::not_possible("not_proposed", "This is not proposed any more."));
    };
    store::leave(db, &one.key, one.student, db.today())?;
    db.label(format!("Not this time: {}", one.what));
    list(db)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The instants by hand: Lisbon is at UTC in winter, Tokyo nine hours ahead, New York five behind.
    #[test]
    fn quiet_hours_end_in_the_morning_where_the_student_lives() {
        let rules = FollowUpRules::default();
        let cases = [
            ("2026-01-10T12:00:00Z", "Europe/Lisbon", None),
            ("2026-01-10T12:00:00Z", "Asia/Tokyo", Some("2026-01-10T22:00:00Z")),
            ("2026-01-10T11:59:00Z", "Asia/Tokyo", None),
            ("2026-01-10T10:00:00Z", "America/New_York", Some("2026-01-10T12:00:00Z")),
            ("2026-01-10T12:00:00Z", "America/New_York", None),
            // The clocks go forward in the night before: seven there is an hour earlier for us.
            ("2026-03-08T04:00:00Z", "America/New_York", Some("2026-03-08T11:00:00Z")),
        ];
        for (now, zone, then) in cases {
            let at = Instant::parse(now).unwrap();
            let found = morning(at, &Zone::parse(zone).unwrap(), &rules);
            assert_eq!(found, then.and_then(Instant::parse), "{now} {zone}");
        }
        let day =
            FollowUpRules { quiet_from: "12:00".to_owned(), quiet_to: "14:00".to_owned(), ..rules };
        let at = Instant::parse("2026-01-10T13:00:00Z").unwrap();
        let found = morning(at, &Zone::parse("Europe/Lisbon").unwrap(), &day);
        assert_eq!(found, Instant::parse("2026-01-10T14:00:00Z"));
    }
}
