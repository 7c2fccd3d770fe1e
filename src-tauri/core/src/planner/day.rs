//! One day by itself: for every choice of who is taught how often, the least that it costs.
//!
//! The day is gone through slot by slot. What has come about by a slot is the choice so far and the
//! coach's *stance*: where the last lesson was, as long as travel from there matters, how long the
//! coach and the court have gone on without a break, what each facility has been used for, and how
//! far the day's meal is. For each of these pairs only the least value is kept. Waiting costs
//! nothing, so a stance that is no better than having waited, at no lower value, is dropped.
//!
//! Where a limit over several days watches a facility, a choice comes several times: once for each
//! use of the facility that costs less than every lesser use.

use std::collections::{BTreeMap, HashMap};

use super::ask::{Ask, Wish};
use super::choices::{Choices, NONE, People};
use super::options::{Opening, openings};
use super::stance::{Ground, Rules, Stances, table_of};

/// Values that mean “cannot be”.
pub(super) const NEVER: i64 = i64::MAX;
/// A table larger than this, in bytes, is not begun.
const ROOM: usize = 128 << 20;

/// What one more of each wish counts, so that a sum of the products orders as the wishes do.
#[derive(Clone, Copy, Debug)]
pub(super) struct Weights {
    /// A missing lesson, times its student's priority.
    pub missing: i128,
    pub spread: i64,
    pub cost: i64,
    pub off: i64,
    /// The three after the first, the greatest first.
    ranked: [i64; 3],
    /// What is added to a day's value before it is taken apart, so that no part is less than nothing.
    shift: i64,
    /// At which of the three ranks the spread is.
    spread_rank: usize,
}

impl Weights {
    /// Weights under which no sum over a whole plan of the lesser wishes reaches one of the greater.
    /// `None` when such numbers do not fit.
    pub fn of(ask: &Ask) -> Option<Weights> {
        let lessons = |s: usize| i64::from(ask.students[s].lessons);
        let (mut off, mut cost) = (1_i64, 1_i64);
        // What the days on which a student is taught take off again is counted as well.
        let mut spread = 1 + 2 * i64::from(ask.days) * ask.facilities.len() as i64;
        for s in 0..ask.students.len() {
            let slots = i64::from(ask.day_slots()) + 2;
            off = off.checked_add(lessons(s).checked_mul(slots)?)?;
            let prices = ask.courts.iter().flat_map(|c| &c.prices);
            let dearest = prices.map(|row| row[3]).max().unwrap_or(0);
            let fee = ask.courts.iter().map(|c| c.fee).max().unwrap_or(0);
            let hours = i64::from(ask.length(s)) * i64::from(ask.grid);
            let lesson = i64::from(dearest).checked_mul(hours)? / 60 + i64::from(fee) + 1;
            cost = cost.checked_add(lessons(s).checked_mul(lesson)?)?;
            spread = spread.checked_add(6 * i64::from(ask.most_days(s)))?.checked_add(3)?;
        }
        let bound = |wish: Wish| match wish {
            Wish::Spread => spread,
            Wish::Cost => cost,
            Wish::Times => off,
        };
        let [_, middle, last] = ask.order;
        let ranked = [bound(middle).checked_mul(bound(last))?, bound(last), 1];
        let rank = |wish: Wish| ask.order.iter().position(|w| *w == wish).unwrap_or(2);
        let weight = |wish: Wish| ranked[rank(wish)];
        // A day's value stays far from the end of the range.
        let whole = ranked[0].checked_mul(bound(ask.order[0]))?;
        (whole < i64::MAX / 8).then(|| Weights {
            missing: whole.into(),
            spread: weight(Wish::Spread),
            cost: weight(Wish::Cost),
            off: weight(Wish::Times),
            ranked,
            shift: 3 * ask.students.len() as i64,
            spread_rank: rank(Wish::Spread),
        })
    }

    /// What each rank of wishes counts, missing lessons first.
    pub fn ranks(&self) -> [i128; 4] {
        let [first, second, third] = self.ranked;
        [self.missing, first.into(), second.into(), third.into()]
    }

