//! Reasons for misses, where the coach wants to give any: after the block, never a toll on court.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::show::OfStudent;
use super::{Block, Miss, count_words, store};
use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::kinds::ids::BlockId;
use crate::kinds::text::{counted, folded};

/// What the misses of a block are put down to.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct GiveReasons {
    /// The block.
    pub block: BlockId,
    /// Each reason with its number of misses; an empty list takes all reasons away.
    pub misses: Vec<Reason>,
}

/// One reason.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Reason {
    /// The reason, in the coach's words.
    pub reason: String,
    /// How many misses.
    pub times: i64,
}

/// Says what the misses of a block are put down to, in place of what was said before.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong: a reason without words, one given twice,
/// more reasons than misses.
pub fn give_reasons(db: &Writing<'_>, give: GiveReasons) -> Result<Block> {
    let block = store::find_block(db, give.block)?;
    let missed = i64::from(block.count.tries - block.count.made);
    let mut p = Problems::new();
    let mut misses: Vec<Miss> = Vec::new();
    let mut sum = 0;
    for (n, typed) in give.misses.iter().enumerate() {
        p.within(&format!("misses[{n}]."), |p| {
            let reason = p.name("reason", &typed.reason, "The reason");
            let times = p.within_bounds("times", typed.times, 1, 10_000, "The number of misses");
            if misses.iter().any(|m| folded(&m.reason) == folded(&reason)) {
                p.add("reason", "twice", "This reason is given twice.");
            }
            sum += times;
            misses.push(Miss { reason, times: u32::try_from(times).unwrap_or(1) });
        });
    }
    if sum > missed {
        p.add(
            "misses",
            "more_than_misses",
            format!(
                "{} explain more than the {} of {}.",
                counted(sum, "reason", "reasons"),
                counted(missed, "miss", "misses"),
                count_words(block.count)
            ),
        );
    }
    p.done()?;
    store::replace_misses(db, block.id, &misses)?;
    let goal = store::find(db, block.goal)?;
    db.label(format!("Reasons for misses: {}", goal.title));
    Ok(Block { misses: store::misses_of(db, block.id)?, ..block })
}

/// The reasons given for a student's misses so far, the most frequent first.
///
/// # Errors
/// `Storage`.
pub fn reasons(db: &Reading<'_>, ask: OfStudent) -> Result<Vec<String>> {
    store::reasons(db, ask.student)
}
