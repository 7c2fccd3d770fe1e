//! Looking at everything that has to be in place, for a student, a day and a place.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Ready, ReadyAbout, ReadyItem, ReadyState, go_on};
use crate::app::Reading;
use crate::error::Result;
use crate::facilities::{self, Seen};
use crate::intake::consents::{self, ConsentKind};
use crate::intake::{
    OfStudent, Speaks, certificates, clearances, eyewear, forms, head, injuries, minors, notices,
    readiness, record,
};
use crate::kinds::Day;
use crate::kinds::ids::{CourtId, FacilityId, LessonId, StudentId, VisitId};
use crate::kinds::text::counted;
use crate::lessons;
use crate::students::{self, Student};
use crate::visits::{self, ListVisits, Stage};

/// Which lesson.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ReadyFor {
    /// The lesson.
    pub lesson: LessonId,
}

/// Where and when someone is to play, before there is a lesson.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AtPlace {
    /// Who.
    pub student: StudentId,
    /// When.
    pub day: Day,
    /// Where.
    pub facility: FacilityId,
    /// On which court, once known.
    #[serde(default)]
    pub court: Option<CourtId>,
}

/// Several of them, as a plan has them.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AtPlaces {
    /// Each.
    pub places: Vec<AtPlace>,
}

/// Where and when.
struct Occasion {
    lesson: Option<LessonId>,
    day: Day,
    facility: Option<FacilityId>,
    court: Option<CourtId>,
}

/// How everyone on a lesson stands.
///
/// # Errors
/// `NotFound`.
pub fn of_lesson(db: &Reading<'_>, of: ReadyFor) -> Result<Vec<Ready>> {
    let lesson = lessons::show(db, lessons::Which { lesson: of.lesson })?;
    let occasion = Occasion {
        lesson: Some(lesson.id),
        day: lesson.day,
        facility: Some(lesson.facility),
        court: lesson.court,
    };
    lesson
        .students
        .iter()
        .map(|attending| look(db, attending.student, Some(attending.visit), &occasion))
        .collect()
}

/// How a student stands today, lesson or none: where the visit is that is open or comes next, or
/// wherever it will be.
///
/// # Errors
/// `NotFound`.
pub fn before_first(db: &Reading<'_>, of: OfStudent) -> Result<Ready> {
    let theirs = ListVisits { student: Some(of.student), ..ListVisits::default() };
    let all = visits::list(db, theirs)?;
    let next = all.iter().filter(|v| v.stage == Stage::Planned).min_by_key(|v| v.from());
    let visit = all.iter().find(|v| v.stage == Stage::Open).or(next);
    let facility = visit.and_then(|visit| visit.facility);
    let occasion = Occasion { lesson: None, day: db.today(), facility, court: None };
    look(db, of.student, None, &occasion)
}

/// How each stands where and when a plan has them, in the same order.
///
/// # Errors
/// `NotFound`.
pub fn at_places(db: &Reading<'_>, of: AtPlaces) -> Result<Vec<Ready>> {
    let one = |at: &AtPlace| {
        let occasion =
            Occasion { lesson: None, day: at.day, facility: Some(at.facility), court: at.court };
        look(db, at.student, None, &occasion)
    };
    of.places.iter().map(one).collect()
}

/// What is missing so far.
#[derive(Default)]
struct Missing(Vec<ReadyItem>);

impl Missing {
    fn add(&mut self, about: ReadyAbout, words: impl Into<String>) {
        self.0.push(ReadyItem { about, words: words.into() });
    }
}

