//! A day on a facility's clock, in minutes that pass. On the days the clocks change there are more or
//! fewer of them than on the clock's face, and the same minute on its face may come twice or never.

use chrono::{DateTime, FixedOffset};

use crate::kinds::stretches::Stretch;
use crate::kinds::zones::{Zone, local_of, resolve};
use crate::kinds::{Day, Time};

/// The minutes of most days.
pub(super) const DAY: u32 = 1440;

/// A day on the clock of a zone.
pub(super) struct LocalDay {
    day: Day,
    zone: Zone,
    begins: DateTime<FixedOffset>,
    /// How many minutes pass.
    pub minutes: u32,
}

impl LocalDay {
    /// `None` where the calendar has no such day in the zone.
    pub fn of(day: Day, zone: &Zone) -> Option<Self> {
        let midnight = |day: Day| {
            let local = day.date().and_time(Time::MIDNIGHT.time());
            Some(resolve(local, zone).ok()?.instant(false))
        };
        let begins = midnight(day)?;
        let minutes = u32::try_from((midnight(day.plus(1))? - begins).num_minutes()).ok()?;
        Some(Self { day, zone: zone.clone(), begins, minutes })
    }

    /// Whether the clocks change on it.
    fn changes(&self) -> bool {
        self.minutes != DAY
    }

    /// How many minutes have passed when the clock shows so many after midnight: of two such
    /// moments the second where `second` is meant, and of a skipped one the next that comes.
    fn passed_at(&self, face: u32, second: bool) -> u32 {
        if face >= DAY {
            return self.minutes;
        }
        if !self.changes() {
            return face;
        }
        let local = self.day.date().and_time(Time::MIDNIGHT.plus(face).time());
        resolve(local, &self.zone).map_or(face, |at| self.passed(at.instant(second)))
    }

    /// A stretch on the clock's face as minutes that pass, as long as it can be meant: for what is
    /// taken.
    pub fn at_most(&self, face: Stretch) -> Stretch {
        (self.passed_at(face.0, false), self.passed_at(face.1, true))
    }

    /// The same, as short as it can be meant: for what is open.
    pub fn at_least(&self, face: Stretch) -> Stretch {
        (self.passed_at(face.0, true), self.passed_at(face.1, false))
    }

    /// How many minutes have passed at an instant: none before the day, all after it.
    pub fn passed(&self, at: DateTime<FixedOffset>) -> u32 {
        let minutes = (at - self.begins).num_minutes().clamp(0, i64::from(self.minutes));
        u32::try_from(minutes).unwrap_or(0)
    }

    /// The instant once so many minutes have passed.
    pub fn instant(&self, passed: u32) -> DateTime<FixedOffset> {
        self.begins + chrono::Duration::minutes(i64::from(passed))
    }

    /// What the clock shows once so many minutes have passed; midnight at the day's end.
    pub fn face(&self, passed: u32) -> Time {
        if !self.changes() {
            return Time::MIDNIGHT.plus(passed % DAY);
        }
        let local = local_of(&self.instant(passed), &self.zone).ok();
        local.and_then(|l| Time::parse(&l.format("%H:%M").to_string())).unwrap_or(Time::MIDNIGHT)
    }

    /// What the clock shows after each minute of the day that passes, in minutes after midnight.
    pub fn faces(&self) -> Vec<u32> {
        (0..self.minutes).map(|passed| self.face(passed).minutes()).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(day: &str) -> LocalDay {
        LocalDay::of(Day::parse(day).unwrap(), &Zone::parse("America/New_York").unwrap()).unwrap()
    }

    /// New York's clocks: as in `kinds::zones`.
    #[test]
    fn minutes_pass_where_the_clock_jumps() {
        let usual = day("2026-03-09");
        assert_eq!((usual.minutes, usual.at_most((120, 1440))), (1440, (120, 1440)));
        assert_eq!(usual.face(1440), Time::MIDNIGHT);
        let forward = day("2026-03-08");
        assert_eq!(forward.minutes, 1380);
        for (face, passed) in
            [((60, 120), (60, 120)), ((90, 150), (90, 120)), ((180, 1440), (120, 1380))]
        {
            assert_eq!(forward.at_most(face), passed, "{face:?}");
        }
        assert_eq!(forward.face(119).to_string(), "01:59");
        assert_eq!(forward.face(120).to_string(), "03:00");
        let back = day("2026-11-01");
        assert_eq!(back.minutes, 1500);
        for (face, passed) in
            [((60, 90), (60, 150)), ((120, 180), (180, 240)), ((0, 1440), (0, 1500))]
        {
            assert_eq!(back.at_most(face), passed, "{face:?}");
        }
        assert_eq!(
            (back.face(119).to_string(), back.face(120).to_string()),
            ("01:59".to_owned(), "01:00".to_owned())
        );
        assert_eq!(back.at_least((60, 90)), (120, 90), "it may be the first hour or the second");
        assert_eq!(back.at_least((30, 120)), (30, 180));
        assert_eq!(back.faces().len(), 1500);
    }
}
