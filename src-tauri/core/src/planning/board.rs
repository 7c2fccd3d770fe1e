//! From what was gathered to the planner's numbers, and from a plan of numbers back to lessons.

use super::gather::{Gathered, Guest, monday};
use super::{PlanPlace, WhatIf};
use crate::kinds::ids::{CourtId, LessonId, VisitId};
use crate::kinds::stretches::without;
use crate::kinds::text::joined;
use crate::kinds::{Day, Span, Time};
use crate::lessons::Lesson;
use crate::own_time::{self, Occupied, allowed};
use crate::planner::{
    Ask, Coach, Court, DAY, Facility, Limit, Meal, Planned, Rule, Student, Wish, broken,
};

/// The planner's numbers, and what they stand for.
pub(super) struct Board {
    pub ask: Ask,
    /// For each court, its facility among the gathered and its place there.
    pub courts: Vec<(usize, usize)>,
    /// For each facility of the planner, its place among the gathered.
    pub used: Vec<usize>,
    /// For each student of the planner, the guests: one, or those who share these lessons, first
    /// whose wish it is; none for others who have lessons then. Guests come first, each alone.
    pub who: Vec<Vec<usize>>,
    /// So many of them come from wishes; those after have lessons that stand and no others.
    wishes: usize,
    /// Shared lessons that can never be, and why: a sentence each.
    pub never: Vec<(usize, Vec<String>)>,
    /// The lessons that stand already, as the planner has them.
    pub standing: Vec<(Planned, LessonId)>,
}

/// The hours of whoever is not there on any of the plan's days.
const ABSENT: [u32; 2] = [0, 0];

/// As many lessons a day as anyone has.
const NO_LIMIT: u32 = 99;

/// Minutes after midnight; `end` for the end of a range, where midnight is the day's end.
fn minute(text: &str, none: u32, end: bool) -> u32 {
    match Time::parse(text).map(Time::minutes) {
        None => none,
        Some(0) if end => DAY,
        Some(minutes) => minutes,
    }
}

impl Gathered {
    /// The planner's number of a day.
    pub fn number(&self, day: Day) -> Option<u32> {
        u32::try_from(day.since(self.first)).ok().filter(|n| *n < self.days)
    }

    /// The day of a number.
    pub fn day(&self, number: u32) -> Day {
        self.first.plus(i64::from(number))
    }

    /// The numbers under these changes.
    pub fn board(&self, changes: &[WhatIf]) -> Board {
        let also = |id| changes.contains(&WhatIf::AlsoAt { facility: id });
        let used: Vec<usize> = (0..self.places.len())
            .filter(|n| self.places[*n].chosen || also(self.places[*n].id))
            .collect();
        let grid = self.grid(&used);
        let courts: Vec<(usize, usize)> = used
            .iter()
            .flat_map(|place| (0..self.places[*place].courts.len()).map(move |c| (*place, c)))
            .collect();
        let mut board = Board {
            ask: Ask {
                grid,
                days: self.days,
                facilities: used.iter().map(|place| self.facility(*place)).collect(),
                courts: courts
                    .iter()
                    .map(|(place, c)| {
                        let number = used.iter().position(|n| n == place).unwrap_or(0);
                        self.court(*place, *c, number)
                    })
                    .collect(),
                coach: self.coach(&used, changes),
                students: Vec::new(),
                locked: Vec::new(),
                limits: self.limits(&used, changes),
                order: self.order(),
            },
            used,
            who: (0..self.guests.len()).map(|guest| vec![guest]).collect(),
            wishes: 0,
            never: Vec::new(),
            courts,
            standing: Vec::new(),
        };
        board.ask.students =
            self.guests.iter().map(|guest| self.student(&board, guest, changes)).collect();
        for (guest, sharing) in self
            .guests
            .iter()
            .enumerate()
            .flat_map(|(n, guest)| guest.shares.iter().map(move |sharing| (n, sharing)))
        {
            let mut who = vec![guest];
            who.extend(&sharing.with);
            let entry = board.shared(&who, u32::try_from(sharing.lessons).unwrap_or(0));
            let mut never = sharing.gone.clone();
            never.extend(self.apart(&board, &who));
            if !never.is_empty() {
                // No day holds them.
                let s = &mut board.ask.students[entry];
                (s.arrive, s.depart, s.hours) = ([0, 0], [0, DAY], ABSENT);
                board.never.push((entry, never));
            }
        }
        board.wishes = board.who.len();
        for lesson in &self.lessons {
            self.stand(&mut board, lesson);
        }
        for place in &self.ask.locked {
            if let Some(planned) = self.planned(&board, place)
                && !board.standing.iter().any(|(standing, _)| *standing == planned)
            {
                board.lock(planned);
            }
        }
        board
    }

