//! Games, sets and tiebreaks against the rulebooks, and what must hold for every run of points.

use proptest::prelude::*;

use super::*;
use crate::sports::{self, pack::SetTiebreak};
use Side::{A, B};

fn rules(sport: &str, id: &str) -> &'static SetRuleSet {
    let pack = sports::pack(sport).expect("a pack");
    pack.set_scoring.iter().find(|rules| rules.id == id).expect("a rule set")
}

fn after(rules: &SetRuleSet, letters: &str) -> TennisScore {
    let winners: Vec<Side> =
        letters.chars().map(|letter| Side::read(letter).expect("a or b")).collect();
    play(rules, A, &winners).expect("counted")
}

/// What is called after these points of the first game, or how many games stand.
fn called(rules: &SetRuleSet, letters: &str) -> String {
    let score = after(rules, letters);
    match score.sets[0].games {
        [0, 0] => score.game.expect("in play").join("-"),
        [a, b] => format!("{a}:{b} games"),
    }
}

/// Games won in a row, four points each.
fn games(letters: &str) -> String {
    letters.chars().map(|letter| letter.to_string().repeat(4)).collect()
}

/// International Tennis Federation, Rules of Tennis 2017, rule 5: fifteen, thirty, forty; at deuce
/// the advantage, and two points in a row win the game.
#[test]
fn a_game_with_advantage() {
    let itf = rules("tennis", "itf-best-of-three");
    for (points, call) in [
        ("", "0-0"),
        ("a", "15-0"),
        ("ab", "15-15"),
        ("aab", "30-15"),
        ("aaa", "40-0"),
        ("aaaa", "1:0 games"),
        ("aaabbb", "40-40"),
        ("aaabbba", "A-40"),
        ("aaabbbab", "40-40"),
        ("aaabbbb", "40-A"),
        ("aaabbbbb", "0:1 games"),
        ("aaabbbabababab", "40-40"),
        ("aaabbbabababaa", "1:0 games"),
    ] {
        assert_eq!(called(itf, points), call, "after {points}");
    }
    assert!(!after(itf, "aaabbb").deciding_point);
}

/// The same rules, Appendix V: at three points each a deciding point is played.
#[test]
fn a_game_with_a_deciding_point() {
    for rules in [rules("tennis", "itf-no-ad"), rules("padel", "fip-golden-point")] {
        assert!(after(rules, "aaabbb").deciding_point);
        assert!(!after(rules, "aaabb").deciding_point);
        assert_eq!(called(rules, "aaabbba"), "1:0 games");
        assert_eq!(called(rules, "aaabbbb"), "0:1 games");
        assert_eq!(called(rules, "aaaba"), "1:0 games");
    }
}

/// International Padel Federation, General Assembly of 28 November 2025: at most two advantages,
/// then at the third deuce one deciding point.
#[test]
fn a_game_with_a_star_point() {
    let star = rules("padel", "fip-star-point");
    for (points, call, decides) in [
        ("aaabbb", "40-40", false),
        ("aaabbba", "A-40", false),
        ("aaabbbab", "40-40", false),
        ("aaabbbaba", "A-40", false),
        ("aaabbbabab", "40-40", true),
        ("aaabbbababa", "1:0 games", false),
        ("aaabbbababb", "0:1 games", false),
        ("aaabbbaa", "1:0 games", false),
        ("aaabbbabaa", "1:0 games", false),
        ("aaabbbb", "40-A", false),
    ] {
        assert_eq!(called(star, points), call, "after {points}");
        assert_eq!(after(star, points).deciding_point, decides, "after {points}");
    }
    let padel = sports::pack("padel").expect("a pack");
    let held: Vec<_> = padel
        .rules()
        .filter(|rules| rules.may_hold_on("2025-12-31".parse().expect("a day")))
        .map(|rules| rules.id())
        .collect();
    assert_eq!(held, ["fip-advantage", "fip-golden-point"], "the star point came with 2026");
}

