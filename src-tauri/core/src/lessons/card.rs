//! The court card: one page for a lesson, to be stroked by hand where no screen is wanted; and what
//! was written on it, typed in at once.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Lesson, Which, show};
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::goals::blocks::{EnterTotal, enter_total};
use crate::goals::court::{OnCourt, to_print};
use crate::goals::decide::AtVisit;
use crate::goals::{CriterionKind, Kind, Source};
use crate::kinds::ids::{GoalId, LessonId, VisitId};
use crate::kinds::{Instant, Language};
use crate::print::{
    Anchor, Ink, Mark, Paper, Piece, Sheet, Weight, file_words, page_words, written,
};
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

/// A goal of someone on a lesson.
struct Theirs {
    name: String,
    visit: VisitId,
    goal: OnCourt,
}

/// The goals of everyone on a lesson, those that wait among them; before a visit is opened, those
/// that it will carry.
fn theirs(db: &Reading<'_>, lesson: &Lesson) -> Result<Vec<Theirs>> {
    let mut all = Vec::new();
    for one in &lesson.students {
        let goals = to_print(db, AtVisit { visit: one.visit })?;
        let of = |goal| Theirs { name: one.name.clone(), visit: one.visit, goal };
        all.extend(goals.into_iter().map(of));
    }
    Ok(all)
}

