//! A day's choice worked out exactly, rest and all: the least value, and the lessons that have it.
//!
//! First backwards through the day, without the rest: what is at least still to come from each slot,
//! choice and stance. Then forwards, remembering how long each student who comes again must still
//! rest, and always from where the sum of what it cost and what is at least to come is least.

use std::cmp::Reverse;
use std::collections::{BinaryHeap, HashSet};

use super::ask::Ask;
use super::choices::People;
use super::day::{Board, NEVER, Weights};
use super::options::{Opening, openings};
use super::stance::Rules;

/// Where one stands in the day.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
struct Place {
    slot: usize,
    choice: usize,
    stance: usize,
    /// The slots that each person who comes again must still rest.
    rest: Vec<u32>,
}

/// How one came to a place.
struct Way {
    place: Place,
    value: i64,
    before: u32,
    lesson: Option<Opening>,
}

/// The least value of a day on which these students are taught so often, with at most so many slots
/// at some facilities, and its lessons; `None` when the day does not allow it.
pub(super) fn order(
    ask: &Ask,
    rules: &Rules,
    weights: Weights,
    day: u32,
    counts: &[(usize, u8)],
    caps: &[(usize, u32)],
) -> Option<(i64, Vec<Opening>)> {
    let rules = &rules.capped(caps);
    let wanted: Vec<(usize, u32)> =
        counts.iter().filter(|(_, n)| *n > 0).map(|(s, n)| (*s, u32::from(*n))).collect();
    let board = Board::set(ask, rules, weights, day, &openings(ask, day), &wanted)?;
    let all = |counts: &Vec<u8>| counts.iter().zip(&wanted).all(|(n, (_, w))| u32::from(*n) == *w);
    let whole = board.choices.counts.iter().position(all)?;
    let to_come = to_come(&board, whole);
    let wide = board.wide();
    let ahead = |p: &Place| to_come[p.slot][p.choice * wide + p.stance];
    let people = People::of(ask, wanted.iter().map(|(s, _)| *s));
    let rest_of = |p: usize| ask.slots_up(ask.students[people.who[p]].rest);
    let all_of = |p: usize| people.lessons(p, &board.choices.counts[whole]);
    let start = Place { slot: 0, choice: 0, stance: 0, rest: vec![0; people.who.len()] };
    let mut heap = BinaryHeap::from([Reverse((ahead(&start), usize::MAX, 0_u32))]);
    let mut ways = vec![Way { place: start, value: 0, before: 0, lesson: None }];
    let mut seen: HashSet<Place> = HashSet::new();
    while let Some(Reverse((sum, _, at))) = heap.pop() {
        if sum == NEVER {
            return None;
        }
        let (place, value) = (ways[at as usize].place.clone(), ways[at as usize].value);
        if place.slot == board.steps.len() {
            return Some((value, lessons(&ways, at)));
        }
        if !seen.insert(place.clone()) {
            continue;
        }
        let mut offer = |place: Place, value: i64, lesson: Option<Opening>| {
            let ahead = ahead(&place);
            if ahead != NEVER {
                let number = u32::try_from(ways.len()).unwrap_or(u32::MAX);
                heap.push(Reverse((value + ahead, usize::MAX - place.slot, number)));
                ways.push(Way { place, value, before: at, lesson });
            }
        };
        for step in &board.steps[place.slot] {
            let s = wanted.iter().position(|(s, _)| *s == step.opening.student);
            let rested = |s: &usize| people.of[*s].iter().all(|p| place.rest[*p] == 0);
            let Some(s) = s.filter(rested) else { continue };
            let Some((choice, stance, adds)) = board.take(place.choice, place.stance, step) else {
                continue;
            };
            let length = u32::try_from(step.length).unwrap_or(u32::MAX);
            let mut rest: Vec<u32> = place.rest.iter().map(|r| r.saturating_sub(length)).collect();
            for p in people.of[s].iter().copied() {
                if people.lessons(p, &board.choices.counts[choice]) < all_of(p) {
                    rest[p] = rest_of(p);
                }
            }
            let slot = place.slot + step.length;
            offer(Place { slot, choice, stance, rest }, value + adds, Some(step.opening));
        }
        if board.must[place.slot] {
            continue;
        }
        let rest = place.rest.iter().map(|r| r.saturating_sub(1)).collect();
        let stance = board.wait(place.slot, place.stance);
        offer(Place { slot: place.slot + 1, choice: place.choice, stance, rest }, value, None);
    }
    None
}

/// What is at least still to come until the choice is whole, from each slot, choice and stance.
fn to_come(board: &Board, whole: usize) -> Vec<Vec<i64>> {
    let (slots, wide) = (board.steps.len(), board.wide());
    let many = board.choices.counts.len();
    let mut to_come = vec![vec![NEVER; many * wide]; slots + 1];
    for stance in (0..wide).filter(|stance| board.can_end(*stance)) {
        to_come[slots][whole * wide + stance] = 0;
    }
    for slot in (0..slots).rev() {
        for choice in 0..many {
            for stance in 0..wide {
                let waited = to_come[slot + 1][choice * wide + board.wait(slot, stance)];
                let mut least = if board.must[slot] { NEVER } else { waited };
                for step in &board.steps[slot] {
                    if let Some((more, after, adds)) = board.take(choice, stance, step) {
                        let then = to_come[slot + step.length][more * wide + after];
                        if then != NEVER {
                            least = least.min(then + adds);
                        }
                    }
                }
                to_come[slot][choice * wide + stance] = least;
            }
        }
    }
    to_come
}

fn lessons(ways: &[Way], end: u32) -> Vec<Opening> {
    let (mut lessons, mut at) = (Vec::new(), end as usize);
    while at != 0 {
        lessons.extend(ways[at].lesson);
        at = ways[at].before as usize;
    }
    lessons.reverse();
    lessons
}
