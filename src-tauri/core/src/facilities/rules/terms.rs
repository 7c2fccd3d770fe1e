//! What a facility's rules say of one booking: whether it can be had, from when it can be asked for,
//! what it costs, and until when it can be given back.

use chrono::{DateTime, Datelike, FixedOffset, Months, NaiveDateTime};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Ahead, AheadUnit, Closure, CountedBy, Hours, Later, Release, Rules, rules};
use crate::app::Reading;
use crate::error::Result;
use crate::facilities::{Court, Which, show};
use crate::kinds::ids::{CourtId, FacilityId};
use crate::kinds::stretches::joined;
use crate::kinds::text::{counted, folded};
use crate::kinds::zones::{Zone, local_of, resolve};
use crate::kinds::{Currency, Day, Time};

/// The minutes of a day.
const DAY: u32 = 1440;

/// A booking to ask the rules about.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AskTerms {
    /// Where.
    pub facility: FacilityId,
    /// On which court; left out while it is not known.
    #[serde(default)]
    pub court: Option<CourtId>,
    /// The day.
    pub day: Day,
    /// When it begins on the facility's clock.
    pub starts: Time,
    /// Its length in minutes.
    pub minutes: u32,
}

/// A day and a time on the facility's clock.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Given {
    /// The day.
    pub day: Day,
    /// The time.
    pub time: Time,
}

/// What the rules say.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Terms {
    /// Each rule that speaks against it, as a sentence; none when nothing does.
    pub against: Vec<String>,
    /// From when it can be asked for; `None` when no rule says.
    pub ask_from: Option<Given>,
    /// The same as a sentence.
    pub ask_words: String,
    /// What it costs, as in "40.00 EUR"; empty when no rule says.
    pub cost: String,
    /// Until when it can be given back, and what it costs later: a sentence each, the first to pass
    /// first.
    pub release: Vec<String>,
    /// The first of these, once its moment has passed; empty when there is none.
    pub late_words: String,
    /// The last moment at which it can be given back free.
    pub free_until: Option<Given>,
    /// What else to mind there, a sentence each.
    pub mind: Vec<String>,
}

/// Asks a facility's rules about one booking.
///
/// # Errors
/// `NotFound`.
pub fn terms(db: &Reading<'_>, ask: AskTerms) -> Result<Terms> {
    let facility = show(db, Which { facility: ask.facility })?;
    let rules = rules(db, Which { facility: ask.facility })?;
    let court = facility.courts.iter().find(|c| Some(c.id) == ask.court);
    Ok(of(&rules, &facility.place.zone, court, ask.day, ask.starts, ask.minutes))
}

/// What a booking costs by the facility's rules, in smallest units; `None` when no rule says.
///
/// # Errors
/// `NotFound`.
pub fn court_cost(db: &Reading<'_>, ask: AskTerms) -> Result<Option<(Currency, i64)>> {
    Ok(Currency::of_words(&terms(db, ask)?.cost))
}

/// What rules say of a booking on a court, or on one not known yet, in a zone.
pub fn of(
    rules: &Rules,
    zone: &str,
    court: Option<&Court>,
    day: Day,
    starts: Time,
    minutes: u32,
) -> Terms {
    let booking = Booking { rules, zone: Zone::parse(zone).ok(), court, day, starts, minutes };
    let ask_from = booking.ask_from();
    let steps = booking.release();
    Terms {
        against: booking.against(),
        ask_words: ask_from
            .map(|at| format!("It can be asked for from {}.", at.words()))
            .unwrap_or_default(),
        ask_from,
        cost: booking.cost().unwrap_or_default(),
        free_until: steps.first().map(|(at, _)| *at),
        late_words: booking.late_words(&steps),
        release: booking.release_words(&steps),
        mind: rules.mind(),
    }
}

impl Given {
    /// "Thursday 5 March 2026, 07:30".
    fn words(self) -> String {
        format!("{} {}, {}", self.day.date().format("%A"), self.day.words(), self.time)
    }

    fn of(local: NaiveDateTime) -> Option<Given> {
        let time = Time::parse(&local.format("%H:%M").to_string())?;
        Some(Given { day: Day::from_date(local.date())?, time })
    }
}

struct Booking<'a> {
    rules: &'a Rules,
    zone: Option<Zone>,
    court: Option<&'a Court>,
    day: Day,
    starts: Time,
    minutes: u32,
}

