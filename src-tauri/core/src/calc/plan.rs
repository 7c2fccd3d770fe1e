//! `plan`: who is where when, to the best lessons on courts.

use serde_json::Value;

use super::fields::Fields;
use super::{CalcRefusal, answer};
use crate::planner::{self, Ask, Coach, Court, DAY, Facility, Student, Wish};

/// The most of anything that one plan takes.
const MOST: u32 = 62;
/// The most lessons of one student.
const MOST_LESSONS: u32 = 100;

pub fn read(mut fields: Fields, go_on: &dyn Fn() -> bool) -> Result<Value, CalcRefusal> {
    let grid = bounded(&mut fields, "grid", 5, 240);
    let days = bounded(&mut fields, "days", 1, MOST);
    let facilities = fields.each("facilities", |f| facility(f, days));
    let places = facilities.as_ref().map(Vec::len);
    let courts = fields.each("courts", |f| court(f, days, places));
    let grounds = courts.as_ref().map(Vec::len);
    let coach = fields.inside("coach", |f| coach(f, days));
    let students = fields.each("students", |f| student(f, days, grounds));
    for (field, many) in [
        ("facilities", facilities.as_ref().map(Vec::len)),
        ("courts", courts.as_ref().map(Vec::len)),
        ("students", students.as_ref().map(Vec::len)),
    ] {
        if many.is_some_and(|many| many > MOST as usize) {
            fields.refuse(field, "too_many", format!("“{field}” holds at most {MOST}"));
        }
    }
    fields.done()?;
    let ask = grid.zip(days).zip(facilities.zip(courts)).zip(coach.zip(students)).map(
        |(((grid, days), (places, grounds)), ((mut coach, travel), students))| {
            let way = |from: usize, to: usize| if from == to { 0 } else { travel };
            let ways = |from| (0..places.len()).map(|to| way(from, to)).collect();
            coach.travel = (0..places.len()).map(ways).collect();
            let courts = grounds.into_iter().map(|ground| ground.court(&places, days)).collect();
            let facilities = places.into_iter().map(|(facility, _)| facility).collect();
            let (locked, limits, order) = (Vec::new(), Vec::new(), Wish::USUAL);
            Ask { grid, days, facilities, courts, coach, students, locked, limits, order }
        },
    );
    let Some(ask) = ask else { return answer(None::<Value>) };
    match planner::plan(&ask, go_on) {
        Ok(plan) => answer(Some(plan)),
        Err(planner::Refusal::TooLarge(words)) => {
            let problem = super::Problem { field: String::new(), code: "too_large", words };
            Err(CalcRefusal {
                code: "refused",
                words: "this input cannot be used as it is".to_owned(),
                problems: vec![problem],
            })
        }
        Err(planner::Refusal::Fault(words)) => {
            Err(CalcRefusal { code: "fault", words, problems: Vec::new() })
        }
    }
}

fn bounded(fields: &mut Fields, field: &str, least: u32, most: u32) -> Option<u32> {
    let number = fields.whole(field)?;
    if (least..=most).contains(&number) {
        return Some(number);
    }
    let words = format!("“{field}” is {number}; it can be {least} to {most}");
    fields.refuse(field, "out_of_range", words);
    None
}

/// A range of a day's minutes.
fn range(fields: &mut Fields, field: &str) -> Option<[u32; 2]> {
    let range = fields.row::<2>(field)?;
    checked(fields, field, range[0], range[1]).then_some(range)
}

fn checked(fields: &mut Fields, at: &str, from: u32, to: u32) -> bool {
    if from > to {
        let words = format!("“{at}” begins at {from}, after its end at {to}");
        fields.refuse(at, "end_before_start", words);
    } else if to > DAY {
        fields.refuse(at, "out_of_range", format!("“{at}” ends at {to}; a day has {DAY} minutes"));
    } else {
        return true;
    }
    false
}

/// Ranges of minutes on days: day, from, to.
fn ranges(fields: &mut Fields, field: &str, days: Option<u32>) -> Option<Vec<[u32; 3]>> {
    let rows = fields.rows::<3>(field)?;
    let mut sound = true;
    for (place, [day, from, to]) in rows.iter().copied().enumerate() {
        let at = format!("{field}[{place}]");
        sound &= on_a_day(fields, &at, day, days);
        sound &= checked(fields, &at, from, to);
    }
    sound.then_some(rows)
}

fn on_a_day(fields: &mut Fields, at: &str, day: u32, days: Option<u32>) -> bool {
    let there = days.is_none_or(|days| day < days);
    if !there {
        let words = format!("“{at}” is on day {day}; the days are numbered from 0");
        fields.refuse(at, "no_such_day", words);
    }
    there
}

