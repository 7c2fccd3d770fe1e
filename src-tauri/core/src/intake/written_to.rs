//! To whom a message about a student goes. A minor is written to through the guardian; straight only
//! with a guardian's consent, and then with a second adult on it, where the coach's rules say so.

use super::consents::{self, ConsentKind};
use super::minors;
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::Day;
use crate::kinds::ids::StudentId;
use crate::students::{self, Student};

/// Someone who is written to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reached {
    /// Full name.
    pub name: String,
    /// The e-mail address; may be empty.
    pub email: String,
}

/// To whom a message goes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WrittenTo {
    /// Who is addressed; `None` when nobody may be.
    pub first: Option<Reached>,
    /// Whether that is a guardian in the student's place.
    pub through: bool,
    /// The second adult, who gets the same.
    pub second: Option<Reached>,
    /// Why nobody may be addressed, as a sentence; empty when somebody may.
    pub against: String,
}

impl WrittenTo {
    /// To whom, as a sentence; empty where it is the student alone.
    pub fn words(&self) -> String {
        let name = |reached: &Option<Reached>| {
            reached.as_ref().map(|reached| reached.name.clone()).unwrap_or_default()
        };
        match (&self.first, &self.second) {
            (None, _) => self.against.clone(),
            (Some(_), Some(_)) => {
                format!("A minor: send the same to {}, as a second adult.", name(&self.second))
            }
            (Some(_), None) if self.through => {
                format!("To {}, the guardian.", name(&self.first))
            }
            (Some(_), None) => String::new(),
        }
    }
}

/// To whom a message about a student goes on a day. Someone with a guardian counts as a minor while
/// the birth date is not known.
///
/// # Errors
/// `NotFound`.
pub fn written_to(db: &Reading<'_>, student: StudentId, day: Day) -> Result<WrittenTo> {
    let known = students::show(db, students::Which { student })?;
    let rules = minors::rules(db)?;
    let minor = minors::is_minor(&rules, Day::parse(&known.profile.born), day);
    let guardian = known
        .profile
        .guardian
        .as_ref()
        .map(|guardian| Reached { name: guardian.name.clone(), email: guardian.email.clone() });
    if !minor.unwrap_or(guardian.is_some()) {
        return Ok(of_age(&known, guardian));
    }
    let consents = consents::newest(db, student)?;
    let straight = consents.iter().any(|c| c.kind == ConsentKind::Messages && c.holds(day));
    if !straight {
        let against = match guardian {
            Some(_) => String::new(),
            None => {
                format!("{} is a minor, and no guardian to write to is known.", known.profile.name)
            }
        };
        return Ok(WrittenTo {
            through: guardian.is_some(),
            first: guardian,
            second: None,
            against,
        });
    }
    if !rules.second_adult {
        return Ok(of_age(&known, guardian));
    }
    if guardian.is_none() {
        let against = format!(
            "{} is a minor: a second adult has to be on each message, and no guardian is known.",
            known.profile.name
        );
        return Ok(WrittenTo { first: None, through: false, second: None, against });
    }
    Ok(WrittenTo {
        first: Some(own(&known)),
        through: false,
        second: guardian,
        against: String::new(),
    })
}

fn own(student: &Student) -> Reached {
    Reached { name: student.profile.name.clone(), email: student.profile.email.clone() }
}

/// Someone who decides alone; through a guardian only where that is the one address there is.
fn of_age(student: &Student, guardian: Option<Reached>) -> WrittenTo {
    let other = guardian.filter(|g| student.profile.email.is_empty() && !g.email.is_empty());
    WrittenTo {
        through: other.is_some(),
        first: Some(other.unwrap_or_else(|| own(student))),
        second: None,
        against: String::new(),
    }
}
