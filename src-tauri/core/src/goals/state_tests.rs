//! Every row of the table of states, each as one line of history and what must come of it.

use super::*;
use crate::goals::{Block, Choice, Condition, Criterion, Decision, Kind, Source};
use crate::kinds::Day;
use crate::kinds::ids::{BlockId, DecisionId, GoalId, VisitId};
use uuid::Uuid;

fn id<T: From<Uuid>>(n: u128) -> T {
    Uuid::from_u128(n).into()
}

/// Reads a history such as `end 8/10 | retest 7/10, end 9/10 | aside`: visits are parted by bars, in
/// the first the goal is set, into the others it is carried; `~` before a count marks another
/// condition, `told` and `game` another source.
fn history(text: &str) -> History {
    let mut visits = Vec::new();
    let mut decisions = Vec::new();
    for (n, part) in text.split('|').enumerate() {
        let visit: VisitId = id(n as u128 + 1);
        let day = Day::of(2024, 1, 15).unwrap().plus(90 * n as i64);
        let mut at = AtVisit {
            visit,
            day,
            how: if n == 0 { How::Set } else { How::Carried },
            closed: !part.contains("open"),
            blocks: Vec::new(),
        };
        for (place, word) in part.split(',').map(str::trim).enumerate() {
            let decide = |kind, reason: &str| Decision {
                id: id::<DecisionId>((n * 100 + place) as u128 + 1000),
                visit: Some(visit),
                day,
                kind,
                reason: reason.to_owned(),
                raised_to: (kind == Choice::Raise).then(|| id::<GoalId>(9)),
            };
            match word {
                "" | "open" => {}
                "aside" => decisions.push(decide(Choice::SetAside, "shoulder rest")),
                "up" => decisions.push(decide(Choice::TakeUp, "")),
                "close" => decisions.push(decide(Choice::Close, "no longer wanted")),
                "raise" => decisions.push(decide(Choice::Raise, "")),
                "on" => decisions.push(decide(Choice::CarryOn, "")),
                block => at.blocks.push(block_of(block, visit, day, n * 10 + place)),
            }
        }
        visits.push(at);
    }
    History { criterion: Criterion::of_tries(8, 10), condition: Condition::Fed, visits, decisions }
}

fn block_of(text: &str, visit: VisitId, day: Day, n: usize) -> Block {
    let words: Vec<&str> = text.split(' ').collect();
    let kind = match words[0] {
        "retest" => Kind::Retest,
        "end" => Kind::EndTest,
        "look" => Kind::LookBack,
        "practice" => Kind::Practice,
        other => panic!("{other}?"),
    };
    let source = if words.contains(&"told") {
        Source::Told
    } else if words.contains(&"game") {
        Source::GameChances
    } else {
        Source::TotalEntered
    };
    let count = words.iter().find(|w| w.contains('/')).unwrap();
    let elsewhere = count.starts_with('~');
    let (made, tries) = count.trim_start_matches('~').split_once('/').unwrap();
    Block {
        id: id::<BlockId>(n as u128 + 1),
        goal: id::<GoalId>(1),
        visit,
        lesson: None,
        place: 1,
        kind,
        condition: if elsewhere { Condition::Live } else { Condition::Fed },
        source,
        day,
        uncounted: 0,
        tries: Vec::new(),
        count: Count { made: made.parse().unwrap(), tries: tries.parse().unwrap() },
        also: None,
        in_game: None,
        misses: Vec::new(),
        ended: !words.contains(&"going"),
    }
}

