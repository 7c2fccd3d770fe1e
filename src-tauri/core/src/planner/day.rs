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

use super::ask::{Ask, Facility, Wish};
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
    /// Lessons at each facility today, where their number can bind and does not follow from the
    /// slots.
    booked: Vec<u32>,
    /// The facility of the last lesson and the slots since, until travel cannot matter any more.
    last: Option<(usize, u32)>,
    /// Slots taught without a free one, where that can reach the coach's limit.
    run: u32,
    /// The court of a run that goes on, and its slots.
    on: Option<(usize, u32)>,
    /// The day's meal.
    meal: Eaten,
}

impl Stance {
    /// Waited for long enough that nothing but the use of the facilities and the meal matters.
    fn rested(&self, meal: Eaten) -> Stance {
        let (used, booked) = (self.used.clone(), self.booked.clone());
        Stance { used, booked, meal, ..Stance::default() }
    }
}

/// How far a day's meal is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
enum Eaten {
    /// Behind the coach, or there is none.
    #[default]
    Had,
    /// In the free time that goes on; it counts if the way to the next lesson has room there too.
    Now,
    /// Still to come; so many minutes of the time that may be its have been free in a row.
    Open(u32),
}

/// A day's meal as the stances know it.
struct Mealtime {
    minutes: u32,
    /// The parts of a slot that may be the meal's, in minutes from the slot's beginning: each kind
    /// of slot once.
    kinds: Vec<Vec<(u32, u32)>>,
}

impl Mealtime {
    /// The meal after a free slot of this kind; `way` says whether a way may still be ahead of it.
    fn wait(&self, meal: Eaten, kind: usize, grid: u32, way: bool) -> Eaten {
        let Eaten::Open(mut run) = meal else {
            return if way { meal } else { Eaten::Had };
        };
        let mut at = 0;
        for (from, to) in &self.kinds[kind] {
            run = if *from == at { run } else { 0 } + (to - from);
            at = *to;
            if run >= self.minutes {
                return if way { Eaten::Now } else { Eaten::Had };
            }
        }
        Eaten::Open(if at == grid { run } else { 0 })
    }
}

/// What of a stance this ask needs to know, and its limits, in slots.
#[derive(Clone)]
pub(super) struct Rules {
    /// Slots from each facility to each other.
    travel: Vec<Vec<u32>>,
    longest_run: Option<u32>,
    day_limit: Vec<Option<u32>>,
    court_run: Vec<Option<u32>>,
    /// The most lessons a day at each facility, where no number of slots says the same.
    bookings: Vec<Option<u32>>,
    /// The most slots of lessons the coach gives in a day.
    most: u32,
}

impl Rules {
    pub fn of(ask: &Ask) -> Rules {
        let most = ask.slots_down(ask.coach.day_limit).min(ask.day_slots());
        let run = ask.slots_down(ask.coach.longest_run);
        let taught = (0..ask.students.len()).filter(|s| ask.students[*s].lessons > 0);
        let lengths: Vec<u32> = taught.map(|s| ask.length(s)).collect();
        let shortest = lengths.iter().copied().min().unwrap_or(1);
        let alike = lengths.iter().all(|length| *length == shortest);
        let limit = |f: &Facility| {
            let minutes = ask.slots_down(f.day_limit);
            let bookings = f.day_bookings.saturating_mul(shortest);
            Some(if alike { minutes.min(bookings) } else { minutes }).filter(|limit| *limit < most)
        };
        let bookings = |f: &Facility| {
            let binds = !alike && f.day_bookings < most / shortest;
            binds.then_some(f.day_bookings)
        };
        Rules {
            travel: ask
                .coach
                .travel
                .iter()
                .map(|ways| ways.iter().map(|minutes| ask.slots_up(*minutes)).collect())
                .collect(),
            longest_run: (run < most).then_some(run),
            day_limit: ask.facilities.iter().map(limit).collect(),
            bookings: ask.facilities.iter().map(bookings).collect(),
            court_run: ask
                .facilities
                .iter()
                .map(|f| Some(ask.slots_down(f.longest_run)).filter(|limit| *limit < most.min(run)))
                .collect(),
            most,
        }
    }

    /// These rules with all slots counted at some facilities.
    fn watching(&self, watched: &[usize]) -> Rules {
        let mut rules = self.clone();
        for f in watched {
            rules.day_limit[*f].get_or_insert(self.most);
        }
        rules
    }

