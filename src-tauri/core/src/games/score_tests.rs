//! Point games against the rulebooks, and what must hold for every run of rallies.

use proptest::prelude::*;

use super::*;
use crate::sports;
use Side::{A, B};

fn sides(letters: &str) -> Vec<Side> {
    letters.chars().map(|letter| Side::read(letter).expect("a or b")).collect()
}

fn rules(sport: &str, id: &str) -> PointRules<'static> {
    let pack = sports::pack(sport).expect("a pack");
    pack.scoring.iter().find(|rules| rules.id == id).expect("a rule set").into()
}

fn usar() -> PointRules<'static> {
    rules("racquetball", "usar-2023")
}

const BY_TWO: Game = Game { to: 11, win_by: 2 };
const TO_15: Game = Game { to: 15, win_by: 1 };

fn three(scoring: Scoring, next_server: NextServer) -> PointRules<'static> {
    let games = &[Game { to: 2, win_by: 1 }; 3];
    PointRules { scoring, games, games_to_win: 2, next_server, both_serve: false }
}

/// USA Racquetball Official Rules, rule 1: only the server scores; International Racquetball
/// Federation 2022: the winner of the rally scores.
#[test]
fn the_same_rallies_score_by_their_rules() {
    let score = |rules| play(rules, A, &[], &sides("aabb")).expect("counted");
    let side_out = score(usar());
    assert_eq!((side_out.games, side_out.serving), (vec![[2, 1]], Some(B)));
    let rally = score(rules("racquetball", "irf-2022-to-15"));
    assert_eq!((rally.games, rally.serving, rally.winner), (vec![[2, 2]], Some(B), None));
}

/// USA Racquetball Official Rules, rule 1: to 15 and to 11, no lead of two. World Squash Singles
/// Rules 2010: to 11 by two. International Racquetball Federation 2022: the fifth game by two.
#[test]
fn a_game_ends_where_its_rules_end_it() {
    let fits = |rule, a, b| can_end(rule, [a, b]) && can_end(rule, [b, a]);
    assert!(fits(TO_15, 15, 14));
    assert!(fits(Game { to: 11, win_by: 1 }, 11, 10));
    for (a, b, valid) in
        [(11, 10, false), (12, 10, true), (13, 12, false), (13, 11, true), (14, 10, false)]
    {
        assert_eq!(fits(BY_TWO, a, b), valid, "{a}-{b}");
    }
    assert!(fits(BY_TWO, 11, 0) && fits(BY_TWO, 11, 9) && !fits(BY_TWO, 0, 0));
    let irf = rules("racquetball", "irf-2022-to-15").games;
    assert!(!fits(irf[4], 11, 10), "the fifth game needs a lead of two");
    assert!(fits(irf[3], 15, 14), "the fourth does not");
}

/// USA Racquetball Official Rules, rules 1 and 3: the match is won by two games; who has more
/// points in the first two games chooses to serve or receive in the tiebreaker.
#[test]
fn a_match_is_read_from_its_games() {
    let games = [[15, 9], [12, 15], [11, 8]];
    assert_eq!(winner_of(usar(), &games), Ok(Some(A)));
    assert_eq!(more_points(&games[..2]), Some(A), "27 to 24");
    assert_eq!(more_points(&[[15, 9], [9, 15]]), None, "a coin decides");
    assert_eq!(winner_of(usar(), &games[..2]), Ok(None));
    assert_eq!(winner_of(usar(), &[[15, 9], [16, 14]]), Err(1), "there is no 16-14");
    assert_eq!(winner_of(usar(), &[[15, 0], [15, 0], [11, 0]]), Err(2), "after the match");
}

#[test]
fn a_finished_game_begins_the_next_one() {
    let score = play(usar(), A, &[], &[A; 15]).expect("counted");
    assert_eq!(score.games, [[15, 0], [0, 0]]);
    assert_eq!(score.serving, Some(B), "who did not serve first");
    let over = play(usar(), A, &[], &sides(&format!("{}a{}", "a".repeat(15), "a".repeat(15))));
    let over = over.expect("counted");
    assert_eq!(over.games, [[15, 0], [15, 0]], "the first a wins back the service");
    assert_eq!((over.serving, over.winner), (None, Some(A)));
    assert_eq!(play(usar(), A, &[], &[A; 32]), Err((31, Uncounted::Over)));
}

#[test]
fn the_next_server_is_who_the_rules_say() {
    for scoring in [Scoring::Rally, Scoring::Server] {
        let after = |next_server, next_servers: &[Side]| {
            play(three(scoring, next_server), A, next_servers, &[A, A]).expect("counted").serving
        };
        assert_eq!(after(NextServer::Other, &[]), Some(B));
        assert_eq!(after(NextServer::Winner, &[]), Some(A));
        assert_eq!(after(NextServer::Given, &[B]), Some(B));
        assert_eq!(after(NextServer::Given, &[]), None, "it is asked for");
    }
    let given = three(Scoring::Rally, NextServer::Given);
    assert_eq!(play(given, A, &[], &[A; 3]), Err((2, Uncounted::NoServer { game: 2 })));
    let third = play(given, A, &[B, A], &sides("aabb")).expect("counted");
    assert_eq!((third.games, third.serving), (vec![[2, 0], [0, 2], [0, 0]], Some(A)));
}

