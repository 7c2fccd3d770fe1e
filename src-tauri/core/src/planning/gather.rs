//! What a plan stands on, read out of the coach file in one go, so that the planner can go on
//! without it.

use super::{AskPlan, VisitWish, store};
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::facilities::{self, Court, ListFacilities, Rules};
use crate::kinds::ids::{FacilityId, VisitId};
use crate::kinds::zones::Zone;
use crate::kinds::{Day, Span};
use crate::lessons::{self, Lesson, LessonState, ListLessons};
use crate::own_time::{self, Occupied, OwnTime};
use crate::visits::{self, Stage, Visit};

/// The most days of one plan.
pub const MOST_DAYS: i64 = 28;
/// The most visits of one plan.
pub(super) const MOST_VISITS: usize = 40;

/// What a plan stands on.
pub(super) struct Gathered {
    /// The days asked about.
    pub span: Span,
    /// The first day of the planner's: the one before.
    pub first: Day,
    /// How many days the planner has: one more at each end.
    pub days: u32,
    /// The facilities a plan could use, those asked for first.
    pub places: Vec<Place>,
    /// Whose visits.
    pub guests: Vec<Guest>,
    /// The coach's week.
    pub own: OwnTime,
    /// What else takes the coach's time.
    pub occupied: Vec<Occupied>,
    /// Minutes from each place to each other.
    pub ways: Vec<Vec<u32>>,
    /// Lessons that stand already.
    pub lessons: Vec<Lesson>,
    /// Nothing can be before this day.
    pub today: Day,
    /// What was asked.
    pub ask: AskPlan,
}

/// A facility a plan could use.
pub(super) struct Place {
    pub id: FacilityId,
    pub name: String,
    pub zone: String,
    pub rules: Rules,
    pub courts: Vec<Court>,
    /// Whether it was asked for; the others come in by a change.
    pub chosen: bool,
}

/// A visit whose lessons are planned.
pub(super) struct Guest {
    pub visit: VisitId,
    pub student: crate::kinds::ids::StudentId,
    pub name: String,
    pub days: Span,
    pub wish: VisitWish,
}

/// Reads what a plan stands on.
///
/// # Errors
/// `Refused` when the days cannot be planned; `NotFound`.
pub(super) fn gather(db: &Reading<'_>, ask: AskPlan) -> Result<Gathered> {
    let span = Span { first: ask.first, last: ask.last };
    if span.last < span.first {
        return Err(Error::field("last", "end_before_start", "The last day is before the first."));
    }
    let days = span.days() + 2;
    if span.days() > MOST_DAYS {
        let words = format!("One plan has room for {MOST_DAYS} days.");
        return Err(Error::field("last", "too_long", &words));
    }
    let (guests, at) = guests(db, &ask, span)?;
    let places = places(db, &ask, &at)?;
    let zone = places.first().map_or("UTC", |place| place.zone.as_str()).to_owned();
    let zone = Zone::parse(&zone).map_err(|e| Error::Fault(e.to_string()))?;
    let wide = Span { first: span.first.plus(-1), last: span.last.plus(1) };
    let lessons = lessons::list(
        db,
        ListLessons { visit: None, from: Some(wide.first), to: Some(wide.last) },
    )?;
    let own = own_time::show(db)?;
    let ids: Vec<FacilityId> = places.iter().map(|place| place.id).collect();
    Ok(Gathered {
        span,
        first: wide.first,
        days: u32::try_from(days).unwrap_or(1),
        ways: own_time::ways(&own, &ids),
        occupied: own_time::occupied(db, wide, &zone)?,
        places,
        guests,
        own,
        lessons: lessons.into_iter().filter(|l| l.state == LessonState::Planned).collect(),
        today: db.today(),
        ask,
    })
}

/// Who wishes for lessons on these days, and where their visits are.
fn guests(db: &Reading<'_>, ask: &AskPlan, span: Span) -> Result<(Vec<Guest>, Vec<FacilityId>)> {
    let (mut guests, mut at) = (Vec::new(), Vec::new());
    let to_come = |v: &Visit| matches!(v.stage, Stage::Planned | Stage::Open);
    for visit in visits::around(db, span)?.into_iter().filter(to_come) {
        if !ask.visits.is_empty() && !ask.visits.contains(&visit.id) {
            continue;
        }
        let Some((days, wish)) = visit.days.zip(store::wish(db, visit.id)?) else { continue };
        at.extend(visit.facility.filter(|facility| !at.contains(facility)));
        let (visit, student, name) = (visit.id, visit.student, visit.name);
        guests.push(Guest { visit, student, name, days, wish });
    }
    if guests.is_empty() {
        return Err(Error::not_possible(
            "nobody",
            "Nobody who comes on these days wishes for lessons yet. Write a wish down at a visit.",
        ));
    }
    if guests.len() > MOST_VISITS {
        let words =
            format!("One plan has room for {MOST_VISITS} visits; here are {}.", guests.len());
        return Err(Error::not_possible("too_many", &words));
    }
    Ok((guests, at))
}

/// The facilities on one clock: those asked for, or else those of the visits, and then all others.
fn places(db: &Reading<'_>, ask: &AskPlan, at: &[FacilityId]) -> Result<Vec<Place>> {
    let wanted = if ask.facilities.is_empty() { at } else { &ask.facilities };
    let mut places = Vec::new();
    for f in facilities::list(db, ListFacilities { archived: false })? {
        let courts: Vec<Court> = f.courts.into_iter().filter(|c| c.archived.is_none()).collect();
        let chosen = wanted.contains(&f.id);
        if courts.is_empty() {
            if chosen {
                let words =
                    format!("{} has no courts yet. Add them to plan lessons there.", f.place.name);
                return Err(Error::field("facilities", "no_courts", &words));
            }
            continue;
        }
        let rules = facilities::rules(db, facilities::Which { facility: f.id })?;
        places.push(Place {
            id: f.id,
            name: f.place.name,
            zone: f.place.zone,
            rules,
            courts,
            chosen,
        });
    }
    places.sort_by_key(|place| !place.chosen);
    let Some(zone) = places.first().filter(|place| place.chosen).map(|place| place.zone.clone())
    else {
        return Err(Error::field("facilities", "empty", "Choose where the lessons can be."));
    };
    if let Some(other) = places.iter().find(|place| place.chosen && place.zone != zone) {
        let words = format!(
            "{} is on another clock than {}. Plan each clock\u{2019}s facilities by themselves.",
            other.name, places[0].name
        );
        return Err(Error::field("facilities", "two_clocks", &words));
    }
    places.retain(|place| place.zone == zone);
    Ok(places)
}
