//! What concerns one lesson alone is sorted out first: an option is a start on a court that student,
//! facility, court and coach all allow. Each start that is ruled out keeps its reason.

use serde::Serialize;

use super::Planned;
use super::ask::Ask;

/// What rules a start out, in the order in which it is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Code {
    /// The student has not arrived yet.
    NotArrived,
    /// The student has left.
    Departed,
    /// The facility is closed.
    Closed,
    /// The facility gives no court out from that time on.
    NotAStart,
    /// The day cannot be booked yet.
    NotBookable,
    /// The lesson is longer than the facility allows on a court or in a day.
    TooLong,
    /// Someone else has the court.
    CourtTaken,
    /// The coach is busy.
    CoachBusy,
    /// It would leave the coach no time for the day's meal.
    NoMeal,
    /// Nothing rules it out by itself; other lessons, travel, rest or a limit do.
    InTheWay,
}

/// A start on a court that nothing rules out by itself.
#[derive(Clone, Copy, Debug)]
pub(super) struct Opening {
    pub student: usize,
    /// The slot of the day.
    pub start: u32,
    pub court: usize,
    pub cost: i64,
    pub off: i64,
}

/// What rules out a lesson of this student at this slot, if anything does by itself.
pub fn ruled_out(ask: &Ask, student: usize, day: u32, slot: u32, court: usize) -> Option<Code> {
    let s = &ask.students[student];
    let c = &ask.courts[court];
    let f = &ask.facilities[c.facility];
    let from = slot * ask.grid;
    let to = from + ask.length(student) * ask.grid;
    let meets = |of: &[[u32; 3]]| of.iter().any(|b| b[0] == day && b[1] < to && from < b[2]);
    let hours = f.hours[day as usize];
    let length = to - from;
    if [day, from] < s.arrive {
        Some(Code::NotArrived)
    } else if [day, to] > s.depart {
        Some(Code::Departed)
    } else if from < hours[0] || to > hours[1] {
        Some(Code::Closed)
    } else if f.step > 0 && !from.is_multiple_of(f.step) {
        Some(Code::NotAStart)
    } else if day >= f.days_bookable {
        Some(Code::NotBookable)
    } else if length > f.longest_run.min(f.day_limit) {
        Some(Code::TooLong)
    } else if meets(&c.taken) {
        Some(Code::CourtTaken)
    } else if meets(&ask.coach.busy) {
        Some(Code::CoachBusy)
    } else if ask.meal(day).is_some_and(|meal| !leaves(&meal, from, to)) {
        Some(Code::NoMeal)
    } else {
        None
    }
}

/// Whether a lesson, if it is the only one, leaves a meal its time.
fn leaves((minutes, spans): &(u32, Vec<[u32; 2]>), from: u32, to: u32) -> bool {
    spans.iter().any(|span| {
        let before = span[1].min(from).saturating_sub(span[0]);
        let after = span[1].saturating_sub(span[0].max(to));
        before.max(after) >= *minutes
    })
}

/// The slots at which a lesson of this student would lie inside the student's own hours.
pub(super) fn starts(ask: &Ask, student: usize) -> impl Iterator<Item = u32> + use<> {
    let hours = ask.students[student].hours;
    let last = (hours[1].min(super::ask::DAY) / ask.grid + 1).saturating_sub(ask.length(student));
    ask.slots_up(hours[0])..last
}

/// Whether a lesson meets a locked one and is not that one.
fn in_locked(ask: &Ask, lesson: &Planned) -> bool {
    let span = |l: &Planned| (l.start, l.start + ask.length(l.student) * ask.grid);
    let (from, to) = span(lesson);
    ask.locked_on(lesson.day).any(|locked| {
        let (a, b) = span(locked);
        locked != lesson && a < to && from < b
    })
}

/// The openings of a day, by start, student and court: locked lessons, and what does not meet any.
pub(super) fn openings(ask: &Ask, day: u32) -> Vec<Opening> {
    let mut openings = Vec::new();
    for student in 0..ask.students.len() {
        if ask.students[student].lessons == 0 || ask.students[student].per_day == 0 {
            continue;
        }
        for start in starts(ask, student) {
            for court in 0..ask.courts.len() {
                let minute = start * ask.grid;
                let here = Planned { student, day, start: minute, court };
                if ruled_out(ask, student, day, start, court).is_none() && !in_locked(ask, &here) {
                    let cost = ask.court_cost(student, court, day, minute);
                    let off = ask.off(student, court, minute);
                    openings.push(Opening { student, start, court, cost, off });
                }
            }
        }
    }
    openings.sort_by_key(|o| (o.start, o.student, o.court));
    openings
}
