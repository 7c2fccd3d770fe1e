//! Point games: rallies to points, games and the match.
//!
//! With side-out scoring only the server scores, and a rally lost by the server changes the service;
//! in doubles it goes to the partner first, except that the side that serves first in a game has one
//! server only (USA Racquetball Official Rules, rule 4.2; USA Pickleball, the call 0-0-2).
//! With rally scoring the winner of the rally scores and serves next.

use schemars::JsonSchema;
use serde::Serialize;

use super::Side;
use crate::sports::pack::{Game, NextServer, RuleSet, Scoring};

/// What decides a match of point games.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PointRules<'a> {
    /// Who can score.
    pub scoring: Scoring,
    /// The games in order, as many as can be played.
    pub games: &'a [Game],
    /// How many games win the match.
    pub games_to_win: u8,
    /// Who serves first in the next game.
    pub next_server: NextServer,
    /// Whether both of a side serve before the service goes over.
    pub both_serve: bool,
}

impl<'a> From<&'a RuleSet> for PointRules<'a> {
    fn from(rules: &'a RuleSet) -> Self {
        Self {
            scoring: rules.scoring,
            games: &rules.games,
            games_to_win: rules.games_to_win,
            next_server: rules.next_server,
            both_serve: rules.both_serve,
        }
    }
}

/// Where a match stands.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Score {
    /// The points of each game begun, the one in play last.
    pub games: Vec<[u32; 2]>,
    /// Who serves the next rally; null when the match is over, or when who serves first in this
    /// game is asked for and was not given.
    pub serving: Option<Side>,
    /// Where both of a side serve: which of them serves the next rally, 1 or 2. After 2 the service
    /// goes over; who serves first in a game is 2, for that side has no other server.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub server: Option<u8>,
    /// Who won the match.
    pub winner: Option<Side>,
}

/// Why a rally cannot be counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Uncounted {
    /// The match is over.
    Over,
    /// Nobody said who serves first in this game, counted from 1.
    NoServer {
        /// The game.
        game: usize,
    },
}

/// A match in play.
#[derive(Clone, Debug)]
pub struct Match<'a> {
    rules: PointRules<'a>,
    next_servers: &'a [Side],
    games: Vec<[u32; 2]>,
    won: [u32; 2],
    first_server: Option<Side>,
    serving: Option<Side>,
    second: bool,
    winner: Option<Side>,
}

impl<'a> Match<'a> {
    /// A match before its first rally. `next_servers` says who serves first in the second game, the
    /// third and so on, where the rules ask for it.
    pub fn new(rules: PointRules<'a>, first_server: Side, next_servers: &'a [Side]) -> Self {
        Self {
            rules,
            next_servers,
            games: vec![[0, 0]],
            won: [0, 0],
            first_server: Some(first_server),
            serving: Some(first_server),
            second: true,
            winner: None,
        }
    }

    /// Counts a rally.
    ///
    /// # Errors
    /// `Over` after the match; `NoServer` where who serves first in this game is not known.
    pub fn rally(&mut self, winner: Side) -> Result<(), Uncounted> {
        if self.winner.is_some() {
            return Err(Uncounted::Over);
        }
        let game = self.games.len();
        let serving = self.serving.ok_or(Uncounted::NoServer { game })?;
        if self.rules.scoring == Scoring::Server && serving != winner {
            self.service_lost(winner);
            return Ok(());
        }
        self.serving = Some(winner);
        let (Some(rule), Some(points)) = (self.rules.games.get(game - 1), self.games.last_mut())
        else {
            return Err(Uncounted::Over);
        };
        winner.add(points);
        if is_won(*rule, winner.of(*points)) {
            self.end_game(winner);
        }
        Ok(())
    }

    /// The next server of the side, or the other side.
    fn service_lost(&mut self, to: Side) {
        if self.rules.both_serve && !self.second {
            self.second = true;
            return;
        }
        self.serving = Some(to);
        self.second = false;
    }

