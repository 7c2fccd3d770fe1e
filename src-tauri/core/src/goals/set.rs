//! Setting a goal, changing its words, ordering goals by priority.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::blocks::day_at;
use super::show::{Listed, OfStudent, Shown, list, show};
use super::state::How;
use super::{Condition, Counts, Criterion, CriterionKind, Goal, Which, Words, store};
use crate::app::Writing;
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::{GoalId, StudentId, VisitId};

/// A goal to set.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SetGoal {
    /// Whose.
    pub student: StudentId,
    /// The visit it is set at; left out between visits.
    #[serde(default)]
    pub visit: Option<VisitId>,
    /// Its title.
    pub title: String,
    /// A skill of the pack or of the coach's own; empty for none.
    #[serde(default)]
    pub skill: String,
    /// The condition it is tried under.
    pub condition: Condition,
    /// What counts as a yes.
    pub counts: Counts,
    /// The kind of criterion; so many of so many unless said.
    #[serde(default)]
    pub criterion: CriterionKind,
    /// How many must be made; of a rate, in a hundred; of `at_most`, the most a game.
    pub need: i64,
    /// Of how many tries; of `at_most`, in how many games running; not asked of a rate.
    #[serde(default)]
    pub of: i64,
    /// Of a rate: the least number of chances.
    #[serde(default)]
    pub least: i64,
    /// The second fact to count apart: the result beside the choice, or the choice beside the
    /// result; left out for none.
    #[serde(default)]
    pub apart: Option<Counts>,
    /// First tries of a retest that are not counted; 3 unless said.
    #[serde(default = "three")]
    pub uncounted: i64,
    /// The cue; empty while there is none.
    #[serde(default)]
    pub cue: String,
    /// The aim, in words.
    #[serde(default)]
    pub aim: String,
    /// The day it was set, as YYYY-MM-DD; left out for today, or the visit's nearest day.
    #[serde(default)]
    pub day: String,
}

fn three() -> i64 {
    3
}

/// New words for a goal, from today on; the old ones are kept with their dates.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ChangeWords {
    /// Which goal.
    pub goal: GoalId,
    /// The cue.
    pub cue: String,
    /// The aim, in words.
    #[serde(default)]
    pub aim: String,
    /// From this day, as YYYY-MM-DD; left out for today.
    #[serde(default)]
    pub day: String,
}

/// A new order of priority.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RankGoals {
    /// Whose goals.
    pub student: StudentId,
    /// Goals, first the most urgent; goals left out follow in the order they had.
    pub order: Vec<GoalId>,
}

/// Sets a goal. At a visit it is at once among the goals worked on there.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong; `NotPossible` at a closed visit.
pub fn set(db: &Writing<'_>, set: SetGoal) -> Result<Shown> {
    let goal = read(db, set.clone())?;
    store::insert(db, &goal)?;
    if let Some(visit) = set.visit {
        open_visit(db, visit, goal.student)?;
        store::put_at_visit(db, goal.id, visit, How::Set)?;
    }
    db.label(format!("Goal set: {}", goal.title));
    show(db, Which { goal: goal.id })
}

/// The goal as it can be stored, at the end of the order of priority.
pub(super) fn read(db: &Writing<'_>, set: SetGoal) -> Result<Goal> {
    let mut p = Problems::new();
    let title = p.name("title", &set.title, "The goal");
    let cue = p.line("cue", &set.cue, "The cue");
    let aim = p.note("aim", &set.aim, "The aim");
    let skill = p.line("skill", &set.skill, "The skill");
    let usual = set.visit.map_or_else(|| Ok(db.today()), |visit| day_at(db, visit))?;
    let set_on = p.day_or_none("day", Some(&set.day), "The day").unwrap_or(usual);
    let criterion = read_criterion(&mut p, set.criterion, set.need, set.of, set.least);
    if let Some(apart) = set.apart {
        let fits = matches!(
            (set.counts, apart),
            (Counts::Result, Counts::Choice) | (Counts::Choice, Counts::Result)
        );
        if !fits || criterion.kind == CriterionKind::AtMost {
            p.add(
                "apart",
                "does_not_fit",
                "Only the choice and the result of a try are counted apart.",
            );
        }
    }
    let uncounted =
        p.within_bounds("uncounted", set.uncounted, 0, 20, "The number of first tries not counted");
    p.done()?;
    Ok(Goal {
        id: db.id(),
        student: set.student,
        title,
        skill,
        condition: set.condition,
        counts: set.counts,
        apart: set.apart,
        criterion,
        uncounted: small(uncounted),
        rank: store::next_rank(db, set.student)?,
        set_on,
        came_from: None,
        words: vec![Words { since: set_on, cue, aim, landed: None }],
    })
}

