//! What is when, for everyone at once: a week with people as rows, a trip with the hours that could
//! still be sold, and a year in figures. Nothing is kept here; all of it is read anew.
//!
//! Lessons stand on the clock of their facility. Where one thing is set against another, a way
//! against the break it has to fit into, a lesson in one town against a free hour in the next, it is
//! done in instants, so that neither two zones nor a change of the clocks can mislead.

mod around;
mod clock;
mod free;
mod store;
mod trip;
mod week;
mod year;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use trip::{AskTrip, trip};
pub use week::{AskWeek, week};
pub use year::{
    AskCounted, AskYear, CountedWhat, Figures, MonthFigures, Year, YearCounted, YearRow, counted,
    year,
};

use crate::kinds::ids::{CourtId, FacilityId, LessonId, StudentId, VisitId};
use crate::kinds::{Day, Span, Time};
use crate::lessons::{LessonState, WhichHour};
use crate::offers::OfferState;
use crate::visits::Stage;

/// A lesson as it stands on a day.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct LessonOn {
    /// Which one.
    pub lesson: LessonId,
    /// The visit it is part of: in a person's row that person's, else the first student's.
    pub visit: VisitId,
    /// Everyone in it, in words.
    pub names: String,
    /// In a person's row, who else is in it, in words; empty when nobody is.
    pub with: String,
    /// The day on the facility's clock.
    pub day: Day,
    /// When it begins on the facility's clock.
    pub starts: Time,
    /// When it ends there, a change of the clocks taken into account.
    pub ends: Time,
    /// Which hour, when the clocks go back and it comes twice.
    pub which: WhichHour,
    /// Its length in minutes: as taught, where it was cut short.
    pub minutes: u32,
    /// Where.
    pub facility: FacilityId,
    /// The facility's name.
    pub place: String,
    /// The court, once known.
    pub court: Option<CourtId>,
    /// Its name, or empty.
    pub court_name: String,
    /// The facility's zone.
    pub zone: String,
    /// Where it is in its life.
    pub state: LessonState,
    /// What came of the last offer of the visit that names it at this time; left out when none does.
    pub offer: Option<OfferState>,
    /// Whether its visit was called off, so that it is to be called off as well.
    pub visit_off: bool,
}

/// A way from one facility to another between two lessons of a day.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct WayOn {
    /// From this facility.
    pub from: String,
    /// To this one.
    pub to: String,
    /// How long it takes; left out when no way was written down.
    pub minutes: Option<u32>,
    /// How long there is between the two lessons.
    pub between: u32,
}

/// Something that takes the coach's time on a day.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct TakenOn {
    /// What it is.
    pub what: String,
    /// From when on the clock of that day; left out for the whole day.
    pub from: Option<Time>,
    /// Until when; 00:00 is the day's end.
    pub to: Option<Time>,
}

/// The coach's day.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct CoachDay {
    /// The day.
    pub day: Day,
    /// The clock its times are on: that of the first lesson, or of whoever is in town.
    pub zone: String,
    /// Whether no lesson can be given: the coach's week has no hours then.
    pub off: bool,
    /// What takes the coach's time, the first first.
    pub taken: Vec<TakenOn>,
    /// The ways between lessons.
    pub ways: Vec<WayOn>,
    /// How many lessons.
    pub lessons: u32,
    /// Minutes of them, those called off or missed left out.
    pub minutes: u32,
    /// The most minutes of lessons a day; left out without a limit.
    pub limit: Option<u32>,
    /// Whether someone is in town.
    pub someone: bool,
}

/// A person's day.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct PersonDay {
    /// The day.
    pub day: Day,
    /// The visit that holds it; left out when the person is not in town.
    pub visit: Option<VisitId>,
    /// Where that visit is, or empty.
    pub place: String,
    /// All its days.
    pub days: Option<Span>,
    /// The lessons.
    pub lessons: Vec<LessonOn>,
    /// Times on this day that were offered, are not answered, and are no lesson at this time any
    /// more.
    pub offered: Vec<OfferedOn>,
}

/// A time that was offered.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct OfferedOn {
    /// Of which visit.
    pub visit: VisitId,
    /// When it would begin.
    pub starts: Time,
    /// When it would end.
    pub ends: Time,
    /// Where.
    pub place: String,
}

/// A person's week.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct WeekRow {
    /// The student.
    pub student: StudentId,
    /// The student's name.
    pub name: String,
    /// The seven days.
    pub days: Vec<PersonDay>,
    /// Without a lesson in the week, the day of the next one; left out when none is known.
    pub next: Option<Day>,
}

/// Someone who is not in the week and has a lesson to come after it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct ComesLater {
    /// The student.
    pub student: StudentId,
    /// The student's name.
    pub name: String,
    /// The day of the next lesson.
    pub day: Day,
}