    /// The limits over several days: the coach's weeks, and any seven days at facilities that say so.
    /// Lessons beside the plan's have used of them already.
    fn limits(&self, used: &[usize], changes: &[WhatIf]) -> Vec<Limit> {
        let longer: u32 = changes
            .iter()
            .map(|change| if let WhatIf::LongerWeeks { minutes } = change { *minutes } else { 0 })
            .sum();
        let last = self.days - 1;
        let limit = |facility: Option<usize>, most: i64, begins: Day| {
            let ends = begins.plus(6);
            let there =
                |l: &&Lesson| facility.is_none_or(|f| self.places[used[f]].id == l.facility);
            let beside = self.beside.iter().filter(there);
            let taught = beside.filter(|l| begins <= l.day && l.day <= ends);
            let minutes = u32::try_from(most).unwrap_or(u32::MAX);
            let before = u32::try_from(begins.since(self.first)).unwrap_or(0);
            let after = u32::try_from(ends.since(self.first)).unwrap_or(0);
            Limit {
                facility,
                first: before,
                last: after.min(last),
                minutes: minutes.saturating_sub(taught.map(|l| l.minutes).sum()),
            }
        };
        let mut limits = Vec::new();
        if self.own.week_limit > 0 {
            let most = self.own.week_limit + i64::from(longer);
            let mut begins = monday(self.first);
            while begins <= self.day(last) {
                limits.push(limit(None, most, begins));
                begins = begins.plus(7);
            }
        }
        for (facility, place) in used.iter().enumerate() {
            let most = self.places[*place].rules.week_limit;
            if most > 0 {
                let begins = (-6..=i64::from(last)).map(|n| self.first.plus(n));
                let all: Vec<Limit> = begins.map(|day| limit(Some(facility), most, day)).collect();
                // Those that another one holds as well say nothing.
                let weaker = |n: usize, a: &Limit| {
                    all.iter().enumerate().any(|(m, b)| {
                        let holds =
                            b.first <= a.first && a.last <= b.last && b.minutes <= a.minutes;
                        let same = (b.first, b.last, b.minutes) == (a.first, a.last, a.minutes);
                        m != n && holds && (!same || m < n)
                    })
                };
                let strong = all.iter().enumerate().filter(|(n, limit)| !weaker(*n, limit));
                limits.extend(strong.map(|(_, limit)| *limit));
            }
        }
        limits
    }

    /// Why these guests never meet, as far as the plan's days reach.
    fn apart(&self, board: &Board, who: &[usize]) -> Option<String> {
        let of = |guest: &usize| &board.ask.students[*guest];
        let names: Vec<&str> = who.iter().map(|guest| self.guests[*guest].name.as_str()).collect();
        let first = who.iter().map(|guest| of(guest).arrive).max()?;
        let last = who.iter().map(|guest| of(guest).depart).min()?;
        let absent = who.iter().any(|guest| of(guest).hours == ABSENT);
        if absent || first[0] > last[0] {
            return Some(format!("{} are there on no common day.", joined(&names)));
        }
        let from = who.iter().map(|guest| of(guest).hours[0]).max()?;
        let to = who.iter().map(|guest| of(guest).hours[1]).min()?;
        let none = from >= to || first >= last;
        none.then(|| format!("{} have no common hours.", joined(&names)))
    }

