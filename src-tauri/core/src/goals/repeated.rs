//! What a test is worth that was repeated until it passed. Every block is kept, so it can be said.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::numbers::criterion;
use super::{Block, CriterionKind, Goal, Kind, Source};
use crate::kinds::ids::VisitId;

/// An end test that was passed at a visit only after others were not.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Repeated {
    /// The visit.
    pub visit: VisitId,
    /// How many goes it took, the passing one among them.
    pub goes: u32,
    /// What that is worth, in words.
    pub words: String,
}

/// The visits at which an end test was repeated until it passed.
pub fn repeated(goal: &Goal, blocks: &[Block]) -> Vec<Repeated> {
    let mut found: Vec<Repeated> = Vec::new();
    let mut visits: Vec<VisitId> = blocks.iter().map(|b| b.visit).collect();
    visits.dedup();
    for visit in visits {
        let tests = blocks.iter().filter(|b| {
            b.visit == visit
                && b.kind == Kind::EndTest
                && b.ended
                && b.source != Source::Told
                && b.condition == goal.condition
                && b.count.tries > 0
        });
        let mut goes = 0;
        for test in tests {
            goes += 1;
            if goal.criterion.share_reached_by(test.count) && !goal.criterion.is_short(test.count) {
                if goes > 1 {
                    found.push(Repeated { visit, goes, words: worth(goal, goes) });
                }
                break;
            }
        }
    }
    found
}

/// "passed in the last of 5 goes at 8 of 10: a player who makes 60 % in truth passes at least once
/// in 5 goes 60 times in 100", by the binomial.
fn worth(goal: &Goal, goes: u32) -> String {
    let c = goal.criterion;
    let (need, of) = match (c.kind, c.least) {
        (CriterionKind::Rate, Some(least)) => ((c.need * least).div_ceil(100), least),
        _ => (c.need, c.of),
    };
    let any = criterion(need, of, goes, 0.6).any_block.unwrap_or(0.0);
    let share = match (any * 100.0).round() {
        p if p < 1.0 => "hardly ever".to_owned(),
        p if p > 99.0 => "nearly always".to_owned(),
        p => format!("{p:.0} times in 100"),
    };
    format!(
        "passed in the last of {goes} goes at {}: a player who makes 60 % in truth passes at least once in {goes} goes {share}",
        c.words()
    )
}
