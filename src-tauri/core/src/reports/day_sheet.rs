//! The day sheet: what must be in place before court, today's lessons, and what is owed after.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::app::Reading;
use crate::bookings::{self, CourtNeeded, CourtState, CourtsOf};
use crate::calendar;
use crate::error::Result;
use crate::goals::court::{OnCourt, on_court};
use crate::goals::decide::{AtVisit, proposals};
use crate::goals::show::all as goals_of;
use crate::goals::state::is_carried;
use crate::goals::{Kind, carry};
use crate::intake::{certificates, incidents};
use crate::keeping::{self, Kept};
use crate::kinds::ids::{LessonId, StudentId, VisitId};
use crate::kinds::text::counted;
use crate::kinds::{Day, Span, Time};
use crate::lessons::{self, Lesson, LessonState, ListLessons};
use crate::letters::{self, LetterState, ListLetters};
use crate::ready::{self, ReadyState};
use crate::students::{self, StudentLine};
use crate::visits::{self, ListVisits, Stage, Visit};

/// Which day.
#[derive(Clone, Copy, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct OfDay {
    /// The day; left out for today.
    pub day: Option<Day>,
}

/// What a line on the day sheet leads to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Leads {
    /// Start the visit.
    StartVisit,
    /// Record on court.
    Record,
    /// Look at the visit: its lessons and decisions.
    Visit,
    /// The visit's letter.
    Letter,
    /// All letters.
    Letters,
    /// The student.
    Student,
    /// Courts to ask for and to give back.
    Courts,
    /// The coach's calendars.
    Calendars,
    /// What is missing before court.
    BeforeCourt,
    /// Incident reports.
    Incidents,
    /// The coach's own papers.
    Papers,
    /// What has been kept longer than the coach said.
    Kept,
}

/// A line.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct SheetLine {
    /// By when or since when, in words.
    pub when: String,
    /// Whether it is late.
    pub late: bool,
    /// What it is.
    pub what: String,
    /// Why, or what is known.
    pub why: String,
    /// Where it leads.
    pub leads: Leads,
    /// The student, if it is about one.
    pub student: Option<StudentId>,
    /// The visit, if it is about one.
    pub visit: Option<VisitId>,
    /// The lesson, if it is about one.
    pub lesson: Option<LessonId>,
}

/// The day sheet.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct DaySheet {
    /// The day.
    pub day: Day,
    /// Who is here, and where: "Harbour Hall, Saltmere · day 2 of Marta Lindqvist's visit".
    pub here: Vec<String>,
    /// Lessons of the day that stand.
    pub lessons: u32,
    /// Their minutes.
    pub minutes: u32,
    /// The first hour after the last lesson that is still to come; `None` when there is none.
    pub free_from: Option<Time>,
    /// What must be in place.
    pub before: Vec<SheetLine>,
    /// Today's lessons.
    pub on: Vec<SheetLine>,
    /// What is owed and awaited.
    pub after: Vec<SheetLine>,
    /// Whether the file holds anyone at all.
    pub empty: bool,
}

/// So many days ahead a visit is told of.
const SOON: i64 = 7;
/// So many days after a visit its letter is told of.
const LETTER_OWED_FOR: i64 = 90;
/// So many of those letters are named, the newest; the others are counted.
const LETTERS_NAMED: u32 = 12;
/// So many days ahead courts are looked at.
const COURTS_AHEAD: i64 = 35;
/// So many days before its end a paper of the coach's own is told of.
const PAPERS_TOLD_BEFORE: i64 = 45;
/// So many days after the first message an enquiry is told of.
const ENQUIRY_TOLD_FOR: i64 = 60;
/// So many days before the span a student is expected in, their days are asked for.
const ASKED_BEFORE: i64 = 31;

