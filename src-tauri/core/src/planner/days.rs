//! All days together: one choice a day, so that the whole is least.
//!
//! Prices ([`prices`]) turn a choice's value into its *excess*: what it costs beyond the least any
//! choice of that day costs at those prices. The least sum of all days is a lower bound on every
//! plan, and what a plan costs is that bound, plus the excess of its choices, plus for each lesson
//! missing what it costs beyond its price. Each part is 0 or more, so the search takes up, among all
//! beginnings of plans, the one whose sum so far is least, and the first whole plan it comes to is
//! the best one. All of it in whole numbers.

use std::cmp::Reverse;
use std::collections::{BinaryHeap, HashMap};

use super::ask::Ask;
use super::day::{Day, NEVER, Weights};
use super::prices::{self, Column};

/// More beginnings of plans than these are not kept.
const MOST: usize = 1_000_000;

/// What is the least, over all days.
pub(super) enum Found {
    /// A choice for each day.
    Plan(Vec<usize>),
    /// No plan is below what was known already.
    NoBetter,
    /// It was stopped, or there were too many beginnings.
    Open,
}

/// The search, with what it keeps from one turn to the next.
pub(super) struct Search<'a> {
    ask: &'a Ask,
    weights: Weights,
    days: &'a mut [Day],
    /// What a lesson missing counts more than the greatest spread.
    missing: i128,
    /// All values are multiplied by it, so that prices are whole.
    by: i128,
    price: Vec<i128>,
    /// For each day its choices by excess.
    order: Vec<Vec<Ranked>>,
    /// The most lessons of each student on this day and later.
    left: Vec<Vec<u32>>,
    packing: Packing,
    /// The lessons locked after each day.
    locked_after: Vec<u128>,
}

/// A choice of a day in the order in which the search takes them up.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Ranked {
    /// What it costs beyond the least of its day, at the prices.
    excess: i128,
    choice: u32,
    /// Its lessons.
    lessons: u128,
}

/// Counts of each student's lessons in one number: so many bits for each, and one more that stays
/// clear, so that all counts are compared at once.
struct Packing {
    shift: Vec<u32>,
    bits: Vec<u32>,
    wished: u128,
    clear: u128,
}

impl Packing {
    /// `None` when the counts need more than 128 bits.
    fn of(ask: &Ask) -> Option<Packing> {
        let mut packing = Packing { shift: Vec::new(), bits: Vec::new(), wished: 0, clear: 0 };
        let mut at = 0;
        for s in &ask.students {
            let bits = 32 - s.lessons.leading_zeros();
            packing.shift.push(at);
            packing.bits.push(bits);
            at += bits + 1;
            if at > 128 {
                return None;
            }
            packing.wished |= u128::from(s.lessons) << (at - bits - 1);
            packing.clear |= 1 << (at - 1);
        }
        Some(packing)
    }

    fn pack(&self, counts: impl Iterator<Item = (usize, u8)>) -> u128 {
        counts.map(|(s, n)| u128::from(n) << self.shift[s]).sum()
    }

    /// One student's count.
    fn count(&self, packed: u128, s: usize) -> u32 {
        (packed >> self.shift[s]) as u32 & ((1 << self.bits[s]) - 1)
    }

    /// Whether nobody has more than was wished for.
    fn fits(&self, packed: u128) -> bool {
        ((self.wished | self.clear) - packed) & self.clear == self.clear
    }
}

