//! Games, sets and tiebreaks, as tennis and padel count them.

use schemars::JsonSchema;
use serde::Serialize;

use super::Side;
use super::score::is_won;
use crate::sports::pack::{Deuce, Game, LastSet, SetRule, SetRuleSet};

/// One set.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct SetScore {
    /// The games of each side.
    pub games: [u32; 2],
    /// The points of its tiebreak, or of the tiebreak played in place of the set.
    pub tiebreak: Option<[u32; 2]>,
    /// Who won it.
    pub winner: Option<Side>,
}

/// Where a match stands.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct TennisScore {
    /// The sets begun, the one in play last.
    pub sets: Vec<SetScore>,
    /// The points of the game in play as they are called: `0`, `15`, `30`, `40`, `A`, or the plain
    /// count in a tiebreak; null when the match is over.
    pub game: Option<[String; 2]>,
    /// Whether the next point ends the game, whoever wins it, because of the deuce rule.
    pub deciding_point: bool,
    /// Who serves the next point; null when the match is over.
    pub serving: Option<Side>,
    /// Who won the match.
    pub winner: Option<Side>,
}

/// The match is over: no further point can be counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Over;

/// A match in play.
#[derive(Clone, Debug)]
pub struct TennisMatch<'a> {
    rules: &'a SetRuleSet,
    sets: Vec<SetScore>,
    sets_won: [u32; 2],
    /// The points of the game or tiebreak in play.
    points: [u32; 2],
    tiebreak: Option<Game>,
    /// Whose turn it is to serve: the whole game, or the first point of a tiebreak.
    turn: Side,
    winner: Option<Side>,
}

impl<'a> TennisMatch<'a> {
    /// A match before its first point.
    pub fn new(rules: &'a SetRuleSet, first_server: Side) -> Self {
        let mut game = Self {
            rules,
            sets: Vec::new(),
            sets_won: [0, 0],
            points: [0, 0],
            tiebreak: None,
            turn: first_server,
            winner: None,
        };
        game.begin_set();
        game
    }

    /// Counts a point.
    ///
    /// # Errors
    /// When the match is over.
    pub fn point(&mut self, winner: Side) -> Result<(), Over> {
        if self.winner.is_some() {
            return Err(Over);
        }
        winner.add(&mut self.points);
        let points = winner.of(self.points);
        if let Some(rule) = self.tiebreak {
            if let Some(set) = self.sets.last_mut() {
                set.tiebreak = Some(self.points);
            }
            if is_won(rule, points) {
                self.end_tiebreak(winner);
            }
        } else if wins_game(self.rules.deuce, points) {
            self.end_game(winner);
        }
        Ok(())
    }

    fn end_game(&mut self, winner: Side) {
        self.points = [0, 0];
        self.turn = self.turn.other();
        let Some(rule) = self.set_rule() else { return };
        let Some(set) = self.sets.last_mut() else { return };
        winner.add(&mut set.games);
        let games = set.games;
        if is_won(Game { to: rule.games, win_by: rule.win_by }, winner.of(games)) {
            self.end_set(winner);
        } else if let Some(tiebreak) = rule.tiebreak
            && games == [u32::from(tiebreak.at); 2]
        {
            self.begin_tiebreak(Game { to: tiebreak.to, win_by: tiebreak.win_by });
        }
    }

    fn end_tiebreak(&mut self, winner: Side) {
        self.points = [0, 0];
        self.tiebreak = None;
        // Who served first in the tiebreak receives first in the next set.
        self.turn = self.turn.other();
        if self.set_rule().is_some()
            && let Some(set) = self.sets.last_mut()
        {
            winner.add(&mut set.games);
        }
        self.end_set(winner);
    }

    fn end_set(&mut self, winner: Side) {
        if let Some(set) = self.sets.last_mut() {
            set.winner = Some(winner);
        }
        winner.add(&mut self.sets_won);
        if winner.of(self.sets_won).0 >= u32::from(self.rules.sets_to_win) {
            self.winner = Some(winner);
        } else {
            self.begin_set();
        }
    }

