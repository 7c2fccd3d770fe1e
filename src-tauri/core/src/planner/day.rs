//! One day by itself: for every choice of who is taught how often, the least that it costs.
//!
//! The day is gone through slot by slot. What has come about by a slot is the choice so far and the
//! coach's *stance*: where the last lesson was, as long as travel from there matters, how long the
//! coach and the court have gone on without a break, and what each facility has been used for. For
//! each of these pairs only the least value is kept. Waiting costs nothing, so a stance that is no
//! better than having waited, at no lower value, is dropped.

use std::collections::HashMap;

use super::ask::{Ask, Wish};
use super::options::{Opening, openings};

/// Values that mean “cannot be”.
pub(super) const NEVER: i64 = i64::MAX;
/// A table larger than this, in bytes, is not begun.
const ROOM: usize = 128 << 20;
/// More choices than this in a day are not begun.
const MOST_CHOICES: usize = 200_000;

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

/// A court that a lesson can be on, as far as a stance must know it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
struct Ground {
    facility: usize,
    /// The court, where an unbroken run on it could reach the facility's limit.
    court: Option<usize>,
    /// The lesson's slots.
    length: u32,
}

/// How the coach stands at the beginning of a slot.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash)]
struct Stance {
    /// Slots used of each facility today, where its limit can bind; else 1 once it was used.
    used: Vec<u32>,
    /// The facility of the last lesson and the slots since, until travel cannot matter any more.
    last: Option<(usize, u32)>,
    /// Slots taught without a free one, where that can reach the coach's limit.
    run: u32,
    /// The court of a run that goes on, and its slots.
    on: Option<(usize, u32)>,
}

/// What of a stance this ask needs to know, and its limits, in slots.
pub(super) struct Rules {
    /// Slots from each facility to each other.
    travel: Vec<Vec<u32>>,
    longest_run: Option<u32>,
    day_limit: Vec<Option<u32>>,
    court_run: Vec<Option<u32>>,
    /// The most slots of lessons the coach gives in a day.
    most: u32,
}

impl Rules {
    pub fn of(ask: &Ask) -> Rules {
        let most = ask.slots_down(ask.coach.day_limit).min(ask.day_slots());
        let run = ask.slots_down(ask.coach.longest_run);
        Rules {
            travel: ask
                .coach
                .travel
                .iter()
                .map(|ways| ways.iter().map(|minutes| ask.slots_up(*minutes)).collect())
                .collect(),
            longest_run: (run < most).then_some(run),
            day_limit: ask
                .facilities
                .iter()
                .map(|f| Some(ask.slots_down(f.day_limit)).filter(|limit| *limit < most))
                .collect(),
            court_run: ask
                .facilities
                .iter()
                .map(|f| Some(ask.slots_down(f.longest_run)).filter(|limit| *limit < most.min(run)))
                .collect(),
            most,
        }
    }

    fn way(&self, from: usize, to: usize) -> u32 {
        if from == to { 0 } else { self.travel[from][to] }
    }

    /// The longest way from a facility to another.
    fn farthest(&self, from: usize) -> u32 {
        (0..self.travel.len()).map(|to| self.way(from, to)).max().unwrap_or(0)
    }

    fn ground(&self, ask: &Ask, opening: &Opening) -> Ground {
        let facility = ask.courts[opening.court].facility;
        Ground {
            facility,
            court: self.court_run[facility].map(|_| opening.court),
            length: ask.length(opening.student),
        }
    }

    fn begin(&self, ask: &Ask) -> Stance {
        Stance { used: vec![0; ask.facilities.len()], ..Stance::default() }
    }

    /// The stance after one free slot.
    fn wait(&self, stance: &Stance) -> Stance {
        let last = stance.last.and_then(|(facility, since)| {
            (since + 1 < self.farthest(facility)).then_some((facility, since + 1))
        });
        Stance { used: stance.used.clone(), last, run: 0, on: None }
    }