#[test]
fn every_row_of_the_table_holds() {
    use State::{Closed, Kept, Met, Raised, SetAside, Slipped, Working};
    for (text, state, why) in [
        // – | goal set | working
        ("", Working, "just set"),
        // working | the named end test reaches the criterion | met
        ("end 8/10", Met, "8 of 10 in the end test; the retest will tell"),
        ("end 16/20", Met, "16 of 20 in the end test; the retest will tell"),
        // working | it stays below | unchanged
        ("end 7/10", Working, "7 of 10 in the end test"),
        ("end 15/20", Working, "15 of 20 in the end test"),
        // working | a retest is below | unchanged
        (
            "end 4/10 | retest 5/10",
            Working,
            "5 of 10 before coaching, too few to tell against 4 of 10 in Jan 24",
        ),
        // working | a retest before any coaching reaches it | met
        ("end 4/10 | retest 9/10", Met, "came back with it: 9 of 10 before any coaching"),
        // met | a retest at a later visit reaches it | kept
        ("end 8/10 | retest 8/10", Kept, "reached again: 8 of 10 before any coaching"),
        // met | that retest is below, and down or leaning down | slipped
        ("end 9/10 | retest 4/10", Slipped, "4 of 10 before coaching, down from 9 of 10 in Jan 24"),
        (
            "end 8/10 | retest 4/10",
            Slipped,
            "4 of 10 before coaching, leaning down from 8 of 10 in Jan 24",
        ),
        // met | below otherwise | working
        ("end 8/10 | retest 7/10", Working, "reached at visit Jan 24, not repeated: 7 of 10"),
        // slipped | the end test reaches it | met; and it can be kept after that
        ("end 9/10 | retest 4/10, end 8/10", Met, "8 of 10 in the end test; the retest will tell"),
        (
            "end 9/10 | retest 4/10, end 8/10 | retest 8/10",
            Kept,
            "reached again: 8 of 10 before any coaching",
        ),
        // slipped | stays below, retest below | unchanged
        (
            "end 9/10 | retest 4/10, end 6/10",
            Slipped,
            "6 of 10 in the end test, too few to tell against 9 of 10 in Jan 24",
        ),
        (
            "end 9/10 | retest 4/10 | retest 6/10",
            Slipped,
            "6 of 10 before coaching, too few to tell against 9 of 10 in Jan 24",
        ),
        // slipped | a retest reaches it | met
        (
            "end 9/10 | retest 4/10 | retest 8/10",
            Met,
            "came back with it: 8 of 10 before any coaching",
        ),
        // kept | a later look back or game chances reach it | kept
        ("end 8/10 | retest 8/10 | look 9/10", Kept, "still there: 9 of 10 in a later look"),
        (
            "end 8/10 | retest 8/10 | practice 9/10 game",
            Kept,
            "still there: 9 of 10 in a later look",
        ),
        // kept | below, and down or leaning down | slipped
        (
            "end 9/10 | retest 9/10 | look 4/10",
            Slipped,
            "reopened: 4 of 10 in a later look, down from 9 of 10 in Apr 24",
        ),
        (
            "end 9/10 | retest 9/10 | practice 4/10 game",
            Slipped,
            "reopened: 4 of 10 in a later look, down from 9 of 10 in Apr 24",
        ),
        // A retest of a goal that was kept at an earlier visit is a later look at it.
        (
            "end 9/10 | retest 9/10 | retest 4/10",
            Slipped,
            "reopened: 4 of 10 in a later look, down from 9 of 10 in Apr 24",
        ),
        // kept | below otherwise | kept
        ("end 8/10 | retest 8/10 | look 7/10", Kept, "7 of 10 in a later look; worth another look"),
        // met | a later end test is below, and there was no retest | unchanged, retest owed
        ("end 8/10 | end 5/10", Met, "not retested"),
        // met | an end test after a retest, or a later one that reaches it | unchanged
        ("end 8/10 | end 9/10", Met, "not retested"),
        ("end 4/10 | retest 8/10, end 5/10", Met, "5 of 10 in a later end test"),
        ("end 8/10 | retest 8/10, end 5/10", Kept, "5 of 10 in a later end test"),
        // any | not retested | unchanged
        ("end 8/10 | practice 3/10", Met, "not retested"),
        ("end 4/10 | ", Working, "not retested"),
        // any | raised, closed, set aside, taken up again
        ("end 8/10, raise", Raised, "raised to a harder goal"),
        ("close", Closed, "closed: no longer wanted"),
        ("end 8/10, aside", SetAside, "set aside: shoulder rest"),
        ("end 8/10, aside | up", Working, "taken up again"),
        ("end 8/10, on", Met, "8 of 10 in the end test; the retest will tell"),
    ] {
        let standing = derive(&history(text));
        assert_eq!((standing.state, standing.why.as_str()), (state, why), "{text}");
    }
}

#[test]
fn a_later_end_test_below_says_that_a_retest_is_owed() {
    let standing = derive(&history("end 8/10 | end 5/10, open"));
    assert_eq!(standing.why, "5 of 10 in the end test; retest owed");
    assert_eq!(standing.state, State::Met);
}

#[test]
fn a_short_retest_can_slip_a_goal_and_never_meets_or_keeps_it() {
    for (text, state) in [
        ("end 4/10 | retest 5/5", State::Working),
        ("end 8/10 | retest 5/5", State::Met),
        ("end 10/10 | retest 0/5", State::Slipped),
        ("end 5/5", State::Working),
    ] {
        assert_eq!(derive(&history(text)).state, state, "{text}");
    }
}

#[test]
fn what_is_told_what_is_practised_and_other_conditions_move_nothing() {
    for text in [
        "practice 10/10",
        "end 10/10 told",
        "end ~10/10",
        "end 4/10 | retest 10/10 told",
        "end 4/10 | retest ~10/10",
        "end 10/10 going",
    ] {
        assert_eq!(derive(&history(text)).state, State::Working, "{text}");
    }
}

#[test]
fn a_goal_set_here_has_no_retest_here() {
    assert_eq!(derive(&history("retest 10/10")).state, State::Working);
}