/// Types a card in: every row or none, each block as a total of this lesson.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong: a goal of nobody on the lesson, more made
/// than tried, nothing on the card; `NotPossible` at a visit that is not open.
pub fn enter_card(db: &Writing<'_>, card: EnterCard) -> Result<CardEntered> {
    let lesson = show(db, Which { lesson: card.lesson })?;
    let known = theirs(db, &lesson)?;
    let mut p = Problems::new();
    let mut blocks = 0;
    for (n, row) in card.rows.iter().enumerate() {
        let Some(of) = known.iter().find(|of| of.goal.goal.goal.id == row.goal) else {
            let words =
                "This goal is of nobody on this lesson: the card is another lesson\u{2019}s.";
            p.add(&format!("rows[{n}].goal"), "not_theirs", words);
            continue;
        };
        for (kind, field, counted) in [
            (Kind::Retest, "retest", row.retest),
            (Kind::Practice, "practice", row.practice),
            (Kind::EndTest, "end_test", row.end_test),
        ] {
            let Some(counted) = counted else { continue };
            let entered = enter_total(
                db,
                EnterTotal {
                    goal: row.goal,
                    visit: of.visit,
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
/// `NotFound`; `NotPossible` where nobody on the lesson has a goal to work on.
pub fn card(db: &Reading<'_>, which: Which) -> Result<(String, Vec<u8>)> {
    let lesson = show(db, which)?;
    let mut rows = theirs(db, &lesson)?;
    // On paper stand those worked on now.
    rows.retain(|of| !of.goal.waits);
    if rows.is_empty() {
        return Err(Error::not_possible(
            "no_goals",
            "Nobody on this lesson has a goal to work on. Start the visit and set a goal first.",
        ));
    }
    let author = settings::show(db)?.name;
    let sheet = sheet(&lesson, &rows, author);
    let (pdf, _) = written(&sheet)?;
    Ok((format!("Court card {} {}.pdf", file_words(&lesson.names()), lesson.day), pdf))
}

fn sheet(lesson: &Lesson, rows: &[Theirs], author: String) -> Sheet {
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
    for Theirs { name, goal: row, .. } in rows {
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
            pieces.push(Piece::Note("Whole games: in each box how often it happened.".to_owned()));
            pieces.push(games());
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
        page_words: page_words(Language::En).to_owned(),
    }
}

const WIDTH: f32 = 482.0;
const SIDE: f32 = 14.0;
/// Where the boxes begin, right of their name.
const LEFT: f32 = 56.0;
/// Where the room for the count begins.
const COUNT: f32 = 402.0;
/// The height of a row of boxes.
const ROW: f32 = 20.0;
/// So many boxes stand in one row.
const IN_A_ROW: u32 = 20;
/// So many first boxes have room before a full row.
const BEFORE_IT: u32 = 3;
/// No card has more boxes for one block; the count can be written down beside them.
const MOST_BOXES: u32 = 100;

/// Boxes in fives, twenty a row, with their name before and room for the count after; the first
/// ones that are not counted stand apart, dashed.
fn boxes(name: &str, tries: u32, uncounted: u32) -> Piece {
    let mut marks = vec![text(0.0, 14.0, name)];
    let (mut left, mut top) = (LEFT, 0.0);
    in_fives(&mut marks, (LEFT, &mut top), uncounted, true);
    if uncounted > BEFORE_IT {
        top += ROW;
    } else if uncounted > 0 {
        left += uncounted as f32 * SIDE + 6.0;
    }
    in_fives(&mut marks, (left, &mut top), tries, false);
    for start in [COUNT, WIDTH - 30.0] {
        marks.push(Mark::Line {
            points: vec![(start, top + 17.0), (start + 30.0, top + 17.0)],
            width: 0.6,
            ink: Ink::Soft,
            dash: None,
        });
    }
    marks.push(text(COUNT + 35.0, top + 14.0, "of"));
    let first = if uncounted > 0 {
        format!(", {uncounted} before them that are not counted")
    } else {
        String::new()
    };
    let alt = format!("{name}: {tries} boxes{first}");
    Piece::Figure { alt, width_pt: WIDTH, height_pt: top + ROW, marks }
}

/// A box for each of the next whole games.
fn games() -> Piece {
    let mut marks = vec![text(0.0, 14.0, "Games")];
    in_fives(&mut marks, (LEFT, &mut 0.0), 5, false);
    let alt = "Games: 5 boxes".to_owned();
    Piece::Figure { alt, width_pt: WIDTH, height_pt: ROW, marks }
}

/// Boxes from a left and a top on; the top goes down with each further row.
fn in_fives(marks: &mut Vec<Mark>, (left, top): (f32, &mut f32), many: u32, first: bool) {
    for n in 0..many {
        let at = n % IN_A_ROW;
        if n > 0 && at == 0 {
            *top += ROW;
        }
        square(marks, (left + at as f32 * SIDE + (at / 5) as f32 * 4.0, *top + 2.0), first);
    }
}

fn square(marks: &mut Vec<Mark>, (x, y): (f32, f32), first: bool) {
    let (right, foot) = (x + SIDE, y + 16.0);
    marks.push(Mark::Line {
        points: vec![(x, y), (right, y), (right, foot), (x, foot), (x, y)],
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

#[cfg(test)]
mod tests {
    use super::*;

    /// The boxes of a piece as their left, top and right, those that are not counted first.
    fn drawn(piece: Piece) -> (Vec<(f32, f32, f32)>, usize) {
        let Piece::Figure { marks, height_pt, .. } = piece else { panic!("boxes are a figure") };
        let mut squares = Vec::new();
        let mut dashed = 0;
        for mark in marks {
            let Mark::Line { points, dash, .. } = mark else { continue };
            if let [(left, top), (right, _), (_, foot), _, _] = points[..] {
                assert!(foot <= height_pt, "every box is on the drawing");
                squares.push((left, top, right));
                dashed += usize::from(dash.is_some());
            }
        }
        (squares, dashed)
    }

    #[test]
    fn every_try_has_a_box_and_none_stands_on_another_or_on_the_count() {
        for (tries, uncounted) in [(1, 0), (10, 3), (20, 0), (20, 3), (20, 4), (50, 20), (100, 0)] {
            let (squares, dashed) = drawn(boxes("Retest", tries, uncounted));
            assert_eq!(squares.len() as u32, tries + uncounted, "{tries} and {uncounted}");
            assert_eq!(dashed as u32, uncounted);
            assert!(squares.iter().all(|(left, _, right)| *left >= LEFT && *right <= COUNT));
            for (n, (left, top, right)) in squares.iter().enumerate() {
                let clear = |other: &(f32, f32, f32)| {
                    (other.1 - top).abs() >= 16.0 || other.0 >= *right || other.2 <= *left
                };
                assert!(squares[n + 1..].iter().all(clear), "{tries} and {uncounted}: box {n}");
            }
        }
    }
}
