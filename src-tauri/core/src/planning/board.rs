//! From what was gathered to the planner's numbers, and from a plan of numbers back to lessons.

use super::gather::{Gathered, Guest};
use super::{PlanPlace, WhatIf};
use crate::kinds::ids::{CourtId, LessonId};
use crate::kinds::{Day, Time};
use crate::lessons::Lesson;
use crate::own_time::allowed;
use crate::planner::{Ask, Coach, Court, DAY, Facility, Planned, Student, Wish, broken};

/// The planner's numbers, and what they stand for.
pub(super) struct Board {
    pub ask: Ask,
    /// For each court, its facility among the gathered and its place there.
    pub courts: Vec<(usize, usize)>,
    /// For each student of the planner, the guest; `None` for others who have lessons then.
    pub guests: Vec<Option<usize>>,
    /// The lessons that stand already, as the planner has them.
    pub standing: Vec<(Planned, LessonId)>,
}

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
                limits: Vec::new(),
                order: self.order(),
            },
            guests: (0..self.guests.len()).map(Some).collect(),
            courts,
            standing: Vec::new(),
        };
        board.ask.students =
            self.guests.iter().map(|guest| self.student(&board, guest, changes)).collect();
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
            day_bookings: u32::MAX,
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
            let closed = rules.closed_on(court.id, day);
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
            meals: Vec::new(),
        }
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
        let mut away = Vec::new();
        let mut at = 0;
        for (from, to) in open {
            away.push((at, from, String::new()));
            at = to;
        }
        away.push((at, DAY, String::new()));
        away.extend(own.meal.map(|(from, to)| (from, to, "your meal".to_owned())));
        for taken in self.occupied.iter().filter(|taken| taken.day == day) {
            let without = WhatIf::Without { day, what: taken.what.clone() };
            if !changes.contains(&without) {
                away.push((taken.from, taken.to, taken.what.clone()));
            }
        }
        away.retain(|(from, to, _)| from < to);
        away
    }

    fn student(&self, board: &Board, guest: &Guest, changes: &[WhatIf]) -> Student {
        let w = &guest.wish;
        let small = |n: i64| u32::try_from(n).unwrap_or(0);
        let (mut first, mut last) = (guest.days.first, guest.days.last);
        let (mut arrives, mut leaves) =
            (minute(&w.arrives, 0, false), minute(&w.leaves, DAY, true));
        let (mut from, mut to) = (minute(&w.earliest, 0, false), minute(&w.latest, DAY, true));
        let mut per_day = small(w.per_day);
        for change in changes {
            match change {
                WhatIf::ArriveEarlier { visit, minutes } if *visit == guest.visit => {
                    arrives = arrives.saturating_sub(*minutes);
                }
                WhatIf::LeaveLater { visit, minutes } if *visit == guest.visit => {
                    leaves = (leaves + minutes).min(DAY);
                }
                WhatIf::DayBefore { visit } if *visit == guest.visit => {
                    (first, arrives) = (first.plus(-1), 0);
                }
                WhatIf::DayAfter { visit } if *visit == guest.visit => {
                    (last, leaves) = (last.plus(1), DAY);
                }
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
        // Days of the visit beyond the plan's are not planned here.
        let (first, last) = (first.max(self.first), last.min(self.day(self.days - 1)));
        let inside = |change: &WhatIf| matches!(change, WhatIf::DayBefore { visit } | WhatIf::DayAfter { visit } if *visit == guest.visit);
        let (first, last) = if changes.iter().any(inside) {
            (first, last)
        } else {
            (first.max(self.span.first), last.min(self.span.last))
        };
        if first > guest.days.first {
            arrives = 0;
        }
        if last < guest.days.last {
            leaves = DAY;
        }
        let number = |day: Day| self.number(day).unwrap_or(0);
        let liked = w.court.and_then(|court| board.court_number(self, court));
        Student {
            arrive: [number(first), arrives],
            depart: [number(last), leaves],
            hours: [from, to],
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
        let mut rest = theirs.clone();
        if let Some(court) = court {
            let student = match theirs.first() {
                Some(student) => *student,
                None => board.other(lesson.minutes),
            };
            let planned = Planned { student, day, start, court };
            let same = lesson.minutes == board.ask.students[student].length;
            if same && board.lock(planned) {
                board.standing.push((planned, lesson.id));
                rest.retain(|s| *s != student);
                self.in_the_way(board, lesson, false);
                for other in rest {
                    board.one_less(other);
                }
                return;
            }
        }
        for student in rest {
            board.one_less(student);
        }
        board.ask.coach.busy.push([day, start, (start + length).min(DAY)]);
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
        Some(Planned {
            student: self.guests.iter().position(|guest| guest.visit == place.visit)?,
            day: self.number(place.day)?,
            start: place.starts.minutes(),
            court: board.court_number(self, place.court)?,
        })
    }

    /// The planner's numbers as a place of a plan; `None` for someone who is not planned for.
    pub fn place(&self, board: &Board, planned: &Planned) -> Option<PlanPlace> {
        let (place, court) = board.courts[planned.court];
        Some(PlanPlace {
            visit: self.guests[board.guests[planned.student]?].visit,
            court: self.places[place].courts[court].id,
            day: self.day(planned.day),
            starts: Time::MIDNIGHT.plus(planned.start),
        })
    }
}

impl Board {
    fn court_number(&self, of: &Gathered, court: CourtId) -> Option<usize> {
        self.courts.iter().position(|(place, c)| of.places[*place].courts[*c].id == court)
    }

    /// Someone who is not planned for and has a lesson of this length.
    fn other(&mut self, minutes: u32) -> usize {
        let last = self.ask.days - 1;
        self.ask.students.push(Student {
            arrive: [0, 0],
            depart: [last, DAY],
            hours: [0, DAY],
            lessons: 0,
            length: minutes,
            per_day: 99,
            rest: 0,
            prefer: [0, DAY],
            prefer_court: None,
            priority: 1,
            people: Vec::new(),
        });
        self.guests.push(None);
        self.ask.students.len() - 1
    }

    /// Locks a lesson, if it and those locked before keep the rules.
    fn lock(&mut self, planned: Planned) -> bool {
        let other = self.guests[planned.student].is_none();
        let wished = &mut self.ask.students[planned.student].lessons;
        *wished += u32::from(other);
        self.ask.locked.push(planned);
        let sound = broken(&self.ask, &self.ask.locked).is_empty();
        if !sound {
            self.ask.locked.pop();
            self.ask.students[planned.student].lessons -= u32::from(other);
        }
        sound
    }

    fn one_less(&mut self, student: usize) {
        let locked = self.ask.locked.iter().filter(|l| l.student == student).count();
        let s = &mut self.ask.students[student];
        s.lessons = s.lessons.saturating_sub(1).max(u32::try_from(locked).unwrap_or(0));
    }
}