/// Shows the day sheet.
///
/// # Errors
/// `Storage`.
pub fn day_sheet(db: &Reading<'_>, of: OfDay) -> Result<DaySheet> {
    let day = of.day.unwrap_or_else(|| db.today());
    let near = visits::around(db, Span { first: day, last: day.plus(SOON) })?;
    let here: Vec<&Visit> = near
        .iter()
        .filter(|v| v.stage != Stage::CalledOff && v.days.is_some_and(|days| days.holds(day)))
        .collect();
    let today = lessons::list(db, ListLessons { visit: None, from: Some(day), to: Some(day) })?;
    let standing: Vec<&Lesson> = today.iter().filter(|l| l.stands()).collect();
    let last_end = standing.iter().map(|l| l.ends).max();
    let everyone = students::list(db, students::ListStudents::default())?;
    Ok(DaySheet {
        day,
        here: here_words(&here, day),
        lessons: u32::try_from(standing.len()).unwrap_or(0),
        minutes: standing.iter().map(|l| l.minutes).sum(),
        free_from: last_end,
        before: before(db, day, &near)?,
        on: today.iter().map(|lesson| on(db, lesson)).collect::<Result<_>>()?,
        after: after(db, day, &everyone)?,
        empty: everyone.is_empty() && !visits::any(db)?,
    })
}

/// "Harbour Hall, Saltmere: Marta Lindqvist (day 2), Ines Okafor (day 1)", a line for each place.
fn here_words(here: &[&Visit], day: Day) -> Vec<String> {
    let mut places: Vec<(&str, Vec<String>)> = Vec::new();
    for visit in here {
        let n = visit.days.map_or(1, |days| day.since(days.first) + 1);
        let words = format!("{} (day {n})", visit.name);
        match places.iter_mut().find(|(place, _)| *place == visit.place) {
            Some((_, names)) => names.push(words),
            None => places.push((&visit.place, vec![words])),
        }
    }
    places
        .into_iter()
        .map(|(place, names)| {
            let names = names.join(", ");
            if place.is_empty() { names } else { format!("{place}: {names}") }
        })
        .collect()
}

fn line(
    visit: &Visit,
    leads: Leads,
    when: &str,
    late: bool,
    what: String,
    why: String,
) -> SheetLine {
    SheetLine {
        when: when.to_owned(),
        late,
        what,
        why,
        leads,
        student: Some(visit.student),
        visit: Some(visit.id),
        lesson: None,
    }
}

/// Courts that can be asked for by now, or from tomorrow on, one line for each facility; and those to
/// be given back, each with its deadline.
fn courts(db: &Reading<'_>, day: Day) -> Result<Vec<SheetLine>> {
    let of = CourtsOf { from: Some(day), to: Some(day.plus(COURTS_AHEAD)), visit: None };
    let all = bookings::list(db, of)?;
    let of_no_one = |when: String, late: bool, what: String, why: String| SheetLine {
        when,
        late,
        what,
        why,
        leads: Leads::Courts,
        student: None,
        visit: None,
        lesson: None,
    };
    let mut lines = Vec::new();
    for court in all.iter().filter(|c| c.state == CourtState::ToGiveBack) {
        let (when, late) = match court.free_until {
            Some(until) if until.day < day => ("late".to_owned(), true),
            Some(until) if until.day == day => (format!("by {}", until.time), false),
            _ => ("to give back".to_owned(), false),
        };
        let court_name = if court.court_name.is_empty() { "a court" } else { &court.court_name };
        let what = format!(
            "Give {court_name} back at {}, {} {}.",
            court.place,
            court.day.words(),
            court.starts
        );
        lines.push(of_no_one(when, late, what, court.words.join(" ")));
    }
    // Only where a rule says when asking begins: elsewhere nobody knows what there is to ask for.
    let told = |c: &&CourtNeeded| c.state == CourtState::ToAsk && c.ask_from.is_some();
    for (when, on) in [("today", 0), ("tomorrow", 1)] {
        let mut places: Vec<(&str, i64)> = Vec::new();
        for court in all.iter().filter(told) {
            let from = court.ask_from.map_or(day, |from| from.day.max(day));
            if from == day.plus(on) {
                match places.iter_mut().find(|(place, _)| *place == court.place) {
                    Some((_, many)) => *many += 1,
                    None => places.push((&court.place, 1)),
                }
            }
        }
        for (place, many) in places {
            let what = format!("Ask for {} at {place}.", counted(many, "court", "courts"));
            lines.push(of_no_one(when.to_owned(), false, what, String::new()));
        }
    }
    Ok(lines)
}

