//! The court card: one page for a lesson, to be stroked by hand where no screen is wanted; and what
//! was written on it, typed in at once.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Lesson, Which, show};
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::goals::blocks::{EnterTotal, enter_total};
use crate::goals::court::{OnCourt, on_court};
use crate::goals::decide::AtVisit;
use crate::goals::{CriterionKind, Kind, Source};
use crate::kinds::Instant;
use crate::kinds::ids::{GoalId, LessonId};
use crate::print::{Anchor, Ink, Mark, Paper, Piece, Sheet, Weight, file_words, laid_out, to_pdf};
use crate::settings;

/// What was counted in one block.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Counted {
    /// How many were made.
    pub made: i64,
    /// Of how many.
    pub tries: i64,
}

/// One goal's row of a card.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CardRow {
    /// The goal.
    pub goal: GoalId,
    /// The retest, its first tries left out; left out where there was none.
    #[serde(default)]
    pub retest: Option<Counted>,
    /// Practice.
    #[serde(default)]
    pub practice: Option<Counted>,
    /// The end test.
    #[serde(default)]
    pub end_test: Option<Counted>,
}

/// A card to type in.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct EnterCard {
    /// The lesson it was printed for.
    pub lesson: LessonId,
    /// Its rows.
    pub rows: Vec<CardRow>,
}

/// What came of a card.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
pub struct CardEntered {
    /// How many blocks were entered.
    pub blocks: u32,
}

/// The goals of everyone on a lesson, each with its student's name; of goals that count tries only
/// those worked on now.
fn rows(db: &Reading<'_>, lesson: &Lesson) -> Result<Vec<(String, OnCourt)>> {
    let mut rows = Vec::new();
    for one in &lesson.students {
        let goals = on_court(db, AtVisit { visit: one.visit })?;
        rows.extend(
            goals.into_iter().filter(|goal| !goal.waits).map(|goal| (one.name.clone(), goal)),
        );
    }
    Ok(rows)
}

/// Types a card in: every row or none, each block as a total of this lesson.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong: a goal of nobody on the lesson, more made
/// than tried, nothing on the card; `NotPossible` at a visit that is not open.
pub fn enter_card(db: &Writing<'_>, card: EnterCard) -> Result<CardEntered> {
    let lesson = show(db, Which { lesson: card.lesson })?;
    let known = rows(db, &lesson)?;
    let mut p = Problems::new();
    let mut blocks = 0;
    for (n, row) in card.rows.iter().enumerate() {
        let Some((name, goal)) = known.iter().find(|(_, g)| g.goal.goal.id == row.goal) else {
            let words =
                "This goal is of nobody on this lesson: the card is another lesson\u{2019}s.";
            p.add(&format!("rows[{n}].goal"), "not_theirs", words);
            continue;
        };
        let visit = lesson.students.iter().find(|s| s.name == *name).map(|s| s.visit);
        let Some(visit) = visit else { continue };
        for (kind, field, counted) in [
            (Kind::Retest, "retest", row.retest),
            (Kind::Practice, "practice", row.practice),
            (Kind::EndTest, "end_test", row.end_test),
        ] {
            let Some(counted) = counted else { continue };
            let entered = enter_total(
                db,
                EnterTotal {
                    goal: goal.goal.goal.id,
                    visit,
                    lesson: Some(card.lesson),
                    kind,
                    condition: None,
                    made: counted.made,
                    tries: counted.tries,
                    also: None,
                    in_game: None,
                    day: lesson.day.to_string(),
                    source: Source::TotalEntered,
                },
            );
            match entered {
                Ok(_) => blocks += 1,
                Err(Error::Refused(problems)) => {
                    for problem in problems {
                        let part = if problem.field == "tries" { "tries" } else { "made" };
                        let at = format!("rows[{n}].{field}.{part}");
                        p.add(&at, &problem.code, problem.words);
                    }
                }
                Err(Error::NotPossible { code: "coached" | "set_here", words }) => {
                    p.add(&format!("rows[{n}].{field}.made"), "no_retest", words);
                }
                Err(other) => return Err(other),
            }
        }
    }
    if blocks == 0 && !p.any() {
        p.add("rows", "empty", "Nothing stands on this card yet.");
    }
    p.done()?;
    db.label(format!("Court card entered: {}, {}", lesson.names(), lesson.day.words()));
    Ok(CardEntered { blocks })
}

/// The card of a lesson: its file name and its bytes.
///
/// # Errors
/// `NotFound`; `NotPossible` where nobody on the lesson has a goal at an open visit.
pub fn card(db: &Reading<'_>, which: Which) -> Result<(String, Vec<u8>)> {
    let lesson = show(db, which)?;
    let rows = rows(db, &lesson)?;
    if rows.is_empty() {
        return Err(Error::not_possible(
            "no_goals",
            "Nobody on this lesson has a goal at a visit that was started. Start the visit and set a goal first.",
        ));
    }
    let author = settings::show(db)?.name;
    let sheet = sheet(&lesson, &rows, author);
    let (pages, fonts) = laid_out(&sheet)?;
    let pdf = to_pdf(&pages, fonts).map_err(|e| Error::Fault(e.to_string()))?;
    Ok((format!("Court card {} {}.pdf", file_words(&lesson.names()), lesson.day), pdf))
}

