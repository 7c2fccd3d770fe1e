//! Reading a file of answers. It comes from outside and may have been edited by hand: it is bounded,
//! names one student by its token, and is only ever text. What it says is shown beside what is kept;
//! the coach takes it one by one.

use std::collections::BTreeMap;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use rusqlite::params;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::questions::{QUESTIONS, Question};
use crate::app::{Reading, Writing};
use crate::db::digest;
use crate::error::{Error, Problems, Result};
use crate::intake::injuries::{self, InjuryKind, NoteInjury};
use crate::intake::readiness::{self, AnswerReadiness, Answers};
use crate::intake::record::{self, EmergencyContact, SetIntake};
use crate::intake::{Answer, OfStudent};
use crate::kinds::Day;
use crate::kinds::ids::{PageId, StudentId};
use crate::students::{self, Contact, Hand, Profile};

/// The most bytes of a file of answers.
const MOST: usize = 1024 * 1024;
/// The deepest it may be nested.
const DEEPEST: usize = 8;

/// A file of answers.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ReadAnswers {
    /// Whose page it is read on; answers of another student are refused.
    pub student: StudentId,
    /// The file's bytes in base64 (RFC 4648).
    pub content: String,
}

/// Answers to take.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TakeAnswers {
    /// Whose.
    pub student: StudentId,
    /// The same file.
    pub content: String,
    /// The fields whose answers are taken.
    pub fields: Vec<String>,
}

/// One answer beside what is kept.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct AnswerShown {
    /// The field.
    pub field: String,
    /// What was asked.
    pub question: String,
    /// What is kept now.
    pub now: String,
    /// What the file says.
    pub answer: String,
    /// Why it cannot be taken; empty where it can.
    pub against: String,
}

/// What a file says.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct AnswersRead {
    /// Whose.
    pub student: StudentId,
    /// The answers that differ from what is kept.
    pub answers: Vec<AnswerShown>,
    /// How many say what is kept already.
    pub same: u32,
}

/// What the page makes.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    carryover_intake: u32,
    token: String,
    answers: BTreeMap<String, String>,
}

fn refuse<T>(code: &'static str, words: impl Into<String>) -> Result<T> {
    Err(Error::field("content", code, words.into()))
}

fn parse(content: &str) -> Result<File> {
    if content.len() / 4 * 3 > MOST + 3 {
        return refuse(
            "too_large",
            "This file is larger than 1 MiB: it is not one that the page made.",
        );
    }
    let Ok(bytes) = STANDARD.decode(content.as_bytes()) else {
        return refuse("unreadable", "The file did not arrive whole. Choose it again.");
    };
    if deepest(&bytes) > DEEPEST {
        return refuse("too_deep", "This file is not one that the page made.");
    }
    match serde_json::from_slice::<File>(&bytes) {
        Ok(file) if file.carryover_intake == 1 => Ok(file),
        Ok(_) => refuse("newer", "This file was made by a newer version of the page."),
        Err(_) => {
            refuse("unreadable", "This file is not one that the page made, or was changed by hand.")
        }
    }
}

/// How deep brackets are nested outside strings.
fn deepest(bytes: &[u8]) -> usize {
    let (mut depth, mut deepest, mut inside, mut escaped) = (0_usize, 0, false, false);
    for byte in bytes {
        match (inside, byte) {
            (true, _) if escaped => escaped = false,
            (true, b'\\') => escaped = true,
            (true, b'"') => inside = false,
            (true, _) => {}
            (false, b'"') => inside = true,
            (false, b'{' | b'[') => {
                depth += 1;
                deepest = deepest.max(depth);
            }
            (false, b'}' | b']') => depth = depth.saturating_sub(1),
            _ => {}
        }
    }
    deepest
}

/// The page a token is of, if it is this student's, counts still and was not used.
fn page_of(db: &Reading<'_>, student: StudentId, token: &str) -> Result<PageId> {
    let found = db.one(
        "SELECT id, student, until, used FROM intake_page WHERE token = ?",
        [digest::sha256(token.as_bytes())],
        |row| {
            Ok((
                row.get::<_, PageId>("id")?,
                row.get::<_, StudentId>("student")?,
                row.get::<_, Day>("until")?,
                row.get::<_, Option<Day>>("used")?,
            ))
        },
    )?;
    match found {
        None => {
            refuse("unknown", "This file was made by a page that this coach file does not know.")
        }
        Some((_, whose, ..)) if whose != student => {
            refuse("another", "This file is another student\u{2019}s.")
        }
        Some((_, _, _, Some(used))) => refuse(
            "used",
            format!("These answers were taken on {}. Send a new page to ask again.", used.words()),
        ),
        Some((_, _, until, None)) if until < db.today() => {
            refuse("lapsed", format!("This page counted until {}. Send a new one.", until.words()))
        }
        Some((id, ..)) => Ok(id),
    }
}