    /// A day's value taken apart into how much of each rank of wishes it holds, missing lessons
    /// first, of which a day knows none.
    pub fn apart(&self, value: i128) -> [f64; 4] {
        let mut rest = value + i128::from(self.shift) * i128::from(self.spread);
        let mut parts = [0.0; 4];
        for (rank, weight) in self.ranked.iter().enumerate() {
            let (whole, left) = (rest / i128::from(*weight), rest % i128::from(*weight));
            let shift = if rank == self.spread_rank { self.shift } else { 0 };
            parts[rank + 1] = (whole - i128::from(shift)) as f64;
            rest = left;
        }
        parts
    }
}

/// A day worked out.
pub(super) struct Day {
    /// The students who can have a lesson that day.
    pub students: Vec<usize>,
    /// For each choice, the lessons of each of them.
    pub counts: Vec<Vec<u8>>,
    /// The facilities that are watched.
    pub watched: Vec<usize>,
    /// For each choice, the most slots used of each of these; nothing where none is watched.
    pub used: Vec<Vec<u32>>,
    /// The least value of each choice, or a lower bound of it; [`NEVER`] where it cannot be.
    pub values: Vec<i64>,
    /// Whether the value is exact, and not only a lower bound.
    pub exact: Vec<bool>,
    /// Whether everyone who could have a lesson was looked at.
    pub whole: bool,
}

impl Day {
    /// A day with what is locked on it, and no more.
    pub fn idle(ask: &Ask, day: u32, watched: &[usize]) -> Day {
        let mut students: Vec<usize> = ask.locked_on(day).map(|lesson| lesson.student).collect();
        students.sort_unstable();
        students.dedup();
        let many = |s: &usize| ask.locked_on(day).filter(|lesson| lesson.student == *s).count();
        let counts = students.iter().map(|s| u8::try_from(many(s)).unwrap_or(u8::MAX)).collect();
        let slots = |f: &usize| {
            let there = ask.locked_on(day).filter(|l| ask.courts[l.court].facility == *f);
            there.map(|l| ask.length(l.student)).sum()
        };
        Day {
            students,
            counts: vec![counts],
            watched: watched.to_vec(),
            used: if watched.is_empty() {
                vec![]
            } else {
                vec![watched.iter().map(slots).collect()]
            },
            values: vec![0],
            exact: vec![true],
            whole: false,
        }
    }

    /// The most slots that a choice uses of each watched facility.
    pub fn caps(&self, choice: usize) -> Vec<(usize, u32)> {
        let used = self.used.get(choice).into_iter().flatten().copied();
        self.watched.iter().copied().zip(used).collect()
    }
}

/// An opening as a table uses it.
pub(super) struct Step {
    /// The student's place among those of the board.
    student: usize,
    ground: usize,
    pub length: usize,
    pub value: i64,
    pub opening: Opening,
}

/// What a day is played on: the steps that each slot offers, the choices and the stances.
pub(super) struct Board {
    pub steps: Vec<Vec<Step>>,
    pub choices: Choices,
    stances: Stances,
    /// The longest lesson, in slots.
    longest: usize,
    /// What a facility's first lesson of a day adds.
    opens: i64,
    /// For each slot, whether a locked lesson begins there, so that it cannot stay free.
    pub must: Vec<bool>,
    /// Of which kind each slot is for the day's meal.
    kind: Vec<usize>,
}

impl Board {
    /// Sets a day up for some students, each with at most so many lessons; `None` when its tables
    /// would be too large.
    pub fn set(
        ask: &Ask,
        rules: &Rules,
        weights: Weights,
        day: u32,
        open: &[Opening],
        students: &[(usize, u32)],
    ) -> Option<Board> {
        let (steps, grounds) = steps(ask, rules, weights, open, students);
        let choices = Choices::of(ask, students, rules.most)?;
        let longest = steps.iter().flatten().map(|s| s.length).max().unwrap_or(1);
        let room = ROOM / size_of::<i64>() / choices.counts.len() / (longest + 1);
        let (table, kind) = table_of(ask, day);
        let stances = Stances::of(ask, rules, table.as_ref(), &grounds, room)?;
        let mut must = vec![false; steps.len()];
        for lesson in ask.locked_on(day) {
            if let Some(slot) = must.get_mut((lesson.start / ask.grid) as usize) {
                *slot = true;
            }
        }
        Some(Board { steps, choices, stances, longest, opens: 2 * weights.spread, must, kind })
    }

    /// How many stances there are.
    pub fn wide(&self) -> usize {
        self.stances.used.len()
    }

    /// The stance after a slot that stays free.
    pub fn wait(&self, slot: usize, stance: usize) -> usize {
        self.stances.after_wait[self.kind[slot]][stance] as usize
    }

