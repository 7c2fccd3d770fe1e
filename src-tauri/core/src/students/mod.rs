//! Students, and the people around them: a guardian who consents for a minor, a payer.

mod add;
mod archive;
mod facts;
mod language;
mod list;
mod show;
mod store;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use add::{ChangeStudent, add, change};
pub use archive::{archive, bring_back};
pub use facts::{AddFact, ChangeFact, WhichFact, add_fact, change_fact, facts, remove_fact};
pub(crate) use language::write_in;
pub use list::{ListStudents, list, named_in};
pub use show::show;

use crate::error::{Problems, Result};
use crate::kinds::ids::{FactId, StudentId};
use crate::kinds::{Day, Language};

/// The hand the racket is held in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Hand {
    /// Right-handed.
    Right,
    /// Left-handed.
    Left,
}

/// What the student mostly plays.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Plays {
    /// One against one.
    Singles,
    /// Two against two.
    Doubles,
    /// Both.
    Both,
}

/// A guardian or payer.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Contact {
    /// Full name.
    pub name: String,
    /// As in mother, club, employer.
    pub relation: String,
    /// E-mail address.
    pub email: String,
    /// Telephone number, as dialled.
    pub phone: String,
    /// Postal address, several lines.
    pub address: String,
    /// A guardian's birth date as YYYY-MM-DD; empty while not told.
    pub born: String,
}

/// What is kept about a student; the form and the record are the same.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Profile {
    /// Full name.
    pub name: String,
    /// How a letter addresses the student; empty means by the first name.
    pub called: String,
    /// E-mail address.
    pub email: String,
    /// Telephone number.
    pub phone: String,
    /// The hand, once asked.
    pub hand: Option<Hand>,
    /// What is played, once asked.
    pub plays: Option<Plays>,
    /// IANA zone where the student lives; empty while not asked.
    pub zone: String,
    /// Birth date as YYYY-MM-DD; empty while not told.
    pub born: String,
    /// The language the student is written to in.
    pub language: Language,
    /// The sport pack's id; empty means racquetball.
    pub sport: String,
    /// The division played in, as the pack or the coach names it; empty while not told.
    pub division: String,
    /// Minutes on court in a usual week; left out while not known.
    pub usual_minutes: Option<i64>,
    /// What the student wants, in the student's own words.
    pub wants: String,
    /// The coach's own notes.
    pub about: String,
    /// The town the student comes from; empty while not asked.
    pub home: String,
    /// How the student heard of the coach; empty while not asked.
    pub heard: String,
    /// The day the student first asked, as YYYY-MM-DD; empty while not known.
    pub enquired: String,
    /// Who consents for a minor.
    pub guardian: Option<Contact>,
    /// Who pays, if not the student.
    pub payer: Option<Contact>,
}

/// Minutes on court in a usual week; a week has no more than 10080.
fn usual_minutes(p: &mut Problems, minutes: i64) -> i64 {
    const WEEK: i64 = 7 * 24 * 60;
    if !(0..=WEEK).contains(&minutes) {
        p.add(
            "usual_minutes",
            "out_of_bounds",
            "The usual court time is not that of a week: it can be 0 to 168 hours.",
        );
    }
    minutes.clamp(0, WEEK)
}

/// What a fact about a student is about.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum FactKind {
    /// What the student plays with.
    Equipment,
    /// How well the student plays, as someone said it.
    Level,
    /// Where and how long the student has played.
    History,
}

/// A short dated fact about a student.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Fact {
    /// Which one.
    pub id: FactId,
    /// Whose.
    pub student: StudentId,
    /// What it is about.
    pub kind: FactKind,
    /// From when, or when.
    pub day: Day,
    /// The fact.
    pub words: String,
}

/// A student as stored.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Student {
    /// Which one.
    pub id: StudentId,
    /// What is kept.
    pub profile: Profile,
    /// The name a letter uses.
    pub addressed: String,
    /// Age in years on the coach's calendar today, where the birth date is known.
    pub age: Option<i32>,
    /// The day put away.
    pub archived: Option<Day>,
}

