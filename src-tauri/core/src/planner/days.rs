//! All days together: one choice a day, so that the whole is least.
//!
//! Prices ([`prices`]) turn a choice's value into its *excess*: what it costs beyond the least any
//! choice of that day costs at those prices. The least sum of all days is a lower bound on every
//! plan, and what a plan costs is that bound, plus the excess of its choices, plus for each lesson
//! missing what it costs beyond its price. Each part is 0 or more, so the search takes up, among all
//! beginnings of plans, the one whose sum so far is least, and the first whole plan it comes to is
//! the best one. All of it in whole numbers.
//!
//! A limit over several days is one more row beside the students': its lessons are the time used of
//! it, it has room for so many, and none that is missing costs anything.

use std::cmp::Reverse;
use std::collections::{BinaryHeap, HashMap};
use std::hash::{BuildHasherDefault, Hasher};

use super::ask::{Ask, Limit, Student};
use super::day::{Day, NEVER, Weights};
use super::prices::{self, Column};

/// More beginnings of plans than these are not kept.
const MOST: usize = 1_000_000;

/// What is the least, over all days.
pub(super) enum Found {
    /// A choice for each day: the least there is, as far as its values are exact.
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
    rows: Vec<Row>,
    packing: Packing,
    /// The lessons locked after each day.
    locked_after: Vec<u128>,
    /// For each day, what the least of its choices costs at the prices.
    least: Vec<i128>,
    /// For each day, the limits that end with it.
    ends: Vec<Vec<usize>>,
}

/// What adds up over the days: a student's lessons, or the time used of a limit.
struct Row {
    /// How much there is.
    wished: u32,
    /// What each that is missing counts.
    priority: u32,
    limit: Option<Limit>,
    /// Of a limit, so many slots count as one.
    unit: u32,
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
    fn of(rows: &[Row]) -> Option<Packing> {
        let mut packing = Packing { shift: Vec::new(), bits: Vec::new(), wished: 0, clear: 0 };
        let mut at = 0;
        for row in rows {
            let bits = 32 - row.wished.leading_zeros();
            packing.shift.push(at);
            packing.bits.push(bits);
            at += bits + 1;
            if at > 128 {
                return None;
            }
            packing.wished |= u128::from(row.wished) << (at - bits - 1);
            packing.clear |= 1 << (at - 1);
        }
        Some(packing)
    }

    fn pack(&self, counts: impl Iterator<Item = (usize, u32)>) -> u128 {
        counts.map(|(s, n)| u128::from(n) << self.shift[s]).sum()
    }

    /// A row's count.
    fn count(&self, packed: u128, s: usize) -> u32 {
        (packed >> self.shift[s]) as u32 & ((1 << self.bits[s]) - 1)
    }

    /// The counts with one row's filled up.
    fn filled(&self, packed: u128, row: usize) -> u128 {
        let field = ((1_u128 << self.bits[row]) - 1) << self.shift[row];
        (packed & !field) | (self.wished & field)
    }

    /// Whether nobody has more than was wished for.
    fn fits(&self, packed: u128) -> bool {
        ((self.wished | self.clear) - packed) & self.clear == self.clear
    }
}