    fn order(&self) -> [Wish; 3] {
        let mut order = self.ask.order.clone();
        order.extend(Wish::USUAL);
        let mut seen = Vec::new();
        order.retain(|wish| {
            !seen.contains(wish) && {
                seen.push(*wish);
                true
            }
        });
        [order[0], order[1], order[2]]
    }

    /// The largest step that all lengths and all facilities' own steps are multiples of, from 5 to
    /// 30 minutes.
    fn grid(&self, used: &[usize]) -> u32 {
        let lengths = self.guests.iter().map(|g| g.wish.minutes);
        let steps = used.iter().map(|n| self.places[*n].rules.grid).filter(|step| *step > 0);
        let fits = |grid: &i64| lengths.clone().chain(steps.clone()).all(|n| n % grid == 0);
        let grid = [30, 20, 15, 10, 5].into_iter().find(fits).unwrap_or(5);
        u32::try_from(grid).unwrap_or(5)
    }

    fn facility(&self, place: usize) -> Facility {
        let rules = &self.places[place].rules;
        let limit = |minutes: i64| u32::try_from(minutes).ok().filter(|m| *m > 0).unwrap_or(DAY);
        let hours = (0..self.days).map(|day| {
            let open = self.open(place, day);
            let (from, to) = (open.first().map(|o| o.0), open.last().map(|o| o.1));
            from.zip(to).map_or([0, 0], |(from, to)| [from, to])
        });
        Facility {
            hours: hours.collect(),
            step: u32::try_from(rules.grid).unwrap_or(0),
            longest_run: limit(rules.longest),
            day_limit: limit(rules.day_limit),
            day_bookings: u32::try_from(rules.day_bookings)
                .ok()
                .filter(|many| *many > 0)
                .unwrap_or(u32::MAX),
            days_bookable: self.days,
        }
    }

    /// When a facility is open on a day, as far as its rules say.
    fn open(&self, place: usize, day: u32) -> Vec<(u32, u32)> {
        crate::facilities::hours_on(&self.places[place].rules.hours, self.day(day))
            .unwrap_or_else(|| vec![(0, DAY)])
    }

    fn court(&self, place: usize, court: usize, facility: usize) -> Court {
        let (rules, court) = (&self.places[place].rules, &self.places[place].courts[court]);
        let small = |n: i64| u32::try_from(n).unwrap_or(u32::MAX);
        let (mut prices, mut taken) = (Vec::new(), Vec::new());
        for n in 0..self.days {
            let day = self.day(n);
            let rows = rules.prices_on(&court.ground, day);
            prices.extend(rows.into_iter().map(|(from, to, hour)| [n, from, to, small(hour)]));
            let closed = rules.closed_on(Some(court.id), day);
            taken.extend(closed.into_iter().map(|(from, to, _)| [n, from, to]));
            // Between two openings of a day.
            taken.extend(self.open(place, n).windows(2).map(|two| [n, two[0].1, two[1].0]));
        }
        Court { facility, prices, fee: small(rules.fee()), taken }
    }

    fn coach(&self, used: &[usize], changes: &[WhatIf]) -> Coach {
        let mut busy = Vec::new();
        for n in 0..self.days {
            let day = self.day(n);
            if day < self.today {
                busy.push([n, 0, DAY]);
            }
            for (from, to, _) in self.away(day, changes) {
                busy.push([n, from, to]);
            }
        }
        let limit = |minutes: i64| u32::try_from(minutes).ok().filter(|m| *m > 0).unwrap_or(DAY);
        let longer: u32 = changes
            .iter()
            .map(|change| if let WhatIf::LongerDays { minutes } = change { *minutes } else { 0 })
            .sum();
        Coach {
            busy,
            travel: used
                .iter()
                .map(|from| used.iter().map(|to| self.ways[*from][*to]).collect())
                .collect(),
            day_limit: limit(self.own.day_limit).saturating_add(longer).min(DAY),
            longest_run: limit(self.own.longest_run),
            meals: (0..self.days).filter_map(|n| self.meal(n, changes)).collect(),
        }
    }

