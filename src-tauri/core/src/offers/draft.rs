//! The message in which a visit is offered, written from its lessons as they stand.

use chrono::NaiveDateTime;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::OfferedLesson;
use super::terms::terms;
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::facilities::{self, AskTerms};
use crate::intake::written_to::written_to;
use crate::kinds::zones::{Zone, local_of, resolve};
use crate::kinds::{Currency, Day, Language, Span};
use crate::lessons::{self, Lesson, LessonState, ListLessons, WhichHour};
use crate::settings;
use crate::students::{self, Student};
use crate::visits::{self, Which};

/// An offer before it is made.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Draft {
    /// The message as the program would write it.
    pub words: String,
    /// To whom it goes, as a sentence, where that is not the student alone.
    pub to: String,
    /// The lessons.
    pub lessons: Vec<OfferedLesson>,
    /// The whole price; empty when a part of it is not known.
    pub price: String,
    /// What is missing for a whole offer, a sentence each.
    pub missing: Vec<String>,
}

/// The lessons of a visit that are to come, as they would be offered.
pub(super) fn lessons_of(db: &Reading<'_>, which: Which) -> Result<Vec<(Lesson, OfferedLesson)>> {
    let terms = terms(db)?;
    let on = ListLessons { visit: Some(which.visit), from: None, to: None };
    let mut all = Vec::new();
    for l in lessons::list(db, on)?.into_iter().filter(|l| l.state == LessonState::Planned) {
        let (facility, court, day, starts) = (l.facility, l.court, l.day, l.starts);
        let ask = AskTerms { facility, court, day, starts, minutes: l.minutes };
        let court_cost = facilities::terms(db, ask)?.cost;
        let fee = terms.fee(l.minutes).map(|(currency, minor)| currency.words(minor));
        let offered = OfferedLesson {
            lesson: l.id,
            day,
            starts,
            ends: l.ends,
            place: l.place.clone(),
            court: l.court_name.clone(),
            fee: fee.unwrap_or_default(),
            court_cost,
        };
        all.push((l, offered));
    }
    Ok(all)
}

/// Writes the offer of a visit.
///
/// # Errors
/// `NotFound`; `NotPossible` when the visit has no lessons to come.
pub fn draft(db: &Reading<'_>, which: Which) -> Result<Draft> {
    let visit = visits::show(db, which)?;
    let all = lessons_of(db, which)?;
    let Some((first, _)) = all.first() else {
        return Err(Error::not_possible(
            "no_lessons",
            "Plan the lessons first; then they can be offered.",
        ));
    };
    let student = students::show(db, students::Which { student: visit.student })?;
    let (me, terms) = (settings::show(db)?, terms(db)?);
    let theirs = Zone::parse(&student.profile.zone).ok();
    let mut lines = Vec::new();
    for (lesson, offered) in &all {
        lines.push(line(lesson, offered, theirs.as_ref()));
    }
    let price = price(&all);
    let to = written_to(db, student.id, db.today())?;
    let dear = match &to.first {
        Some(guardian) if to.through => guardian.name.as_str(),
        _ => called(&student),
    };
    let mut parts = vec![
        format!("Dear {dear},"),
        format!("I can offer you these lessons at {}:", first.place),
        lines.join("\n"),
    ];
    if !price.is_empty() {
        parts.push(format!("All together: {price}."));
    }
    parts.push(format!("Times are on the clock of {}.", first.zone));
    if !terms.terms.is_empty() {
        parts.push(terms.terms.clone());
    }
    parts.push("Please tell me whether this suits you.".to_owned());
    parts.push(format!("{}\n{}", me.closing, me.name).trim().to_owned());
    let mut missing = Vec::new();
    if all.iter().any(|(_, o)| o.fee.is_empty()) {
        missing.push(
            "A rate for a lesson of this length: write it down under Rates and terms.".to_owned(),
        );
    }
    if all.iter().any(|(_, o)| o.court_cost.is_empty()) {
        missing.push("What the court costs: the facility\u{2019}s rules do not say.".to_owned());
    }
    if terms.terms.is_empty() {
        missing.push("Your terms, as for calling a lesson off.".to_owned());
    }
    let lessons = all.into_iter().map(|(_, offered)| offered).collect();
    Ok(Draft { words: parts.join("\n\n"), to: to.words(), lessons, price, missing })
}

