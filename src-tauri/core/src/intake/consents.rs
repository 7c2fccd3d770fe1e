//! Consents, one by one: each answer is kept with who gave it, and can be withdrawn.

use rusqlite::{Row, params};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::scans::{self, ScanNamed};
use super::{Accepting, OnWhat, Speaks, minors, past_day};
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::kinds::Day;
use crate::kinds::ids::{ConsentId, ScanId, StudentId};
use crate::students;

/// What is consented to.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum ConsentKind {
    /// Lessons of a minor, alone with the coach.
    Lessons,
    /// Keeping what was said about health.
    HealthData,
    /// Recording on court, for the lesson's own use.
    Recording,
    /// Showing a recording to others.
    Publishing,
    /// Photographs.
    Photographs,
    /// Messages straight to a minor, a second adult on them.
    Messages,
    /// Emergency treatment when nobody can be asked.
    EmergencyTreatment,
    /// Driving a minor.
    Transport,
}

crate::db::words! {
    ConsentKind {
        Lessons = "lessons", HealthData = "health_data", Recording = "recording",
        Publishing = "publishing", Photographs = "photographs", Messages = "messages",
        EmergencyTreatment = "emergency_treatment", Transport = "transport",
    }
}

/// Every kind, in the order in which they are asked.
pub const KINDS: [ConsentKind; 8] = [
    ConsentKind::Lessons,
    ConsentKind::EmergencyTreatment,
    ConsentKind::HealthData,
    ConsentKind::Recording,
    ConsentKind::Publishing,
    ConsentKind::Photographs,
    ConsentKind::Messages,
    ConsentKind::Transport,
];

impl ConsentKind {
    /// As named in a sentence.
    pub fn words(self) -> &'static str {
        match self {
            Self::Lessons => "lessons of a minor",
            Self::HealthData => "keeping health answers",
            Self::Recording => "recording on court",
            Self::Publishing => "showing a recording to others",
            Self::Photographs => "photographs",
            Self::Messages => "messages straight to a minor",
            Self::EmergencyTreatment => "emergency treatment",
            Self::Transport => "driving a minor",
        }
    }

    /// What is asked, in full.
    pub fn question(self) -> &'static str {
        match self {
            Self::Lessons => {
                "May the coach give the minor lessons, alone on a court that others can see into? Parents may watch at any time."
            }
            Self::HealthData => {
                "May the coach keep the answers about health and injuries, to plan lessons with care? They are kept in the coach\u{2019}s own file and seen by the coach and whoever helps in an emergency, by nobody else unless the law asks."
            }
            Self::Recording => "May lessons be recorded, for the coach and the student to look at?",
            Self::Publishing => {
                "May a recording be shown to others, or published? Each time is asked again."
            }
            Self::Photographs => "May photographs be taken?",
            Self::Messages => {
                "May the coach write to the minor directly, with a parent or guardian on every message?"
            }
            Self::EmergencyTreatment => {
                "In an emergency, if nobody who decides can be reached: may those who help on the spot treat the student?"
            }
            Self::Transport => "May the coach drive the minor? Each way is agreed beforehand.",
        }
    }

    /// What follows when it is withdrawn, or was not given.
    pub fn follows(self) -> &'static str {
        match self {
            Self::Lessons => "No lesson until a guardian consents.",
            Self::HealthData => {
                "Erase the health answers, unless a law or an insurer has you keep them: ask. Without them each lesson needs its own reason to go on."
            }
            Self::Recording => {
                "Do not record. Delete the recordings there are, or ask what is to become of them."
            }
            Self::Publishing => {
                "Take down what was published, as far as it can be, and show nothing more."
            }
            Self::Photographs => "Take no photographs. Delete those there are, or ask.",
            Self::Messages => "Write to the guardian alone.",
            Self::EmergencyTreatment => {
                "Call the emergency number all the same; say to whoever helps what was decided."
            }
            Self::Transport => "Somebody else drives.",
        }
    }

    /// Whether only a minor is asked it.
    pub fn of_minors(self) -> bool {
        matches!(self, Self::Lessons | Self::Messages | Self::Transport)
    }
}