impl<'a> Search<'a> {
    /// With these limits; `None` when the counts do not fit into 128 bits.
    pub fn new(
        ask: &'a Ask,
        weights: Weights,
        limits: &[Limit],
        days: &'a mut [Day],
        go_on: &dyn Fn() -> bool,
    ) -> Option<Search<'a>> {
        let rows = rows(ask, limits);
        let packing = Packing::of(&rows)?;
        let mut search = Search {
            ask,
            weights,
            days,
            missing: weights.missing,
            by: 1,
            price: Vec::new(),
            order: Vec::new(),
            left: Vec::new(),
            rows,
            packing,
            locked_after: Vec::new(),
            least: Vec::new(),
            ends: Vec::new(),
        };
        let ends = |row: &Row, day: usize| row.limit.is_some_and(|l| l.last as usize == day);
        let all = || search.rows.iter().enumerate();
        let on = |day| all().filter(|(_, row)| ends(row, day)).map(|(n, _)| n).collect();
        search.ends = (0..search.days.len()).map(on).collect();
        search.locked_after = (0..search.days.len()).map(|day| search.locked_past(day)).collect();
        search.set_prices(go_on);
        search.left = search.most_left();
        for day in 0..search.days.len() {
            let order = search.ordered(day);
            search.least.push(order.0);
            search.order.push(order.1);
        }
        Some(search)
    }

    /// The lessons locked on the days after a day.
    fn locked_past(&self, day: usize) -> u128 {
        let later = self.ask.locked.iter().filter(|lesson| lesson.day as usize > day);
        let facility = |court: usize| self.ask.courts[court].facility;
        later
            .map(|lesson| {
                let slots = self.ask.length(lesson.student);
                let of = |row: usize| match self.rows[row].limit {
                    None => u32::from(row == lesson.student),
                    // A limit that has ended by then is full already.
                    Some(limit) => {
                        let there = limit.facility.is_none_or(|f| f == facility(lesson.court));
                        let counts = there && limit.holds(lesson.day);
                        if counts { slots / self.rows[row].unit } else { 0 }
                    }
                };
                self.packing.pack((0..self.rows.len()).map(|row| (row, of(row))))
            })
            .sum()
    }

    /// How much of each row a choice of a day has.
    fn amounts(&self, day: usize, choice: usize) -> impl Iterator<Item = (usize, u32)> {
        let of = &self.days[day];
        let counts = &of.counts[choice];
        let students = of.students.iter().zip(counts).map(|(s, n)| (*s, u32::from(*n)));
        let first = self.ask.students.len();
        let limits = self.rows[first..].iter().enumerate().map(move |(n, row)| {
            let held = row.limit.filter(|limit| limit.holds(u32::try_from(day).unwrap_or(0)));
            let watched = |f| of.watched.iter().position(|w| *w == f);
            let slots = held.map_or(0, |limit| match limit.facility.and_then(watched) {
                Some(at) => of.used[choice][at],
                None => slots(self.ask, of, choice),
            });
            (first + n, slots / row.unit)
        });
        students.chain(limits).filter(|(_, n)| *n > 0)
    }

    /// Whether no row has more of a choice than there is.
    fn possible(&self, day: usize, choice: usize) -> bool {
        self.days[day].values[choice] != NEVER
            && self.amounts(day, choice).all(|(row, n)| n <= self.rows[row].wished)
    }

    /// What is given after a day, with those limits filled up that end with it, and what the time
    /// they had left costs beyond its price.
    fn past(&self, day: usize, given: u128) -> (u128, i128) {
        let (mut filled, mut cost) = (given, 0);
        for n in self.ends[day].iter().copied() {
            cost += i128::from(self.rows[n].wished - self.packing.count(given, n)) * self.beyond(n);
            filled = self.packing.filled(filled, n);
        }
        (filled, cost)
    }

    /// Whether nobody has more than was wished for, with what is locked on later days.
    fn room(&self, day: usize, given: u128) -> bool {
        self.packing.fits(given) && self.packing.fits(given + self.locked_after[day])
    }

    /// The choice of a day that is what is locked on it, and no more.
    pub fn locked(&self, day: usize) -> usize {
        let of = &self.days[day];
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
        let distinct = of.counts[choice].iter().filter(|n| **n > 0).count() as i128;
        (value != NEVER).then(|| i128::from(value) - 3 * distinct * i128::from(self.weights.spread))
    }

    fn set_prices(&mut self, go_on: &dyn Fn() -> bool) {
        let columns: Vec<Vec<Column>> = (0..self.days.len())
            .map(|day| {
                (0..self.days[day].values.len())
                    .filter(|choice| self.possible(day, *choice))
                    .filter_map(|choice| {
                        let cost = self.weights.apart(self.value(day, choice)?);
                        Some(Column { cost, lessons: self.amounts(day, choice).collect() })
                    })
                    .collect()
            })
            .collect();
        let wished: Vec<u32> = self.rows.iter().map(|row| row.wished).collect();
        let missing: Vec<f64> = self.rows.iter().map(|row| f64::from(row.priority)).collect();
        let prices = prices::of(&columns, &wished, &missing, go_on);
        let by = prices::denominator(&prices);
        self.by = i128::from(by);
        let weights = self.weights.ranks();
        self.price = prices
            .iter()
            .zip(&self.rows)
            .map(|(price, row)| {
                let whole: i128 = price
                    .iter()
                    .zip(weights)
                    .map(|(price, weight)| (price * by as f64).round() as i128 * weight)
                    .sum();
                // A lesson is worth no more than what it costs to miss it.
                whole.min(i128::from(row.priority) * self.missing * self.by)
            })
            .collect();
    }

    fn most_left(&self) -> Vec<Vec<u32>> {
        let mut left = vec![vec![0; self.rows.len()]; self.days.len() + 1];
        for day in (0..self.days.len()).rev() {
            let mut most = vec![0; self.rows.len()];
            for choice in 0..self.days[day].values.len() {
                if self.possible(day, choice) {
                    for (row, n) in self.amounts(day, choice) {
                        most[row] = n.max(most[row]);
                    }
                }
            }
            left[day] = left[day + 1].iter().zip(most).map(|(left, most)| left + most).collect();
        }
        left
    }

    /// A choice of a day as the search takes it up, before the least of the day is taken off.
    fn ranked(&self, day: usize, choice: usize) -> Option<Ranked> {
        let value = self.value(day, choice).filter(|_| self.possible(day, choice))?;
        let worth: i128 =
            self.amounts(day, choice).map(|(row, n)| i128::from(n) * self.price[row]).sum();
        Some(Ranked {
            excess: value * self.by - worth,
            choice: u32::try_from(choice).ok()?,
            lessons: self.packing.pack(self.amounts(day, choice)),
        })
    }

    /// The choices of a day by what they cost at the prices beyond the least of it, and that least.
    fn ordered(&self, day: usize) -> (i128, Vec<Ranked>) {
        let all = 0..self.days[day].values.len();
        let mut order: Vec<Ranked> = all.filter_map(|choice| self.ranked(day, choice)).collect();
        order.sort_unstable();
        let least = order.first().map_or(0, |first| first.excess);
        for ranked in &mut order {
            ranked.excess -= least;
        }
        (least, order)
    }

    /// What one missing lesson costs beyond its price.
    fn beyond(&self, row: usize) -> i128 {
        i128::from(self.rows[row].priority) * self.missing * self.by - self.price[row]
    }

    /// What lessons that can no longer be given cost beyond their price.
    fn lost(&self, day: usize, given: u128) -> i128 {
        (0..self.rows.len())
            .map(|row| {
                let open = self.rows[row].wished - self.packing.count(given, row);
                i128::from(open.saturating_sub(self.left[day][row])) * self.beyond(row)
            })
            .sum()
    }

    /// The value of a whole plan; `None` where it cannot be.
    pub fn total(&self, plan: &[usize]) -> Option<i128> {
        let mut given = vec![0; self.rows.len()];
        let mut total = 0;
        for (day, choice) in plan.iter().enumerate() {
            total += self.value(day, *choice)?;
            for (row, n) in self.amounts(day, *choice) {
                given[row] += n;
            }
        }
        for (row, given) in self.rows.iter().zip(given) {
            let short = row.wished.checked_sub(given)?;
            total += i128::from(short) * i128::from(row.priority) * self.missing;
        }
        Some(total)
    }

    /// What a day's choice costs after it was worked out exactly.
    pub fn settle(&mut self, day: usize, choice: usize, value: i64) {
        self.days[day].values[choice] = value;
        self.days[day].exact[choice] = true;
        let order = &mut self.order[day];
        let at = order.iter().position(|ranked| ranked.choice as usize == choice);
        at.map(|at| order.remove(at));
        if let Some(mut ranked) = self.ranked(day, choice) {
            ranked.excess -= self.least[day];
            let order = &mut self.order[day];
            let at = order.partition_point(|other| *other < ranked);
            order.insert(at, ranked);
        }
        let order = &mut self.order[day];
        let more = order.first().map_or(0, |first| first.excess);
        self.least[day] += more;
        if more != 0 {
            for ranked in order {
                ranked.excess -= more;
            }
        }
    }

    /// Whether a choice's value is exact.
    pub fn is_exact(&self, day: usize, choice: usize) -> bool {
        self.days[day].exact[choice]
    }

    /// How often each student is taught in a day's choice.
    pub fn counts(&self, day: usize, choice: usize) -> Vec<(usize, u8)> {
        let of = &self.days[day];
        of.students.iter().copied().zip(of.counts[choice].iter().copied()).collect()
    }

    /// The most slots that a day's choice uses of the facilities that are watched.
    pub fn caps(&self, day: usize, choice: usize) -> Vec<(usize, u32)> {
        self.days[day].caps(choice)
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
        let mut reached: HashMap<(u8, u128), i128, BuildHasherDefault<Quick>> = HashMap::default();
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
            // The choice at this place becomes a beginning of its own; the next that fits, and leads
            // to where nothing better has been yet, waits.
            let order = &self.order[day];
            let ranked = order[place as usize];
            let given = here.given + ranked.lessons;
            if self.room(day, given) {
                let (given, ended) = self.past(day, given);
                let so_far = here.so_far + ranked.excess + ended;
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
            let so_far = here.so_far + self.lost(day, here.given);
            let later = order.iter().enumerate().skip(place as usize + 1);
            let mut later = later.take_while(|(_, r)| so_far + r.excess < known);
            let fits = |r: &Ranked| {
                let given = here.given + r.lessons;
                self.room(day, given) && {
                    let (given, ended) = self.past(day, given);
                    let best = reached.get(&(here.day + 1, given));
                    best.is_none_or(|best| here.so_far + r.excess + ended < *best)
                }
            };
            if let Some((then, ranked)) = later.find(|(_, r)| fits(r)) {
                let then = u32::try_from(then).unwrap_or(u32::MAX);
                heap.push(Reverse((so_far + ranked.excess, depth, at, then)));
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
                    let (given, ended) = self.past(day, here.given + ranked.lessons);
                    let then = Beginning {
                        day: here.day + 1,
                        given,
                        so_far: here.so_far + ranked.excess + ended,
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

/// The slots of lessons that a choice takes.
fn slots(ask: &Ask, day: &Day, choice: usize) -> u32 {
    let of = |(n, s): (&u8, &usize)| u32::from(*n) * ask.length(*s);
    day.counts[choice].iter().zip(&day.students).map(of).sum()
}

/// The students' rows and those of the limits, whose time is counted in what all lengths are
/// multiples of.
fn rows(ask: &Ask, limits: &[Limit]) -> Vec<Row> {
    let student = |s: &Student| {
        let (wished, priority) = (s.lessons, s.priority);
        Row { wished, priority, limit: None, unit: 1 }
    };
    let mut rows: Vec<Row> = ask.students.iter().map(student).collect();
    let taught = (0..ask.students.len()).filter(|s| ask.students[*s].lessons > 0);
    let unit = taught.map(|s| ask.length(s)).fold(0, common).max(1);
    rows.extend(limits.iter().map(|limit| {
        let most = slots_of(ask, limit);
        let wished = ask.slots_down(limit.minutes).min(most) / unit;
        Row { wished, priority: 0, limit: Some(*limit), unit }
    }));
    rows
}

/// The slots of all a limit's days.
fn slots_of(ask: &Ask, limit: &Limit) -> u32 {
    (limit.last + 1).saturating_sub(limit.first) * ask.day_slots()
}

/// The greatest number that both are multiples of (Euclid).
fn common(a: u32, b: u32) -> u32 {
    if b == 0 { a } else { common(b, a % b) }
}

/// A hash of counts: quick, and the same each time.
#[derive(Default)]
struct Quick(u64);

impl Hasher for Quick {
    fn write(&mut self, bytes: &[u8]) {
        for byte in bytes {
            self.write_u64(u64::from(*byte));
        }
    }

    fn write_u8(&mut self, n: u8) {
        self.write_u64(n.into());
    }

    fn write_u128(&mut self, n: u128) {
        self.write_u64(n as u64);
        self.write_u64((n >> 64) as u64);
    }

    fn write_u64(&mut self, n: u64) {
        // An odd number whose bits are those of the golden ratio (Knuth, multiplicative hashing).
        self.0 = (self.0.rotate_left(23) ^ n).wrapping_mul(0x9e37_79b9_7f4a_7c15);
    }

    fn finish(&self) -> u64 {
        self.0 ^ (self.0 >> 32)
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