/// A facility, and when its courts cost the peak rate.
fn facility(fields: &mut Fields, days: Option<u32>) -> Option<(Facility, [u32; 2])> {
    let hours = fields.rows::<2>("hours");
    if let Some(hours) = &hours {
        for (place, [from, to]) in hours.iter().copied().enumerate() {
            checked(fields, &format!("hours[{place}]"), from, to);
        }
        if days.is_some_and(|days| hours.len() != days as usize) {
            let words = format!("“hours” has {} ranges; there is one for each day", hours.len());
            fields.refuse("hours", "not_one_a_day", words);
        }
    }
    let peak = range(fields, "peak");
    let longest_run = fields.whole("longest_run");
    let day_limit = fields.whole("day_limit");
    let days_bookable = fields.whole("days_bookable");
    let facility = Facility {
        hours: hours?,
        step: 0,
        longest_run: longest_run?,
        day_limit: day_limit?,
        day_bookings: u32::MAX,
        days_bookable: days_bookable?,
    };
    Some((facility, peak?))
}

/// A court as it stands in the input.
struct Ground {
    facility: usize,
    rate: u32,
    peak_rate: u32,
    taken: Vec<[u32; 3]>,
}

impl Ground {
    /// The court with its two rates on each day.
    fn court(self, facilities: &[(Facility, [u32; 2])], days: u32) -> Court {
        let [from, to] = facilities[self.facility].1;
        let on = |day| [[day, from, to, self.peak_rate], [day, 0, DAY, self.rate]];
        let prices = (0..days).flat_map(on).collect();
        Court { facility: self.facility, prices, fee: 0, taken: self.taken }
    }
}

fn court(fields: &mut Fields, days: Option<u32>, facilities: Option<usize>) -> Option<Ground> {
    let facility = fields.whole("facility").map(|n| n as usize);
    if let Some((facility, many)) = facility.zip(facilities).filter(|(n, many)| n >= many) {
        let words = format!("“facility” is {facility}; there are {many}, numbered from 0");
        fields.refuse("facility", "no_such_facility", words);
    }
    let rate = fields.whole("rate");
    let peak_rate = fields.whole("peak_rate");
    let taken = ranges(fields, "taken", days);
    Some(Ground { facility: facility?, rate: rate?, peak_rate: peak_rate?, taken: taken? })
}

/// The coach, and the minutes from any facility to any other.
fn coach(fields: &mut Fields, days: Option<u32>) -> Option<(Coach, u32)> {
    let busy = ranges(fields, "busy", days);
    let travel = fields.whole("travel");
    let day_limit = fields.whole("day_limit");
    let longest_run = fields.whole("longest_run");
    let (day_limit, longest_run) = (day_limit?, longest_run?);
    let meals = Vec::new();
    Some((Coach { busy: busy?, travel: Vec::new(), day_limit, longest_run, meals }, travel?))
}

fn student(fields: &mut Fields, days: Option<u32>, courts: Option<usize>) -> Option<Student> {
    let arrive = moment(fields, "arrive", days);
    let depart = moment(fields, "depart", days);
    if arrive.zip(depart).is_some_and(|(arrive, depart)| arrive > depart) {
        let words = "“depart” is before “arrive”".to_owned();
        fields.refuse("depart", "end_before_start", words);
    }
    let hours = range(fields, "hours");
    let lessons = bounded(fields, "lessons", 0, MOST_LESSONS);
    let length = bounded(fields, "length", 1, DAY);
    let per_day = fields.whole("per_day");
    let rest = fields.whole("rest");
    let prefer = range(fields, "prefer");
    let prefer_court = fields.whole_or_none("prefer_court").map(|n| n as usize);
    if let Some((court, many)) = prefer_court.zip(courts).filter(|(n, many)| n >= many) {
        let words = format!("“prefer_court” is {court}; there are {many}, numbered from 0");
        fields.refuse("prefer_court", "no_such_court", words);
    }
    let priority = bounded(fields, "priority", 0, 1000);
    Some(Student {
        arrive: arrive?,
        depart: depart?,
        hours: hours?,
        lessons: lessons?,
        length: length?,
        per_day: per_day?,
        rest: rest?,
        prefer: prefer?,
        prefer_court,
        priority: priority?,
        people: Vec::new(),
    })
}

/// A day and a minute of it.
fn moment(fields: &mut Fields, field: &str, days: Option<u32>) -> Option<[u32; 2]> {
    let moment = fields.row::<2>(field)?;
    let there = on_a_day(fields, field, moment[0], days);
    if moment[1] > DAY {
        let words = format!("“{field}” is at minute {}; a day has {DAY}", moment[1]);
        fields.refuse(field, "out_of_range", words);
        return None;
    }
    there.then_some(moment)
}