/// An answer to write down.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct GiveConsent {
    /// Whose; left out for a guest.
    #[serde(default)]
    pub student: Option<StudentId>,
    /// The name of a guest or opponent; left out for a student.
    #[serde(default)]
    pub guest: String,
    /// What is consented to.
    pub kind: ConsentKind,
    /// Whether it is given; a no is an answer too.
    pub given: bool,
    /// Who answers.
    pub by: Accepting,
    /// The last day it holds; empty: until it is withdrawn.
    #[serde(default)]
    pub until: String,
}

/// A consent to withdraw.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WithdrawConsent {
    /// Which one.
    pub consent: ConsentId,
    /// Who withdraws it.
    pub by_whom: String,
    /// The day, as YYYY-MM-DD; empty for today.
    #[serde(default)]
    pub day: String,
}

/// An answer as kept.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Consent {
    /// Which one.
    pub id: ConsentId,
    /// Whose.
    pub student: Option<StudentId>,
    /// The guest.
    pub guest: Option<String>,
    /// What it is about.
    pub kind: ConsentKind,
    /// Whether it was given.
    pub given: bool,
    /// Who answered.
    pub name: String,
    /// As who.
    pub relation: Speaks,
    /// What the guardian is to the student.
    pub as_what: String,
    /// The day.
    pub day: Day,
    /// On what.
    pub how: OnWhat,
    /// The paper.
    pub scan: Option<ScanNamed>,
    /// The last day it holds.
    pub until: Option<Day>,
    /// The day it was withdrawn.
    pub withdrawn: Option<Day>,
    /// Who withdrew it.
    pub by_whom: String,
}

/// How one question stands.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct ConsentAsked {
    /// What it is about.
    pub kind: ConsentKind,
    /// Its name.
    pub words: String,
    /// What is asked.
    pub question: String,
    /// The newest answer; `None` while not asked.
    pub answer: Option<Consent>,
    /// Whether it is given and holds today.
    pub holds: bool,
    /// Where it stands, in words.
    pub stands: String,
    /// What follows from a no, or from its being withdrawn; empty while it holds.
    pub follows: String,
}

/// A guest with a consent.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct GuestConsent {
    /// The answer.
    pub consent: Consent,
    /// Its question's name.
    pub words: String,
    /// Where it stands, in words.
    pub stands: String,
    /// What follows from a no, or from its being withdrawn; empty while it holds.
    pub follows: String,
}

impl Consent {
    /// Whether it is given and holds on a day.
    pub fn holds(&self, day: Day) -> bool {
        self.given
            && self.day <= day
            && self.withdrawn.is_none_or(|withdrawn| day < withdrawn)
            && self.until.is_none_or(|until| day <= until)
    }

    fn stands(&self, today: Day) -> String {
        let who = if self.as_what.is_empty() {
            self.name.clone()
        } else {
            format!("{} ({})", self.name, self.as_what)
        };
        match (self.given, self.withdrawn, self.until) {
            (false, ..) => format!("No, said {who} on {}.", self.day.words()),
            (true, Some(withdrawn), _) => {
                format!("Withdrawn by {} on {}.", self.by_whom, withdrawn.words())
            }
            (true, None, Some(until)) if until < today => {
                format!("Given by {who}, and ended on {}.", until.words())
            }
            (true, None, Some(until)) => {
                format!("Given by {who} on {}, until {}.", self.day.words(), until.words())
            }
            (true, None, None) => format!("Given by {who} on {}.", self.day.words()),
        }
    }
}