    /// The stance after a lesson, and whether its facility is new today; `None` where a rule forbids
    /// it.
    fn teach(&self, stance: &Stance, ground: Ground) -> Option<(Stance, bool)> {
        let f = ground.facility;
        if stance.last.is_some_and(|(there, since)| since < self.way(there, f)) {
            return None;
        }
        let run = match self.longest_run {
            Some(most) => Some(stance.run + ground.length).filter(|run| *run <= most)?,
            None => 0,
        };
        let on = match (ground.court, self.court_run[f]) {
            (Some(court), Some(most)) => {
                let so_far = stance.on.filter(|(on, _)| *on == court).map_or(0, |(_, run)| run);
                Some((court, Some(so_far + ground.length).filter(|run| *run <= most)?))
            }
            _ => None,
        };
        let mut used = stance.used.clone();
        let new = used[f] == 0;
        used[f] = match self.day_limit[f] {
            Some(most) => Some(used[f] + ground.length).filter(|used| *used <= most)?,
            None => 1,
        };
        let last = (self.farthest(f) > 0).then_some((f, 0));
        Some((Stance { used, last, run, on }, new))
    }
}

/// All stances that can come about, by number, with what each leads to.
struct Stances {
    after_wait: Vec<u32>,
    /// For each ground, what a lesson there leads to, and whether the facility is new.
    after_lesson: Vec<Vec<Option<(u32, bool)>>>,
    /// The stance with the same use of facilities and nothing else to remember.
    rested: Vec<u32>,
}

impl Stances {
    fn of(ask: &Ask, rules: &Rules, grounds: &[Ground], most: usize) -> Option<Stances> {
        let (mut all, mut number) = (vec![rules.begin(ask)], HashMap::new());
        number.insert(all[0].clone(), 0_u32);
        let mut stances = Stances {
            after_wait: Vec::new(),
            after_lesson: vec![Vec::new(); grounds.len()],
            rested: Vec::new(),
        };
        let mut at = 0;
        while at < all.len() {
            let stance = all[at].clone();
            let mut numbered = |stance: Stance| {
                let next = u32::try_from(number.len()).unwrap_or(u32::MAX);
                *number.entry(stance).or_insert_with_key(|stance| {
                    all.push(stance.clone());
                    next
                })
            };
            stances.after_wait.push(numbered(rules.wait(&stance)));
            let rested = Stance { used: stance.used.clone(), ..Stance::default() };
            stances.rested.push(numbered(rested));
            for (n, ground) in grounds.iter().enumerate() {
                let led = rules.teach(&stance, *ground).map(|(after, new)| (numbered(after), new));
                stances.after_lesson[n].push(led);
            }
            at += 1;
            if all.len() > most {
                return None;
            }
        }
        Some(stances)
    }
}

/// The choices of a day: for each of its students, how many lessons.
pub(super) struct Choices {
    /// The students who can have a lesson that day.
    pub students: Vec<usize>,
    /// For each choice, the lessons of each of them; the first is nobody.
    pub counts: Vec<Vec<u8>>,
    /// For each choice and each of them, the choice with one lesson more.
    more: Vec<u32>,
}

const NONE: u32 = u32::MAX;

impl Choices {
    /// All choices that fit into `most` slots; `None` when there are too many of them.
    fn of(ask: &Ask, students: &[(usize, u32)], most: u32) -> Option<Choices> {
        let none = vec![0; students.len()];
        let mut number: HashMap<Vec<u8>, u32> = HashMap::from([(none.clone(), 0)]);
        let mut choices = Choices {
            counts: vec![none],
            more: Vec::new(),
            students: students.iter().map(|(s, _)| *s).collect(),
        };
        let mut at = 0;
        while at < choices.counts.len() {
            let counts = choices.counts[at].clone();
            let slots = |(n, s): (&u8, &usize)| u32::from(*n) * ask.length(*s);
            let taken: u32 = counts.iter().zip(&choices.students).map(slots).sum();
            for (n, (s, cap)) in students.iter().enumerate() {
                if u32::from(counts[n]) >= *cap || taken + ask.length(*s) > most {
                    choices.more.push(NONE);
                    continue;
                }
                let mut larger = counts.clone();
                larger[n] += 1;
                let next = u32::try_from(choices.counts.len()).ok()?;
                let known = *number.entry(larger).or_insert_with_key(|larger| {
                    choices.counts.push(larger.clone());
                    next
                });
                choices.more.push(known);
            }
            at += 1;
            if choices.counts.len() > MOST_CHOICES {
                return None;
            }
        }
        Some(choices)
    }
}

/// A day worked out.
pub(super) struct Day {
    pub choices: Choices,
    /// The least value of each choice, or a lower bound of it; [`NEVER`] where it cannot be.
    pub values: Vec<i64>,
    /// Whether the value is exact, and not only a lower bound.
    pub exact: Vec<bool>,
    /// Whether everyone who could have a lesson was looked at.
    pub whole: bool,
}

