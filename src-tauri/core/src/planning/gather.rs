//! What a plan stands on, read out of the coach file in one go, so that the planner can go on
//! without it.

use chrono::Datelike;

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
    /// Other lessons of the weeks that the plan's days lie in, given ones among them: they count for
    /// limits of a week.
    pub beside: Vec<Lesson>,
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

/// A visit whose lessons are planned, or that shares lessons of one.
pub(super) struct Guest {
    pub visit: VisitId,
    pub student: crate::kinds::ids::StudentId,
    pub name: String,
    pub days: Span,
    /// What is wished for, the lessons that others share left out of their number.
    pub wish: VisitWish,
    /// Whether there is a wish at all, with a number of lessons a day.
    pub wishes: bool,
    /// The lessons that others share.
    pub shares: Vec<Sharing>,
}

/// Lessons that several share.
pub(super) struct Sharing {
    pub lessons: i64,
    /// With whom, by their place among the guests.
    pub with: Vec<usize>,
    /// Those who cannot come any more, a sentence each.
    pub gone: Vec<String>,
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
    // A limit of seven days reaches six days further, and a week ends within six days.
    let (from, to) = (wide.first.plus(-6), wide.last.plus(6));
    let all = lessons::list(db, ListLessons { visit: None, from: Some(from), to: Some(to) })?;
    let (lessons, beside) = all
        .into_iter()
        .filter(|lesson| lesson.state != LessonState::CalledOff)
        .partition(|lesson| wide.holds(lesson.day) && lesson.state == LessonState::Planned);
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
        lessons,
        beside,
        today: db.today(),
        ask,
    })
}

/// Who wishes for lessons on these days, and where their visits are.
fn guests(db: &Reading<'_>, ask: &AskPlan, span: Span) -> Result<(Vec<Guest>, Vec<FacilityId>)> {
    let (mut guests, mut at) = (Vec::new(), Vec::new());
    for visit in visits::around(db, span)?.into_iter().filter(to_come) {
        if !ask.visits.is_empty() && !ask.visits.contains(&visit.id) {
            continue;
        }
        let Some((days, wish)) = visit.days.zip(store::wish(db, visit.id)?) else { continue };
        at.extend(visit.facility.filter(|facility| !at.contains(facility)));
        let (visit, student, name) = (visit.id, visit.student, visit.name);
        let (wishes, shares) = (true, Vec::new());
        guests.push(Guest { visit, student, name, days, wish, wishes, shares });
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
    sharers(db, &mut guests)?;
    Ok((guests, at))
}

/// Adds whoever shares lessons of these guests, and takes the shared lessons out of their own.
fn sharers(db: &Reading<'_>, guests: &mut Vec<Guest>) -> Result<()> {
    for n in 0..guests.len() {
        for shared in std::mem::take(&mut guests[n].wish.shared) {
            guests[n].wish.lessons -= shared.lessons;
            let mut sharing =
                Sharing { lessons: shared.lessons, with: Vec::new(), gone: Vec::new() };
            for visit in shared.with {
                match sharer(db, guests, visit)? {
                    Ok(guest) => sharing.with.push(guest),
                    Err(gone) => sharing.gone.push(gone),
                }
            }
            guests[n].shares.push(sharing);
        }
    }
    Ok(())
}

/// The place of a visit among the guests; why it cannot be one, as a sentence.
fn sharer(
    db: &Reading<'_>,
    guests: &mut Vec<Guest>,
    visit: VisitId,
) -> Result<std::result::Result<usize, String>> {
    if let Some(known) = guests.iter().position(|guest| guest.visit == visit) {
        return Ok(Ok(known));
    }
    let of = visits::show(db, visits::Which { visit })?;
    let Some(days) = of.days.filter(|_| to_come(&of)) else { return Ok(Err(gone(&of))) };
    let wish = store::wish(db, visit)?;
    guests.push(Guest {
        visit,
        student: of.student,
        name: of.name,
        days,
        wishes: wish.is_some(),
        // Limits and hours hold; lessons of their own are not asked for here.
        wish: VisitWish { lessons: 0, shared: Vec::new(), ..wish.unwrap_or_default() },
        shares: Vec::new(),
    });
    Ok(Ok(guests.len() - 1))
}

/// Whether lessons can still be planned at a visit.
pub(super) fn to_come(visit: &Visit) -> bool {
    matches!(visit.stage, Stage::Planned | Stage::Open)
}

/// Why a visit cannot share lessons any more.
pub(super) fn gone(visit: &Visit) -> String {
    match visit.stage {
        Stage::CalledOff => format!("The visit of {} was called off.", visit.name),
        Stage::Closed => format!("The visit of {} is over.", visit.name),
        _ => format!("The visit of {} has no days.", visit.name),
    }
}

/// The Monday of a day's week.
pub(super) fn monday(day: Day) -> Day {
    day.plus(-i64::from(day.date().weekday().num_days_from_monday()))
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