fn sheet(lesson: &Lesson, rows: &[(String, OnCourt)], author: String) -> Sheet {
    let title = format!("Court card: {}", lesson.names());
    let court = if lesson.court_name.is_empty() {
        lesson.place.clone()
    } else {
        format!("{}, {}", lesson.court_name, lesson.place)
    };
    let when = format!("{}, {} – {} · {court}", lesson.day.words(), lesson.starts, lesson.ends);
    let mut pieces = vec![
        Piece::Title(title.clone()),
        Piece::Note(when),
        Piece::Note(
            "A long stroke for made, a short one for missed. Retest first, before any coaching."
                .to_owned(),
        ),
    ];
    for (name, row) in rows {
        let goal = &row.goal.goal;
        let of = if lesson.students.len() > 1 { format!("{name}: ") } else { String::new() };
        pieces.push(Piece::Heading(format!("{of}{}", goal.title)));
        let cue = if goal.cue().is_empty() {
            String::new()
        } else {
            format!("\u{201c}{}\u{201d} · ", goal.cue())
        };
        let aim = if goal.aim().is_empty() { String::new() } else { format!(" · {}", goal.aim()) };
        let asked = format!("{} · {}", goal.condition.words(), goal.criterion.words());
        pieces.push(Piece::Text(format!("{cue}{asked}{aim}")));
        if goal.criterion.kind == CriterionKind::AtMost {
            pieces.push(boxes("Whole games: how often in each", 5, 0));
            continue;
        }
        let tries = goal.criterion.tries().unwrap_or(10).min(MOST_BOXES);
        if row.offer == Kind::Retest {
            pieces.push(boxes("Retest", tries, goal.uncounted));
        }
        pieces.push(boxes("Practice", 20, 0));
        pieces.push(boxes("End test", tries, 0));
    }
    pieces.push(Piece::Heading("What I saw".to_owned()));
    pieces.push(lines());
    Sheet {
        title,
        language: "en".to_owned(),
        author,
        // The same lesson gives the same bytes: the card carries no moment of printing.
        issued: Instant::from_unix_millis(0).utc(),
        paper: Paper::A4,
        letterhead: Vec::new(),
        pieces,
        footer: String::new(),
        page_words: "Page {n} of {m}".to_owned(),
    }
}

const WIDTH: f32 = 482.0;
const SIDE: f32 = 15.0;
/// So many boxes fit into one row beside its name and its count.
const MOST_BOXES: u32 = 20;

/// A row of boxes in fives, with its name before and room for the count after; the first ones that
/// are not counted stand apart, dashed.
fn boxes(name: &str, tries: u32, uncounted: u32) -> Piece {
    let mut marks = vec![text(0.0, 14.0, name)];
    let mut x = 62.0;
    for n in 0..uncounted {
        square(&mut marks, x + n as f32 * SIDE, true);
    }
    if uncounted > 0 {
        x += uncounted as f32 * SIDE + 6.0;
    }
    for n in 0..tries {
        square(&mut marks, x + n as f32 * SIDE + (n / 5) as f32 * 4.0, false);
    }
    let count = if uncounted + tries > MOST_BOXES { "of" } else { "made      of" };
    marks.push(Mark::Text {
        at: (WIDTH, 14.0),
        size: 9.0,
        weight: Weight::Plain,
        anchor: Anchor::End,
        ink: Ink::Soft,
        words: format!("{count}      "),
    });
    let first = if uncounted > 0 {
        format!(", {uncounted} before them that are not counted")
    } else {
        String::new()
    };
    Piece::Figure {
        alt: format!("{name}: {tries} boxes{first}"),
        width_pt: WIDTH,
        height_pt: 20.0,
        marks,
    }
}

fn square(marks: &mut Vec<Mark>, x: f32, first: bool) {
    marks.push(Mark::Line {
        points: vec![(x, 2.0), (x + SIDE, 2.0), (x + SIDE, 18.0), (x, 18.0), (x, 2.0)],
        width: 0.6,
        ink: Ink::Soft,
        dash: first.then_some((1.5, 1.5)),
    });
}

/// Room to write.
fn lines() -> Piece {
    let marks = (1..=4).map(|n| Mark::Line {
        points: vec![(0.0, n as f32 * 24.0), (WIDTH, n as f32 * 24.0)],
        width: 0.4,
        ink: Ink::Rule,
        dash: None,
    });
    Piece::Figure { alt: String::new(), width_pt: WIDTH, height_pt: 100.0, marks: marks.collect() }
}

fn text(x: f32, y: f32, words: &str) -> Mark {
    Mark::Text {
        at: (x, y),
        size: 9.5,
        weight: Weight::Plain,
        anchor: Anchor::Start,
        ink: Ink::Ink,
        words: words.to_owned(),
    }
}
