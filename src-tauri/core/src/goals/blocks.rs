//! Blocks: started and counted live, touch by touch, or entered as a total afterwards.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::numbers::Count;
use super::set::open_visit;
use super::state::How;
use super::{Block, Condition, CriterionKind, Goal, Kind, Source, count_words, store};
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::intake::head;
use crate::kinds::Day;
use crate::kinds::ids::{BlockId, GoalId, LessonId, VisitId};

/// A block to start.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct StartBlock {
    /// The goal.
    pub goal: GoalId,
    /// The visit.
    pub visit: VisitId,
    /// The lesson it is in, if any.
    #[serde(default)]
    pub lesson: Option<LessonId>,
    /// What it is for; a test is named before it starts.
    pub kind: Kind,
    /// Another condition than the goal's, for practice.
    #[serde(default)]
    pub condition: Option<Condition>,
}

/// A total counted elsewhere.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct EnterTotal {
    /// The goal.
    pub goal: GoalId,
    /// The visit.
    pub visit: VisitId,
    /// The lesson it was in, if any.
    #[serde(default)]
    pub lesson: Option<LessonId>,
    /// What it was for.
    pub kind: Kind,
    /// Another condition than the goal's, for practice.
    #[serde(default)]
    pub condition: Option<Condition>,
    /// How many were made, the first tries that are not counted left out.
    #[serde(default)]
    pub made: i64,
    /// Of how many.
    #[serde(default)]
    pub tries: i64,
    /// The second fact, where the goal counts two apart.
    #[serde(default)]
    pub also: Option<i64>,
    /// For a goal of at most so many a game: how often it happened in this whole game; then there
    /// are no tries.
    #[serde(default)]
    pub in_game: Option<i64>,
    /// The day it was played, as YYYY-MM-DD; left out for today, or the visit's nearest day.
    #[serde(default)]
    pub day: String,
    /// How it came to be known: a total entered, game chances, or told by the student.
    #[serde(default = "total_entered")]
    pub source: Source,
}

fn total_entered() -> Source {
    Source::TotalEntered
}

/// One try.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Touch {
    /// The block.
    pub block: BlockId,
    /// Made or missed.
    pub made: bool,
    /// The second fact, where the goal counts two apart.
    #[serde(default)]
    pub also: Option<bool>,
}

/// Which block.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichBlock {
    /// The block.
    pub block: BlockId,
}

/// Starts a block that is counted live. A block of the same goal still open at the visit is ended.
///
/// # Errors
/// `NotFound`; `NotPossible` at a visit that is not open, or for a retest after other blocks.
pub fn start(db: &Writing<'_>, start: StartBlock) -> Result<Block> {
    let goal = store::find(db, start.goal)?;
    if goal.criterion.kind == CriterionKind::AtMost {
        return Err(Error::not_possible(
            "whole_games",
            "This goal counts whole games. Enter how often it happened after each game.",
        ));
    }
    head::must_not_keep(db, goal.student, day_at(db, start.visit)?)?;
    let earlier = before_a_block(db, &goal, start.visit, start.kind)?;
    for open in earlier.iter().filter(|block| !block.ended) {
        store::end_block(db, open.id)?;
    }
    let block = Block {
        id: db.id(),
        goal: goal.id,
        visit: start.visit,
        lesson: start.lesson,
        place: next_place(&earlier),
        kind: start.kind,
        condition: start.condition.unwrap_or(goal.condition),
        source: Source::CountedLive,
        day: day_at(db, start.visit)?,
        uncounted: if start.kind == Kind::Retest { goal.uncounted } else { 0 },
        tries: Vec::new(),
        count: Count { made: 0, tries: 0 },
        also: None,
        in_game: None,
        misses: Vec::new(),
        ended: false,
    };
    store::insert_block(db, &block)?;
    db.label(format!("{} started: {}", capital(block.kind.words()), goal.title));
    Ok(block)
}

/// Ends the blocks with tries that are still open in a lesson, of all its students; called by lessons.
///
/// # Errors
/// `Storage`.
pub fn end_with_lesson(db: &Writing<'_>, lesson: LessonId) -> Result<()> {
    store::end_blocks_in(db, lesson)
}

/// Counts one try. It is on disk when this returns.
///
/// # Errors
/// `NotFound`; `NotPossible` when the block was ended.
pub fn touch(db: &Writing<'_>, touch: Touch) -> Result<Block> {
    let (open, next) = store::for_touch(db, touch.block)?;
    if !open {
        return Err(Error::not_possible(
            "ended",
            "This block was ended. Start a new one to go on counting.",
        ));
    }
    let (student, day) = store::whose_block(db, touch.block)?;
    head::must_not_keep(db, student, day)?;
    store::insert_try(db, touch.block, next, touch.made, touch.also)?;
    store::find_block(db, touch.block)
}

/// Takes the last try of a block back: a slip of the finger.
///
/// # Errors
/// `NotFound`; `NotPossible` when the block was ended or has no try.
pub fn take_back(db: &Writing<'_>, which: WhichBlock) -> Result<Block> {
    let (open, _) = store::for_touch(db, which.block)?;
    if !open {
        return Err(Error::not_possible("ended", "This block was ended; undo its end first."));
    }
    if !store::take_back_last(db, which.block)? {
        return Err(Error::not_possible("no_try", "There is no try to take back."));
    }
    db.label("A try taken back");
    store::find_block(db, which.block)
}

/// Ends a block: from now on its count stands.
///
/// # Errors
/// `NotFound`.
pub fn end(db: &Writing<'_>, which: WhichBlock) -> Result<Block> {
    let block = store::find_block(db, which.block)?;
    store::end_block(db, block.id)?;
    let goal = store::find(db, block.goal)?;
    db.label(format!("{} ended: {}", capital(block.kind.words()), goal.title));
    store::find_block(db, which.block)
}