    /// A day's meal that may move. What else takes the coach's time is not free for it; the time
    /// outside the coach's own hours is.
    fn meal(&self, number: u32, changes: &[WhatIf]) -> Option<Meal> {
        let day = self.day(number);
        let meal = allowed(&self.own, day).meal.filter(|meal| !meal.is_fixed())?;
        let mut spans = vec![[meal.from, meal.to]];
        for taken in self.taken(day, changes) {
            cut(&mut spans, taken.from, taken.to);
        }
        Some(Meal { day: number, minutes: meal.minutes, spans })
    }

    /// What takes the coach's time on a day.
    fn taken(&self, day: Day, changes: &[WhatIf]) -> impl Iterator<Item = &Occupied> {
        self.occupied.iter().filter(move |taken| {
            let without = || WhatIf::Without { day, what: taken.what.clone() };
            taken.day == day && !changes.contains(&without())
        })
    }

    /// When the coach cannot teach on a day, each with what it is; the coach's own hours have no
    /// name.
    pub fn away(&self, day: Day, changes: &[WhatIf]) -> Vec<(u32, u32, String)> {
        let own = allowed(&self.own, day);
        let mut open = own.open;
        for change in changes {
            match change {
                WhatIf::BeginEarlier { day: on, minutes } if *on == day => {
                    if let Some(first) = open.first_mut() {
                        first.0 = first.0.saturating_sub(*minutes);
                    }
                }
                WhatIf::GoOnLater { day: on, minutes } if *on == day => {
                    if let Some(last) = open.last_mut() {
                        last.1 = (last.1 + minutes).min(DAY);
                    }
                }
                _ => {}
            }
        }
        let mut away: Vec<(u32, u32, String)> =
            without(&[(0, DAY)], &open).into_iter().map(|(a, z)| (a, z, String::new())).collect();
        let fixed = own.meal.filter(own_time::Meal::is_fixed);
        away.extend(fixed.map(|meal| (meal.from, meal.to, "your meal".to_owned())));
        away.extend(self.taken(day, changes).map(|t| (t.from, t.to, t.what.clone())));
        away.retain(|(from, to, _)| from < to);
        away
    }

    /// The days of a guest's visit that the plan has, under these changes; `None` where there are
    /// none.
    fn inside(&self, guest: &Guest, changes: &[WhatIf]) -> Option<Span> {
        let visit = guest.visit;
        let before = changes.contains(&WhatIf::DayBefore { visit });
        let after = changes.contains(&WhatIf::DayAfter { visit });
        let (mut first, mut last) = (guest.days.first, guest.days.last);
        if before {
            first = first.plus(-1);
        }
        if after {
            last = last.plus(1);
        }
        // Days of the visit beyond the plan's are not planned here.
        let (first, last) = if before || after {
            (first.max(self.first), last.min(self.day(self.days - 1)))
        } else {
            (first.max(self.span.first), last.min(self.span.last))
        };
        (first <= last).then_some(Span { first, last })
    }