/// Visits to start, visits about to begin, lessons of the next two days without a court.
fn before(db: &Reading<'_>, day: Day, visits: &[Visit]) -> Result<Vec<SheetLine>> {
    let mut lines = Vec::new();
    for visit in visits.iter().filter(|v| v.stage == Stage::Planned) {
        let Some(days) = visit.days else { continue };
        let starts_in = days.first.since(day);
        if !(days.last >= day && starts_in <= SOON) {
            continue;
        }
        let waiting = waiting_words(db, visit.student)?;
        if starts_in <= 0 {
            let what = format!("Start {}\u{2019}s visit.", visit.name);
            lines.push(line(visit, Leads::StartVisit, "now", false, what, waiting));
        } else {
            let when =
                if starts_in == 1 { "tomorrow".to_owned() } else { format!("in {starts_in} days") };
            let what = format!("{} comes.", visit.name);
            let why = format!("{}. {waiting}", days.words());
            lines.push(line(visit, Leads::Visit, &when, false, what, why));
        }
    }
    let soon = ListLessons { visit: None, from: Some(day), to: Some(day.plus(1)) };
    for lesson in lessons::list(db, soon)?
        .iter()
        .filter(|l| l.state == LessonState::Planned && l.court.is_none())
    {
        let Some(first) = lesson.students.first() else { continue };
        let when =
            if lesson.day == day { format!("by {}", lesson.starts) } else { "tomorrow".to_owned() };
        lines.push(SheetLine {
            when,
            late: false,
            what: format!("No court yet for {}, {}.", lesson.names(), lesson.starts),
            why: lesson.place.clone(),
            leads: Leads::Visit,
            student: Some(first.student),
            visit: Some(first.visit),
            lesson: Some(lesson.id),
        });
    }
    lines.extend(not_ready(db, day)?);
    lines.extend(own_papers(db, day)?);
    lines.extend(courts(db, day)?);
    lines.extend(calendars(db)?);
    Ok(lines)
}

/// Who has a lesson today or tomorrow and is not ready for court.
fn not_ready(db: &Reading<'_>, day: Day) -> Result<Vec<SheetLine>> {
    let soon = ListLessons { visit: None, from: Some(day), to: Some(day.plus(1)) };
    let mut lines: Vec<SheetLine> = Vec::new();
    for lesson in lessons::list(db, soon)?.iter().filter(|l| l.state == LessonState::Planned) {
        for ready in ready::of_lesson(db, ready::ReadyFor { lesson: lesson.id })? {
            let told = lines.iter().any(|line| line.student == Some(ready.student));
            let settled = ready.state == ReadyState::NotReady && ready.went_on.is_some();
            if ready.state == ReadyState::Ready || settled || told {
                continue;
            }
            let blocked = ready.state == ReadyState::Blocked;
            lines.push(SheetLine {
                when: match (blocked, lesson.day == day) {
                    (true, _) => "no play".to_owned(),
                    (false, true) => format!("by {}", lesson.starts),
                    (false, false) => "tomorrow".to_owned(),
                },
                late: blocked,
                what: if blocked {
                    format!("{} does not play.", ready.name)
                } else {
                    format!("{} is not ready for court.", ready.name)
                },
                why: ready.missing.iter().map(|m| m.words.as_str()).collect::<Vec<_>>().join(" "),
                leads: Leads::BeforeCourt,
                student: Some(ready.student),
                visit: ready.visit,
                lesson: Some(lesson.id),
            });
        }
    }
    Ok(lines)
}