    fn end_game(&mut self, winner: Side) {
        winner.add(&mut self.won);
        let (mine, _) = winner.of(self.won);
        if mine >= u32::from(self.rules.games_to_win) {
            self.winner = Some(winner);
            self.serving = None;
            return;
        }
        self.first_server = match self.rules.next_server {
            NextServer::Other => self.first_server.map(Side::other),
            NextServer::Winner => Some(winner),
            NextServer::Given => self.next_servers.get(self.games.len() - 1).copied(),
        };
        self.serving = self.first_server;
        self.second = true;
        self.games.push([0, 0]);
    }

    /// Where it stands.
    pub fn score(&self) -> Score {
        let server =
            self.serving.filter(|_| self.rules.both_serve).map(|_| 1 + u8::from(self.second));
        Score { games: self.games.clone(), serving: self.serving, server, winner: self.winner }
    }
}

/// The score after these rallies.
///
/// ```
/// use carryover_core::games::{Side::{A, B}, score::{PointRules, play}};
/// use carryover_core::sports::pack::{Game, NextServer, Scoring};
/// let rules = PointRules {
///     scoring: Scoring::Server,
///     games: &[Game { to: 15, win_by: 1 }],
///     games_to_win: 1,
///     next_server: NextServer::Other,
///     both_serve: false,
/// };
/// let score = play(rules, A, &[], &[A, A, B, B]).unwrap();
/// assert_eq!((score.games, score.serving), (vec![[2, 1]], Some(B)));
/// ```
///
/// # Errors
/// The number of the first rally that cannot be counted, from 0, and why.
pub fn play(
    rules: PointRules<'_>,
    first_server: Side,
    next_servers: &[Side],
    winners: &[Side],
) -> Result<Score, (usize, Uncounted)> {
    let mut game = Match::new(rules, first_server, next_servers);
    for (number, winner) in winners.iter().enumerate() {
        game.rally(*winner).map_err(|why| (number, why))?;
    }
    Ok(game.score())
}

/// Whether the first of the two has won the game.
pub(super) fn is_won(rule: Game, (mine, theirs): (u32, u32)) -> bool {
    mine >= u32::from(rule.to) && mine.saturating_sub(theirs) >= u32::from(rule.win_by).max(1)
}

/// Whether a game can end with these points: it is won, and was not won a point earlier.
pub fn can_end(rule: Game, points: [u32; 2]) -> bool {
    let winner = if points[0] > points[1] { Side::A } else { Side::B };
    let (mine, theirs) = winner.of(points);
    is_won(rule, (mine, theirs)) && !is_won(rule, (mine - 1, theirs))
}

/// Who won a match written down by its games; `Ok(None)` while nobody has.
///
/// # Errors
/// The number of the first game, from 0, that cannot have ended so or was played after the match.
pub fn winner_of(rules: PointRules<'_>, games: &[[u32; 2]]) -> Result<Option<Side>, usize> {
    let mut won = [0, 0];
    let mut winner = None;
    for (number, points) in games.iter().enumerate() {
        let rule = rules.games.get(number).ok_or(number)?;
        if winner.is_some() || !can_end(*rule, *points) {
            return Err(number);
        }
        let side = if points[0] > points[1] { Side::A } else { Side::B };
        side.add(&mut won);
        winner = (side.of(won).0 >= u32::from(rules.games_to_win)).then_some(side);
    }
    Ok(winner)
}

/// Who has more points in all games together, who in racquetball then chooses to serve or receive
/// in the tiebreaker; `None` when a coin decides.
pub fn more_points(games: &[[u32; 2]]) -> Option<Side> {
    let sum = |side: Side| games.iter().map(|points| u64::from(side.of(*points).0)).sum::<u64>();
    match sum(Side::A).cmp(&sum(Side::B)) {
        std::cmp::Ordering::Greater => Some(Side::A),
        std::cmp::Ordering::Less => Some(Side::B),
        std::cmp::Ordering::Equal => None,
    }
}

#[cfg(test)]
#[path = "score_tests.rs"]
mod tests;