/// The criterion, with a sentence at each field that makes it one nothing can reach.
pub(super) fn read_criterion(
    p: &mut Problems,
    kind: CriterionKind,
    need: i64,
    of: i64,
    least: i64,
) -> Criterion {
    match kind {
        CriterionKind::Of => {
            let of = p.within_bounds("of", of, 1, 1000, "The number of tries");
            let need = p.within_bounds("need", need, 1, 1000, "The number to be made");
            if need > of {
                p.add(
                    "need",
                    "more_than_tries",
                    format!("{need} of {of} cannot be reached: more must be made than are tried."),
                );
            }
            Criterion::of_tries(small(need), small(of))
        }
        CriterionKind::Rate => {
            let need = p.within_bounds("need", need, 1, 100, "The rate in a hundred");
            let least = p.within_bounds("least", least, 1, 1000, "The least number of chances");
            Criterion::rate(small(need), small(least))
        }
        CriterionKind::AtMost => {
            let need = p.within_bounds("need", need, 0, 100, "The most a game");
            let of = p.within_bounds("of", of, 1, 20, "The number of games");
            Criterion::at_most(small(need), small(of))
        }
    }
}

fn small(n: i64) -> u32 {
    u32::try_from(n).unwrap_or(0)
}

/// The visit as one that is open now and of this student.
pub(super) fn open_visit(
    db: &Writing<'_>,
    visit: VisitId,
    student: StudentId,
) -> Result<store::VisitSeen> {
    let seen = store::visit(db, visit)?;
    if seen.student != student {
        return Err(Error::field("visit", "not_theirs", "This visit is another student\u{2019}s."));
    }
    if !seen.opened {
        return Err(Error::not_possible(
            "not_opened",
            "This visit has not been started. Start it first.",
        ));
    }
    if seen.closed {
        return Err(Error::not_possible(
            "closed",
            "This visit is closed. Open it again to record at it.",
        ));
    }
    Ok(seen)
}

/// Changes a goal's words from a day on.
///
/// # Errors
/// `NotFound`; `Refused` when the cue is empty.
pub fn change_words(db: &Writing<'_>, change: ChangeWords) -> Result<Shown> {
    let goal = store::find(db, change.goal)?;
    let mut p = Problems::new();
    let cue = p.name("cue", &change.cue, "The cue");
    let aim = p.note("aim", &change.aim, "The aim");
    let since = p.day_or_none("day", Some(&change.day), "The day").unwrap_or_else(|| db.today());
    p.done()?;
    let words = Words { since, cue, aim, landed: None };
    if !store::replace_words_of_day(db, goal.id, &words)? {
        store::insert_words(db, goal.id, &words)?;
    }
    db.label(format!("New words for {}", goal.title));
    show(db, Which { goal: goal.id })
}

/// Puts a student's goals in a new order of priority.
///
/// # Errors
/// `Refused` when a goal is not the student's.
pub fn rank(db: &Writing<'_>, rank: RankGoals) -> Result<Vec<Listed>> {
    let goals = store::of_student(db, rank.student)?;
    if let Some(n) = rank.order.iter().position(|id| goals.iter().all(|goal| goal.id != *id)) {
        return Err(Error::field(
            &format!("order[{n}]"),
            "not_theirs",
            "This goal is not the student\u{2019}s.",
        ));
    }
    let rest = goals.iter().map(|goal| goal.id).filter(|id| !rank.order.contains(id));
    let order: Vec<GoalId> = rank.order.iter().copied().chain(rest).collect();
    for (place, id) in (1..).zip(&order) {
        store::set_rank(db, *id, place)?;
    }
    db.label("Goals put in a new order");
    list(db, OfStudent { student: rank.student })
}