/// Writes an answer down. The newest of a kind counts; earlier ones stay.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong: neither a student nor a guest, no name, a
/// day to come, a minor who answers alone.
pub fn give(db: &Writing<'_>, given: GiveConsent) -> Result<Consent> {
    let mut p = Problems::new();
    let student =
        given.student.map(|student| students::show(db, students::Which { student })).transpose()?;
    let guest = match &student {
        Some(_) => None,
        None => Some(p.name("guest", &given.guest, "The guest\u{2019}s name")),
    };
    let by = p.within("by.", |p| given.by.read(p, db.today()));
    let born = student.as_ref().and_then(|s| Day::parse(&s.profile.born));
    let rules = minors::rules(db)?;
    let minor = minors::is_minor(&rules, born, by.day) == Some(true);
    if minor && given.given && by.relation != Speaks::Guardian {
        p.add("by.relation", "minor", "A minor does not consent alone: a guardian does.");
    }
    if let Some(student) = &student {
        by.not_the_student(&mut p, &student.profile.name);
    }
    let until = p.day_or_none("until", Some(&given.until), "The last day");
    if until.is_some_and(|until| until < by.day) {
        p.add("until", "before", "The last day lies before the day it was given.");
    }
    p.done()?;
    // A guardian's consent to lessons is asked for again after a while, where the rules say so.
    let again = (minor && given.kind == ConsentKind::Lessons && rules.consent_months > 0)
        .then(|| months_later(by.day, rules.consent_months))
        .flatten();
    let until = [until, again].into_iter().flatten().min();
    let scan = scans::keep(db, by.scan)?;
    let id: ConsentId = db.id();
    db.execute(
        "INSERT INTO consent (id, student, guest, kind, given, name, relation, as_what, day, how, scan, until)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        params![
            id, given.student, guest, given.kind, given.given, by.name, by.relation, by.as_what, by.day, by.how,
            scan, until
        ],
    )?;
    let name = student.map(|s| s.profile.name).or(guest).unwrap_or_default();
    db.label(format!(
        "Consent {}: {}, {name}",
        if given.given { "given" } else { "not given" },
        given.kind.words()
    ));
    find(db, id)
}

/// The last day of so many months from a day on.
fn months_later(day: Day, months: i64) -> Option<Day> {
    let months = chrono::Months::new(u32::try_from(months).ok()?);
    day.date().checked_add_months(months).and_then(Day::from_date).map(|end| end.plus(-1))
}

/// Withdraws a consent.
///
/// # Errors
/// `NotFound`; `Refused` without a name, before it was given, or on a day to come; `NotPossible`
/// when it was not given, or is withdrawn already.
pub fn withdraw(db: &Writing<'_>, withdraw: WithdrawConsent) -> Result<Consent> {
    let before = find(db, withdraw.consent)?;
    let mut p = Problems::new();
    let by_whom = p.name("by_whom", &withdraw.by_whom, "Who withdraws it");
    let day = past_day(&mut p, "day", &withdraw.day, "The day", db.today()).unwrap_or(db.today());
    if day < before.day {
        p.add("day", "before", format!("It was given on {}.", before.day.words()));
    }
    p.done()?;
    if !before.given || before.withdrawn.is_some() {
        return Err(Error::not_possible("not_given", "There is no consent here to withdraw."));
    }
    db.execute(
        "UPDATE consent SET withdrawn = ?, by_whom = ? WHERE id = ?",
        params![day, by_whom, before.id],
    )?;
    db.label(format!("Consent withdrawn: {}", before.kind.words()));
    find(db, before.id)
}

/// Every question and where it stands for a student; those that only a minor is asked are left out
/// for who is of age today.
///
/// # Errors
/// `NotFound`.
pub fn of(db: &Reading<'_>, of: super::OfStudent) -> Result<Vec<ConsentAsked>> {
    let student = students::show(db, students::Which { student: of.student })?;
    let (today, rules) = (db.today(), minors::rules(db)?);
    let born = Day::parse(&student.profile.born);
    let of_age = minors::is_minor(&rules, born, today) == Some(false);
    let newest = newest(db, of.student)?;
    let mut all = Vec::new();
    for kind in KINDS {
        let answer = newest.iter().find(|c| c.kind == kind).cloned();
        if kind.of_minors() && of_age && answer.is_none() {
            continue;
        }
        let holds = answer.as_ref().is_some_and(|c| c.holds(today));
        let follows = if answer.is_some() && !holds { kind.follows() } else { "" };
        all.push(ConsentAsked {
            kind,
            words: kind.words().to_owned(),
            question: kind.question().to_owned(),
            stands: answer
                .as_ref()
                .map_or_else(|| "Not asked yet.".to_owned(), |c| c.stands(today)),
            holds,
            follows: follows.to_owned(),
            answer,
        });
    }
    Ok(all)
}