    /// Whether the day can end so.
    pub fn can_end(&self, stance: usize) -> bool {
        self.stances.fed[stance]
    }

    /// The choice and stance after a step and what the step adds, where the rules allow it.
    pub fn take(&self, choice: usize, stance: usize, step: &Step) -> Option<(usize, usize, i64)> {
        let more = self.choices.more[choice * self.choices.students.len() + step.student];
        if more == NONE {
            return None;
        }
        let (after, new) = self.stances.after_lesson[step.ground][stance]?;
        let value = step.value + if new { self.opens } else { 0 };
        Some((more as usize, after as usize, value))
    }
}

/// What a lesson adds to the value of its day.
fn value(weights: Weights, opening: &Opening) -> i64 {
    opening.cost * weights.cost + opening.off * weights.off
}

/// Works a day out. A day with too many students for a table leaves out those with the most openings
/// until it fits, and says that it is not whole. `watched` are the facilities whose use the choices
/// tell apart. `go_on` is asked now and then; `None` once it says no.
pub(super) fn work_out(
    ask: &Ask,
    rules: &Rules,
    weights: Weights,
    day: u32,
    watched: &[usize],
    go_on: &dyn Fn() -> bool,
) -> Option<Day> {
    let rules = &rules.watching(watched);
    let mut open = openings(ask, day);
    let mut whole = true;
    loop {
        let mut students: Vec<usize> = open.iter().map(|o| o.student).collect();
        students.sort_unstable();
        students.dedup();
        match table(ask, rules, weights, day, watched, (&open, &students), go_on) {
            Worked::Done(mut day) => {
                day.whole = whole;
                return Some(day);
            }
            Worked::Stopped => return None,
            Worked::TooLarge => {
                whole = false;
                let many = |s: usize| open.iter().filter(|o| o.student == s).count();
                let locked = |s: &usize| ask.locked_on(day).any(|lesson| lesson.student == *s);
                let free = students.into_iter().filter(|s| !locked(s));
                let Some(easiest) = free.max_by_key(|s| (many(*s), *s)) else {
                    return Some(Day::idle(ask, day, watched));
                };
                open.retain(|o| o.student != easiest);
            }
        }
    }
}

enum Worked {
    Done(Day),
    TooLarge,
    Stopped,
}

fn table(
    ask: &Ask,
    rules: &Rules,
    weights: Weights,
    day: u32,
    watched: &[usize],
    (open, students): (&[Opening], &[usize]),
    go_on: &dyn Fn() -> bool,
) -> Worked {
    let most = |s: &usize| (*s, ask.students[*s].per_day.min(ask.students[*s].lessons));
    let students: Vec<(usize, u32)> = students.iter().map(most).collect();
    let Some(board) = Board::set(ask, rules, weights, day, open, &students) else {
        return Worked::TooLarge;
    };
    let wide = board.wide();
    let blank = vec![NEVER; wide * board.choices.counts.len()];
    // The table of the slot at hand and of those that a lesson can reach from it, in a ring.
    let many = board.longest + 1;
    let mut ring = vec![blank; many];
    ring[0][0] = 0;
    for (slot, steps) in board.steps.iter().enumerate() {
        if !go_on() {
            return Worked::Stopped;
        }
        let mut now = std::mem::take(&mut ring[slot % many]);
        for (choice, so_far) in now.chunks(wide).enumerate() {
            for (stance, value) in so_far.iter().copied().enumerate() {
                let better = |than: u32| than as usize != stance && so_far[than as usize] <= value;
                if value == NEVER || board.stances.rested[stance].iter().any(|r| better(*r)) {
                    continue;
                }
                if !board.must[slot] {
                    let next =
                        &mut ring[(slot + 1) % many][choice * wide + board.wait(slot, stance)];
                    *next = value.min(*next);
                }
                for step in steps {
                    if let Some((more, after, adds)) = board.take(choice, stance, step) {
                        let then = &mut ring[(slot + step.length) % many][more * wide + after];
                        *then = (value + adds).min(*then);
                    }
                }
            }
        }
        now.fill(NEVER);
        ring[slot % many] = now;
    }
    let end = &ring[board.steps.len() % many];
    Worked::Done(board.ended(ask, watched, end))
}