/// A line in the list of people.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct StudentLine {
    /// Which one.
    pub id: StudentId,
    /// Full name.
    pub name: String,
    /// The day put away.
    pub archived: Option<Day>,
    /// The day of an enquiry from which no visit has come yet.
    pub asked: Option<Day>,
}

/// Which student.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Which {
    /// The student.
    pub student: StudentId,
}

impl Contact {
    fn is_empty(&self) -> bool {
        [&self.name, &self.relation, &self.email, &self.phone, &self.address]
            .iter()
            .all(|field| field.trim().is_empty())
    }

    /// The contact as it can be stored; `None` when nothing was filled in.
    fn read(self, problems: &mut Problems, who: &str) -> Option<Self> {
        if self.is_empty() {
            return None;
        }
        let born = problems.day_or_none("born", Some(&self.born), "The birth date");
        Some(Self {
            born: born.map(|day| day.to_string()).unwrap_or_default(),
            name: problems.name("name", &self.name, &format!("The {who}\u{2019}s name")),
            relation: problems.line("relation", &self.relation, "The relation"),
            email: problems.email("email", &self.email),
            phone: problems.line("phone", &self.phone, "The telephone number"),
            address: problems.note("address", &self.address, "The address"),
        })
    }
}

impl Profile {
    /// The profile as it can be stored.
    ///
    /// # Errors
    /// `Refused` with everything that is wrong.
    fn read(self, today: Day) -> Result<Self> {
        let mut p = Problems::new();
        let born = p.day_or_none("born", Some(&self.born), "The birth date");
        if born.is_some_and(|born| born > today) {
            p.add("born", "in_future", "The birth date lies in the future.");
        }
        let enquired =
            p.day_or_none("enquired", Some(&self.enquired), "The day of the first message");
        if enquired.is_some_and(|day| day > today) {
            p.add("enquired", "in_future", "The day of the first message lies in the future.");
        }
        let zone = self.zone.trim().to_owned();
        if !zone.is_empty() {
            p.zone("zone", &zone, "The time zone");
        }
        let sport =
            if self.sport.trim().is_empty() { crate::sports::USUAL.to_owned() } else { self.sport };
        if crate::sports::pack(&sport).is_none() {
            p.add(
                "sport",
                "no_such_sport",
                format!("There is no sport pack named \u{201c}{sport}\u{201d}."),
            );
        }
        let read = Self {
            name: p.name("name", &self.name, "The name"),
            called: p.line("called", &self.called, "The name used in letters"),
            email: p.email("email", &self.email),
            phone: p.line("phone", &self.phone, "The telephone number"),
            hand: self.hand,
            plays: self.plays,
            zone,
            born: born.map(|day| day.to_string()).unwrap_or_default(),
            language: self.language,
            sport,
            division: p.line("division", &self.division, "The division"),
            usual_minutes: self.usual_minutes.map(|minutes| usual_minutes(&mut p, minutes)),
            wants: p.note("wants", &self.wants, "What the student wants"),
            about: p.note("about", &self.about, "Your notes"),
            home: p.line("home", &self.home, "The town"),
            heard: p.line("heard", &self.heard, "How they heard of you"),
            enquired: enquired.map(|day| day.to_string()).unwrap_or_default(),
            guardian: p.within("guardian.", |p| self.guardian.and_then(|c| c.read(p, "guardian"))),
            payer: p.within("payer.", |p| self.payer.and_then(|c| c.read(p, "payer"))),
        };
        let older = |contact: &Contact| Day::parse(&contact.born).zip(born);
        match read.guardian.as_ref().and_then(older) {
            Some((guardian, _)) if guardian > today => {
                p.add("guardian.born", "in_future", "The birth date lies in the future.");
            }
            Some((guardian, child)) if guardian >= child => {
                p.add(
                    "guardian.born",
                    "younger",
                    "The guardian would be no older than the student.",
                );
            }
            _ => {}
        }
        p.done()?;
        Ok(read)
    }

    /// The name a letter uses: the one asked for, else the first word of the full name.
    pub fn addressed(&self) -> String {
        if self.called.is_empty() {
            self.name.split_whitespace().next().unwrap_or_default().to_owned()
        } else {
            self.called.clone()
        }
    }
}