    fn student(&self, board: &Board, guest: &Guest, changes: &[WhatIf]) -> Student {
        let w = &guest.wish;
        let small = |n: i64| u32::try_from(n).unwrap_or(0);
        let (mut arrives, mut leaves) =
            (minute(&w.arrives, 0, false), minute(&w.leaves, DAY, true));
        let (mut from, mut to) = (minute(&w.earliest, 0, false), minute(&w.latest, DAY, true));
        // Who only shares lessons has said nothing of lessons a day.
        let mut per_day = if guest.wishes { small(w.per_day) } else { NO_LIMIT };
        for change in changes {
            match change {
                WhatIf::ArriveEarlier { visit, minutes } if *visit == guest.visit => {
                    arrives = arrives.saturating_sub(*minutes);
                }
                WhatIf::LeaveLater { visit, minutes } if *visit == guest.visit => {
                    leaves = (leaves + minutes).min(DAY);
                }
                WhatIf::DayBefore { visit } if *visit == guest.visit => arrives = 0,
                WhatIf::DayAfter { visit } if *visit == guest.visit => leaves = DAY,
                WhatIf::OneMoreADay { visit } if *visit == guest.visit => per_day += 1,
                WhatIf::EarlierHours { visit, minutes } if *visit == guest.visit => {
                    from = from.saturating_sub(*minutes);
                }
                WhatIf::LaterHours { visit, minutes } if *visit == guest.visit => {
                    to = (to + minutes).min(DAY);
                }
                _ => {}
            }
        }
        let days = self.inside(guest, changes);
        if days.is_some_and(|days| days.first > guest.days.first) {
            arrives = 0;
        }
        if days.is_some_and(|days| days.last < guest.days.last) {
            leaves = DAY;
        }
        let number = |day: Day| self.number(day).unwrap_or(0);
        let (arrive, depart, hours) = match days {
            Some(days) => ([number(days.first), arrives], [number(days.last), leaves], [from, to]),
            None => ([0, 0], [0, DAY], ABSENT),
        };
        let liked = w.court.and_then(|court| board.court_number(self, court));
        Student {
            arrive,
            depart,
            hours,
            lessons: small(w.lessons),
            length: small(w.minutes),
            per_day,
            rest: small(w.rest),
            prefer: [minute(&w.best_from, from, false), minute(&w.best_to, to, true)],
            prefer_court: liked,
            priority: small(w.weight).max(1),
            people: Vec::new(),
        }
    }

    /// A lesson that stands already: locked where the planner's rules allow it, else in the way.
    fn stand(&self, board: &mut Board, lesson: &Lesson) {
        let Some(day) = self.number(lesson.day) else { return };
        let court = lesson.court.and_then(|court| board.court_number(self, court));
        let of = |visit| self.guests.iter().position(|guest| guest.visit == visit);
        let theirs: Vec<usize> = lesson.students.iter().filter_map(|s| of(s.visit)).collect();
        let start = lesson.starts.minutes();
        let length = lesson.minutes.div_ceil(board.ask.grid) * board.ask.grid;
        let wished = board.entry(&theirs, lesson.minutes);
        if let Some(court) = court {
            let entries = board.who.len();
            let student = match (wished, theirs.as_slice()) {
                (Some(entry), _) => entry,
                (None, [one]) => *one,
                (None, _) => board.standing_entry(&theirs, lesson.minutes),
            };
            let planned = Planned { student, day, start, court };
            let same = lesson.minutes == board.ask.students[student].length;
            if same && board.lock_standing(planned) {
                board.standing.push((planned, lesson.id));
                self.in_the_way(board, lesson, false);
                if wished.is_none() {
                    for guest in theirs.into_iter().filter(|guest| *guest != student) {
                        board.one_less(guest);
                    }
                }
                return;
            }
            board.ask.students.truncate(entries);
            board.who.truncate(entries);
        }
        match wished {
            Some(entry) => board.one_less(entry),
            None => theirs.into_iter().for_each(|guest| board.one_less(guest)),
        }
        let end = (start + length).min(DAY);
        board.ask.coach.busy.push([day, start, end]);
        for meal in board.ask.coach.meals.iter_mut().filter(|meal| meal.day == day) {
            cut(&mut meal.spans, start, end);
        }
        for limit in board.ask.limits.iter_mut().filter(|l| l.first <= day && day <= l.last) {
            let there = |f: usize| self.places[board.used[f]].id == lesson.facility;
            if limit.facility.is_none_or(there) {
                limit.minutes = limit.minutes.saturating_sub(lesson.minutes);
            }
        }
        self.in_the_way(board, lesson, true);
    }