fn look(db: &Reading<'_>, id: StudentId, visit: Option<VisitId>, on: &Occasion) -> Result<Ready> {
    let student = students::show(db, students::Which { student: id })?;
    let rules = minors::rules(db)?;
    let born = Day::parse(&student.profile.born);
    let age = born.and_then(|born| minors::age_on(born, on.day));
    let minor = minors::is_minor(&rules, born, on.day);
    let mut missing = Missing::default();
    let mut careful = Vec::new();

    let kept = head::keeps_from_play(db, id, on.day)?;
    if let Some(words) = &kept {
        missing.add(ReadyAbout::Head, words);
    }
    who(&mut missing, &student, minor);
    health(db, &mut missing, &mut careful, id, on.day)?;
    agreed(db, &mut missing, id, on.day, minor)?;
    for words in notices::missing_on(db, id, on.facility, on.day, minor == Some(true))? {
        missing.add(ReadyAbout::Notice, words);
    }
    wears(db, &mut missing, &mut careful, &student)?;
    if let Some(facility) = on.facility {
        place(db, &mut missing, &mut careful, (id, facility, on), (minor, age, &rules))?;
    }
    for (paper, until) in certificates::over_on(db, on.day)? {
        missing.add(
            ReadyAbout::OwnPapers,
            format!("Your own \u{201c}{paper}\u{201d} ends on {}.", until.words()),
        );
    }

    let went_on = go_on::of(db, id, on.lesson, on.day)?;
    let missing = missing.0;
    let state = match (&kept, missing.is_empty()) {
        (Some(_), _) => ReadyState::Blocked,
        (None, true) => ReadyState::Ready,
        (None, false) => ReadyState::NotReady,
    };
    let words = match state {
        ReadyState::Ready => "Ready for court.".to_owned(),
        ReadyState::Blocked => kept.unwrap_or_default(),
        ReadyState::NotReady => {
            let many = i64::try_from(missing.len()).unwrap_or(0);
            let first = missing.first().map(|item| item.words.as_str()).unwrap_or_default();
            if many == 1 {
                format!("Not ready for court. {first}")
            } else {
                format!(
                    "Not ready for court, {} missing. {first}",
                    counted(many, "thing", "things")
                )
            }
        }
    };
    Ok(Ready {
        student: id,
        visit,
        name: student.profile.name,
        lesson: on.lesson,
        state,
        age,
        minor,
        missing,
        careful,
        went_on,
        words,
    })
}

/// Birth date, and the guardian of a minor.
fn who(missing: &mut Missing, student: &Student, minor: Option<bool>) {
    if minor.is_none() {
        missing.add(
            ReadyAbout::BirthDate,
            "The birth date is not known: nobody can say whether a guardian has to consent.",
        );
    }
    if minor == Some(true) {
        match &student.profile.guardian {
            None => missing.add(ReadyAbout::Guardian, "A minor, and no guardian is written down."),
            Some(guardian) if guardian.phone.is_empty() => {
                missing.add(
                    ReadyAbout::Guardian,
                    "The guardian\u{2019}s telephone number is not known.",
                );
            }
            Some(_) => {}
        }
    }
}

/// Whom to call, injuries, and the readiness questions.
fn health(
    db: &Reading<'_>,
    missing: &mut Missing,
    careful: &mut Vec<String>,
    id: StudentId,
    day: Day,
) -> Result<()> {
    let kept = record::show(db, OfStudent { student: id })?;
    if kept.emergency.is_none() {
        missing
            .add(ReadyAbout::EmergencyContact, "Nobody to call in an emergency is written down.");
    }
    let (open, newest) = injuries::uncleared_on(db, id, day)?;
    let noted = !injuries::of(db, OfStudent { student: id })?.is_empty();
    if kept.record.injuries_asked.is_empty() && !noted {
        missing.add(ReadyAbout::Injuries, "Injuries and restrictions have not been asked about.");
    }
    for injury in open {
        missing.add(
            ReadyAbout::Injuries,
            format!(
                "\u{201c}{}\u{201d}, since {}: no clearance is recorded yet.",
                injury.words,
                injury.since.words()
            ),
        );
    }
    if let Some(words) = readiness::missing_on(db, id, day, newest.as_ref())? {
        missing.add(ReadyAbout::Readiness, words);
    }
    for injury in injuries::careful_on(db, id, day)? {
        let mut words =
            format!("\u{201c}{}\u{201d}, since {}.", injury.words, injury.since.words());
        let cleared = clearances::all(db, id)?;
        if let Some(c) = cleared.iter().find(|c| c.injury == Some(injury.id) && c.holds(day)) {
            words = format!(
                "{words} {}, {}, wrote: \u{201c}{}\u{201d}",
                c.by_whom, c.profession, c.says
            );
        }
        careful.push(words);
    }
    Ok(())
}

