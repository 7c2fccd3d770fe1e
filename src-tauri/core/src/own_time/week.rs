//! The coach's week: its hours and limits, and what they leave of a day.

use super::{OwnTime, Way};
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::facilities::{self, ListFacilities, hours_on, read_hours, read_times};
use crate::kinds::ids::FacilityId;
use crate::kinds::{Day, Time};
use crate::settings;

/// Where the week is kept among the settings.
const RECORD: &str = "own_time";
/// The most rows of hours or ways.
const ROWS: usize = 100;

/// The coach's week and limits; all empty when none were written down.
///
/// # Errors
/// `Storage`.
pub fn show(db: &Reading<'_>) -> Result<OwnTime> {
    settings::kept(db, RECORD).map(Option::unwrap_or_default)
}

/// Writes the week and its limits down, in place of those before.
///
/// # Errors
/// `Refused` with every field that is wrong.
pub fn set(db: &Writing<'_>, own: OwnTime) -> Result<OwnTime> {
    let mut p = Problems::new();
    for (field, many) in [("hours", own.hours.len()), ("ways", own.ways.len())] {
        if many > ROWS {
            let words = format!("These are {many} rows; there is room for {ROWS}.");
            return Err(Error::field(field, "too_many", &words));
        }
    }
    let mut hours = Vec::new();
    for (n, row) in own.hours.into_iter().enumerate() {
        hours.push(read_hours(&mut p, &format!("hours[{n}]"), row));
    }
    let meal = (own.meal_starts.as_str(), own.meal_ends.as_str());
    let (meal_starts, meal_ends) = read_times(&mut p, ("meal_starts", "meal_ends"), meal, false);
    let meal_minutes =
        p.within_bounds("meal_minutes", own.meal_minutes, 0, 1440, "The meal\u{2019}s minutes");
    if let Some(meal) = meal_of(&meal_starts, &meal_ends, 0) {
        let between = i64::from(meal.to.saturating_sub(meal.from));
        if between > 0 && meal_minutes > between {
            let words = format!("Between these times are {between} minutes.");
            p.add("meal_minutes", "too_long", words);
        }
    } else if meal_minutes > 0 && meal == ("", "") {
        p.add("meal_starts", "needed", "Say between which times the meal can be.");
    }
    let read = OwnTime {
        hours,
        week_limit: p.within_bounds("week_limit", own.week_limit, 0, 10_080, "Minutes a week"),
        day_limit: p.within_bounds("day_limit", own.day_limit, 0, 1440, "Minutes a day"),
        longest_run: p.within_bounds("longest_run", own.longest_run, 0, 1440, "Minutes in a row"),
        meal_starts,
        meal_ends,
        meal_minutes,
        travel: p.within_bounds("travel", own.travel, 0, 1440, "Minutes on the way"),
        ways: read_ways(db, &mut p, own.ways)?,
    };
    p.done()?;
    settings::keep(db, RECORD, &read)?;
    db.label("Your own week written down");
    Ok(read)
}

fn read_ways(db: &Reading<'_>, p: &mut Problems, ways: Vec<Way>) -> Result<Vec<Way>> {
    let known = facilities::list(db, ListFacilities { archived: true })?;
    for (n, way) in ways.iter().enumerate() {
        let at = |field: &str| format!("ways[{n}].{field}");
        for (field, facility) in [("one", way.one), ("other", way.other)] {
            if known.iter().all(|f| f.id != facility) {
                p.add(&at(field), "no_such_facility", "Choose the facility.".to_owned());
            }
        }
        let same = |w: &Way| {
            [w.one, w.other] == [way.one, way.other] || [w.other, w.one] == [way.one, way.other]
        };
        if way.one == way.other {
            p.add(&at("other"), "itself", "A way leads to another facility.".to_owned());
        } else if ways[..n].iter().any(same) {
            p.add(&at("other"), "taken", "This way stands above already.".to_owned());
        }
        p.within_bounds(&at("minutes"), way.minutes, 0, 1440, "Minutes on the way");
    }
    Ok(ways)
}

/// What the coach's week leaves of a day: ranges of minutes after midnight.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Allowed {
    /// When lessons can be given.
    pub open: Vec<(u32, u32)>,
    /// The meal.
    pub meal: Option<Meal>,
}

/// A meal: so many minutes of the time between two minutes after midnight.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Meal {
    /// Not before this.
    pub from: u32,
    /// Not after this.
    pub to: u32,
    /// How long it is.
    pub minutes: u32,
}

impl Meal {
    /// Whether it takes all the time between, and cannot move.
    pub fn is_fixed(&self) -> bool {
        self.from + self.minutes >= self.to
    }
}

fn meal_of(starts: &str, ends: &str, minutes: i64) -> Option<Meal> {
    let minute = |text: &str| Time::parse(text).map(Time::minutes);
    let (from, to) = minute(starts).zip(minute(ends))?;
    let to = if to == 0 { 1440 } else { to };
    let some = u32::try_from(minutes).ok().filter(|minutes| *minutes > 0);
    Some(Meal { from, to, minutes: some.unwrap_or(to.saturating_sub(from)) })
}

/// What the coach's week leaves of a day.
pub fn allowed(own: &OwnTime, day: Day) -> Allowed {
    Allowed {
        open: hours_on(&own.hours, day).unwrap_or_else(|| vec![(0, 1440)]),
        meal: meal_of(&own.meal_starts, &own.meal_ends, own.meal_minutes),
    }
}

/// Minutes from each of these facilities to each other: as the ways say, and never longer than by
/// way of a third.
pub fn ways(own: &OwnTime, among: &[FacilityId]) -> Vec<Vec<u32>> {
    let minutes = |a: FacilityId, b: FacilityId| {
        if a == b {
            return 0;
        }
        let said =
            own.ways.iter().find(|w| [w.one, w.other] == [a, b] || [w.other, w.one] == [a, b]);
        u32::try_from(said.map_or(own.travel, |way| way.minutes)).unwrap_or(0)
    };
    let mut ways: Vec<Vec<u32>> =
        among.iter().map(|a| among.iter().map(|b| minutes(*a, *b)).collect()).collect();
    // Floyd and Warshall (1962).
    for by in 0..among.len() {
        for from in 0..among.len() {
            for to in 0..among.len() {
                ways[from][to] = ways[from][to].min(ways[from][by].saturating_add(ways[by][to]));
            }
        }
    }
    ways
}
