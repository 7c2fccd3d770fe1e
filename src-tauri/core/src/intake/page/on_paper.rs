//! The same questions on paper, to be filled in by hand.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::questions::QUESTIONS;
use crate::app::Reading;
use crate::error::Result;
use crate::intake::paper::paper;
use crate::kinds::Language;
use crate::kinds::ids::StudentId;
use crate::print::{Piece, file_words};
use crate::students;

/// A line to write on by hand: as long as leaves room for the question beside it.
const BLANK: &str = "________________________________________________";
/// Lines to write on under a question that asks for more than a word.
const LINES: usize = 3;

/// For whom.
#[derive(Clone, Copy, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct BlankFor {
    /// The student; left out for someone who is not in the file yet.
    pub student: Option<StudentId>,
}

/// The questions on paper: the file's name and bytes.
///
/// # Errors
/// `NotFound`.
pub fn blank(db: &Reading<'_>, of: BlankFor) -> Result<(String, Vec<u8>)> {
    let name = match of.student {
        Some(student) => students::show(db, students::Which { student })?.profile.name,
        None => String::new(),
    };
    let mut pieces = vec![
        Piece::Title("Before your lessons".to_owned()),
        Piece::Text(
            "Fill in what you like and leave the rest empty: it can be said on court as well. Your answers stay in your coach\u{2019}s own file, to plan lessons with care and to help in an emergency. This is no medical or legal advice. Notices, consents and the facility\u{2019}s own forms are signed apart."
                .to_owned(),
        ),
        table(vec![
            ["Name".to_owned(), if name.is_empty() { BLANK.to_owned() } else { name.clone() }],
            ["Date".to_owned(), BLANK.to_owned()],
            ["Who fills it in, if a guardian".to_owned(), BLANK.to_owned()],
        ]),
    ];
    let mut group = "";
    let mut rows = Vec::new();
    for question in QUESTIONS {
        if question.group != group {
            pieces.extend(full(&mut rows));
            group = question.group;
            pieces.push(Piece::Heading(group.to_owned()));
        }
        let asked = if question.hint.is_empty() {
            question.label.to_owned()
        } else {
            format!("{} ({})", question.label, question.hint.trim_end_matches('.'))
        };
        match question.options {
            Some(options) => {
                let options: Vec<&str> = options.iter().map(|(_, words)| *words).collect();
                rows.push([asked, format!("circle one: {}", options.join(" / "))]);
            }
            None => {
                rows.push([asked, BLANK.to_owned()]);
                let more = if question.long { LINES - 1 } else { 0 };
                rows.extend((0..more).map(|_| [String::new(), BLANK.to_owned()]));
            }
        }
    }
    pieces.extend(full(&mut rows));
    let named = if name.is_empty() { "blank".to_owned() } else { file_words(&name) };
    let day = db.today().date().and_time(chrono::NaiveTime::MIN).and_utc();
    let bytes = paper(db, "Before your lessons", Language::En, day, pieces)?;
    Ok((format!("Before your lessons {named}.pdf"), bytes))
}

fn full(rows: &mut Vec<[String; 2]>) -> Option<Piece> {
    let rows = std::mem::take(rows);
    (!rows.is_empty()).then(|| table(rows))
}

fn table(rows: Vec<[String; 2]>) -> Piece {
    Piece::Table {
        head: Vec::new(),
        rows: rows.into_iter().map(Vec::from).collect(),
        right_aligned: Vec::new(),
    }
}