/// What a student is called.
pub fn called(student: &Student) -> &str {
    match student.profile.called.as_str() {
        "" => student.profile.name.split(' ').next().unwrap_or_default(),
        called => called,
    }
}

/// When a lesson is, on its own clock and on that of someone elsewhere, where it shows another time:
/// "Tuesday 10 March 2026, 09:00 to 10:00 (10:00 to 11:00 in Stockholm)".
pub fn on_both_clocks(l: &Lesson, theirs: Option<&Zone>, language: Language) -> String {
    let day = language.span(Span { first: l.day, last: l.day });
    let weekday = language.weekday(l.day);
    let when = match language {
        Language::En => format!("{weekday} {day}, {} to {}", l.starts, l.ends),
        Language::De => format!("{weekday}, {day}, {} bis {}", l.starts, l.ends),
    };
    match theirs.and_then(|zone| in_theirs(l, zone, language)) {
        Some(there) => format!("{when} ({there})"),
        None => when,
    }
}

/// "Tuesday 10 March 2026, 09:00 to 10:00 (10:00 to 11:00 in Stockholm), Court 1: 40.00 EUR and 18.00
/// EUR for the court".
fn line(l: &Lesson, o: &OfferedLesson, theirs: Option<&Zone>) -> String {
    let mut words = on_both_clocks(l, theirs, Language::En);
    if !o.court.is_empty() {
        words.push_str(&format!(", {}", o.court));
    }
    match (o.fee.as_str(), o.court_cost.as_str()) {
        ("", "") => {}
        (fee, "") => words.push_str(&format!(": {fee}")),
        ("", court) => words.push_str(&format!(": {court} for the court")),
        (fee, court) => words.push_str(&format!(": {fee} and {court} for the court")),
    }
    words
}

/// The lesson's times on the student's clock, where it shows others: "10:00 to 11:00 in Stockholm".
fn in_theirs(l: &Lesson, theirs: &Zone, language: Language) -> Option<String> {
    let here = Zone::parse(&l.zone).ok()?;
    let own: NaiveDateTime = l.day.date().and_time(l.starts.time());
    let at = resolve(own, &here).ok()?.instant(l.which == WhichHour::Second);
    let end = at.checked_add_signed(chrono::Duration::minutes(i64::from(l.minutes)))?;
    let (from, to) = (local_of(&at, theirs).ok()?, local_of(&end, theirs).ok()?);
    if from == own {
        return None;
    }
    let city = theirs.name().rsplit('/').next().unwrap_or_default().replace('_', " ");
    let other = Day::from_date(from.date()).filter(|day| *day != l.day);
    let day = other.map(|day| format!("{}, ", language.weekday(day))).unwrap_or_default();
    let till = match language {
        Language::En => "to",
        Language::De => "bis",
    };
    Some(format!("{day}{} {till} {} in {city}", from.format("%H:%M"), to.format("%H:%M")))
}

/// The whole price, where all of it is known and in one currency; empty otherwise.
fn price(all: &[(Lesson, OfferedLesson)]) -> String {
    let mut whole: Option<(Currency, i64)> = None;
    for (_, offered) in all {
        for part in [&offered.fee, &offered.court_cost] {
            let Some((currency, minor)) = Currency::of_words(part) else { return String::new() };
            match &mut whole {
                Some((known, sum)) if *known == currency => *sum += minor,
                Some(_) => return String::new(),
                None => whole = Some((currency, minor)),
            }
        }
    }
    whole.map(|(currency, minor)| currency.words(minor)).unwrap_or_default()
}
