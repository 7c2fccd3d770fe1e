//! The readiness questions: three answers, and a published table that says whether to ask a
//! physician first. It never says that anyone is fit; what nobody knows is to be asked.

mod store;
pub mod table;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::injuries::Injury;
use super::{Answer, OfStudent, clearances, consents, past_day};
use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::kinds::Day;
use crate::kinds::ids::{ReadinessId, StudentId};
use crate::students;
pub use table::{Outcome, RULES};

/// After so many days the questions are asked again.
const ASKED_AGAIN: i64 = 365;

/// The three answers.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Answers {
    /// Planned exercise of 30 minutes or more, at moderate effort, on three days a week or more, for
    /// the last three months.
    pub active: Answer,
    /// A known heart, circulation, metabolic or kidney disease.
    pub disease: Answer,
    /// Signs of one: chest pain or breathlessness at rest or with little effort, fainting, a racing
    /// heart, swollen ankles, pain in the legs on walking.
    pub symptoms: Answer,
}

/// Answers to write down.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AnswerReadiness {
    /// Whose.
    pub student: StudentId,
    /// The answers.
    pub answers: Answers,
    /// Who answered.
    pub answered: String,
    /// The day, as YYYY-MM-DD; empty for today.
    #[serde(default)]
    pub day: String,
}

/// Answers as they were given, and what follows.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Readiness {
    /// Which ones.
    pub id: ReadinessId,
    /// The day they were given.
    pub day: Day,
    /// The answers.
    pub answers: Answers,
    /// Who answered.
    pub answered: String,
    /// What the table says.
    pub outcome: Outcome,
    /// The same in words.
    pub words: String,
    /// From which day on they are asked again.
    pub again: Day,
}

/// Writes answers down. Earlier ones stay.
///
/// # Errors
/// `NotFound`; `Refused` without a name, or on a day to come; `NotPossible` against a no to keeping
/// health answers.
pub fn answer(db: &Writing<'_>, given: AnswerReadiness) -> Result<Readiness> {
    let student = students::show(db, students::Which { student: given.student })?;
    consents::health_may_be_kept(db, student.id)?;
    let mut p = Problems::new();
    let answered = p.name("answered", &given.answered, "Who answered");
    let day = past_day(&mut p, "day", &given.day, "The day", db.today()).unwrap_or(db.today());
    p.done()?;
    let id: ReadinessId = db.id();
    store::insert(db, id, student.id, day, given.answers, &answered)?;
    db.label(format!("Readiness questions answered: {}", student.profile.name));
    Ok(shown(id, day, given.answers, answered))
}

/// All answers of a student, the newest first.
///
/// # Errors
/// `NotFound`.
pub fn answers(db: &Reading<'_>, of: OfStudent) -> Result<Vec<Readiness>> {
    students::show(db, students::Which { student: of.student })?;
    store::of(db, of.student)
}

fn shown(id: ReadinessId, day: Day, answers: Answers, answered: String) -> Readiness {
    let outcome = table::outcome(answers);
    Readiness {
        id,
        day,
        answers,
        answered,
        outcome,
        words: table::words(outcome, answers),
        again: day.plus(ASKED_AGAIN),
    }
}

/// What the readiness questions leave open for a lesson on a day, in words; `None` when nothing.
///
/// # Errors
/// `Storage`.
pub fn missing_on(
    db: &Reading<'_>,
    student: StudentId,
    day: Day,
    newest_injury: Option<&Injury>,
) -> Result<Option<String>> {
    let all = store::of(db, student)?;
    let Some(newest) = all.iter().find(|r| r.day <= day) else {
        return Ok(Some("The readiness questions have not been asked.".to_owned()));
    };
    if newest.again <= day {
        return Ok(Some(format!(
            "The readiness questions were last asked on {}: after a year they are asked again.",
            newest.day.words()
        )));
    }
    // Of one day, what was written down last came last.
    let came_after = |injury: &&Injury| (injury.since, injury.id.0) > (newest.day, newest.id.0);
    if let Some(injury) = newest_injury.filter(came_after) {
        return Ok(Some(format!(
            "The readiness questions are asked again after an injury; the last injury is of {}.",
            injury.since.words()
        )));
    }
    Ok(match newest.outcome {
        Outcome::NotNecessaryLight | Outcome::NotNecessaryContinue => None,
        Outcome::Ask => Some(newest.words.clone()),
        Outcome::ClearanceFirst | Outcome::ClearanceForVigorous | Outcome::StopAndAsk => {
            let cleared = clearances::about_exercise(db, student, newest.day, day)?;
            (!cleared).then(|| newest.words.clone())
        }
    })
}
