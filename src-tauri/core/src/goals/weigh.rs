//! What a criterion means: how often players of different strength would reach it by the binomial,
//! once and at least once in five goes.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::numbers::criterion;
use super::set::read_criterion;
use super::{Criterion, CriterionKind};
use crate::error::{Problems, Result};

/// A criterion to weigh: so many of so many, or a rate over its least number of chances.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Weigh {
    /// Its kind; so many of so many unless said.
    #[serde(default)]
    pub criterion: CriterionKind,
    /// How many must be made; of a rate, in a hundred; of `at_most`, the most a game.
    pub need: i64,
    /// Of how many tries; of `at_most`, in how many games running.
    #[serde(default)]
    pub of: i64,
    /// Of a rate: the least number of chances.
    #[serde(default)]
    pub least: i64,
}

/// How a player of one strength fares.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Chance {
    /// The player's true rate.
    pub true_rate: f64,
    /// The chance to reach the criterion in one block.
    pub one_block: f64,
    /// The chance to reach it in at least one of five blocks.
    pub any_of_five: f64,
}

/// What it means.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Weighed {
    /// For true rates of 50, 60, 70, 80 and 90 %.
    pub chances: Vec<Chance>,
    /// The same in one sentence.
    pub words: String,
}

/// Weighs a criterion.
///
/// # Errors
/// `Refused` when it is none.
pub fn weigh(ask: &Weigh) -> Result<Weighed> {
    let mut p = Problems::new();
    let asked = read_criterion(&mut p, ask.criterion, ask.need, ask.of, ask.least);
    p.done()?;
    let (need, of) = match (asked.kind, asked.least) {
        (CriterionKind::AtMost, _) => {
            return Ok(Weighed { chances: Vec::new(), words: games(asked) });
        }
        (CriterionKind::Rate, Some(least)) => ((asked.need * least).div_ceil(100), least),
        _ => (asked.need, asked.of),
    };
    let chances = [0.5, 0.6, 0.7, 0.8, 0.9]
        .into_iter()
        .filter_map(|true_rate| {
            let (one, five) =
                (criterion(need, of, 1, true_rate), criterion(need, of, 5, true_rate));
            Some(Chance { true_rate, one_block: one.one_block?, any_of_five: five.any_block? })
        })
        .collect::<Vec<_>>();
    let share = f64::from(need) / f64::from(of);
    let at = |rate: f64| chances.iter().find(|c| (c.true_rate - rate).abs() < 1e-9);
    let words = match (at(0.6), at(0.8)) {
        (Some(weak), Some(strong)) => format!(
            "{}: a player who makes 80 % in truth passes {}, one who makes 60 % {}. In five goes the 60 % player passes at least once {}.{}",
            asked.words(),
            often(strong.one_block),
            often(weak.one_block),
            often(weak.any_of_five),
            if of < 20 && share < 1.0 {
                " Twenty tries, with a pause after ten, tell more."
            } else {
                ""
            },
        ),
        _ => String::new(),
    };
    Ok(Weighed { chances, words })
}

/// What at most so many a game asks. A game is no run of tries, so there is no chance to give.
fn games(asked: Criterion) -> String {
    let run = if asked.of == 1 {
        "one whole game".to_owned()
    } else {
        format!("each of {} whole games running", asked.of)
    };
    format!(
        "Reached when {run} has at most {}. Games differ in length and opponent, so no range is given.",
        asked.need
    )
}

/// A chance in words a coach would use, with the number.
fn often(p: f64) -> String {
    let percent = (p * 100.0).round();
    if percent < 1.0 {
        "hardly ever (under 1 %)".to_owned()
    } else if percent > 99.0 {
        "nearly always (over 99 %)".to_owned()
    } else {
        format!("{percent:.0} times in 100")
    }
}