/// The consents of guests and opponents, by name.
///
/// # Errors
/// `Storage`.
pub fn of_guests(db: &Reading<'_>) -> Result<Vec<GuestConsent>> {
    let rows = db.all(
        "SELECT * FROM consent WHERE guest IS NOT NULL ORDER BY guest, kind, day DESC, id DESC",
        [],
        a_consent,
    )?;
    let today = db.today();
    let mut all: Vec<GuestConsent> = Vec::new();
    for (consent, scan) in rows {
        let same =
            |g: &GuestConsent| g.consent.guest == consent.guest && g.consent.kind == consent.kind;
        if all.iter().any(same) {
            continue;
        }
        let consent = with_scan(db, consent, scan)?;
        all.push(GuestConsent {
            words: consent.kind.words().to_owned(),
            stands: consent.stands(today),
            follows: if consent.holds(today) {
                String::new()
            } else {
                consent.kind.follows().to_owned()
            },
            consent,
        });
    }
    Ok(all)
}

/// The newest answer of each kind.
pub(crate) fn newest(db: &Reading<'_>, student: StudentId) -> Result<Vec<Consent>> {
    let rows = db.all(
        "SELECT * FROM consent WHERE student = ? ORDER BY day DESC, id DESC",
        [student],
        a_consent,
    )?;
    let mut newest: Vec<Consent> = Vec::new();
    for (consent, scan) in rows {
        if newest.iter().all(|c| c.kind != consent.kind) {
            newest.push(with_scan(db, consent, scan)?);
        }
    }
    Ok(newest)
}

/// Refuses to keep more about someone's health against their no.
///
/// # Errors
/// `NotPossible` when the newest answer is a no, or was withdrawn.
pub(super) fn health_may_be_kept(db: &Reading<'_>, student: StudentId) -> Result<()> {
    let newest = newest(db, student)?;
    let answer = newest.iter().find(|c| c.kind == ConsentKind::HealthData);
    match answer.filter(|c| !c.given || c.withdrawn.is_some_and(|day| day <= db.today())) {
        None => Ok(()),
        Some(c) => Err(Error::not_possible(
            "no_consent",
            format!(
                "Keeping health answers: {} Ask for the consent again first. A blow to the head, an incident and a clearance are written down all the same.",
                c.stands(db.today())
            ),
        )),
    }
}

fn find(db: &Reading<'_>, id: ConsentId) -> Result<Consent> {
    let (consent, scan) =
        db.found("consent", &id, "SELECT * FROM consent WHERE id = ?", [id], a_consent)?;
    with_scan(db, consent, scan)
}

fn with_scan(db: &Reading<'_>, mut consent: Consent, scan: Option<ScanId>) -> Result<Consent> {
    consent.scan = scans::named(db, scan)?;
    Ok(consent)
}

fn a_consent(row: &Row<'_>) -> rusqlite::Result<(Consent, Option<ScanId>)> {
    Ok((
        Consent {
            id: row.get("id")?,
            student: row.get("student")?,
            guest: row.get("guest")?,
            kind: row.get("kind")?,
            given: row.get("given")?,
            name: row.get("name")?,
            relation: row.get("relation")?,
            as_what: row.get("as_what")?,
            day: row.get("day")?,
            how: row.get("how")?,
            scan: None,
            until: row.get("until")?,
            withdrawn: row.get("withdrawn")?,
            by_whom: row.get("by_whom")?,
        },
        row.get("scan")?,
    ))
}
