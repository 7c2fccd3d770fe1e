//! Before court: what was asked of the people of the story, the notice they acknowledged, the hall's
//! own policy, the coach's papers; one blow to the head with its clearance; and some who still have
//! things to answer.

use carryover_core::error::Result;
use carryover_core::kinds::Day;
use serde_json::{Value, json};

use crate::maker::Maker;

/// A year of birth for each, and what they play with.
const PEOPLE: [(&str, i32, &str, &str); 11] = [
    ("Marta Lindqvist", 0, "Lindqvist, Per, husband", "+46 8 555 0119"),
    ("Ines Okafor", 1991, "Okafor, Chidi, brother", "+351 21 555 0133"),
    ("Pia Aho", 1984, "Aho, Sten, husband", "+358 9 555 0150"),
    ("Sten Aho", 1982, "Aho, Pia, wife", "+358 9 555 0151"),
    ("Jonas Reuter", 0, "Reuter, Katrin, mother", "+49 30 555 0177"),
    ("Tomas Brandt", 1976, "Brandt, Eva, wife", "+43 1 555 0128"),
    ("Ruben Falk", 1988, "Falk, Mira, sister", "+31 20 555 0160"),
    ("Lea Marchetti", 1995, "Marchetti, Ugo, father", "+39 06 555 0141"),
    ("Owen Pryce", 1970, "Pryce, Gwen, wife", "+39 06 555 0142"),
    ("Sofia Dahl", 1987, "Dahl, Nils, husband", "+39 06 555 0143"),
    ("Matteo Conti", 1979, "Conti, Rita, wife", "+39 06 555 0144"),
];

/// Adds all that is before court, for those of these people who are there.
pub fn court(m: &mut Maker) -> Result<()> {
    m.on(m.today.plus(-700));
    place(m)?;
    papers(m)?;
    let notice = notice(m)?;
    for (name, born, call, phone) in PEOPLE {
        let found = m.act("students.list", json!({ "find": name, "most": 1 }))?;
        let Some(student) = found.pointer("/0/id").and_then(Value::as_str).map(str::to_owned)
        else {
            continue;
        };
        if born > 0 {
            m.on(m.today.plus(-40));
            let mut profile =
                m.act("students.show", json!({ "student": student }))?["profile"].take();
            profile["born"] = json!(format!("{born}-04-12"));
            m.act("students.change", json!({ "student": student, "profile": profile }))?;
        }
        m.on(m.today.plus(-30));
        let (guardian, by) = if name == "Jonas Reuter" {
            (true, json!({ "name": "Katrin Reuter", "relation": "guardian", "as_what": "mother" }))
        } else {
            (false, json!({ "name": name }))
        };
        asked(m, &student, (call, phone), by["name"].as_str().unwrap_or(name))?;
        agreed(m, &student, &by, guardian)?;
        let accept = json!({ "student": student, "version": notice, "by": by });
        m.act("intake.acknowledge_notice", accept)?;
        let form = json!({ "student": student, "facility": m.hall, "kept": "at the desk" });
        m.act("intake.sign_form", form)?;
        match name {
            "Marta Lindqvist" => {
                let words = "Left knee: no full lunges, says the physiotherapist.";
                restriction(m, &student, words)?;
            }
            "Tomas Brandt" => blow(m, &student)?,
            _ => {}
        }
    }
    Ok(())
}

fn place(m: &mut Maker) -> Result<()> {
    for (n, court) in m.courts.clone().into_iter().enumerate() {
        let name = format!("Court {}", n + 1);
        // The glass back wall is the one that can be seen into.
        let seen = if n == 1 { "yes" } else { "no" };
        m.act("facilities.change_court", json!({ "court": court, "name": name, "seen": seen }))?;
    }
    let policy = json!({
        "name": "House rules and sports waiver", "link": "https://harbour-hall.example/rules",
        "seen": m.today.plus(-700).to_string(), "form_needed": true, "form_where": "at the desk, on paper",
        "observable": true, "youngest": 8,
        "rules": "Report every injury at the desk before leaving the building.",
    });
    m.act("intake.set_policy", json!({ "facility": m.hall, "policy": policy })).map(drop)
}