impl Board {
    /// The day, from its table at the day's end.
    fn ended(self, ask: &Ask, watched: &[usize], end: &[i64]) -> Day {
        let wide = self.wide();
        let Board { choices, stances, .. } = self;
        let people = People::of(ask, choices.students.iter().copied());
        let rests: Vec<usize> =
            (0..people.who.len()).filter(|p| ask.students[people.who[*p]].rest > 0).collect();
        let again = |counts: &[u8]| rests.iter().any(|p| people.lessons(*p, counts) > 1);
        let mut day = Day {
            students: choices.students,
            counts: Vec::new(),
            watched: watched.to_vec(),
            used: Vec::new(),
            values: Vec::new(),
            exact: Vec::new(),
            whole: true,
        };
        for (counts, row) in choices.counts.into_iter().zip(end.chunks(wide)) {
            let exact = !again(&counts);
            let fed = row.iter().enumerate().filter(|(stance, _)| stances.fed[*stance]);
            if watched.is_empty() {
                day.values.push(fed.map(|(_, value)| *value).min().unwrap_or(NEVER));
                day.exact.push(exact);
                day.counts.push(counts);
                continue;
            }
            let mut by_use: BTreeMap<Vec<u32>, i64> = BTreeMap::new();
            for (stance, value) in fed.filter(|(_, value)| **value != NEVER) {
                let used = watched.iter().map(|f| stances.used[stance][*f]).collect();
                let least = by_use.entry(used).or_insert(NEVER);
                *least = (*least).min(*value);
            }
            for (used, value) in worth_it(&by_use, exact) {
                day.counts.push(counts.clone());
                day.used.push(used);
                day.values.push(value);
                day.exact.push(exact);
            }
            if by_use.is_empty() {
                day.used.push(vec![0; watched.len()]);
                day.values.push(NEVER);
                day.exact.push(exact);
                day.counts.push(counts);
            }
        }
        day
    }
}

/// The least values of a choice with at most so much use of the watched facilities. Where values are
/// exact, those that a lesser use has too are left out; a bound says nothing of what it turns out to
/// be, so there all stay.
fn worth_it(by_use: &BTreeMap<Vec<u32>, i64>, exact: bool) -> Vec<(Vec<u32>, i64)> {
    let mut all: Vec<(Vec<u32>, i64)> = Vec::new();
    for (used, value) in by_use {
        let within = |other: &[u32]| other.iter().zip(used).all(|(o, u)| o <= u);
        let lesser = all.iter().filter(|(other, _)| within(other)).map(|(_, value)| *value).min();
        let least = lesser.map_or(*value, |lesser| lesser.min(*value));
        if !exact || lesser.is_none_or(|lesser| least < lesser) {
            all.push((used.clone(), least));
        }
    }
    all
}

/// The openings by slot, of those that differ in nothing that a stance knows only the best, and the
/// grounds they are on.
fn steps(
    ask: &Ask,
    rules: &Rules,
    weights: Weights,
    open: &[Opening],
    students: &[(usize, u32)],
) -> (Vec<Vec<Step>>, Vec<Ground>) {
    let mut grounds: Vec<Ground> = Vec::new();
    let mut steps: Vec<Vec<Step>> = (0..ask.day_slots()).map(|_| Vec::new()).collect();
    for opening in best(ask, rules, weights, open) {
        let Some(student) = students.iter().position(|(s, _)| *s == opening.student) else {
            continue;
        };
        let ground = rules.ground(ask, &opening);
        let number = grounds.iter().position(|g| *g == ground).unwrap_or_else(|| {
            grounds.push(ground);
            grounds.len() - 1
        });
        steps[opening.start as usize].push(Step {
            student,
            ground: number,
            length: ground.length as usize,
            value: value(weights, &opening),
            opening,
        });
    }
    (steps, grounds)
}

/// Of the openings that differ in nothing that a stance knows, the cheapest.
fn best(ask: &Ask, rules: &Rules, weights: Weights, open: &[Opening]) -> Vec<Opening> {
    let mut best: HashMap<(u32, usize, Ground), Opening> = HashMap::new();
    for opening in open {
        let like = (opening.start, opening.student, rules.ground(ask, opening));
        let known = best.entry(like).or_insert(*opening);
        if value(weights, opening) < value(weights, known) {
            *known = *opening;
        }
    }
    let mut best: Vec<Opening> = best.into_values().collect();
    best.sort_by_key(|o| (o.start, o.student, o.court));
    best
}
