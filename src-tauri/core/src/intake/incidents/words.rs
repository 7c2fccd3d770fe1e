//! A report as it is read and sealed: what it is about, and what it says, in the order in which it is
//! asked.

use super::{Report, ReportLine};
use crate::db::digest;
use crate::intake::Answer;
use crate::kinds::{Day, Instant};

/// The lines of a report; what was left empty is left out, except where "not known" is an answer.
pub(super) fn lines(name: &str, r: &Report, facility: &str) -> Vec<ReportLine> {
    let day = Day::parse(&r.day).map_or_else(|| r.day.clone(), Day::words);
    let when = if r.time.is_empty() {
        format!("{day}, time not known")
    } else {
        format!("{day}, {}", r.time)
    };
    let place =
        [facility, &r.place].into_iter().filter(|w| !w.is_empty()).collect::<Vec<_>>().join(", ");
    let called = match (r.called, r.called_at.as_str()) {
        (Answer::Yes, "") => "yes, time not known".to_owned(),
        (Answer::Yes, at) => format!("yes, at {at}"),
        (answer, _) => answer.words().to_owned(),
    };
    let item = |answer: Option<Answer>| answer.map_or("", Answer::words).to_owned();
    let role = if r.role.is_empty() && r.student.is_some() { "student" } else { &r.role };
    [
        ("When", when),
        ("Where", place),
        ("Facility\u{2019}s report number", r.number.clone()),
        ("Who", name.to_owned()),
        ("Role", role.to_owned()),
        ("Age, as told", r.age.clone()),
        ("Guardian", r.guardian.clone()),
        ("Activity", r.activity.clone()),
        ("What happened", r.happened.clone()),
        ("Part of the body, as told", r.body_part.clone()),
        ("How it came about", r.mechanism.clone()),
        ("Equipment and eyewear", r.equipment.clone()),
        ("First aid, and by whom", r.first_aid.clone()),
        ("Emergency service called", called),
        ("Blow to the head, or signs after one", item(r.head)),
        ("How the blow came about", r.head_cause.clone()),
        ("Unconscious", item(r.unconscious)),
        ("Memory gone", item(r.memory)),
        ("Seizure", item(r.seizure)),
        ("Concussions before", item(r.earlier)),
        ("Witnesses", r.witnesses.clone()),
        ("Who was told, and when", r.told.clone()),
        ("To follow", r.follow_up.clone()),
        ("Written by", r.author.clone()),
    ]
    .into_iter()
    .filter(|(_, words)| !words.is_empty())
    .map(|(about, words)| ReportLine { about: about.to_owned(), words })
    .collect()
}

/// The seal of a report: SHA-256 over its lines, the signature and the moment. The person's and the
/// facility's names are not in it: they are kept elsewhere and may be corrected there.
pub(super) fn seal(r: &Report, signature: &str, at: Instant) -> String {
    let mut whole = String::new();
    let who = r.student.map_or_else(|| r.person.clone(), |student| student.to_string());
    let place = r.facility.map(|facility| facility.to_string()).unwrap_or_default();
    for line in lines(&who, r, &place) {
        whole.push_str(&format!("{}\t{}\n", line.about, line.words));
    }
    whole.push_str(&format!("{signature}\n{at}\n"));
    digest::sha256(whole.as_bytes())
}
