//! The states of a goal, derived from its blocks and decisions, each step with its reason in words.
//!
//! The table of rules is the program's own; what it rests on: a gain seen at the end of a lesson is
//! partly gone weeks later, so retention is tested first, before the skill is warmed up again
//! (Soderstrom and Bjork 2015, "Learning versus performance", Perspectives on Psychological Science
//! 10:176, from memory).

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::numbers::{self, ChangeWord, Count};
use super::{
    Block, Choice, Condition, Criterion, CriterionKind, Decision, Kind, Source, count_words,
};
use crate::kinds::Day;
use crate::kinds::ids::{BlockId, VisitId};

/// Where a goal stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum State {
    /// Being worked on.
    Working,
    /// Reached once; the retest will tell.
    Met,
    /// Reached again at a later visit, before any coaching.
    Kept,
    /// Was met or kept, and came back below.
    Slipped,
    /// Closed: a harder goal took its place.
    Raised,
    /// Closed by the coach, with a reason.
    Closed,
    /// Not for now.
    SetAside,
}

/// How a goal came to be at a visit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum How {
    /// It was set there.
    Set,
    /// It was carried there.
    Carried,
}

/// One visit in a goal's life.
#[derive(Clone, Debug)]
pub struct AtVisit {
    /// The visit.
    pub visit: VisitId,
    /// Its first day.
    pub day: Day,
    /// How the goal came to be there.
    pub how: How,
    /// Whether the visit is over.
    pub closed: bool,
    /// The goal's blocks there, in order.
    pub blocks: Vec<Block>,
}

/// All that a goal's state is derived from.
#[derive(Clone, Debug)]
pub struct History {
    /// The criterion.
    pub criterion: Criterion,
    /// The condition: blocks under another one are shown and move nothing.
    pub condition: Condition,
    /// The visits, in time.
    pub visits: Vec<AtVisit>,
    /// The decisions, in time.
    pub decisions: Vec<Decision>,
}

/// A change against the block it is measured from.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Since {
    /// The count before.
    pub before: Count,
    /// The visit it was at.
    pub visit: VisitId,
    /// The day of that visit.
    pub day: Day,
    /// Rate after minus rate before.
    pub change: f64,
    /// Lower end of the rough 95 % range (Newcombe 1998, method 10).
    pub low: f64,
    /// Upper end.
    pub high: f64,
    /// One of the five words.
    pub word: ChangeWord,
}

/// What a block or decision did.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Step {
    /// The visit; `None` for a decision between visits.
    pub visit: Option<VisitId>,
    /// The day.
    pub day: Day,
    /// The block, where one did it.
    pub block: Option<BlockId>,
    /// Where the goal stood.
    pub from: State,
    /// Where it stands after.
    pub to: State,
    /// Why, in words.
    pub why: String,
    /// The change the block shows.
    pub since: Option<Since>,
}

/// Where a goal stands and how it came there.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Standing {
    /// The state.
    pub state: State,
    /// The reason, in words.
    pub why: String,
    /// The visit at which it was last moved to kept.
    pub kept_at: Option<VisitId>,
    /// Every step, in time.
    pub steps: Vec<Step>,
}

/// The block a change is measured against.
#[derive(Clone, Copy)]
struct Anchor {
    count: Count,
    visit: VisitId,
    day: Day,
}

struct Walk<'a> {
    history: &'a History,
    state: State,
    /// The state to come back to when a goal set aside is taken up again is always working.
    moved_by: Option<Anchor>,
    moved_at: Option<VisitId>,
    last_end_test: Option<Anchor>,
    kept_at: Option<VisitId>,
    /// Whole games so far: how often it happened in each.
    games: Vec<u32>,
    steps: Vec<Step>,
}

/// Derives where a goal stands.
pub fn derive(history: &History) -> Standing {
    let mut walk = Walk {
        history,
        state: State::Working,
        moved_by: None,
        moved_at: None,
        last_end_test: None,
        kept_at: None,
        games: Vec::new(),
        steps: Vec::new(),
    };
    let mut between = history.decisions.iter().filter(|d| d.visit.is_none()).peekable();
    for (n, at) in history.visits.iter().enumerate() {
        while let Some(decision) = between.next_if(|d| d.day < at.day) {
            walk.decision(decision);
        }
        walk.visit(at, n + 1 < history.visits.len());
        for decision in history.decisions.iter().filter(|d| d.visit == Some(at.visit)) {
            walk.decision(decision);
        }
    }
    between.for_each(|decision| walk.decision(decision));
    let why = walk
        .steps
        .iter()
        .rev()
        .find(|step| !step.why.is_empty())
        .map_or_else(|| "just set".to_owned(), |step| step.why.clone());
    Standing { state: walk.state, why, kept_at: walk.kept_at, steps: walk.steps }
}