/// Enters a total that was counted elsewhere.
///
/// # Errors
/// `NotFound`; `Refused` when more were made than tried, or the day lies outside the visit;
/// `NotPossible` as in [`start`].
pub fn enter_total(db: &Writing<'_>, enter: EnterTotal) -> Result<Block> {
    let goal = store::find(db, enter.goal)?;
    let seen = open_visit(db, enter.visit, goal.student)?;
    let mut p = Problems::new();
    let counted = read_total(&mut p, &goal, &enter);
    let typed = p.day_or_none("day", Some(&enter.day), "The day");
    let day = typed.unwrap_or(day_at(db, enter.visit)?);
    let inside = seen.first_day.is_none_or(|first| first <= day)
        && seen.last_day.is_none_or(|last| day <= last);
    if typed.is_some() && !inside {
        p.add("day", "outside_visit", "This day is not one of the visit\u{2019}s days.");
    }
    if enter.source == Source::CountedLive {
        p.add("source", "not_live", "A total is not counted live.");
    }
    p.done()?;
    if enter.source != Source::Told {
        head::must_not_have_kept(db, goal.student, day)?;
    }
    let earlier = before_a_block(db, &goal, enter.visit, enter.kind)?;
    let block = Block {
        id: db.id(),
        goal: goal.id,
        visit: enter.visit,
        lesson: enter.lesson,
        place: next_place(&earlier),
        kind: enter.kind,
        condition: enter.condition.unwrap_or(goal.condition),
        source: enter.source,
        day,
        uncounted: 0,
        tries: Vec::new(),
        count: counted.count,
        also: counted.also,
        in_game: counted.in_game,
        misses: Vec::new(),
        ended: true,
    };
    store::insert_block(db, &block)?;
    let said = match block.in_game {
        Some(n) => format!("Game entered: {n}"),
        None => {
            format!("{} entered: {}", capital(block.kind.words()), count_words(block.count))
        }
    };
    db.label(format!("{said}, {}", goal.title));
    Ok(block)
}

/// What a total says, read.
struct Total {
    count: Count,
    also: Option<u32>,
    in_game: Option<u32>,
}

/// A total as this goal counts: tries, or how often in a whole game.
fn read_total(p: &mut Problems, goal: &Goal, enter: &EnterTotal) -> Total {
    let small = |n: i64| u32::try_from(n).unwrap_or(0);
    let nothing = Count { made: 0, tries: 0 };
    if goal.criterion.kind == CriterionKind::AtMost {
        let Some(typed) = enter.in_game else {
            let words = "This goal counts whole games: say how often it happened in this one.";
            p.add("in_game", "empty", words);
            return Total { count: nothing, also: None, in_game: None };
        };
        let n = p.within_bounds("in_game", typed, 0, 1000, "How often it happened");
        return Total { count: nothing, also: None, in_game: Some(small(n)) };
    }
    if enter.in_game.is_some() {
        p.add("in_game", "does_not_fit", "This goal counts tries, not whole games.");
    }
    let tries = p.within_bounds("tries", enter.tries, 1, 10_000, "The number of tries");
    let made = p.within_bounds("made", enter.made, 0, 10_000, "The number made");
    if enter.made > enter.tries && made > tries {
        p.add("made", "more_than_tries", format!("{made} made of {tries} tries cannot be."));
    }
    let also = enter.also.map(|typed| {
        let also = p.within_bounds("also", typed, 0, 10_000, "The second number");
        if goal.apart.is_none() {
            p.add("also", "does_not_fit", "This goal counts one thing.");
        } else if also > tries {
            p.add("also", "more_than_tries", format!("{also} of {tries} tries cannot be."));
        }
        small(also)
    });
    Total { count: Count { made: small(made), tries: small(tries) }, also, in_game: None }
}

/// What must hold before a block: the visit is open, the goal is at it (else it is put there), and
/// a retest is the first block of a goal that was carried. Gives the goal's blocks at the visit.
fn before_a_block(db: &Writing<'_>, goal: &Goal, visit: VisitId, kind: Kind) -> Result<Vec<Block>> {
    open_visit(db, visit, goal.student)?;
    let how = if let Some(how) = store::how_at(db, goal.id, visit)? {
        how
    } else {
        let how = if store::was_at_a_visit(db, goal.id)? { How::Carried } else { How::Set };
        store::put_at_visit(db, goal.id, visit, how)?;
        how
    };
    let earlier = store::blocks_at(db, goal.id, visit)?;
    if kind == Kind::Retest {
        if how == How::Set {
            return Err(Error::not_possible(
                "set_here",
                "This goal was set at this visit, so there is nothing to retest yet. Record it as practice or as an end test.",
            ));
        }
        if earlier.iter().any(Block::was_tried) {
            return Err(Error::not_possible(
                "coached",
                "A retest comes before any coaching, and this goal has blocks at this visit already. Record it as an end test.",
            ));
        }
    }
    Ok(earlier)
}

fn next_place(earlier: &[Block]) -> u32 {
    earlier.iter().map(|block| block.place).max().unwrap_or(0) + 1
}

/// Today, or the visit's nearest day when it is written down later.
pub(super) fn day_at(db: &Reading<'_>, visit: VisitId) -> Result<Day> {
    let seen = store::visit(db, visit)?;
    let today = db.today();
    let (first, last) = (seen.first_day.unwrap_or(today), seen.last_day.unwrap_or(today));
    Ok(today.clamp(first, last.max(first)))
}

fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}