    /// These rules with at most so many slots a day at some facilities.
    pub fn capped(&self, caps: &[(usize, u32)]) -> Rules {
        let mut rules = self.clone();
        for (f, cap) in caps {
            let limit = rules.day_limit[*f].map_or(*cap, |limit| limit.min(*cap));
            rules.day_limit[*f] = Some(limit);
        }
        rules
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

    /// The slots between two lessons that hold the way from one facility to the other and a meal.
    fn way_and_meal(&self, ask: &Ask, from: usize, to: usize, minutes: u32) -> u32 {
        let way = if from == to { 0 } else { ask.coach.travel[from][to] };
        ask.slots_up(way + minutes)
    }

    fn begin(&self, ask: &Ask, table: Option<&Mealtime>) -> Stance {
        let none = vec![0; ask.facilities.len()];
        let meal = if table.is_some() { Eaten::Open(0) } else { Eaten::Had };
        Stance { used: none.clone(), booked: none, meal, ..Stance::default() }
    }

    /// The stance after one free slot of this kind.
    fn wait(&self, ask: &Ask, table: Option<&Mealtime>, stance: &Stance, kind: usize) -> Stance {
        let mut after = stance.rested(Eaten::Had);
        // With a meal open the way matters for as long as both together take.
        let last = |longest: &dyn Fn(usize) -> u32| {
            stance.last.and_then(|(facility, since)| {
                (since + 1 < longest(facility)).then_some((facility, since + 1))
            })
        };
        after.last = last(&|f| self.farthest(f));
        if let Some(table) = table.filter(|_| stance.meal != Eaten::Had) {
            let all = 0..self.travel.len();
            let both = |f: usize| {
                all.clone().map(|to| self.way_and_meal(ask, f, to, table.minutes)).max()
            };
            let long = last(&|f| both(f).unwrap_or(0));
            after.meal = table.wait(stance.meal, kind, ask.grid, long.is_some());
            if after.meal != Eaten::Had {
                after.last = long;
            }
        }
        after
    }

    /// The stance after a lesson, and whether its facility is new today; `None` where a rule forbids
    /// it.
    fn teach(
        &self,
        ask: &Ask,
        table: Option<&Mealtime>,
        stance: &Stance,
        ground: Ground,
    ) -> Option<(Stance, bool)> {
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
        let (mut used, mut booked) = (stance.used.clone(), stance.booked.clone());
        let new = used[f] == 0;
        used[f] = match self.day_limit[f] {
            Some(most) => Some(used[f] + ground.length).filter(|used| *used <= most)?,
            None => 1,
        };
        if let Some(most) = self.bookings[f] {
            booked[f] = Some(booked[f] + 1).filter(|booked| *booked <= most)?;
        }
        let meal = match (stance.meal, table, stance.last) {
            (Eaten::Open(_), ..) => Eaten::Open(0),
            (Eaten::Now, Some(table), Some((there, since)))
                if since < self.way_and_meal(ask, there, f, table.minutes) =>
            {
                Eaten::Open(0)
            }
            _ => Eaten::Had,
        };
        let last = (self.farthest(f) > 0).then_some((f, 0));
        Some((Stance { used, booked, last, run, on, meal }, new))
    }
}

/// All stances that can come about, by number, with what each leads to.
struct Stances {
    /// For each kind of slot.
    after_wait: Vec<Vec<u32>>,
    /// For each ground, what a lesson there leads to, and whether the facility is new.
    after_lesson: Vec<Vec<Option<(u32, bool)>>>,
    /// The stances with the same use of facilities and nothing else to remember: with the meal as
    /// far as it is, and with the meal behind.
    rested: Vec<[u32; 2]>,
    /// Whether the day can end so: with its meal.
    fed: Vec<bool>,
    /// The slots used of each facility.
    used: Vec<Vec<u32>>,
}

impl Stances {
    fn of(
        ask: &Ask,
        rules: &Rules,
        table: Option<&Mealtime>,
        grounds: &[Ground],
        most: usize,
    ) -> Option<Stances> {
        let (mut all, mut number) = (vec![rules.begin(ask, table)], HashMap::new());
        number.insert(all[0].clone(), 0_u32);
        let kinds = table.map_or(1, |table| table.kinds.len());
        let mut stances = Stances {
            after_wait: vec![Vec::new(); kinds],
            after_lesson: vec![Vec::new(); grounds.len()],
            rested: Vec::new(),
            fed: Vec::new(),
            used: Vec::new(),
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
            for (kind, after) in stances.after_wait.iter_mut().enumerate() {
                after.push(numbered(rules.wait(ask, table, &stance, kind)));
            }
            let so_far = if stance.meal == Eaten::Now { Eaten::Had } else { stance.meal };
            let rested = numbered(stance.rested(so_far));
            stances.rested.push([rested, numbered(stance.rested(Eaten::Had))]);
            for (n, ground) in grounds.iter().enumerate() {
                let led = rules.teach(ask, table, &stance, *ground);
                let led = led.map(|(after, new)| (numbered(after), new));
                stances.after_lesson[n].push(led);
            }
            // Minutes past the last whole slot are free.
            let end = table.map(|table| {
                let tail = table.kinds.len() - 1;
                table.wait(stance.meal, tail, ask.grid, false)
            });
            stances.fed.push(end.is_none_or(|meal| meal == Eaten::Had));
            stances.used.push(stance.used);
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

/// The people behind some entries.
pub(super) struct People {
    /// Who they are, by the place of their own entry.
    pub who: Vec<usize>,
    /// For each entry, its people by their number here.
    pub of: Vec<Vec<usize>>,
}

impl People {
    pub fn of(ask: &Ask, entries: impl Iterator<Item = usize>) -> People {
        let mut people = People { who: Vec::new(), of: Vec::new() };
        for entry in entries {
            let mut numbers = Vec::new();
            for person in ask.people(entry) {
                let known = people.who.iter().position(|who| *who == person);
                numbers.push(known.unwrap_or_else(|| {
                    people.who.push(person);
                    people.who.len() - 1
                }));
            }
            people.of.push(numbers);
        }
        people
    }

    /// How many lessons of a choice one of them has part in.
    pub fn lessons(&self, person: usize, counts: &[u8]) -> u32 {
        let theirs = self.of.iter().zip(counts).filter(|(of, _)| of.contains(&person));
        theirs.map(|(_, n)| u32::from(*n)).sum()
    }
}

impl Choices {
    /// All choices that fit into `most` slots and give nobody more lessons than their own number a
    /// day; `None` when there are too many of them.
    fn of(ask: &Ask, students: &[(usize, u32)], most: u32) -> Option<Choices> {
        let none = vec![0; students.len()];
        // Whose numbers an entry's lessons count for, where others' lessons do as well.
        let people = People::of(ask, students.iter().map(|(s, _)| *s));
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
                let room = u32::from(counts[n]) < *cap
                    && taken + ask.length(*s) <= most
                    && people.of[n].iter().all(|p| {
                        people.lessons(*p, &counts) < ask.students[people.who[*p]].per_day
                    });
                if !room {
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
            used: if watched.is_empty() { vec![] } else { vec![watched.iter().map(slots).collect()] },
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

/// The day's meal, and of which kind each slot is; the last kind is what is past the last slot.
fn table_of(ask: &Ask, day: u32) -> (Option<Mealtime>, Vec<usize>) {
    let slots = ask.day_slots();
    let Some((minutes, spans)) = ask.meal(day) else { return (None, vec![0; slots as usize]) };
    let parts = |slot: u32| -> Vec<(u32, u32)> {
        let (begin, end) = (slot * ask.grid, (slot + 1) * ask.grid);
        let part = |[from, to]: &[u32; 2]| ((*from).max(begin), (*to).min(end));
        let parts = spans.iter().map(part).filter(|(from, to)| from < to);
        parts.map(|(from, to)| (from - begin, to - begin)).collect()
    };
    let (mut kinds, mut kind) = (Vec::new(), Vec::new());
    for slot in 0..slots {
        let parts = parts(slot);
        kind.push(kinds.iter().position(|known| *known == parts).unwrap_or_else(|| {
            kinds.push(parts);
            kinds.len() - 1
        }));
    }
    kinds.push(parts(slots));
    (Some(Mealtime { minutes, kinds }), kind)
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
                    let next = &mut ring[(slot + 1) % many][choice * wide + board.wait(slot, stance)];
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
        let rests: Vec<usize> = (0..people.who.len())
            .filter(|p| ask.students[people.who[*p]].rest > 0)
            .collect();
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