impl Walk<'_> {
    fn visit(&mut self, at: &AtVisit, is_past: bool) {
        let over = at.closed || is_past;
        if self.history.criterion.kind == CriterionKind::AtMost {
            self.games_at(at, over);
            return;
        }
        let counted = |block: &&Block| {
            block.ended
                && block.source != Source::Told
                && block.condition == self.history.condition
                && block.count.tries > 0
        };
        let blocks: Vec<Block> = at.blocks.iter().filter(counted).cloned().collect();
        // A retest stands before any coaching: only the first thing tried at the visit can be one.
        let tried = |block: &&Block| block.source != Source::Told && block.count.tries > 0;
        let first = at.blocks.iter().find(tried).map(|block| block.id);
        let carried = at.how == How::Carried;
        let mut retested = false;
        let mut end_test = None;
        for block in &blocks {
            match block.kind {
                Kind::Retest if carried && first == Some(block.id) => {
                    // A goal kept at an earlier visit has nothing to be retested: it is looked at again.
                    if !self.look_back(at, block) {
                        self.retest(at, block);
                    }
                    retested = true;
                }
                Kind::EndTest => {
                    self.end_test(at, block, retested);
                    end_test = Some(Anchor { count: block.count, visit: at.visit, day: at.day });
                }
                Kind::LookBack => retested |= self.look_back(at, block),
                _ if block.source == Source::GameChances => retested |= self.look_back(at, block),
                Kind::Retest | Kind::Practice => {}
            }
        }
        if carried && over && !retested && is_carried(self.state) && self.moved_at != Some(at.visit)
        {
            self.step(at, None, self.state, "not retested".to_owned(), None);
        }
        self.last_end_test = end_test.or(self.last_end_test);
    }

    /// Whole games: reached when each of the last few has at most so many; no interval, no word,
    /// and below it a goal is working, never slipped.
    fn games_at(&mut self, at: &AtVisit, over: bool) {
        let criterion = self.history.criterion;
        let mut played = false;
        for block in &at.blocks {
            let theirs = block.ended
                && block.source != Source::Told
                && block.condition == self.history.condition;
            let Some(n) = block.in_game.filter(|_| theirs) else { continue };
            played = true;
            self.games.push(n);
            let asked = criterion.of as usize;
            let last = &self.games[self.games.len().saturating_sub(asked)..];
            let reached = last.len() == asked && last.iter().all(|n| *n <= criterion.need);
            let said = match last {
                [one] => format!("{one} in this game"),
                many => {
                    let many: Vec<String> = many.iter().map(u32::to_string).collect();
                    format!("{} in the last {} games", many.join(", "), many.len())
                }
            };
            let (to, why) = match (self.state, reached) {
                (State::Working | State::Slipped, true) => {
                    (State::Met, format!("{said}; a later visit will tell"))
                }
                (State::Working | State::Slipped, false) => (self.state, said),
                (State::Met, true) if self.moved_at != Some(at.visit) => {
                    (State::Kept, format!("reached again: {said}"))
                }
                (State::Met, false) => {
                    let when = self.moved_by.map_or_else(String::new, |a| a.day.month_words());
                    (State::Working, format!("reached at visit {when}, not repeated: {said}"))
                }
                (State::Kept, true) if self.kept_at != Some(at.visit) => {
                    (State::Kept, format!("still there: {said}"))
                }
                (State::Kept, false) => (State::Working, format!("reopened: {said}")),
                (state, _) => (state, said),
            };
            self.step(at, Some(block), to, why, None);
        }
        let carried = at.how == How::Carried;
        if carried && over && !played && is_carried(self.state) {
            self.step(at, None, self.state, "not retested".to_owned(), None);
        }
    }

    fn retest(&mut self, at: &AtVisit, block: &Block) {
        let since = self.since(block.count);
        let reached = self.history.criterion.share_reached_by(block.count);
        let short = self.history.criterion.is_short(block.count);
        let count = count_words(block.count);
        let (to, why) = match (self.state, reached) {
            (State::Working | State::Slipped, true) if short => (
                self.state,
                format!("{count} before coaching: a short retest, too few tries to be met"),
            ),
            (State::Working | State::Slipped, true) => {
                (State::Met, format!("came back with it: {count} before any coaching"))
            }
            (State::Working | State::Slipped, false) => {
                (self.state, format!("{count} before coaching{}", words_of(since.as_ref())))
            }
            (State::Met, true) if short => (
                State::Met,
                format!("{count} before coaching: a short retest, too few tries to be kept"),
            ),
            (State::Met, true) => {
                (State::Kept, format!("reached again: {count} before any coaching"))
            }
            (State::Met, false) if is_down(since.as_ref()) => {
                (State::Slipped, format!("{count} before coaching{}", words_of(since.as_ref())))
            }
            (State::Met, false) => {
                let reached_at = self.moved_by.map_or_else(String::new, |a| a.day.month_words());
                (State::Working, format!("reached at visit {reached_at}, not repeated: {count}"))
            }
            (state, _) => (state, String::new()),
        };
        self.step(at, Some(block), to, why, since);
    }

    fn end_test(&mut self, at: &AtVisit, block: &Block, retested: bool) {
        let since = self.since(block.count);
        let reached = self.history.criterion.share_reached_by(block.count);
        let short = self.history.criterion.is_short(block.count);
        let count = count_words(block.count);
        let (to, why) = match (self.state, reached) {
            (State::Working | State::Slipped, true) if short => {
                (self.state, format!("{count} in the end test: too few tries to be met"))
            }
            (State::Working | State::Slipped, true) => {
                (State::Met, format!("{count} in the end test; the retest will tell"))
            }
            (State::Working | State::Slipped, false) => {
                (self.state, format!("{count} in the end test{}", words_of(since.as_ref())))
            }
            (State::Met, false) if !retested && self.moved_at != Some(at.visit) => {
                (State::Met, format!("{count} in the end test; retest owed"))
            }
            (state @ (State::Met | State::Kept), _) => {
                (state, format!("{count} in a later end test"))
            }
            (state, _) => (state, String::new()),
        };
        // A later end test of a goal that is met or kept is shown with its numbers, and the reason
        // it stands where it stands is still the block that moved it.
        self.step(at, Some(block), to, why, since);
    }

    /// Another look at a goal that was kept at an earlier visit; false for any other.
    fn look_back(&mut self, at: &AtVisit, block: &Block) -> bool {
        if self.state != State::Kept || self.kept_at == Some(at.visit) {
            return false;
        }
        let since = self.since(block.count);
        let reached = self.history.criterion.share_reached_by(block.count);
        let count = count_words(block.count);
        let (to, why) = if reached && !self.history.criterion.is_short(block.count) {
            (State::Kept, format!("still there: {count} in a later look"))
        } else if !reached && is_down(since.as_ref()) {
            (
                State::Slipped,
                format!("reopened: {count} in a later look{}", words_of(since.as_ref())),
            )
        } else {
            (State::Kept, format!("{count} in a later look; worth another look"))
        };
        self.step(at, Some(block), to, why, since);
        true
    }

    fn decision(&mut self, decision: &Decision) {
        let (to, why) = match decision.kind {
            Choice::CarryOn => return,
            Choice::Raise => (State::Raised, "raised to a harder goal".to_owned()),
            Choice::Close => (State::Closed, format!("closed: {}", decision.reason)),
            Choice::SetAside => (State::SetAside, format!("set aside: {}", decision.reason)),
            Choice::TakeUp => (State::Working, "taken up again".to_owned()),
        };
        let from = std::mem::replace(&mut self.state, to);
        self.steps.push(Step {
            visit: decision.visit,
            day: decision.day,
            block: None,
            from,
            to,
            why,
            since: None,
        });
    }

    fn step(
        &mut self,
        at: &AtVisit,
        block: Option<&Block>,
        to: State,
        why: String,
        since: Option<Since>,
    ) {
        let from = std::mem::replace(&mut self.state, to);
        if let Some(block) = block {
            let arrived = matches!(to, State::Met | State::Kept) && from != to;
            let reached_again = from == State::Kept
                && to == State::Kept
                && self.history.criterion.share_reached_by(block.count)
                && !self.history.criterion.is_short(block.count)
                && self.kept_at != Some(at.visit);
            if arrived || reached_again {
                self.moved_by = Some(Anchor { count: block.count, visit: at.visit, day: at.day });
                self.moved_at = Some(at.visit);
            }
            if arrived && to == State::Kept {
                self.kept_at = Some(at.visit);
            }
        }
        self.steps.push(Step {
            visit: Some(at.visit),
            day: block.map_or(at.day, |b| b.day),
            block: block.map(|b| b.id),
            from,
            to,
            why,
            since,
        });
    }

    /// The change against the block that last moved the goal to met or kept, or, for a goal never
    /// met, against the last end test of an earlier visit.
    fn since(&self, after: Count) -> Option<Since> {
        let anchor = self.moved_by.or(self.last_end_test)?;
        let change = numbers::change(anchor.count, after);
        Some(Since {
            before: anchor.count,
            visit: anchor.visit,
            day: anchor.day,
            change: change.change?,
            low: change.level95.low?,
            high: change.level95.high?,
            word: change.word,
        })
    }
}

/// Whether a goal in this state goes on to the next visit.
pub fn is_carried(state: State) -> bool {
    matches!(state, State::Working | State::Met | State::Slipped)
}

fn is_down(since: Option<&Since>) -> bool {
    since.is_some_and(|since| since.word.is_downward())
}

/// ", leaning down from 9 of 10 in Jan 25", or nothing where there is nothing to compare with.
fn words_of(since: Option<&Since>) -> String {
    since.map_or_else(String::new, |since| {
        let before = format!("{} in {}", count_words(since.before), since.day.month_words());
        match since.word {
            ChangeWord::TooFewToTell => format!(", too few to tell against {before}"),
            word => format!(", {} from {before}", word.words()),
        }
    })
}

#[cfg(test)]
#[path = "state_tests.rs"]
mod tests;
