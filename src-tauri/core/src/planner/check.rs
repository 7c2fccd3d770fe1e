//! Reads a plan with separate code: every rule again, lesson by lesson and pair by pair, in minutes,
//! and the four sums anew. The planner gives nothing out that does not pass.

use super::Planned;
use super::ask::{Ask, Limit, Meal};

/// A lesson's end.
fn end(ask: &Ask, lesson: &Planned) -> u32 {
    lesson.start + ask.length(lesson.student) * ask.grid
}

/// A rule of a plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Rule {
    /// Starts lie on the grid, and on the facility's own steps.
    Start,
    /// Inside the student's hours.
    StudentHours,
    /// After the student's arrival.
    Arrival,
    /// Before the student's departure.
    Departure,
    /// Inside the facility's hours.
    FacilityHours,
    /// On a day that can be booked.
    Bookable,
    /// On a free court.
    Court,
    /// While the coach is free.
    Coach,
    /// One lesson at a time.
    OneAtATime,
    /// Travel between two facilities.
    Travel,
    /// Rest between two lessons of a student.
    Rest,
    /// The coach's minutes a day.
    CoachDay,
    /// A facility's minutes a day.
    FacilityDay,
    /// A facility's lessons a day.
    FacilityBookings,
    /// A student's lessons a day.
    PerDay,
    /// The coach's longest run.
    Run,
    /// The longest run on a court.
    CourtRun,
    /// The coach's minutes over several days.
    CoachWeek,
    /// A facility's minutes over several days.
    FacilityWeek,
    /// A day's meal keeps its time.
    Meal,
    /// A locked lesson stays.
    Locked,
    /// No more lessons than were wished for.
    Wished,
}

/// A rule that a plan breaks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Broken {
    /// Which one.
    pub rule: Rule,
    /// The lesson, by its place in the plan, that breaks it; of a pair the later one.
    pub lesson: usize,
    /// The other of a pair.
    pub with: Option<usize>,
}

/// What a plan comes to: missing, spread, cost, preference.
///
/// # Errors
/// The first rule it breaks, in words.
pub fn objectives(ask: &Ask, lessons: &[Planned]) -> Result<[i64; 4], String> {
    if let Some(first) = broken(ask, lessons).first() {
        let of = lessons.get(first.lesson);
        return Err(format!("{:?} is broken by {of:?}", first.rule));
    }
    Ok(sums(ask, lessons))
}

/// What a plan comes to, whether or not it keeps the rules.
pub fn sums(ask: &Ask, lessons: &[Planned]) -> [i64; 4] {
    [missing(ask, lessons), spread(ask, lessons), cost(ask, lessons), off(ask, lessons)]
}

/// Every rule that a plan breaks, lesson by lesson.
pub fn broken(ask: &Ask, lessons: &[Planned]) -> Vec<Broken> {
    let mut broken = Vec::new();
    let mut say = |kept: bool, rule: Rule, lesson: usize, with: Option<usize>| {
        if !kept {
            broken.push(Broken { rule, lesson, with });
        }
    };
    for (n, lesson) in lessons.iter().enumerate() {
        for (kept, rule) in alone(ask, lesson) {
            say(kept, rule, n, None);
        }
    }
    for a in 0..lessons.len() {
        for b in a + 1..lessons.len() {
            if lessons[a].day == lessons[b].day {
                let (first, then) =
                    if lessons[a].start <= lessons[b].start { (a, b) } else { (b, a) };
                for (kept, rule) in pair(ask, &lessons[first], &lessons[then]) {
                    say(kept, rule, then, Some(first));
                }
            }
        }
    }
    for day in 0..ask.days {
        let mut on: Vec<usize> = (0..lessons.len()).filter(|n| lessons[*n].day == day).collect();
        on.sort_by_key(|n| (lessons[*n].start, *n));
        day_long(ask, lessons, &on, &mut say);
    }
    for meal in ask.coach.meals.iter().filter(|meal| !meal_fits(ask, lessons, meal)) {
        // Any lesson of those that lie where the meal could be is too much.
        let (from, to) = (
            meal.spans.iter().map(|span| span[0]).min().unwrap_or(0),
            meal.spans.iter().map(|span| span[1]).max().unwrap_or(0),
        );
        for (n, lesson) in lessons.iter().enumerate() {
            let there = lesson.day == meal.day && lesson.start < to && from < end(ask, lesson);
            say(!there, Rule::Meal, n, None);
        }
    }
    for limit in over(ask, lessons) {
        let rule = if limit.facility.is_some() { Rule::FacilityWeek } else { Rule::CoachWeek };
        for (n, lesson) in lessons.iter().enumerate() {
            say(!counts(ask, &limit, lesson), rule, n, None);
        }
    }
    for locked in ask.locked.iter().filter(|locked| !lessons.contains(locked)) {
        let other = lessons.iter().position(|l| l.student == locked.student);
        say(false, Rule::Locked, other.unwrap_or(0), None);
    }
    for (n, s) in ask.students.iter().enumerate() {
        let of: Vec<usize> = (0..lessons.len()).filter(|l| lessons[*l].student == n).collect();
        for lesson in of.iter().skip(s.lessons as usize) {
            say(false, Rule::Wished, *lesson, None);
        }
    }
    broken
}