fn papers(m: &mut Maker) -> Result<()> {
    let today = m.today;
    for (kind, words, by_whom, until) in [
        ("first_aid", "First aid with resuscitation", "Saltmere Lifeboat School", 33),
        ("background_check", "Background check", "Harbour County", 410),
        ("insurance", "Liability cover for instructors", "Quay Mutual", 190),
    ] {
        let until = today.plus(until).to_string();
        let paper = json!({ "kind": kind, "words": words, "by_whom": by_whom, "until": until });
        m.act("intake.add_certificate", json!({ "paper": paper }))?;
    }
    Ok(())
}

/// The notice for the hall, as the program proposes it; gives its version.
fn notice(m: &mut Maker) -> Result<String> {
    let draft =
        m.act("intake.draft_notice", json!({ "facility": m.hall, "sport": "racquetball" }))?;
    let publish = json!({
        "title": draft["title"], "facility": m.hall, "sport": "racquetball", "parts": draft["parts"],
    });
    m.id("intake.publish_notice", publish, "/version/id")
}

fn asked(m: &mut Maker, student: &str, (call, phone): (&str, &str), answered: &str) -> Result<()> {
    let today = m.today.plus(-30).to_string();
    let mut call = call.splitn(3, ", ").map(str::to_owned);
    let (last, first) = (call.next().unwrap_or_default(), call.next().unwrap_or_default());
    let record = json!({
        "eyewear": "Clear wraparound", "eyewear_standard": "ASTM F3164", "eyewear_seen": today,
        "injuries_asked": today,
    });
    let emergency = json!({
        "name": format!("{first} {last}"), "relation": call.next().unwrap_or_default(), "phone": phone,
    });
    let set = json!({ "student": student, "record": record, "emergency": emergency });
    m.act("intake.set", set)?;
    let answers = json!({ "active": "yes", "disease": "no", "symptoms": "no" });
    let readiness = json!({ "student": student, "answers": answers, "answered": answered });
    m.act("intake.answer_readiness", readiness).map(drop)
}

fn agreed(m: &mut Maker, student: &str, by: &Value, minor: bool) -> Result<()> {
    let always = ["health_data", "emergency_treatment", "recording"].map(|kind| (kind, true));
    let more = if minor { vec![("lessons", true), ("photographs", false)] } else { Vec::new() };
    for (kind, given) in always.into_iter().chain(more) {
        let consent = json!({ "student": student, "kind": kind, "given": given, "by": by });
        m.act("intake.give_consent", consent)?;
    }
    Ok(())
}

fn restriction(m: &mut Maker, student: &str, words: &str) -> Result<()> {
    let since = m.today.plus(-60).to_string();
    let note = json!({ "student": student, "kind": "restriction", "words": words, "since": since });
    m.act("intake.note_injury", note).map(drop)
}

/// A blow to the head at the end of a visit, its report, and the clearance that came weeks later.
fn blow(m: &mut Maker, student: &str) -> Result<()> {
    let day: Day = m.today.plus(-188);
    m.on(day);
    let report = json!({
        "student": student, "facility": m.hall, "place": "Court 1", "time": "10:40",
        "activity": "Private lesson, live rally", "head": "yes", "called": "no",
        "happened": "Turned for the ball and met the side wall with the side of his head. Stopped at once, sat down, was given ice at the desk.",
        "body_part": "Left side of the head", "mechanism": "Collision with the side wall",
        "equipment": "Eyewear worn", "first_aid": "Ice, by the desk", "unconscious": "no", "memory": "no",
        "seizure": "no", "earlier": "not_known", "number": "H-INC-12",
        "told": "The desk at 10:45, his wife by telephone at 10:50",
        "follow_up": "Out of play; asked to see a physician the same day", "author": "Robin Hale",
    });
    let incident = m.id("intake.record_incident", json!({ "report": report }), "/id")?;
    m.act("intake.sign_incident", json!({ "incident": incident, "signature": "Robin Hale" }))?;
    m.on(m.today.plus(-160));
    let injuries = m.act("intake.injuries", json!({ "student": student }))?;
    let clearance = json!({
        "student": student, "injury": injuries.pointer("/0/id"), "by_whom": "Dr. Anneliese Moser",
        "profession": "physician", "day": m.today.plus(-162).to_string(),
        "says": "No signs left. May play again, building up over two weeks; stop at once if headache returns.",
        "seen": "The letter, shown at the desk; he keeps it",
    });
    m.act("intake.record_clearance", clearance).map(drop)
}