/// Consents without which no lesson should begin.
fn agreed(
    db: &Reading<'_>,
    missing: &mut Missing,
    id: StudentId,
    day: Day,
    minor: Option<bool>,
) -> Result<()> {
    let newest = consents::newest(db, id)?;
    let answer = |kind: ConsentKind| newest.iter().find(|c| c.kind == kind && c.day <= day);
    if minor == Some(true) {
        match answer(ConsentKind::Lessons) {
            Some(c) if c.holds(day) && c.relation == Speaks::Guardian => {}
            None => missing.add(ReadyAbout::Consent, "No guardian has consented to lessons yet."),
            Some(c) if c.withdrawn.is_some() => {
                missing.add(
                    ReadyAbout::Consent,
                    "The guardian\u{2019}s consent to lessons was withdrawn.",
                );
            }
            Some(c) if c.given && c.until.is_some_and(|until| until < day) => {
                missing.add(
                    ReadyAbout::Consent,
                    "The guardian\u{2019}s consent to lessons has ended: ask again.",
                );
            }
            Some(_) => missing.add(ReadyAbout::Consent, "The guardian did not consent to lessons."),
        }
    }
    if answer(ConsentKind::EmergencyTreatment).is_none() {
        missing.add(ReadyAbout::Consent, "Emergency treatment was not asked about.");
    }
    match answer(ConsentKind::HealthData) {
        Some(c) if c.holds(day) => {}
        None => {
            missing.add(ReadyAbout::Consent, "Nobody has consented to health answers being kept.")
        }
        Some(_) => missing.add(
            ReadyAbout::Consent,
            "Health answers may not be kept: ask by word before this lesson.",
        ),
    }
    Ok(())
}

fn wears(
    db: &Reading<'_>,
    missing: &mut Missing,
    careful: &mut Vec<String>,
    student: &Student,
) -> Result<()> {
    if !eyewear::asked_for(&student.profile.sport) {
        return Ok(());
    }
    let kept = record::show(db, OfStudent { student: student.id })?.record;
    if kept.eyewear.is_empty() {
        missing.add(ReadyAbout::Eyewear, "No eyewear for racket sports is written down.");
    } else if kept.eyewear_standard.is_empty() {
        careful.push(
            "No standard of the eyewear is written down: look what is printed on it.".to_owned(),
        );
    }
    Ok(())
}

/// What the facility asks: permission to teach, its own form, its rules for minors.
fn place(
    db: &Reading<'_>,
    missing: &mut Missing,
    careful: &mut Vec<String>,
    (id, facility, on): (StudentId, FacilityId, &Occasion),
    (minor, age, rules): (Option<bool>, Option<i64>, &minors::MinorRules),
) -> Result<()> {
    let which = facilities::Which { facility };
    let place = facilities::show(db, which)?;
    let teaching = facilities::teaching_on(db, which, on.day)?;
    if teaching.missing {
        let words = format!("{}: {}", place.place.name, teaching.words.join(" "));
        missing.add(ReadyAbout::Teaching, words);
    }
    let policy = forms::find_policy(db, facility)?.unwrap_or_default();
    if policy.form_needed
        && !forms::all(db, id)?.iter().any(|f| f.facility == facility && f.holds(on.day))
    {
        let mut words = format!("{}\u{2019}s own form is not signed.", place.place.name);
        if !policy.form_where.is_empty() {
            words = format!("{words} Where: {}.", policy.form_where.trim_end_matches('.'));
        }
        missing.add(ReadyAbout::FacilityForm, words);
    }
    if let (Some(youngest), Some(age)) = (policy.youngest, age)
        && age < youngest
    {
        missing.add(
            ReadyAbout::FacilityRules,
            format!("{} lets nobody under {youngest} on court.", place.place.name),
        );
    }
    if minor == Some(true) {
        if rules.observable || policy.observable {
            let court = place.courts.iter().find(|c| Some(c.id) == on.court);
            match court.map(|court| (court, court.seen)) {
                Some((court, Some(Seen::No))) => missing.add(
                    ReadyAbout::FacilityRules,
                    format!(
                        "{} cannot be seen into: a minor\u{2019}s lesson has to be observable.",
                        court.name
                    ),
                ),
                Some((court, None)) => missing.add(
                    ReadyAbout::FacilityRules,
                    format!(
                        "Nobody has looked whether {} can be seen into from outside.",
                        court.name
                    ),
                ),
                Some((_, Some(Seen::Yes))) => {}
                None => careful.push("A minor: ask for a court that can be seen into.".to_owned()),
            }
        }
        if rules.adult_present || policy.adult_present {
            careful.push("A minor: another adult has to be there.".to_owned());
        }
    }
    Ok(())
}