/// Rules of Tennis 2017, rules 5 and 6: a set is six games by two; at six each a tiebreak to seven
/// by two. Whose turn it is serves its first point, then each side two; who served first in it
/// receives first in the next set.
#[test]
fn a_set_and_its_tiebreak() {
    let itf = rules("tennis", "itf-best-of-three");
    let set = |letters: &str| after(itf, letters).sets[0];
    assert_eq!(set(&games("aaaaaa")).winner, Some(A));
    assert_eq!(set(&games("aaaaabbbbba")).winner, None, "six to five is not enough");
    assert_eq!(set(&games("aaaaabbbbbaa")).games, [7, 5]);
    let level = games("aaaaabbbbbab");
    assert_eq!(set(&level).tiebreak, Some([0, 0]));
    let servers: Vec<_> = (0..12)
        .map(|points| {
            let tiebreak: String = "ab".repeat(6).chars().take(points).collect();
            after(itf, &format!("{level}{tiebreak}")).serving.expect("in play")
        })
        .collect();
    assert_eq!(servers, [A, B, B, A, A, B, B, A, A, B, B, A], "after twelve games A is first");
    let six_all = format!("{level}{}", "ab".repeat(6));
    assert_eq!(after(itf, &six_all).game.expect("in play").join("-"), "6-6");
    assert_eq!(set(&format!("{six_all}a")).winner, None, "seven to six is not enough");
    let ended = after(itf, &format!("{six_all}aa"));
    let first = SetScore { games: [7, 6], tiebreak: Some([8, 6]), winner: Some(A) };
    assert_eq!(ended.sets[0], first);
    assert_eq!(ended.sets.len(), 2);
    assert_eq!(ended.serving, Some(B), "A served first in the tiebreak");
}

/// Rules of Tennis 2017, rule 14: the service changes with every game, through the set's end.
#[test]
fn the_service_changes_with_every_game() {
    let itf = rules("tennis", "itf-best-of-three");
    assert_eq!(after(itf, &games("a")).serving, Some(B));
    assert_eq!(after(itf, &games("aaaaaa")).serving, Some(A), "after six games");
    assert_eq!(after(itf, &games("aaabaaa")).serving, Some(B), "after seven games");
}

/// Rules of Tennis 2017, rules 6 and 7 and Appendix V: matches of three and five sets, a last set
/// without a tiebreak, match tiebreaks to 10 and to 7, short sets to four.
#[test]
fn matches_end_as_their_rules_say() {
    let (a_set, b_set) = (games("aaaaaa"), games("bbbbbb"));
    let over = after(rules("tennis", "itf-best-of-three"), &format!("{a_set}{b_set}{a_set}"));
    assert_eq!((over.winner, over.serving, over.game), (Some(A), None, None));
    let five = rules("tennis", "itf-best-of-five");
    assert_eq!(after(five, &format!("{a_set}{a_set}")).winner, None);
    assert_eq!(after(five, &format!("{a_set}{a_set}{b_set}{a_set}")).winner, Some(A));

    let long = rules("tennis", "itf-advantage-last-set");
    let level = format!("{a_set}{b_set}{}", games("aaaaabbbbbabab"));
    let seven_all = after(long, &level);
    assert_eq!((seven_all.sets[2].games, seven_all.sets[2].tiebreak), ([7, 7], None));
    assert_eq!(after(long, &format!("{level}{}", games("aa"))).sets[2].games, [9, 7]);

    for (id, to) in [("itf-match-tiebreak", 10), ("itf-match-tiebreak-to-7", 7)] {
        let rules = rules("tennis", id);
        let one_all = after(rules, &format!("{a_set}{b_set}"));
        assert_eq!(one_all.sets[2].tiebreak, Some([0, 0]));
        assert_eq!(one_all.serving, Some(A), "the order of service goes on");
        let last = format!("{a_set}{b_set}{}{}", "b".repeat(to - 2), "a".repeat(to));
        let over = after(rules, &last);
        assert_eq!(over.winner, Some(A));
        let points = [to as u32, to as u32 - 2];
        let last = SetScore { games: [0, 0], tiebreak: Some(points), winner: Some(A) };
        assert_eq!(over.sets[2], last);
    }

    let short = rules("tennis", "itf-short-sets");
    assert_eq!(after(short, &games("aaaa")).sets[0].winner, Some(A));
    assert_eq!(after(short, &games("aaabbba")).sets[0].winner, None, "four to three");
    assert_eq!(after(short, &games("aaabbbab")).sets[0].tiebreak, Some([0, 0]));
}