/// Reads a file of answers; nothing is written.
///
/// # Errors
/// `NotFound`; `Refused` when it is too large, no such file, of another student, used or lapsed, or has
/// a field that is not asked.
pub fn read(db: &Reading<'_>, ask: ReadAnswers) -> Result<AnswersRead> {
    let file = parse(&ask.content)?;
    page_of(db, ask.student, &file.token)?;
    let (mut kept, _) = kept(db, ask.student)?;
    kept.extend(health_now(db, ask.student)?);
    let mut shown = AnswersRead { student: ask.student, answers: Vec::new(), same: 0 };
    for question in questions_of(&file)? {
        let answer = file.answers.get(question.field).map(|a| a.trim()).unwrap_or_default();
        let now = kept.get(question.field).cloned().unwrap_or_default();
        if answer.is_empty() {
            continue;
        }
        if answer == now {
            shown.same += 1;
            continue;
        }
        shown.answers.push(AnswerShown {
            field: question.field.to_owned(),
            question: question.label.to_owned(),
            now,
            answer: answer.chars().take(question.most).collect(),
            against: against(question, answer, db.today()),
        });
    }
    Ok(shown)
}

/// The questions a file answers; refused when it answers one that is not asked.
fn questions_of(file: &File) -> Result<Vec<&'static Question>> {
    if let Some(field) =
        file.answers.keys().find(|f| QUESTIONS.iter().all(|q| q.field != f.as_str()))
    {
        let field: String = field.chars().take(60).collect();
        return refuse(
            "unknown_field",
            format!(
                "The page does not ask for \u{201c}{field}\u{201d}: the file was changed by hand."
            ),
        );
    }
    Ok(QUESTIONS.iter().filter(|q| file.answers.contains_key(q.field)).collect())
}

fn against(question: &Question, answer: &str, today: Day) -> String {
    if answer.chars().count() > question.most {
        return format!("It is longer than {} characters.", question.most);
    }
    if question.options.is_some_and(|of| of.iter().all(|(value, _)| *value != answer)) {
        return "It is not one of the answers that the page offers.".to_owned();
    }
    if question.field == "born" {
        return match Day::parse(answer) {
            None => "This is not a day in the calendar.".to_owned(),
            Some(day) if day > today => "The birth date lies in the future.".to_owned(),
            Some(_) => String::new(),
        };
    }
    String::new()
}

/// What is kept, by field, as the page would say it; and the records it is from.
type Records = (Profile, record::IntakeShown);

fn kept(db: &Reading<'_>, student: StudentId) -> Result<(BTreeMap<&'static str, String>, Records)> {
    let profile = students::show(db, students::Which { student })?.profile;
    let intake = record::show(db, OfStudent { student })?;
    let guardian = profile.guardian.clone().unwrap_or_default();
    let call = intake.emergency.clone().unwrap_or_default();
    let r = &intake.record;
    let hand = match profile.hand {
        None => "",
        Some(Hand::Right) => "right",
        Some(Hand::Left) => "left",
    };
    let kept = [
        ("called", profile.called.clone()),
        ("born", profile.born.clone()),
        ("phone", profile.phone.clone()),
        ("home", profile.home.clone()),
        ("wants", profile.wants.clone()),
        ("guardian.name", guardian.name),
        ("guardian.relation", guardian.relation),
        ("guardian.phone", guardian.phone),
        ("emergency.name", call.name),
        ("emergency.relation", call.relation),
        ("emergency.phone", call.phone),
        ("hand", hand.to_owned()),
        ("experience", r.experience.clone()),
        ("level_said", r.level_said.clone()),
        ("available", r.available.clone()),
        ("racquet", r.racquet.clone()),
        ("grip", r.grip.clone()),
        ("strings", r.strings.clone()),
        ("eyewear", r.eyewear.clone()),
        ("eyewear_standard", r.eyewear_standard.clone()),
    ];
    Ok((BTreeMap::from(kept), (profile, intake)))
}

