//! Games: how a match is scored, rally by rally, under the rule sets of a sport pack.

pub mod score;
pub mod tennis_score;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// One of the two sides of a match.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Side {
    /// The first one named.
    A,
    /// The other.
    B,
}

impl Side {
    /// The opponent.
    pub fn other(self) -> Side {
        match self {
            Side::A => Side::B,
            Side::B => Side::A,
        }
    }

    /// Reads `a` or `b`.
    pub fn read(letter: char) -> Option<Side> {
        match letter {
            'a' => Some(Side::A),
            'b' => Some(Side::B),
            _ => None,
        }
    }

    /// This side's number of a pair, and the opponent's.
    fn of<T: Copy>(self, [a, b]: [T; 2]) -> (T, T) {
        match self {
            Side::A => (a, b),
            Side::B => (b, a),
        }
    }

    /// One more for this side.
    fn add(self, pair: &mut [u32; 2]) {
        let [a, b] = pair;
        let mine = if self == Side::A { a } else { b };
        *mine = mine.saturating_add(1);
    }
}