fn any_rules() -> impl Strategy<Value = SetRuleSet> {
    let tiebreak = (1u16..5, 1u16..3);
    let set =
        (1u16..4, 1u16..3, proptest::option::of(tiebreak)).prop_map(|(games, win_by, tiebreak)| {
            SetRule {
                games,
                win_by,
                tiebreak: tiebreak.map(|(to, win_by)| SetTiebreak { at: games, to, win_by }),
            }
        });
    let last = prop_oneof![
        Just(None),
        set.clone().prop_map(|set| Some(LastSet { set: Some(set), tiebreak: None })),
        (1u16..5, 1u16..3).prop_map(|(to, win_by)| {
            Some(LastSet { set: None, tiebreak: Some(Game { to, win_by }) })
        }),
    ];
    let deuce =
        prop_oneof![Just(Deuce::Advantage), Just(Deuce::DecidingPoint), Just(Deuce::StarPoint)];
    (1u8..4, set, last, deuce).prop_map(|(sets_to_win, set, last_set, deuce)| SetRuleSet {
        id: "any".to_owned(),
        name: "Any".to_owned(),
        from: None,
        until: None,
        sets_to_win,
        set,
        last_set,
        deuce,
        notes: Vec::new(),
        source: "none".to_owned(),
    })
}

proptest! {
    #[test]
    fn every_match_keeps_its_rules(
        rules in any_rules(),
        winners in proptest::collection::vec(prop_oneof![Just(A), Just(B)], 0..300),
    ) {
        let mut game = TennisMatch::new(&rules, A);
        for winner in winners {
            let before = game.score();
            let counted = game.point(winner);
            let now = game.score();
            prop_assert_eq!(counted.is_err(), before.winner.is_some());
            if counted.is_err() {
                prop_assert_eq!(&now, &before, "a refused point changes nothing");
            }
            if before.deciding_point {
                prop_assert!(
                    now.sets.iter().map(|set| set.games).ne(before.sets.iter().map(|set| set.games)),
                    "a deciding point decides"
                );
            }
            let won = |side| now.sets.iter().filter(|set| set.winner == Some(side)).count();
            prop_assert!(now.sets.len() < usize::from(rules.sets_to_win) * 2);
            prop_assert!(won(A).max(won(B)) <= usize::from(rules.sets_to_win));
            prop_assert_eq!(now.winner.is_some(),
                won(A).max(won(B)) == usize::from(rules.sets_to_win));
            prop_assert_eq!(now.serving.is_none(), now.winner.is_some());
        }
    }

    /// Played with the letters changed, the score is the mirror of itself.
    #[test]
    fn the_sides_are_alike(
        rules in any_rules(),
        winners in proptest::collection::vec(prop_oneof![Just(A), Just(B)], 0..60),
    ) {
        let mirrored: Vec<Side> = winners.iter().map(|side| side.other()).collect();
        match (play(&rules, A, &winners), play(&rules, B, &mirrored)) {
            (Ok(there), Ok(back)) => {
                prop_assert_eq!(there.winner.map(Side::other), back.winner);
                prop_assert_eq!(there.serving.map(Side::other), back.serving);
                for (set, other) in there.sets.iter().zip(&back.sets) {
                    let [a, b] = set.games;
                    prop_assert_eq!([b, a], other.games);
                }
            }
            (there, back) => prop_assert_eq!(there.err(), back.err()),
        }
    }
}
