//! When a lesson is: a civil time on the facility's clock, and the instant it stands for.

use chrono::{DateTime, FixedOffset};

use super::plan::Slot;
use super::{Lesson, WhichHour};
use crate::error::Problems;
use crate::facilities::Facility;
use crate::kinds::ids::{CourtId, FacilityId};
use crate::kinds::zones::{Moment, Zone, resolve};
use crate::kinds::{Day, Time};

/// What was asked for, as typed.
pub(super) struct Asked {
    pub facility: FacilityId,
    pub court: Option<CourtId>,
    pub day: String,
    pub starts: String,
    pub which: WhichHour,
    pub minutes: i64,
}

/// Reads what was typed; the problems say what is wrong.
pub(super) fn read(p: &mut Problems, asked: &Asked, facility: &Facility) -> Slot {
    let day = p.day("day", &asked.day, "The day");
    let starts = p.time("starts", &asked.starts, "The time it begins");
    let minutes = p.within_bounds("minutes", asked.minutes, 5, 600, "The length in minutes");
    if let Some(court) = asked.court
        && facility.courts.iter().all(|c| c.id != court)
    {
        p.add("court", "elsewhere", format!("This court is not at {}.", facility.place.name));
    }
    let which =
        if p.any() { WhichHour::Once } else { which_hour(p, asked.which, day, starts, facility) };
    Slot {
        facility: facility.id,
        court: asked.court,
        day,
        starts,
        which,
        minutes: u32::try_from(minutes).unwrap_or(60),
    }
}

fn which_hour(
    p: &mut Problems,
    asked: WhichHour,
    day: Day,
    starts: Time,
    facility: &Facility,
) -> WhichHour {
    let Ok(zone) = Zone::parse(&facility.place.zone) else { return WhichHour::Once };
    let Ok(moment) = resolve(day.date().and_time(starts.time()), &zone) else {
        return WhichHour::Once;
    };
    match moment {
        Moment::Once { .. } => WhichHour::Once,
        Moment::Twice { .. } if asked != WhichHour::Once => asked,
        Moment::Twice { .. } => {
            p.add(
                "which",
                "twice",
                format!("The clocks go back that day, so {starts} comes twice. Say whether the first or the second is meant."),
            );
            WhichHour::Once
        }
        Moment::Gap { next } => {
            p.add(
                "starts",
                "gap",
                format!("The clocks go forward that day, so {starts} does not come. The next time that does is {}.", next.format("%H:%M")),
            );
            WhichHour::Once
        }
    }
}

impl Lesson {
    /// From when to when it is, as instants: one that was cut short to the minute it was; `None`
    /// where the calendar has none.
    pub fn held(&self) -> Option<(DateTime<FixedOffset>, DateTime<FixedOffset>)> {
        let begins = instant(self.day, self.starts, self.which, &self.zone)?;
        let minutes = i64::from(self.given.unwrap_or(self.minutes));
        Some((begins, begins + chrono::Duration::minutes(minutes)))
    }
}

/// The instant a time on a facility's clock stands for. A time that the clocks skip (possible only
/// if the zone's rules changed since) stands for the first instant after the gap.
pub(super) fn instant(
    day: Day,
    starts: Time,
    which: WhichHour,
    zone: &str,
) -> Option<DateTime<FixedOffset>> {
    let zone = Zone::parse(zone).ok()?;
    let moment = resolve(day.date().and_time(starts.time()), &zone).ok()?;
    Some(moment.instant(which == WhichHour::Second))
}