    fn begin_set(&mut self) {
        self.sets.push(SetScore { games: [0, 0], tiebreak: None, winner: None });
        if let Some(tiebreak) = self.in_place_of_set() {
            self.begin_tiebreak(tiebreak);
        }
    }

    fn begin_tiebreak(&mut self, rule: Game) {
        self.tiebreak = Some(rule);
        if let Some(set) = self.sets.last_mut() {
            set.tiebreak = Some([0, 0]);
        }
    }

    /// What the rules say of the set in play when it decides the match.
    fn last_set(&self) -> Option<LastSet> {
        let before = u32::from(self.rules.sets_to_win).saturating_sub(1);
        let decides = self.sets.len() as u64 == u64::from(before) * 2 + 1;
        self.rules.last_set.filter(|_| decides)
    }

    fn in_place_of_set(&self) -> Option<Game> {
        self.last_set().and_then(|last| last.tiebreak)
    }

    /// The rule of the set in play; none where a tiebreak stands in its place.
    fn set_rule(&self) -> Option<SetRule> {
        match self.last_set() {
            Some(LastSet { tiebreak: Some(_), .. }) => None,
            Some(LastSet { set: Some(rule), .. }) => Some(rule),
            _ => Some(self.rules.set),
        }
    }

    fn serving(&self) -> Side {
        let played = u64::from(self.points[0]) + u64::from(self.points[1]);
        // In a tiebreak the first point is served once, then each side serves two in a row.
        let changed = self.tiebreak.is_some() && played.div_ceil(2) % 2 == 1;
        if changed { self.turn.other() } else { self.turn }
    }

    fn called(&self) -> [String; 2] {
        if self.tiebreak.is_some() {
            return self.points.map(|points| points.to_string());
        }
        let [a, b] = self.points;
        let call = |mine: u32, theirs: u32| match mine {
            0 => "0",
            1 => "15",
            2 => "30",
            _ if mine > theirs && theirs >= 3 => "A",
            _ => "40",
        };
        [call(a, b).to_owned(), call(b, a).to_owned()]
    }

    /// Where it stands.
    pub fn score(&self) -> TennisScore {
        let in_play = self.winner.is_none();
        TennisScore {
            sets: self.sets.clone(),
            game: in_play.then(|| self.called()),
            deciding_point: in_play
                && self.tiebreak.is_none()
                && decides(self.rules.deuce, self.points),
            serving: in_play.then(|| self.serving()),
            winner: self.winner,
        }
    }
}

/// Whether the first of the two has won the game: four points and a lead of two, or the deciding
/// point.
fn wins_game(deuce: Deuce, (mine, theirs): (u32, u32)) -> bool {
    let by_two = mine >= 4 && mine >= theirs.saturating_add(2);
    by_two || mine > 0 && mine > theirs && decides(deuce, [mine - 1, theirs])
}

/// Whether the point after these ends the game whoever wins it: the first deuce (three points each)
/// where there is a deciding point, the third (five each, two advantages played) with a star point.
fn decides(deuce: Deuce, points: [u32; 2]) -> bool {
    match deuce {
        Deuce::Advantage => false,
        Deuce::DecidingPoint => points == [3, 3],
        Deuce::StarPoint => points == [5, 5],
    }
}

/// The score after these points.
///
/// # Errors
/// The number of the first point after the match, from 0.
pub fn play(
    rules: &SetRuleSet,
    first_server: Side,
    winners: &[Side],
) -> Result<TennisScore, usize> {
    let mut game = TennisMatch::new(rules, first_server);
    for (number, winner) in winners.iter().enumerate() {
        game.point(*winner).map_err(|Over| number)?;
    }
    Ok(game.score())
}

#[cfg(test)]
#[path = "tennis_score_tests.rs"]
mod tests;