/// A week: people as rows, its days as columns.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Week {
    /// Monday to Sunday (ISO 8601).
    pub days: Span,
    /// Today.
    pub today: Day,
    /// The zones of its lessons and visits, in order of days.
    pub zones: Vec<String>,
    /// The coach's seven days.
    pub coach: Vec<CoachDay>,
    /// Everyone who has a lesson, is in town or was offered days, by name.
    pub people: Vec<WeekRow>,
    /// The runs of days on which visits of this week overlap.
    pub trips: Vec<Span>,
    /// The last day before the week with a lesson or someone in town; left out when there is none.
    pub before: Option<Day>,
    /// The first such day after it.
    pub after: Option<Day>,
    /// Those who are not in it and come later, the first to come first.
    pub later: Vec<ComesLater>,
}

/// A run of days at one facility.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Stay {
    /// The facility.
    pub facility: FacilityId,
    /// Its name.
    pub place: String,
    /// Its town, or empty.
    pub town: String,
    /// Its zone.
    pub zone: String,
    /// The days.
    pub days: Span,
}

/// Someone who is in town on a day of a trip.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct TripPerson {
    /// The visit.
    pub visit: VisitId,
    /// The student.
    pub student: StudentId,
    /// The student's name.
    pub name: String,
    /// Where the visit is, or empty.
    pub place: String,
    /// All its days, also beyond the trip's.
    pub days: Span,
    /// Where it is in its life.
    pub stage: Stage,
    /// How many lessons it has on the days of the trip, those called off or missed left out.
    pub lessons: u32,
    /// Minutes of them.
    pub minutes: u32,
    /// How many lessons the whole visit is wished to have; left out when no wish was written down.
    pub wished: Option<u32>,
}

/// A facility on a day of a trip, with what of it could still be sold.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct PlaceOn {
    /// The facility.
    pub facility: FacilityId,
    /// Its name.
    pub place: String,
    /// Its town, or empty.
    pub town: String,
    /// Its zone.
    pub zone: String,
    /// When it is open, as far as its rules say.
    pub open: Vec<FreeStretch>,
    /// The hours in which a lesson would still fit.
    pub free: Vec<FreeStretch>,
}

/// Some hours of a day on a facility's clock.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct FreeStretch {
    /// From.
    pub from: Time,
    /// Until; 00:00 is the day's end.
    pub to: Time,
}

/// The way to the first facility of a day, from the last of an earlier one.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct TravelTo {
    /// From this facility.
    pub from: String,
    /// To this one.
    pub to: String,
    /// The last day at the one before.
    pub since: Day,
    /// How long it takes; left out when no way was written down.
    pub minutes: Option<u32>,
}

/// Why a day of a trip has no hours to sell.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum NothingFree {
    /// It has passed.
    Passed,
    /// It is not known where anyone is.
    Nowhere,
    /// The coach's week has no hours then.
    Off,
    /// The limit of the day leaves no lesson.
    Limit,
    /// What is open is taken, or what is left is too short.
    Taken,
}

/// A day of a trip.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct TripDay {
    /// The coach's day.
    pub coach: CoachDay,
    /// The facilities, that of the first lesson first.
    pub places: Vec<PlaceOn>,
    /// The way from the facility of the day before.
    pub travel: Option<TravelTo>,
    /// The lessons, the first first.
    pub lessons: Vec<LessonOn>,
    /// The minutes that could be sold: those of the free hours, or what the limits leave of them.
    pub free_minutes: u32,
    /// Minutes that the coach's limit leaves of the day; left out without a limit.
    pub left: Option<u32>,
    /// Why nothing is free; left out when something is.
    pub nothing: Option<NothingFree>,
}

/// Where the length of the shortest lesson is from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum ShortestFrom {
    /// The coach's rates.
    Rates,
    /// The lessons and wishes of these days.
    Lessons,
    /// Nothing says; an hour is taken.
    Usual,
}

/// A run of days, with all that is on them.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Trip {
    /// The days.
    pub days: Span,
    /// Today.
    pub today: Day,
    /// The zones, in order of days.
    pub zones: Vec<String>,
    /// The facilities in order of days.
    pub stays: Vec<Stay>,
    /// Who is in town, the first to come first.
    pub people: Vec<TripPerson>,
    /// Day by day.
    pub on: Vec<TripDay>,
    /// How many lessons, those called off or missed left out.
    pub lessons: u32,
    /// Minutes of them.
    pub minutes: u32,
    /// The minutes that could still be sold.
    pub free_minutes: u32,
    /// The length of the shortest lesson in minutes: no free hours are shorter.
    pub shortest: u32,
    /// Where that length is from.
    pub shortest_from: ShortestFrom,
    /// Whether one plan has room for these days.
    pub can_plan: bool,
}