/// The coach's own papers that have ended or end soon.
fn own_papers(db: &Reading<'_>, day: Day) -> Result<Vec<SheetLine>> {
    let mut lines = Vec::new();
    for paper in certificates::list(db)? {
        let Some(until) = Day::parse(&paper.paper.until) else { continue };
        let over = until < day;
        if !over && until > day.plus(PAPERS_TOLD_BEFORE) {
            continue;
        }
        lines.push(SheetLine {
            when: if over { "ended".to_owned() } else { format!("in {} days", until.since(day)) },
            late: over,
            what: format!(
                "Your \u{201c}{}\u{201d} {}.",
                paper.paper.words,
                if over { "has ended" } else { "ends" }
            ),
            why: format!("{}.", until.words()),
            leads: Leads::Papers,
            student: None,
            visit: None,
            lesson: None,
        });
    }
    Ok(lines)
}

/// Incident reports that are not signed.
fn unsigned(db: &Reading<'_>, day: Day) -> Result<Vec<SheetLine>> {
    let all = incidents::list(db)?;
    let open = all.into_iter().filter(|incident| incident.signed.is_none());
    Ok(open
        .map(|incident| SheetLine {
            when: ago(day.since(incident.day)),
            late: incident.day < day,
            what: format!("Sign the incident report: {}.", incident.name),
            why: incident.facility_name,
            leads: Leads::Incidents,
            student: None,
            visit: None,
            lesson: None,
        })
        .collect())
}

/// What has been kept longer than the coach said, one line for each kind.
fn kept_too_long(db: &Reading<'_>, day: Day) -> Result<Vec<SheetLine>> {
    let all = keeping::due(db, day)?;
    let mut lines = Vec::new();
    for kept in [Kept::Enquiry, Kept::Health, Kept::Report, Kept::Person, Kept::Accounts] {
        let of: Vec<_> = all.iter().filter(|due| due.kept == kept).collect();
        let Some(first) = of.first() else { continue };
        lines.push(SheetLine {
            when: "to erase".to_owned(),
            late: false,
            what: format!("{}: the time is over.", kept.of_many(&first.name, of.len())),
            why: format!(
                "{} {}.",
                if of.len() == 1 { "Kept until" } else { "The first was kept until" },
                first.until.words()
            ),
            leads: Leads::Kept,
            student: first.student.filter(|_| of.len() == 1),
            visit: None,
            lesson: None,
        });
    }
    Ok(lines)
}

/// Lessons of which the coach's calendar says something else.
fn calendars(db: &Reading<'_>) -> Result<Option<SheetLine>> {
    let many = calendar::server::to_decide(db)?;
    Ok((many > 0).then(|| SheetLine {
        when: "to decide".to_owned(),
        late: false,
        what: format!(
            "Your calendar says something else of {}.",
            counted(i64::from(many), "lesson", "lessons")
        ),
        why: String::new(),
        leads: Leads::Calendars,
        student: None,
        visit: None,
        lesson: None,
    }))
}

/// "Two goals wait for their retest." in as few words as stay true.
fn waiting_words(db: &Reading<'_>, student: StudentId) -> Result<String> {
    let goals = goals_of(db, student)?;
    let carried =
        goals.iter().filter(|g| is_carried(g.standing.state) && !g.visits.is_empty()).count();
    Ok(match carried {
        0 => "No goals yet.".to_owned(),
        1 => "One goal waits for its retest.".to_owned(),
        n => format!("{n} goals wait for their retest."),
    })
}