impl Day {
    /// A day with what is locked on it, and no more.
    pub fn idle(ask: &Ask, day: u32) -> Day {
        let mut students: Vec<usize> = ask.locked_on(day).map(|lesson| lesson.student).collect();
        students.sort_unstable();
        students.dedup();
        let many = |s: &usize| ask.locked_on(day).filter(|lesson| lesson.student == *s).count();
        let counts = students.iter().map(|s| u8::try_from(many(s)).unwrap_or(u8::MAX)).collect();
        let choices = Choices { students, counts: vec![counts], more: Vec::new() };
        Day { choices, values: vec![0], exact: vec![true], whole: false }
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
        let stances = Stances::of(ask, rules, &grounds, room)?;
        let mut must = vec![false; steps.len()];
        for lesson in ask.locked_on(day) {
            if let Some(slot) = must.get_mut((lesson.start / ask.grid) as usize) {
                *slot = true;
            }
        }
        Some(Board { steps, choices, stances, longest, opens: 2 * weights.spread, must })
    }

    /// How many stances there are.
    pub fn wide(&self) -> usize {
        self.stances.after_wait.len()
    }

    /// The stance after a free slot.
    pub fn wait(&self, stance: usize) -> usize {
        self.stances.after_wait[stance] as usize
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
/// until it fits, and says that it is not whole. `go_on` is asked now and then; `None` once it says
/// no.
pub(super) fn work_out(
    ask: &Ask,
    rules: &Rules,
    weights: Weights,
    day: u32,
    go_on: &dyn Fn() -> bool,
) -> Option<Day> {
    let mut open = openings(ask, day);
    let mut whole = true;
    loop {
        let mut students: Vec<usize> = open.iter().map(|o| o.student).collect();
        students.sort_unstable();
        students.dedup();
        match table(ask, rules, weights, day, &open, &students, go_on) {
            Table::Done(mut day) => {
                day.whole = whole;
                return Some(day);
            }
            Table::Stopped => return None,
            Table::TooLarge => {
                whole = false;
                let many = |s: usize| open.iter().filter(|o| o.student == s).count();
                let locked = |s: &usize| ask.locked_on(day).any(|lesson| lesson.student == *s);
                let free = students.into_iter().filter(|s| !locked(s));
                let Some(easiest) = free.max_by_key(|s| (many(*s), *s)) else {
                    return Some(Day::idle(ask, day));
                };
                open.retain(|o| o.student != easiest);
            }
        }
    }
}

enum Table {
    Done(Day),
    TooLarge,
    Stopped,
}

fn table(
    ask: &Ask,
    rules: &Rules,
    weights: Weights,
    day: u32,
    open: &[Opening],
    students: &[usize],
    go_on: &dyn Fn() -> bool,
) -> Table {
    let most = |s: &usize| (*s, ask.students[*s].per_day.min(ask.students[*s].lessons));
    let students: Vec<(usize, u32)> = students.iter().map(most).collect();
    let Some(board) = Board::set(ask, rules, weights, day, open, &students) else {
        return Table::TooLarge;
    };
    let wide = board.wide();
    let blank = vec![NEVER; wide * board.choices.counts.len()];
    // The table of the slot at hand and of those that a lesson can reach from it, in a ring.
    let many = board.longest + 1;
    let mut ring = vec![blank; many];
    ring[0][0] = 0;
    for (slot, steps) in board.steps.iter().enumerate() {
        if !go_on() {
            return Table::Stopped;
        }
        let mut now = std::mem::take(&mut ring[slot % many]);
        for (choice, so_far) in now.chunks(wide).enumerate() {
            for (stance, value) in so_far.iter().copied().enumerate() {
                let rested = board.stances.rested[stance] as usize;
                if value == NEVER || (rested != stance && so_far[rested] <= value) {
                    continue;
                }
                if !board.must[slot] {
                    let next = &mut ring[(slot + 1) % many][choice * wide + board.wait(stance)];
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
    let values: Vec<i64> =
        end.chunks(wide).map(|row| row.iter().copied().min().unwrap_or(NEVER)).collect();
    let choices = board.choices;
    let again = |counts: &Vec<u8>| {
        counts.iter().zip(&choices.students).any(|(n, s)| *n > 1 && ask.students[*s].rest > 0)
    };
    let exact = choices.counts.iter().map(|counts| !again(counts)).collect();
    Table::Done(Day { values, exact, choices, whole: true })
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
