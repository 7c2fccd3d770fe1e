//! Which notices a student is asked for: those of the place and of the sport, in the student's
//! language where there is one, each at its newest version.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Acknowledgement, Notice, store};
use crate::app::Reading;
use crate::error::Result;
use crate::intake::Speaks;
use crate::kinds::Day;
use crate::kinds::ids::{FacilityId, StudentId};
use crate::students;

/// For whom, and where.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct NoticesFor {
    /// Who.
    pub student: StudentId,
    /// Where; left out for everywhere.
    #[serde(default)]
    pub facility: Option<FacilityId>,
}

/// A notice that is asked for, and what came of it.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct NoticeNeeded {
    /// The notice, at its newest version.
    pub notice: Notice,
    /// Its newest acknowledgement, of whichever version.
    pub acknowledged: Option<Acknowledgement>,
    /// Whether that is of the newest version.
    pub current: bool,
    /// Where it stands, in words.
    pub stands: String,
}

/// The notices of a student.
///
/// # Errors
/// `NotFound`.
pub fn needed(db: &Reading<'_>, of: NoticesFor) -> Result<Vec<NoticeNeeded>> {
    let student = students::show(db, students::Which { student: of.student })?;
    let theirs = store::acknowledgements(db, of.student)?;
    let all = store::current(db)?;
    let fits = |n: &&Notice| {
        let place = of.facility.is_none() || n.facility.is_none() || n.facility == of.facility;
        place && (n.sport.is_empty() || n.sport == student.profile.sport)
    };
    let mut chosen: Vec<&Notice> = Vec::new();
    for notice in all.iter().filter(fits) {
        // The same in another language asks once: in the student's own, else in whichever came first.
        let same = |n: &&Notice| {
            n.facility == notice.facility
                && n.sport == notice.sport
                && n.language != notice.language
        };
        match chosen.iter().position(same) {
            None => chosen.push(notice),
            Some(at) if notice.language == student.profile.language => {
                if let Some(place) = chosen.get_mut(at) {
                    *place = notice;
                }
            }
            Some(_) => {}
        }
    }
    Ok(chosen.into_iter().map(|notice| with_answer(notice, &theirs, &all)).collect())
}

fn with_answer(notice: &Notice, theirs: &[Acknowledgement], all: &[Notice]) -> NoticeNeeded {
    // Whoever read it in another language has read it.
    let sisters = all.iter().filter(|n| n.facility == notice.facility && n.sport == notice.sport);
    let read = sisters
        .flat_map(|n| {
            theirs.iter().filter(|a| a.notice == n.id).map(move |a| (a, a.version == n.version.id))
        })
        .max_by_key(|(a, current)| (*current, a.day, a.id));
    let acknowledged = read.map(|(a, _)| a.clone());
    let current = read.is_some_and(|(_, current)| current);
    let stands = match &acknowledged {
        None => "Not acknowledged yet.".to_owned(),
        Some(a) => {
            let who = match a.relation {
                Speaks::Own => a.name.clone(),
                Speaks::Guardian => format!("{} ({})", a.name, a.as_what),
            };
            let when = format!("Acknowledged by {who} on {}", a.day.words());
            if current {
                format!("{when}, version {}.", a.number)
            } else {
                format!(
                    "{when}, but that was version {}: the newest is {}.",
                    a.number, notice.version.number
                )
            }
        }
    };
    NoticeNeeded { notice: notice.clone(), acknowledged, current, stands }
}

/// What a lesson somewhere lacks of acknowledgements, in words. For a minor only a guardian's counts.
///
/// # Errors
/// `Storage`.
pub fn missing_on(
    db: &Reading<'_>,
    student: StudentId,
    facility: Option<FacilityId>,
    day: Day,
    minor: bool,
) -> Result<Vec<String>> {
    let mut missing = Vec::new();
    for needed in needed(db, NoticesFor { student, facility })? {
        // Before it is known where, only what holds everywhere is asked.
        if facility.is_none() && needed.notice.facility.is_some() {
            continue;
        }
        let title = &needed.notice.title;
        match &needed.acknowledged {
            Some(a) if needed.current && a.day <= day => {
                if minor && a.relation != Speaks::Guardian {
                    missing.push(format!(
                        "\u{201c}{title}\u{201d} is acknowledged, but not by a guardian."
                    ));
                }
            }
            Some(_) if !needed.current => {
                missing.push(format!("\u{201c}{title}\u{201d} has a new version to acknowledge."));
            }
            _ => missing.push(format!("\u{201c}{title}\u{201d} is not acknowledged.")),
        }
    }
    Ok(missing)
}