/// USA Racquetball Official Rules, rule 4.2(a) and (c): both partners serve before the service goes
/// over, except that the side that serves first in a game has one server only. The same of
/// pickleball: a game begins with the call 0-0-2 (published explanations of the rules of USA
/// Pickleball; the rulebook itself was not read).
#[test]
fn in_doubles_both_of_a_side_serve() {
    for rules in [rules("racquetball", "usar-2023-doubles"), rules("pickleball", "usap-doubles")] {
        for (rallies, points, serving, server) in [
            ("", [0, 0], A, 2),
            ("aab", [2, 0], B, 1),
            ("b", [0, 0], B, 1),
            ("bb", [0, 1], B, 1),
            ("ba", [0, 0], B, 2),
            ("bab", [0, 1], B, 2),
            ("baba", [0, 1], A, 1),
            ("babaa", [1, 1], A, 1),
            ("babaab", [1, 1], A, 2),
            ("babaaba", [2, 1], A, 2),
            ("babaabab", [2, 1], B, 1),
        ] {
            let score = play(rules, A, &[], &sides(rallies)).expect("counted");
            assert_eq!((score.games, score.serving), (vec![points], Some(serving)), "{rallies}");
            assert_eq!(score.server, Some(server), "{rallies}");
        }
    }
    let second_game = play(rules("racquetball", "usar-2023-doubles"), A, &[], &[A; 15]);
    let second_game = second_game.expect("counted");
    assert_eq!((second_game.serving, second_game.server), (Some(B), Some(2)), "one server again");
    assert_eq!(play(usar(), A, &[], &[]).expect("counted").server, None, "not in singles");
}

fn any_rules() -> impl Strategy<Value = (Scoring, Vec<Game>, u8, NextServer, bool)> {
    let scoring = prop_oneof![Just(Scoring::Server), Just(Scoring::Rally)];
    let next = prop_oneof![Just(NextServer::Other), Just(NextServer::Winner)];
    let game = (1u16..8, 1u16..4).prop_map(|(to, win_by)| Game { to, win_by });
    (scoring, 1u8..4, next).prop_flat_map(move |(scoring, to_win, next)| {
        let games = proptest::collection::vec(game.clone(), usize::from(to_win) * 2 - 1);
        let both =
            if scoring == Scoring::Server { any::<bool>().boxed() } else { Just(false).boxed() };
        (Just(scoring), games, Just(to_win), Just(next), both)
    })
}

fn any_side() -> impl Strategy<Value = Side> {
    prop_oneof![Just(A), Just(B)]
}

proptest! {
    #[test]
    fn every_match_keeps_its_rules(
        (scoring, games, games_to_win, next_server, both_serve) in any_rules(),
        first in any_side(),
        winners in proptest::collection::vec(any_side(), 0..200),
    ) {
        let rules = PointRules { scoring, games: &games, games_to_win, next_server, both_serve };
        let mut game = Match::new(rules, first, &[]);
        let mut counted = 0;
        for winner in winners {
            let before = game.score();
            match game.rally(winner) {
                Ok(()) => {
                    prop_assert!(before.winner.is_none());
                    counted += 1;
                }
                Err(why) => {
                    prop_assert_eq!(why, Uncounted::Over);
                    prop_assert!(before.winner.is_some(), "only a finished match refuses");
                    prop_assert_eq!(game.score(), before, "a refused rally changes nothing");
                }
            }
        }
        let score = game.score();
        let points: u32 = score.games.iter().flatten().sum();
        if scoring == Scoring::Rally {
            prop_assert_eq!(points, counted, "every rally is a point");
        } else {
            prop_assert!(points <= counted);
        }
        prop_assert!(score.games.len() <= games.len());
        prop_assert_eq!(score.serving.is_none(), score.winner.is_some());
        prop_assert_eq!(score.server.is_some(), both_serve && score.winner.is_none());
        let finished = score.games.len() - usize::from(score.winner.is_none());
        for (points, rule) in score.games.iter().zip(&games).take(finished) {
            prop_assert!(can_end(*rule, *points), "{:?} ends {:?}", points, rule);
        }
        prop_assert_eq!(winner_of(rules, &score.games[..finished]), Ok(score.winner));
        if let (None, Some(points)) = (score.winner, score.games.last()) {
            let rule = games[score.games.len() - 1];
            prop_assert!(!is_won(rule, A.of(*points)) && !is_won(rule, B.of(*points)));
        }
    }
}