/// Whether one lesson keeps every rule beside the others of its day, and every limit over several
/// days: all that its own place can break.
pub fn keeps(ask: &Ask, lessons: &[Planned], n: usize) -> bool {
    let Some(lesson) = lessons.get(n) else { return false };
    let on: Vec<usize> = (0..lessons.len()).filter(|o| lessons[*o].day == lesson.day).collect();
    let beside = |o: &usize| {
        let (first, then) = if lessons[*o].start <= lesson.start {
            (&lessons[*o], lesson)
        } else {
            (lesson, &lessons[*o])
        };
        pair(ask, first, then).iter().all(|(kept, _)| *kept)
    };
    if !(alone(ask, lesson).iter().all(|(kept, _)| *kept)
        && on.iter().filter(|o| **o != n).all(beside))
    {
        return false;
    }
    let mut on = on;
    on.sort_by_key(|o| (lessons[*o].start, *o));
    let mut kept = true;
    day_long(ask, lessons, &on, &mut |keeps, _, _, _| kept &= keeps);
    kept && ask
        .coach
        .meals
        .iter()
        .all(|meal| meal.day != lesson.day || meal_fits(ask, lessons, meal))
        && over(ask, lessons).is_empty()
}

/// Whether a lesson counts for a limit over several days.
pub(super) fn counts(ask: &Ask, limit: &Limit, lesson: &Planned) -> bool {
    let there = limit.facility.is_none_or(|facility| ask.courts[lesson.court].facility == facility);
    there && limit.first <= lesson.day && lesson.day <= limit.last
}

/// The limits over several days that a plan breaks.
pub(super) fn over(ask: &Ask, lessons: &[Planned]) -> Vec<Limit> {
    let broken = |limit: &&Limit| {
        let of = lessons.iter().filter(|lesson| counts(ask, limit, lesson));
        of.map(|lesson| ask.length(lesson.student) * ask.grid).sum::<u32>() > limit.minutes
    };
    ask.limits.iter().filter(broken).copied().collect()
}

/// Whether a day's lessons leave its meal a run of free minutes, or nothing ever would. Between two
/// facilities the free time must hold the way as well.
fn meal_fits(ask: &Ask, lessons: &[Planned], meal: &Meal) -> bool {
    let mut on: Vec<&Planned> = lessons.iter().filter(|l| l.day == meal.day).collect();
    on.sort_by_key(|l| l.start);
    // Minute by minute, as plainly as can be.
    let allowed = |minute: u32| meal.spans.iter().any(|span| span[0] <= minute && minute < span[1]);
    let longest = |from: u32, to: u32| {
        let (mut run, mut longest) = (0, 0);
        for minute in from..to {
            run = if allowed(minute) { run + 1 } else { 0 };
            longest = longest.max(run);
        }
        longest
    };
    if longest(0, super::ask::DAY) < meal.minutes {
        return true;
    }
    let facility = |l: &Planned| ask.courts[l.court].facility;
    (0..=on.len()).any(|gap| {
        let before = gap.checked_sub(1).map(|n| on[n]);
        let after = on.get(gap).copied();
        let from = before.map_or(0, |lesson| end(ask, lesson));
        let to = after.map_or(super::ask::DAY, |lesson| lesson.start);
        let way = match (before, after) {
            (Some(a), Some(b)) if facility(a) != facility(b) => {
                ask.coach.travel[facility(a)][facility(b)]
            }
            _ => 0,
        };
        from + way + meal.minutes <= to && longest(from, to) >= meal.minutes
    })
}

fn alone(ask: &Ask, lesson: &Planned) -> [(bool, Rule); 8] {
    let Planned { student, day, start, court } = *lesson;
    let (s, c) = (&ask.students[student], &ask.courts[court]);
    let f = &ask.facilities[c.facility];
    let end = end(ask, lesson);
    let free = |of: &[[u32; 3]]| {
        of.iter().all(|taken| taken[0] != day || taken[2] <= start || end <= taken[1])
    };
    let hours = f.hours[day as usize];
    let step = if f.step == 0 { ask.grid } else { f.step };
    [
        (start % ask.grid == 0 && start % step == 0, Rule::Start),
        (s.hours[0] <= start && end <= s.hours[1], Rule::StudentHours),
        (day > s.arrive[0] || day == s.arrive[0] && start >= s.arrive[1], Rule::Arrival),
        (day < s.depart[0] || day == s.depart[0] && end <= s.depart[1], Rule::Departure),
        (hours[0] <= start && end <= hours[1], Rule::FacilityHours),
        (day < f.days_bookable, Rule::Bookable),
        (free(&c.taken), Rule::Court),
        (free(&ask.coach.busy), Rule::Coach),
    ]
}

/// Whether the student of an entry takes part in a lesson.
fn part(ask: &Ask, lesson: &Planned, student: usize) -> bool {
    let people = &ask.students[lesson.student].people;
    people.contains(&student) || people.is_empty() && lesson.student == student
}