/// Whether a row's days of the week hold a day.
fn on(weekdays: &[u8], day: Day) -> bool {
    let number = u8::try_from(day.date().weekday().number_from_monday()).unwrap_or(0);
    weekdays.is_empty() || weekdays.contains(&number)
}

/// Whether a row's season holds a day; one without a season holds every day.
fn in_season(first: &str, last: &str, day: Day) -> bool {
    let season = Day::parse(first).zip(Day::parse(last));
    season.is_none_or(|(first, last)| first <= day && day <= last)
}

/// A row's times in minutes; no times are the whole day, and an end at 00:00 is the day's end.
fn minutes_of(starts: &str, ends: &str) -> (u32, u32) {
    let from = Time::parse(starts).map_or(0, Time::minutes);
    let to = Time::parse(ends).map_or(DAY, Time::minutes);
    (from, if to == 0 { DAY } else { to })
}

/// Whether a name that a row gives fits: an empty one fits all.
fn fits(row: &str, name: &str) -> bool {
    row.is_empty() || folded(row) == folded(name)
}

/// When a facility is open on a day, in minutes, one range for each row that holds; `None` when no
/// hours are known at all.
pub fn hours_on(hours: &[Hours], day: Day) -> Option<Vec<(u32, u32)>> {
    if hours.is_empty() {
        return None;
    }
    let holds = |row: &&Hours| on(&row.weekdays, day) && in_season(&row.first, &row.last, day);
    let (seasonal, usual): (Vec<&Hours>, Vec<&Hours>) =
        hours.iter().filter(holds).partition(|row| !row.first.is_empty());
    let rows = if seasonal.is_empty() { usual } else { seasonal };
    Some(joined(rows.iter().map(|row| minutes_of(&row.opens, &row.closes))))
}

impl Rules {
    /// When a court cannot be had on a day, or without one the whole facility, in minutes, each with
    /// its reason.
    pub fn closed_on(&self, court: Option<CourtId>, day: Day) -> Vec<(u32, u32, &str)> {
        let holds = |row: &&Closure| {
            on(&row.weekdays, day)
                && in_season(&row.first, &row.last, day)
                && row.court.is_none_or(|of| Some(of) == court)
        };
        let rows = self.closures.iter().filter(holds);
        rows.map(|row| {
            let (from, to) = minutes_of(&row.starts, &row.ends);
            (from, to, row.reason.as_str())
        })
        .collect()
    }

    /// What an hour costs on a kind of court on a day, in smallest units, the first that holds
    /// first; empty when no rule says.
    pub fn prices_on(&self, ground: &str, day: Day) -> Vec<(u32, u32, i64)> {
        let Some(currency) = Currency::parse(&self.currency) else { return Vec::new() };
        self.rates
            .iter()
            .filter(|row| {
                fits(&row.who, &self.books_as)
                    && fits(&row.ground, ground)
                    && on(&row.weekdays, day)
            })
            .filter_map(|row| {
                let (from, to) = minutes_of(&row.starts, &row.ends);
                Some((from, to, currency.minor(&row.hour)?))
            })
            .collect()
    }

    /// What else to mind there, whichever the booking: a sentence each.
    pub fn mind(&self) -> Vec<String> {
        let mut mind = self.mind_of_order();
        mind.extend(self.mind_of_limits());
        mind.extend(self.mind_of_people());
        mind
    }

    /// The same without the limits of a day and of seven days, for whoever keeps to these.
    pub fn mind_besides_limits(&self) -> Vec<String> {
        let mut mind = self.mind_of_order();
        mind.extend(self.mind_of_people());
        mind
    }

    fn mind_of_order(&self) -> Vec<String> {
        let r = self;
        let mut mind = Vec::new();
        if r.apart {
            mind.push("No two bookings in a row.".to_owned());
        }
        if r.one_by_one {
            mind.push("One booking is played before the next can be made.".to_owned());
        }
        mind
    }

    fn mind_of_limits(&self) -> Vec<String> {
        let r = self;
        let mut mind = Vec::new();
        if r.day_bookings > 0 {
            let most = counted(r.day_bookings, "booking", "bookings");
            mind.push(format!("At most {most} a day."));
        }
        if r.week_limit > 0 {
            let most = counted(r.week_limit, "minute", "minutes");
            mind.push(format!("At most {most} in any seven days."));
        }
        mind
    }