fn on(db: &Reading<'_>, lesson: &Lesson) -> Result<SheetLine> {
    let mut why = Vec::new();
    if lesson.students.len() > 1 {
        why.push("shared".to_owned());
    }
    if lesson.state == LessonState::Planned {
        for attending in &lesson.students {
            let visit = visits::show(db, visits::Which { visit: attending.visit })?;
            let words = if visit.stage == Stage::Planned {
                waiting_words(db, attending.student)?.trim_end_matches('.').to_owned()
            } else {
                goal_words(&on_court(db, AtVisit { visit: attending.visit })?).join(" · ")
            };
            let shared = lesson.students.len() > 1;
            why.push(if shared { format!("{}: {words}", attending.name) } else { words });
        }
    } else {
        why.push(lesson.state.words().to_owned());
        why.extend(Some(lesson.reason.clone()).filter(|reason| !reason.is_empty()));
    }
    let first = lesson.students.first();
    Ok(SheetLine {
        when: format!("{} – {}", lesson.starts, lesson.ends),
        late: false,
        what: if lesson.court_name.is_empty() {
            format!("{}, no court yet.", lesson.names())
        } else {
            format!("{}, {}.", lesson.names(), lesson.court_name)
        },
        why: why.join(" · "),
        leads: if lesson.state == LessonState::Planned { Leads::Record } else { Leads::Visit },
        student: first.map(|s| s.student),
        visit: first.map(|s| s.visit),
        lesson: Some(lesson.id),
    })
}

/// "retest lob serve · then backhand off the back wall".
fn goal_words(goals: &[OnCourt]) -> Vec<String> {
    let active: Vec<&OnCourt> = goals.iter().filter(|g| !g.waits).collect();
    if active.is_empty() {
        return vec!["no goals yet".to_owned()];
    }
    let named = |kind: Kind| {
        active.iter().filter(move |g| g.offer == kind).map(|g| g.goal.goal.title.clone())
    };
    let retests: Vec<String> = named(Kind::Retest).collect();
    let rest: Vec<String> = named(Kind::Practice).collect();
    let mut words = Vec::new();
    if !retests.is_empty() {
        words.push(format!("retest: {}", retests.join(", ")));
    }
    if !rest.is_empty() {
        words.push(rest.join(", "));
    }
    words
}

/// Lessons not settled, visits to decide on and close, letters owed, expected visits to ask about.
fn after(db: &Reading<'_>, day: Day, everyone: &[StudentLine]) -> Result<Vec<SheetLine>> {
    let mut lines = unsigned(db, day)?;
    lines.extend(enquiries(everyone, day));
    let past = ListLessons { visit: None, from: Some(day.plus(-60)), to: Some(day.plus(-1)) };
    for lesson in lessons::list(db, past)?.iter().filter(|l| l.state == LessonState::Planned) {
        let Some(first) = lesson.students.first() else { continue };
        lines.push(SheetLine {
            when: ago(day.since(lesson.day)),
            late: true,
            what: format!("Was {}\u{2019}s lesson given?", lesson.names()),
            why: format!("{}, {}.", lesson.day.words(), lesson.starts),
            leads: Leads::Visit,
            student: Some(first.student),
            visit: Some(first.visit),
            lesson: Some(lesson.id),
        });
    }
    for visit in &visits::running(db)? {
        let Some(days) = visit.days.filter(|days| days.last <= day) else { continue };
        let undecided = proposals(db, AtVisit { visit: visit.id })?
            .iter()
            .filter(|p| p.propose.is_some() && p.decided.is_none())
            .count();
        let late = days.last < day;
        let when = if late { ago(day.since(days.last)) } else { "today".to_owned() };
        let why = if undecided == 0 {
            "Everything is decided.".to_owned()
        } else {
            format!(
                "{} to decide.",
                counted(i64::try_from(undecided).unwrap_or(0), "goal", "goals")
            )
        };
        lines.push(line(
            visit,
            Leads::Visit,
            &when,
            late,
            format!("Close {}\u{2019}s visit.", visit.name),
            why,
        ));
    }
    lines.extend(letters_owed(db, day)?);
    for visit in &visits::expected_by(db, day.plus(ASKED_BEFORE))? {
        let Some(span) = visit.expected else { continue };
        let late = span.last < day;
        let (seen, waiting) = (last_seen(db, visit, day)?, waiting_words(db, visit.student)?);
        let why = [format!("Expected {}.", visits::expected_words(span)), seen, waiting].join(" ");
        let when = if late { "past".to_owned() } else { "to ask".to_owned() };
        lines.push(line(
            visit,
            Leads::Student,
            &when,
            late,
            format!("Ask {} about the days.", visit.name),
            why.replace("  ", " "),
        ));
    }
    lines.extend(kept_too_long(db, day)?);
    Ok(lines)
}