/// Two lessons of a day, the earlier one first.
fn pair(ask: &Ask, a: &Planned, b: &Planned) -> [(bool, Rule); 3] {
    let facility = |l: &Planned| ask.courts[l.court].facility;
    let up = |minutes: u32| minutes.div_ceil(ask.grid) * ask.grid;
    let end = end(ask, a);
    let way =
        if facility(a) == facility(b) { 0 } else { ask.coach.travel[facility(a)][facility(b)] };
    let both = (0..ask.students.len()).filter(|p| part(ask, a, *p) && part(ask, b, *p));
    let rest = both.map(|p| ask.students[p].rest).max().unwrap_or(0);
    [
        (end <= b.start, Rule::OneAtATime),
        (end > b.start || end + up(way) <= b.start, Rule::Travel),
        (end > b.start || end + up(rest) <= b.start, Rule::Rest),
    ]
}

/// A day's limits; its lessons by start.
fn day_long(
    ask: &Ask,
    lessons: &[Planned],
    on: &[usize],
    say: &mut impl FnMut(bool, Rule, usize, Option<usize>),
) {
    let minutes = |n: usize| ask.length(lessons[n].student) * ask.grid;
    let facility = |n: usize| ask.courts[lessons[n].court].facility;
    let (mut sum, mut run, mut court_run) = (0, 0, 0);
    let mut here = vec![0; ask.facilities.len()];
    let mut bookings = vec![0; ask.facilities.len()];
    let mut many = vec![0; ask.students.len()];
    let mut entry = vec![0; ask.students.len()];
    for (at, n) in on.iter().copied().enumerate() {
        let lesson = &lessons[n];
        let f = &ask.facilities[facility(n)];
        sum += minutes(n);
        say(sum <= ask.coach.day_limit, Rule::CoachDay, n, None);
        here[facility(n)] += minutes(n);
        say(here[facility(n)] <= f.day_limit, Rule::FacilityDay, n, None);
        bookings[facility(n)] += 1;
        say(bookings[facility(n)] <= f.day_bookings, Rule::FacilityBookings, n, None);
        for (p, student) in ask.students.iter().enumerate() {
            many[p] += u32::from(part(ask, lesson, p));
            entry[p] += u32::from(lesson.student == p);
            let kept = many[p].max(entry[p]) <= student.per_day;
            say(kept || !part(ask, lesson, p) && lesson.student != p, Rule::PerDay, n, None);
        }
        // Unbroken runs: of the coach, and of the coach on one court.
        let before = at.checked_sub(1).map(|at| &lessons[on[at]]);
        let joined = before.filter(|b| end(ask, b) == lesson.start);
        run = joined.map_or(0, |_| run) + minutes(n);
        court_run =
            joined.filter(|b| b.court == lesson.court).map_or(0, |_| court_run) + minutes(n);
        say(run <= ask.coach.longest_run, Rule::Run, n, None);
        say(court_run <= f.longest_run, Rule::CourtRun, n, None);
    }
}

fn missing(ask: &Ask, lessons: &[Planned]) -> i64 {
    let short = |(n, s): (usize, &super::Student)| {
        let given = lessons.iter().filter(|l| l.student == n).count() as i64;
        i64::from(s.priority) * (i64::from(s.lessons) - given)
    };
    ask.students.iter().enumerate().map(short).sum()
}

fn spread(ask: &Ask, lessons: &[Planned]) -> i64 {
    let mut spread = 0;
    for (n, s) in ask.students.iter().enumerate() {
        let there = i64::from(s.depart[0]) - i64::from(s.arrive[0]) + 1;
        let with = (0..ask.days).filter(|d| lessons.iter().any(|l| l.student == n && l.day == *d));
        spread += 3 * (i64::from(s.lessons).min(there) - with.count() as i64);
    }
    for day in 0..ask.days {
        for f in 0..ask.facilities.len() {
            let used = lessons.iter().any(|l| l.day == day && ask.courts[l.court].facility == f);
            spread += if used { 2 } else { 0 };
        }
    }
    spread
}

fn cost(ask: &Ask, lessons: &[Planned]) -> i64 {
    let one = |l: &Planned| {
        let court = &ask.courts[l.court];
        let mut sum = 0;
        for at in (l.start..end(ask, l)).step_by(ask.grid as usize) {
            for [day, from, to, price] in &court.prices {
                if *day == l.day && *from <= at && at < *to {
                    sum += i64::from(*price) * i64::from(ask.grid);
                    break;
                }
            }
        }
        sum / 60 + i64::from(court.fee)
    };
    lessons.iter().map(one).sum()
}

fn off(ask: &Ask, lessons: &[Planned]) -> i64 {
    let one = |l: &Planned| {
        let s = &ask.students[l.student];
        let early = i64::from(s.prefer[0]) - i64::from(l.start);
        let late = i64::from(end(ask, l)) - i64::from(s.prefer[1]);
        let other = s.prefer_court.is_some_and(|court| court != l.court);
        early.max(late).max(0) / i64::from(ask.grid) + if other { 2 } else { 0 }
    };
    lessons.iter().map(one).sum()
}