#[test]
fn a_change_is_measured_from_the_block_that_last_moved_the_goal() {
    // Never met: from the last end test of an earlier visit, not the one of this visit.
    let never_met = derive(&history("end 2/10 | retest 3/10, end 5/10 | retest 6/10"));
    let befores: Vec<_> =
        never_met.steps.iter().map(|s| s.since.as_ref().map(|s| s.before.made)).collect();
    assert_eq!(befores, [None, Some(2), Some(2), Some(5)]);
    // Met: from the block that met it, whatever came later.
    let met = derive(&history("end 9/10 | end 10/10 | retest 7/10"));
    let since =
        met.steps.iter().rfind(|s| s.block.is_some()).and_then(|s| s.since.clone()).unwrap();
    assert_eq!(since.before, Count { made: 9, tries: 10 });
}

#[test]
fn a_decision_between_visits_falls_between_them() {
    let mut history = history("end 8/10 | retest 8/10");
    history.decisions.push(Decision {
        id: id(77),
        visit: None,
        day: history.visits[0].day.plus(10),
        kind: Choice::SetAside,
        reason: "a season off".to_owned(),
        raised_to: None,
    });
    let standing = derive(&history);
    assert_eq!(standing.state, State::SetAside, "a goal set aside is not kept by a retest");
    assert_eq!(standing.steps[1].to, State::SetAside);
}

proptest::proptest! {
    /// No history makes a goal kept that was not met at an earlier visit.
    #[test]
    fn a_kept_goal_was_met_at_an_earlier_visit(
        visits in proptest::collection::vec(
            proptest::collection::vec((0_u32..=12, 0_usize..4), 0..4), 1..6)
    ) {
        let words = ["retest", "practice", "end", "look"];
        let text = visits
            .iter()
            .map(|blocks| {
                blocks.iter().map(|(made, kind)| format!("{} {made}/12", words[*kind])).collect::<Vec<_>>().join(", ")
            })
            .collect::<Vec<_>>()
            .join(" | ");
        let standing = derive(&history(&text));
        if let Some(kept) = standing.steps.iter().position(|s| s.to == State::Kept && s.from != State::Kept) {
            let met = standing.steps[..kept].iter().rfind(|s| s.to == State::Met && s.from != State::Met);
            proptest::prop_assert!(met.is_some_and(|met| met.visit != standing.steps[kept].visit), "{}", text);
        }
        // Steps join: each begins where the one before ended.
        for pair in standing.steps.windows(2) {
            proptest::prop_assert_eq!(pair[0].to, pair[1].from);
        }
    }
}

/// Whole games at visits parted by bars, as in `4 3 | 2 told:1`, under "at most 3, 2 games running".
fn of_games(text: &str) -> Standing {
    let mut history = history(&text.split('|').map(|_| "").collect::<Vec<_>>().join("|"));
    history.criterion = Criterion::at_most(3, 2);
    for (n, (at, part)) in history.visits.iter_mut().zip(text.split('|')).enumerate() {
        for (place, word) in part.split_whitespace().enumerate() {
            let told = word.starts_with("told:");
            let mut block = block_of("practice game 0/1", at.visit, at.day, n * 10 + place);
            block.source = if told { Source::Told } else { Source::GameChances };
            block.count = Count { made: 0, tries: 0 };
            block.in_game = Some(word.trim_start_matches("told:").parse().unwrap());
            at.blocks.push(block);
        }
    }
    derive(&history)
}

#[test]
fn at_most_so_many_a_game_is_reached_by_the_last_games_and_never_slips() {
    use State::{Kept, Met, Working};
    for (text, state, why) in [
        ("4", Working, "4 in this game"),
        ("3", Working, "3 in this game"),
        ("3 3", Met, "3, 3 in the last 2 games; a later visit will tell"),
        ("3 4", Working, "3, 4 in the last 2 games"),
        ("5 2 | 1", Met, "2, 1 in the last 2 games; a later visit will tell"),
        ("3 3 | 2", Kept, "reached again: 3, 2 in the last 2 games"),
        ("3 3 2", Met, "3, 2 in the last 2 games"),
        ("3 3 | 9", Working, "reached at visit Jan 24, not repeated: 3, 9 in the last 2 games"),
        ("3 3 | 2 | 9", Working, "reopened: 2, 9 in the last 2 games"),
        ("3 3 | told:0", Met, "not retested"),
        ("told:0 told:0", Working, "just set"),
        ("0 0 | ", Met, "not retested"),
    ] {
        let standing = of_games(text);
        assert_eq!((standing.state, standing.why.as_str()), (state, why), "{text}");
        assert!(
            standing.steps.iter().all(|s| s.since.is_none()),
            "no interval and no word: {text}"
        );
    }
}

#[test]
fn a_rate_needs_its_least_number_of_chances() {
    use State::{Kept, Met, Working};
    for (text, state) in [
        ("end 14/20", Met),
        ("end 13/20", Working),
        ("end 11/14", Working),
        ("end game 12/15", Met),
        ("end 15/20 | retest game 12/16", Kept),
        ("end 15/20 | retest 9/10", Met),
    ] {
        let mut history = history(text);
        history.criterion = Criterion::rate(70, 15);
        assert_eq!(derive(&history).state, state, "{text}");
    }
}