/// Who asked not long ago, and has no visit yet; the newest first.
fn enquiries(everyone: &[StudentLine], day: Day) -> Vec<SheetLine> {
    let asked = |person: &&StudentLine| {
        person.asked.is_some_and(|asked| asked <= day && day.since(asked) <= ENQUIRY_TOLD_FOR)
    };
    let mut lines: Vec<(Day, SheetLine)> = everyone
        .iter()
        .filter(asked)
        .map(|person| {
            let asked = person.asked.unwrap_or(day);
            let line = SheetLine {
                when: ago(day.since(asked)),
                late: false,
                what: format!("{} asked for lessons.", person.name),
                why: "No visit is planned or expected yet.".to_owned(),
                leads: Leads::Student,
                student: Some(person.id),
                visit: None,
                lesson: None,
            };
            (asked, line)
        })
        .collect();
    lines.sort_by_key(|(asked, _)| std::cmp::Reverse(*asked));
    lines.into_iter().map(|(_, line)| line).collect()
}

fn letters_owed(db: &Reading<'_>, day: Day) -> Result<Vec<SheetLine>> {
    let owed = ListLetters {
        issued: Some(false),
        from: Some(day.plus(-LETTER_OWED_FOR)),
        to: Some(day),
        most: LETTERS_NAMED,
        ..ListLetters::default()
    };
    let named = letters::list(db, owed)?;
    let mut lines = Vec::new();
    for owed in &named {
        let since = day.since(owed.last_day);
        let goals = carry::at_visit(db, owed.visit)?.len();
        let draft = if owed.state == LetterState::Draft { " You began to edit it." } else { "" };
        let why = format!(
            "Written from {} and {}.{draft}",
            Span { first: owed.first_day, last: owed.last_day }.words(),
            counted(i64::try_from(goals).unwrap_or(0), "goal", "goals")
        );
        lines.push(SheetLine {
            when: ago(since),
            late: since > 7,
            what: format!("Letter for {}.", owed.name),
            why,
            leads: Leads::Letter,
            student: Some(owed.student),
            visit: Some(owed.visit),
            lesson: None,
        });
    }
    let more = match named.last() {
        Some(last) if named.len() >= LETTERS_NAMED as usize => {
            (letters::count(db, owed)?.saturating_sub(LETTERS_NAMED), day.since(last.last_day))
        }
        _ => (0, 0),
    };
    if let (more @ 1.., since) = more {
        lines.push(SheetLine {
            when: "earlier".to_owned(),
            late: since > 7,
            what: format!("{more} more {}.", if more == 1 { "letter" } else { "letters" }),
            why: format!("Of visits that ended in the last {LETTER_OWED_FOR} days."),
            leads: Leads::Letters,
            student: None,
            visit: None,
            lesson: None,
        });
    }
    Ok(lines)
}

fn last_seen(db: &Reading<'_>, expected: &Visit, day: Day) -> Result<String> {
    let theirs = ListVisits { student: Some(expected.student), ..ListVisits::default() };
    let last = visits::list(db, theirs)?
        .iter()
        .filter(|v| matches!(v.stage, Stage::Open | Stage::Closed))
        .filter_map(|v| v.days)
        .map(|days| days.last)
        .filter(|last| *last <= day)
        .max();
    Ok(last.map_or_else(String::new, |last| match day.since(last) / 7 {
        0 => "Here this week.".to_owned(),
        1 => "Last here a week ago.".to_owned(),
        weeks => format!("Last here {weeks} weeks ago."),
    }))
}

fn ago(days: i64) -> String {
    match days {
        ..=0 => "today".to_owned(),
        1 => "yesterday".to_owned(),
        n => format!("{n} days ago"),
    }
}