impl<'a> Search<'a> {
    /// `None` when the counts do not fit into 128 bits.
    pub fn new(
        ask: &'a Ask,
        weights: Weights,
        days: &'a mut [Day],
        go_on: &dyn Fn() -> bool,
    ) -> Option<Search<'a>> {
        let packing = Packing::of(ask)?;
        let mut search = Search {
            ask,
            weights,
            days,
            missing: weights.missing,
            by: 1,
            price: Vec::new(),
            order: Vec::new(),
            left: Vec::new(),
            packing,
            locked_after: Vec::new(),
        };
        search.locked_after = (0..search.days.len()).map(|day| search.locked_past(day)).collect();
        search.set_prices(go_on);
        search.left = search.most_left();
        search.order = (0..search.days.len()).map(|day| search.ordered(day)).collect();
        Some(search)
    }

    /// The lessons locked on the days after a day.
    fn locked_past(&self, day: usize) -> u128 {
        let later = self.ask.locked.iter().filter(|lesson| lesson.day as usize > day);
        later.map(|lesson| self.packing.pack(std::iter::once((lesson.student, 1)))).sum()
    }

    /// Whether nobody has more than was wished for, with what is locked on later days.
    fn room(&self, day: usize, given: u128) -> bool {
        self.packing.fits(given) && self.packing.fits(given + self.locked_after[day])
    }

    /// The choice of a day that is what is locked on it, and no more.
    pub fn locked(&self, day: usize) -> usize {
        let of = &self.days[day].choices;
        let on = u32::try_from(day).map(|day| self.ask.locked_on(day).collect::<Vec<_>>());
        let locked = on.unwrap_or_default();
        let many = |s: usize| locked.iter().filter(|lesson| lesson.student == s).count();
        let same = |counts: &Vec<u8>| {
            counts.iter().zip(&of.students).all(|(n, s)| usize::from(*n) == many(*s))
        };
        of.counts.iter().position(same).unwrap_or(0)
    }

    /// The value of a choice within the whole: its day's, less what a day with a lesson is worth.
    fn value(&self, day: usize, choice: usize) -> Option<i128> {
        let of = &self.days[day];
        let value = of.values[choice];
        let distinct = of.choices.counts[choice].iter().filter(|n| **n > 0).count() as i128;
        (value != NEVER).then(|| i128::from(value) - 3 * distinct * i128::from(self.weights.spread))
    }

    fn set_prices(&mut self, go_on: &dyn Fn() -> bool) {
        let columns: Vec<Vec<Column>> = (0..self.days.len())
            .map(|day| {
                let of = &self.days[day];
                (0..of.values.len())
                    .filter_map(|choice| {
                        let value = self.value(day, choice)?;
                        Some(Column {
                            cost: self.weights.apart(value),
                            lessons: of.choices.counts[choice]
                                .iter()
                                .zip(&of.choices.students)
                                .filter(|(n, _)| **n > 0)
                                .map(|(n, s)| (*s, *n))
                                .collect(),
                        })
                    })
                    .collect()
            })
            .collect();
        let wished: Vec<u32> = self.ask.students.iter().map(|s| s.lessons).collect();
        let missing: Vec<f64> = self.ask.students.iter().map(|s| f64::from(s.priority)).collect();
        let prices = prices::of(&columns, &wished, &missing, go_on);
        let by = prices::denominator(&prices);
        self.by = i128::from(by);
        let weights = self.weights.ranks();
        self.price = prices
            .iter()
            .zip(&self.ask.students)
            .map(|(price, s)| {
                let whole: i128 = price
                    .iter()
                    .zip(weights)
                    .map(|(price, weight)| (price * by as f64).round() as i128 * weight)
                    .sum();
                // A lesson is worth no more than what it costs to miss it.
                whole.min(i128::from(s.priority) * self.missing * self.by)
            })
            .collect();
    }

    fn most_left(&self) -> Vec<Vec<u32>> {
        let mut left = vec![vec![0; self.ask.students.len()]; self.days.len() + 1];
        for day in (0..self.days.len()).rev() {
            left[day] = left[day + 1].clone();
            let of = &self.days[day];
            for (n, s) in of.choices.students.iter().enumerate() {
                let most = (0..of.values.len())
                    .filter(|c| of.values[*c] != NEVER)
                    .map(|c| of.choices.counts[c][n])
                    .max();
                left[day][*s] += u32::from(most.unwrap_or(0));
            }
        }
        left
    }

    /// The choices of a day by what they cost at the prices beyond the least of it.
    fn ordered(&self, day: usize) -> Vec<Ranked> {
        let of = &self.days[day];
        let mut order: Vec<Ranked> = (0..of.values.len())
            .filter_map(|choice| {
                let counts = of.choices.students.iter().copied();
                let counts = counts.zip(of.choices.counts[choice].iter().copied());
                let worth: i128 = counts.clone().map(|(s, n)| i128::from(n) * self.price[s]).sum();
                Some(Ranked {
                    excess: self.value(day, choice)? * self.by - worth,
                    choice: u32::try_from(choice).ok()?,
                    lessons: self.packing.pack(counts),
                })
            })
            .collect();
        order.sort_unstable();
        let least = order.first().map_or(0, |first| first.excess);
        for ranked in &mut order {
            ranked.excess -= least;
        }
        order
    }

    /// What one missing lesson costs beyond its price.
    fn beyond(&self, s: usize) -> i128 {
        i128::from(self.ask.students[s].priority) * self.missing * self.by - self.price[s]
    }

    /// What lessons that can no longer be given cost beyond their price.
    fn lost(&self, day: usize, given: u128) -> i128 {
        (0..self.ask.students.len())
            .map(|s| {
                let open = self.ask.students[s].lessons - self.packing.count(given, s);
                i128::from(open.saturating_sub(self.left[day][s])) * self.beyond(s)
            })
            .sum()
    }

    /// The value of a whole plan.
    pub fn total(&self, plan: &[usize]) -> Option<i128> {
        let mut given = vec![0; self.ask.students.len()];
        let mut total = 0;
        for (day, choice) in plan.iter().enumerate() {
            total += self.value(day, *choice)?;
            let of = &self.days[day].choices;
            for (n, s) in of.counts[*choice].iter().zip(&of.students) {
                given[*s] += u32::from(*n);
            }
        }
        for (s, given) in given.iter().enumerate() {
            let student = &self.ask.students[s];
            let short = student.lessons - given;
            total += i128::from(short) * i128::from(student.priority) * self.missing;
        }
        Some(total)
    }

    /// What a day's choice costs after it was worked out exactly.
    pub fn settle(&mut self, day: usize, choice: usize, value: i64) {
        self.days[day].values[choice] = value;
        self.days[day].exact[choice] = true;
        self.order[day] = self.ordered(day);
    }

    /// Whether a choice's value is exact.
    pub fn is_exact(&self, day: usize, choice: usize) -> bool {
        self.days[day].exact[choice]
    }

    /// How often each student is taught in a day's choice.
    pub fn counts(&self, day: usize, choice: usize) -> Vec<(usize, u8)> {
        let of = &self.days[day].choices;
        of.students.iter().copied().zip(of.counts[choice].iter().copied()).collect()
    }

    /// The excess of a plan's value over the bound of all plans.
    fn excess(&self, plan: &[usize]) -> Option<i128> {
        let (mut given, mut excess) = (0, 0);
        for (day, choice) in plan.iter().enumerate() {
            let ranked = self.order[day].iter().find(|r| r.choice as usize == *choice)?;
            given += ranked.lessons;
            excess += ranked.excess;
        }
        Some(excess + self.lost(plan.len(), given))
    }

    /// Searches for the least plan better than `known`, which it takes to be exact.
    pub fn least(&self, known: &[usize], go_on: &dyn Fn() -> bool) -> Found {
        let days = self.days.len();
        let known = self.excess(known).unwrap_or(i128::MAX);
        let mut kept = vec![Beginning { day: 0, given: 0, so_far: 0, before: 0, choice: 0 }];
        let mut reached: HashMap<(u8, u128), i128> = HashMap::new();
        let mut heap = BinaryHeap::from([Reverse((self.lost(0, 0), u8::MAX, 0_u32, 0_u32))]);
        let mut turns = 0_u32;
        while let Some(Reverse((sum, depth, at, place))) = heap.pop() {
            turns = turns.wrapping_add(1);
            if turns.is_multiple_of(1024) && !go_on() || kept.len() > MOST {
                return Found::Open;
            }
            let here = kept[at as usize];
            let day = usize::from(here.day);
            if sum >= known {
                break;
            }
            if day == days {
                return Found::Plan(chosen(&kept, at));
            }
            if reached.get(&(here.day, here.given)).is_some_and(|best| *best < here.so_far) {
                continue;
            }
            // The choice at this place becomes a beginning of its own; the next that fits waits.
            let order = &self.order[day];
            let ranked = order[place as usize];
            let given = here.given + ranked.lessons;
            if self.room(day, given) {
                let so_far = here.so_far + ranked.excess;
                let best = reached.entry((here.day + 1, given)).or_insert(i128::MAX);
                if so_far < *best {
                    *best = so_far;
                    let sum = so_far + self.lost(day + 1, given);
                    if sum < known {
                        let number = u32::try_from(kept.len()).unwrap_or(u32::MAX);
                        kept.push(Beginning {
                            day: here.day + 1,
                            given,
                            so_far,
                            before: at,
                            choice: ranked.choice,
                        });
                        heap.push(Reverse((sum, depth - 1, number, 0)));
                    }
                }
            }
            let later = order.iter().enumerate().skip(place as usize + 1);
            let mut fitting = later.filter(|(_, r)| self.room(day, here.given + r.lessons));
            if let Some((then, ranked)) = fitting.next() {
                let sum = here.so_far + ranked.excess + self.lost(day, here.given);
                if sum < known {
                    let then = u32::try_from(then).unwrap_or(u32::MAX);
                    heap.push(Reverse((sum, depth, at, then)));
                }
            }
        }
        Found::NoBetter
    }

    /// A good plan, found quickly: day by day, only the best beginnings go on.
    pub fn good(&self) -> Vec<usize> {
        const WIDE: usize = 64;
        let mut kept = vec![Beginning { day: 0, given: 0, so_far: 0, before: 0, choice: 0 }];
        let mut front = vec![0_u32];
        for day in 0..self.days.len() {
            let mut next: HashMap<u128, (i128, Beginning)> = HashMap::new();
            for at in front {
                let here = kept[at as usize];
                let fitting =
                    self.order[day].iter().filter(|r| self.room(day, here.given + r.lessons));
                for ranked in fitting.take(4 * WIDE) {
                    let then = Beginning {
                        day: here.day + 1,
                        given: here.given + ranked.lessons,
                        so_far: here.so_far + ranked.excess,
                        before: at,
                        choice: ranked.choice,
                    };
                    let sum = then.so_far + self.lost(day + 1, then.given);
                    let best = next.entry(then.given).or_insert((sum, then));
                    if sum < best.0 {
                        *best = (sum, then);
                    }
                }
            }
            let mut next: Vec<(i128, Beginning)> = next.into_values().collect();
            next.sort_unstable_by_key(|(sum, then)| (*sum, then.given));
            next.truncate(WIDE);
            front = next
                .into_iter()
                .map(|(_, then)| {
                    kept.push(then);
                    u32::try_from(kept.len() - 1).unwrap_or(u32::MAX)
                })
                .collect();
        }
        front.first().map_or_else(Vec::new, |best| chosen(&kept, *best))
    }
}

/// The beginning of a plan: the first days' choices.
#[derive(Clone, Copy)]
struct Beginning {
    day: u8,
    given: u128,
    so_far: i128,
    before: u32,
    choice: u32,
}

fn chosen(kept: &[Beginning], end: u32) -> Vec<usize> {
    let mut plan = Vec::new();
    let mut at = end;
    while kept[at as usize].day > 0 {
        plan.push(kept[at as usize].choice as usize);
        at = kept[at as usize].before;
    }
    plan.reverse();
    plan
}