    fn mind_of_people(&self) -> Vec<String> {
        let r = self;
        let mut mind = Vec::new();
        if r.people > 0 {
            mind.push(format!("At most {} on a court.", counted(r.people, "person", "people")));
        }
        if !r.guest_fee.is_empty() {
            mind.push(format!("Each guest costs {} {}.", r.guest_fee, r.currency));
        }
        if r.grace > 0 {
            let late = counted(r.grace, "minute", "minutes");
            mind.push(format!("Whoever is {late} late loses the court."));
        }
        if r.youngest > 0 {
            mind.push(format!("Only those of {} or older may book.", r.youngest));
        }
        if !r.needs.is_empty() {
            mind.push(format!("Everyone on court needs: {}.", r.needs.trim_end_matches('.')));
        }
        mind
    }

    /// What each booking costs besides, in smallest units.
    pub fn fee(&self) -> i64 {
        let currency = Currency::parse(&self.currency);
        currency.and_then(|currency| currency.minor(&self.booking_fee)).unwrap_or(0)
    }
}

fn clock(minute: u32) -> String {
    Time::MIDNIGHT.plus(minute).to_string()
}

impl Booking<'_> {
    fn ground(&self) -> &str {
        self.court.map_or("", |court| court.ground.as_str())
    }

    fn span(&self) -> (u32, u32) {
        (self.starts.minutes(), self.starts.minutes() + self.minutes)
    }

    fn against(&self) -> Vec<String> {
        let r = self.rules;
        let (from, to) = self.span();
        let mut against = Vec::new();
        if let Some(open) = hours_on(&r.hours, self.day)
            && !open.iter().any(|(opens, closes)| *opens <= from && to <= *closes)
        {
            let weekday = self.day.date().format("%A");
            against.push(if open.is_empty() {
                format!("It is closed on {weekday} {}.", self.day.words())
            } else {
                let hours: Vec<String> =
                    open.iter().map(|(a, b)| format!("{} to {}", clock(*a), clock(*b))).collect();
                format!("On {weekday} {} it is open {}.", self.day.words(), hours.join(" and "))
            });
        }
        against.extend(r.closures.iter().filter_map(|row| self.closed_by(row)));
        let minutes = i64::from(self.minutes);
        let mut over = |limit: i64, words: &str| {
            if limit > 0 && minutes > limit {
                against.push(format!("{words} {}.", counted(limit, "minute", "minutes")));
            }
        };
        over(r.longest, "The longest booking is");
        over(r.day_limit, "The most a day is");
        over(r.week_limit, "The most in seven days is");
        if minutes < r.shortest {
            let least = counted(r.shortest, "minute", "minutes");
            against.push(format!("The shortest booking is {least}."));
        }
        if r.grid > 0 && i64::from(from) % r.grid != 0 {
            against.push(format!(
                "Bookings start every {}, counted from midnight.",
                counted(r.grid, "minute", "minutes")
            ));
        }
        against
    }

    fn closed_by(&self, row: &Closure) -> Option<String> {
        let (from, to) = self.span();
        let (starts, ends) = minutes_of(&row.starts, &row.ends);
        let meets = on(&row.weekdays, self.day)
            && in_season(&row.first, &row.last, self.day)
            && starts < to
            && from < ends
            && row.court.is_none_or(|court| self.court.is_some_and(|c| c.id == court));
        meets.then(|| {
            let what = match self.court.filter(|_| row.court.is_some()) {
                Some(court) => format!("{} cannot be booked", court.name),
                None => "It cannot be booked".to_owned(),
            };
            let when = if row.starts.is_empty() {
                "that day".to_owned()
            } else {
                format!("{} to {}", clock(starts), clock(ends))
            };
            let why =
                if row.reason.is_empty() { String::new() } else { format!(": {}", row.reason) };
            format!("{what} {when}{why}.")
        })
    }

    /// The price of each minute by the first row that fits, added up, rounded half up to the
    /// currency's smallest unit (common practice, no source), with the fee of a booking.
    fn cost(&self) -> Option<String> {
        let currency = Currency::parse(&self.rules.currency)?;
        let (from, to) = self.span();
        let mut sum = 0_i64;
        for minute in from..to {
            let row = self.rules.rates.iter().find(|row| {
                let (starts, ends) = minutes_of(&row.starts, &row.ends);
                fits(&row.who, &self.rules.books_as)
                    && fits(&row.ground, self.ground())
                    && on(&row.weekdays, self.day)
                    && (starts..ends).contains(&minute)
            })?;
            sum = sum.checked_add(currency.minor(&row.hour)?)?;
        }
        let fee = currency.minor(&self.rules.booking_fee).unwrap_or(0);
        Some(currency.words((sum + 30) / 60 + fee))
    }

    /// The instant it begins; the first of two, and the one after a gap.
    fn begins(&self) -> Option<DateTime<FixedOffset>> {
        self.at(self.day.date().and_time(self.starts.time()))
    }

    fn at(&self, local: NaiveDateTime) -> Option<DateTime<FixedOffset>> {
        Some(resolve(local, self.zone.as_ref()?).ok()?.instant(false))
    }

    /// So many hours before it begins, as they pass.
    fn elapsed_before(&self, hours: i64) -> Option<Given> {
        let at = self.begins()?.checked_sub_signed(chrono::Duration::hours(hours))?;
        Given::of(local_of(&at, self.zone.as_ref()?).ok()?)
    }

    fn ask_from(&self) -> Option<Given> {
        let row =
            self.rules.ahead.iter().find(|row| {
                fits(&row.who, &self.rules.books_as) && fits(&row.ground, self.ground())
            })?;
        match row.unit {
            AheadUnit::Hours => self.elapsed_before(row.amount),
            AheadUnit::Days => self.on_day(row, self.day.plus(-row.amount)),
            AheadUnit::Months => {
                let months = Months::new(u32::try_from(row.amount).ok()?);
                self.on_day(row, Day::from_date(self.day.date().checked_sub_months(months)?)?)
            }
        }
    }

    /// The time of a row on a day; one that the clocks skip is the next that comes.
    fn on_day(&self, row: &Ahead, day: Day) -> Option<Given> {
        let time = Time::parse(&row.opens).unwrap_or(Time::MIDNIGHT);
        let at = self.at(day.date().and_time(time.time()))?;
        Given::of(local_of(&at, self.zone.as_ref()?).ok()?)
    }

    /// The moments at which giving it back begins to cost more, the first to pass first.
    fn release(&self) -> Vec<(Given, &Release)> {
        let mut rows: Vec<&Release> =
            self.rules.release.iter().filter(|row| fits(&row.ground, self.ground())).collect();
        rows.sort_by_key(|row| std::cmp::Reverse(row.hours));
        rows.into_iter().filter_map(|row| Some((self.deadline(row)?, row))).collect()
    }

    fn deadline(&self, row: &Release) -> Option<Given> {
        match row.counted {
            CountedBy::Elapsed => self.elapsed_before(row.hours),
            CountedBy::Wall => {
                let start = self.day.date().and_time(self.starts.time());
                let local = start.checked_sub_signed(chrono::Duration::hours(row.hours))?;
                Given::of(local_of(&self.at(local)?, self.zone.as_ref()?).ok()?)
            }
        }
    }

    /// What it costs to give it back after a deadline.
    fn then(&self, row: &Release) -> String {
        match row.later {
            Later::Full => "the whole price".to_owned(),
            Later::Fee => format!("{} {}", row.fee, self.rules.currency),
            Later::Nothing => "nothing".to_owned(),
        }
    }

    /// The first deadline once it has passed, as a sentence; empty when there is none.
    fn late_words(&self, steps: &[(Given, &Release)]) -> String {
        steps.first().map_or_else(String::new, |(at, row)| {
            let then = self.then(row);
            format!("It could be given back free until {}; by now it costs {then}.", at.words())
        })
    }

    fn release_words(&self, steps: &[(Given, &Release)]) -> Vec<String> {
        let mut words = Vec::new();
        for (n, (at, row)) in steps.iter().enumerate() {
            let then = self.then(row);
            words.push(if n == 0 {
                format!("It can be given back free until {}; later it costs {then}.", at.words())
            } else {
                format!("After {} it costs {then}.", at.words())
            });
        }
        if self.rules.weather_free && !steps.is_empty() {
            words.push("If the weather takes it, it costs nothing.".to_owned());
        }
        words
    }
}