    /// Keeps the court of a lesson that cannot be locked, and the way to other facilities around it.
    fn in_the_way(&self, board: &mut Board, lesson: &Lesson, court: bool) {
        let Some(day) = self.number(lesson.day) else { return };
        let (from, to) = (lesson.starts.minutes(), lesson.starts.minutes() + lesson.minutes);
        let there = self.places.iter().position(|place| place.id == lesson.facility);
        for (n, (place, c)) in board.courts.iter().enumerate() {
            let way = there.map_or(0, |there| self.ways[there][*place]);
            let own = lesson.court == Some(self.places[*place].courts[*c].id);
            let (from, to) = (from.saturating_sub(way), (to + way).min(DAY));
            if court && (own || way > 0) {
                board.ask.courts[n].taken.push([day, from, to]);
            }
        }
    }

    /// A place of a plan in the planner's numbers.
    pub fn planned(&self, board: &Board, place: &PlanPlace) -> Option<Planned> {
        let of = |visit: &VisitId| self.guests.iter().position(|guest| guest.visit == *visit);
        let theirs: Option<Vec<usize>> =
            std::iter::once(&place.visit).chain(&place.with).map(of).collect();
        Some(Planned {
            student: board.entry_of(&theirs?)?,
            day: self.number(place.day)?,
            start: place.starts.minutes(),
            court: board.court_number(self, place.court)?,
        })
    }

    /// The planner's numbers as a place of a plan; `None` for someone who is not planned for.
    pub fn place(&self, board: &Board, planned: &Planned) -> Option<PlanPlace> {
        let (place, court) = board.courts[planned.court];
        let mut visits = board.who[planned.student].iter().map(|guest| self.guests[*guest].visit);
        Some(PlanPlace {
            visit: visits.next()?,
            with: visits.collect(),
            court: self.places[place].courts[court].id,
            day: self.day(planned.day),
            starts: Time::MIDNIGHT.plus(planned.start),
        })
    }

    /// The names of those whose lessons an entry of the planner stands for; `None` for others.
    pub fn names(&self, board: &Board, entry: usize) -> Option<String> {
        let who = board.who[entry].iter().map(|guest| self.guests[*guest].name.as_str());
        let names: Vec<&str> = who.collect();
        (!names.is_empty()).then(|| joined(&names))
    }
}

/// Takes a span of minutes out of others.
fn cut(spans: &mut Vec<[u32; 2]>, from: u32, to: u32) {
    let parts = |[a, b]: [u32; 2]| [[a, b.min(from)], [a.max(to), b]];
    *spans = spans.iter().copied().flat_map(parts).filter(|[a, b]| a < b).collect();
}

impl Board {
    fn court_number(&self, of: &Gathered, court: CourtId) -> Option<usize> {
        self.courts.iter().position(|(place, c)| of.places[*place].courts[*c].id == court)
    }

    /// The entry of these guests together, in whatever order they are named.
    fn entry_of(&self, guests: &[usize]) -> Option<usize> {
        let same = |who: &Vec<usize>| {
            who.len() == guests.len() && who.iter().all(|guest| guests.contains(guest))
        };
        self.who.iter().position(same)
    }

    /// The entry of a wish that these guests share, while a lesson of this length is still wanted of
    /// it.
    fn entry(&self, guests: &[usize], minutes: u32) -> Option<usize> {
        let entry = self.entry_of(guests).filter(|entry| *entry < self.wishes)?;
        let s = &self.ask.students[entry];
        let locked = self.ask.locked.iter().filter(|l| l.student == entry).count();
        let open = (locked as u64) < u64::from(s.lessons) && s.length == minutes;
        (guests.len() > 1 && open).then_some(entry)
    }

    /// An entry for lessons that these guests share, in the hours in which all of them can.
    fn shared(&mut self, who: &[usize], lessons: u32) -> usize {
        let of = |guest: &usize| &self.ask.students[*guest];
        let whose = of(&who[0]).clone();
        let entry = Student {
            arrive: who.iter().map(|g| of(g).arrive).max().unwrap_or(whose.arrive),
            depart: who.iter().map(|g| of(g).depart).min().unwrap_or(whose.depart),
            hours: [
                who.iter().map(|g| of(g).hours[0]).max().unwrap_or(0),
                who.iter().map(|g| of(g).hours[1]).min().unwrap_or(DAY),
            ],
            per_day: who.iter().map(|g| of(g).per_day).min().unwrap_or(whose.per_day),
            lessons,
            people: who.to_vec(),
            ..whose
        };
        self.ask.students.push(entry);
        self.who.push(who.to_vec());
        self.ask.students.len() - 1
    }

