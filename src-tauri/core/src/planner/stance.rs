//! How the coach stands at the beginning of a slot of a day: what of the day so far still matters for
//! the rest of it, and what waiting and teaching make of that.

use std::collections::HashMap;

use super::ask::{Ask, Facility};
use super::options::Opening;

/// A court that a lesson can be on, as far as a stance must know it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) struct Ground {
    facility: usize,
    /// The court, where an unbroken run on it could reach the facility's limit.
    court: Option<usize>,
    /// The lesson's slots.
    pub length: u32,
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
pub(super) struct Mealtime {
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
    pub most: u32,
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
    pub fn watching(&self, watched: &[usize]) -> Rules {
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

    pub fn ground(&self, ask: &Ask, opening: &Opening) -> Ground {
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
            let both =
                |f: usize| all.clone().map(|to| self.way_and_meal(ask, f, to, table.minutes)).max();
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
pub(super) struct Stances {
    /// For each kind of slot.
    pub after_wait: Vec<Vec<u32>>,
    /// For each ground, what a lesson there leads to, and whether the facility is new.
    pub after_lesson: Vec<Vec<Option<(u32, bool)>>>,
    /// The stances with the same use of facilities and nothing else to remember: with the meal as
    /// far as it is, and with the meal behind.
    pub rested: Vec<[u32; 2]>,
    /// Whether the day can end so: with its meal.
    pub fed: Vec<bool>,
    /// The slots used of each facility.
    pub used: Vec<Vec<u32>>,
}

impl Stances {
    pub fn of(
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

/// The day's meal, and of which kind each slot is; the last kind is what is past the last slot.
pub(super) fn table_of(ask: &Ask, day: u32) -> (Option<Mealtime>, Vec<usize>) {
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