/// What is kept about health, in words: an answer about it is always a new one, with its own day.
fn health_now(db: &Reading<'_>, student: StudentId) -> Result<BTreeMap<&'static str, String>> {
    let of = OfStudent { student };
    let running: Vec<String> = injuries::of(db, of)?
        .into_iter()
        .filter(|injury| injury.over.is_none())
        .map(|injury| format!("{} (since {})", injury.words, injury.since.words()))
        .collect();
    let mut now = BTreeMap::from([("injuries", running.join("; "))]);
    if let Some(newest) = readiness::answers(db, of)?.into_iter().max_by_key(|r| r.day) {
        let said = |answer: Answer| format!("{} ({})", answer.words(), newest.day.words());
        now.insert("active", said(newest.answers.active));
        now.insert("disease", said(newest.answers.disease));
        now.insert("symptoms", said(newest.answers.symptoms));
    }
    Ok(now)
}

/// Takes the answers of some fields, as if the coach had typed them; the file counts once.
///
/// # Errors
/// As [`read`]; `Refused` when no field is chosen, or one is that cannot be taken: each at
/// `fields[n]`.
pub fn take(db: &Writing<'_>, ask: TakeAnswers) -> Result<AnswersRead> {
    let file = parse(&ask.content)?;
    let page = page_of(db, ask.student, &file.token)?;
    let questions = questions_of(&file)?;
    let mut p = Problems::new();
    let mut taken: BTreeMap<&str, String> = BTreeMap::new();
    for (n, field) in ask.fields.iter().enumerate() {
        let at = format!("fields[{n}]");
        match questions.iter().find(|q| q.field == field) {
            None => p.add(&at, "not_answered", "The file does not answer this."),
            Some(question) => {
                let answer = file.answers.get(question.field).map(|a| a.trim()).unwrap_or_default();
                let against = against(question, answer, db.today());
                if !against.is_empty() {
                    p.add(&at, "cannot_be_taken", against);
                }
                taken.insert(question.field, answer.to_owned());
            }
        }
    }
    if taken.is_empty() && !p.any() {
        p.add("fields", "empty", "Choose the answers to take.");
    }
    p.done()?;
    let (_, (mut profile, mut intake)) = kept(db, ask.student)?;
    put(&taken, &mut profile, &mut intake);
    if taken.keys().any(|field| !HEALTH.contains(field)) {
        students::change(
            db,
            students::ChangeStudent { student: ask.student, profile: profile.clone() },
        )?;
        let set = SetIntake {
            student: ask.student,
            record: intake.record.clone(),
            emergency: intake.emergency.clone(),
        };
        if intake.record != record::IntakeRecord::default() || intake.emergency.is_some() {
            record::set(db, set)?;
        }
    }
    health(db, ask.student, &profile.name, &taken)?;
    db.execute("UPDATE intake_page SET used = ? WHERE id = ?", params![db.today(), page])?;
    db.label(format!("Answers taken from the intake page: {}", profile.name));
    read_again(db, ask.student, &file)
}

/// Fields that are kept apart from the record.
const HEALTH: [&str; 4] = ["injuries", "active", "disease", "symptoms"];

fn put(taken: &BTreeMap<&str, String>, profile: &mut Profile, intake: &mut record::IntakeShown) {
    let mut guardian = profile.guardian.take().unwrap_or_default();
    let mut call = intake.emergency.take().unwrap_or_default();
    let r = &mut intake.record;
    for (field, answer) in taken {
        let place = match *field {
            "called" => &mut profile.called,
            "born" => &mut profile.born,
            "phone" => &mut profile.phone,
            "home" => &mut profile.home,
            "wants" => &mut profile.wants,
            "guardian.name" => &mut guardian.name,
            "guardian.relation" => &mut guardian.relation,
            "guardian.phone" => &mut guardian.phone,
            "emergency.name" => &mut call.name,
            "emergency.relation" => &mut call.relation,
            "emergency.phone" => &mut call.phone,
            "experience" => &mut r.experience,
            "level_said" => &mut r.level_said,
            "available" => &mut r.available,
            "racquet" => &mut r.racquet,
            "grip" => &mut r.grip,
            "strings" => &mut r.strings,
            "eyewear" => &mut r.eyewear,
            "eyewear_standard" => &mut r.eyewear_standard,
            "hand" => {
                profile.hand = Some(if answer == "left" { Hand::Left } else { Hand::Right });
                continue;
            }
            _ => continue,
        };
        place.clone_from(answer);
    }
    profile.guardian = (guardian != Contact::default()).then_some(guardian);
    intake.emergency = (call != EmergencyContact::default()).then_some(call);
}

/// Injuries become a restriction in the student's words, readiness answers a new set: what was not
/// answered stays not known.
fn health(
    db: &Writing<'_>,
    student: StudentId,
    name: &str,
    taken: &BTreeMap<&str, String>,
) -> Result<()> {
    if let Some(words) = taken.get("injuries") {
        let note = NoteInjury {
            student,
            kind: InjuryKind::Restriction,
            words: words.clone(),
            since: String::new(),
            asks: false,
        };
        injuries::note(db, note)?;
    }
    let answer = |field: &str| match taken.get(field).map(String::as_str) {
        Some("yes") => Answer::Yes,
        Some("no") => Answer::No,
        _ => Answer::NotKnown,
    };
    if ["active", "disease", "symptoms"].iter().any(|field| taken.contains_key(field)) {
        let answers = Answers {
            active: answer("active"),
            disease: answer("disease"),
            symptoms: answer("symptoms"),
        };
        let given =
            AnswerReadiness { student, answers, answered: name.to_owned(), day: String::new() };
        readiness::answer(db, given)?;
    }
    Ok(())
}

/// What is left of a file once its answers were taken.
fn read_again(db: &Reading<'_>, student: StudentId, file: &File) -> Result<AnswersRead> {
    let (kept, _) = kept(db, student)?;
    let mut left = AnswersRead { student, answers: Vec::new(), same: 0 };
    for question in questions_of(file)? {
        let answer = file.answers.get(question.field).cloned().unwrap_or_default();
        let now = kept.get(question.field).cloned().unwrap_or_default();
        if answer.trim() == now {
            left.same += 1;
        }
    }
    Ok(left)
}