    /// An entry for a lesson that stands and that no wish of these guests is for.
    fn standing_entry(&mut self, who: &[usize], minutes: u32) -> usize {
        if !who.is_empty() {
            let entry = self.shared(who, 0);
            self.ask.students[entry].length = minutes;
            return entry;
        }
        let last = self.ask.days - 1;
        self.ask.students.push(Student {
            arrive: [0, 0],
            depart: [last, DAY],
            hours: [0, DAY],
            lessons: 0,
            length: minutes,
            per_day: NO_LIMIT,
            rest: 0,
            prefer: [0, DAY],
            prefer_court: None,
            priority: 1,
            people: Vec::new(),
        });
        self.who.push(Vec::new());
        self.ask.students.len() - 1
    }

    /// Locks a lesson, if it and those locked before keep the rules.
    fn lock(&mut self, planned: Planned) -> bool {
        let standing = planned.student >= self.wishes;
        let wished = &mut self.ask.students[planned.student].lessons;
        *wished += u32::from(standing);
        self.ask.locked.push(planned);
        let sound = broken(&self.ask, &self.ask.locked).is_empty();
        if !sound {
            self.ask.locked.pop();
            self.ask.students[planned.student].lessons -= u32::from(standing);
        }
        sound
    }

    /// Locks a lesson that stands. It does not ask whether a week has room for it or a meal is left:
    /// those give way.
    fn lock_standing(&mut self, planned: Planned) -> bool {
        if self.lock(planned) {
            return true;
        }
        let (meals, limits) = (self.ask.coach.meals.clone(), self.ask.limits.clone());
        self.ask.coach.meals.retain(|meal| meal.day != planned.day);
        let minutes = self.ask.students[planned.student].length.div_ceil(self.ask.grid);
        for limit in &mut self.ask.limits {
            if limit.first <= planned.day && planned.day <= limit.last {
                limit.minutes += minutes * self.ask.grid;
            }
        }
        let stands = self.lock(planned);
        if stands {
            self.tighten(&meals, &limits);
        } else {
            (self.ask.coach.meals, self.ask.limits) = (meals, limits);
        }
        stands
    }

    /// Takes back what gave way without need.
    fn tighten(&mut self, meals: &[Meal], limits: &[Limit]) {
        let eased = std::mem::replace(&mut self.ask.coach.meals, meals.to_vec());
        if broken(&self.ask, &self.ask.locked).iter().any(|b| b.rule == Rule::Meal) {
            self.ask.coach.meals = eased;
        }
        for (n, limit) in limits.iter().enumerate() {
            let eased = std::mem::replace(&mut self.ask.limits[n], *limit);
            if !broken(&self.ask, &self.ask.locked).is_empty() {
                // As much as stands, and no more.
                let facility = |l: &Planned| self.ask.courts[l.court].facility;
                let there = |l: &&Planned| limit.facility.is_none_or(|f| f == facility(l));
                let held = self.ask.locked.iter().filter(there);
                let held = held.filter(|l| limit.first <= l.day && l.day <= limit.last);
                let slots =
                    |l: &Planned| self.ask.students[l.student].length.div_ceil(self.ask.grid);
                let minutes = held.map(|l| slots(l) * self.ask.grid).sum();
                self.ask.limits[n] = Limit { minutes, ..eased };
            }
        }
    }

    fn one_less(&mut self, student: usize) {
        let locked = self.ask.locked.iter().filter(|l| l.student == student).count();
        let s = &mut self.ask.students[student];
        s.lessons = s.lessons.saturating_sub(1).max(u32::try_from(locked).unwrap_or(0));
    }
}
