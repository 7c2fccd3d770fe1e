//! A lesson's plan: lines of minutes, drill and goal, proposed from what is carried and changed as
//! the coach likes; kept as a template for other lessons.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Lesson, Which, show, store};
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::goals::chart::ACTIVE;
use crate::goals::show::{Shown, all as goals_of};
use crate::goals::state::is_carried;
use crate::input::NAME;
use crate::kinds::ids::{GoalId, LessonId, TemplateId};
use crate::sports::drills::{DrillLine, OfSport, drills};
use crate::students;

/// The most lines of a plan.
const LINES: usize = 40;

/// A line of a plan.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LessonLine {
    /// How long.
    pub minutes: i64,
    /// A drill of the pack or of the coach's own; empty for none.
    #[serde(default)]
    pub drill: String,
    /// The goal it serves, if any.
    #[serde(default)]
    pub goal: Option<GoalId>,
    /// What is done, in words.
    #[serde(default)]
    pub words: String,
}

/// A lesson's plan as it stands.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct LessonPlan {
    /// The lesson.
    pub lesson: LessonId,
    /// Its lines, in order.
    pub lines: Vec<LessonLine>,
    /// All minutes of the lines.
    pub minutes: i64,
    /// A sentence where they are not the lesson's; empty where they are, or there are no lines.
    pub differs: String,
}

/// Lines to set.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SetPlanLines {
    /// The lesson.
    pub lesson: LessonId,
    /// Its lines, in place of those it had.
    pub lines: Vec<LessonLine>,
}

/// A template: lines without their goals, which are one student's.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Template {
    /// Which one.
    pub id: TemplateId,
    /// Its name.
    pub name: String,
    /// Its lines.
    pub lines: Vec<LessonLine>,
}

/// Lines to keep under a name; one of that name is replaced.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct KeepTemplate {
    /// Its name.
    pub name: String,
    /// Its lines.
    pub lines: Vec<LessonLine>,
}

/// A template to use at a lesson.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct UseTemplate {
    /// The lesson.
    pub lesson: LessonId,
    /// The template.
    pub template: TemplateId,
}

/// Shows a lesson's plan.
///
/// # Errors
/// `NotFound`.
pub fn plan_lines(db: &Reading<'_>, which: Which) -> Result<LessonPlan> {
    let lesson = show(db, which)?;
    let lines = store::plan_lines(db, which.lesson)?;
    Ok(shown(&lesson, lines))
}

fn shown(lesson: &Lesson, lines: Vec<LessonLine>) -> LessonPlan {
    let minutes: i64 = lines.iter().map(|line| line.minutes).sum();
    let length = i64::from(lesson.minutes);
    let differs = if lines.is_empty() || minutes == length {
        String::new()
    } else if minutes > length {
        format!("{} minutes more than the lesson has.", minutes - length)
    } else {
        format!("{} minutes of the lesson are not planned.", length - minutes)
    };
    LessonPlan { lesson: lesson.id, lines, minutes, differs }
}

/// Sets a lesson's plan.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong.
pub fn set_plan_lines(db: &Writing<'_>, set: SetPlanLines) -> Result<LessonPlan> {
    let lesson = show(db, Which { lesson: set.lesson })?;
    let theirs = each(db, &lesson)?;
    let mut p = Problems::new();
    let lines = read(&mut p, set.lines);
    for (n, line) in lines.iter().enumerate() {
        // Any of their goals, however it stands: a goal kept since it was planned for stays in the plan.
        let known = |goal| theirs.iter().any(|one| one.goals.iter().any(|g| g.goal.id == goal));
        if line.goal.is_some_and(|goal| !known(goal)) {
            let words = "This goal is of nobody on this lesson.";
            p.add(&format!("lines[{n}].goal"), "not_theirs", words);
        }
        let there = |one: &Theirs| one.drills.iter().any(|drill| drill.id == line.drill);
        if !line.drill.is_empty() && !theirs.iter().any(there) {
            let words =
                "This drill is of another sport. Choose one of this lesson\u{2019}s, or none.";
            p.add(&format!("lines[{n}].drill"), "no_such_drill", words);
        }
    }
    p.done()?;
    store::replace_plan_lines(db, set.lesson, &lines)?;
    db.label(format!("Lesson planned: {}, {}", lesson.names(), lesson.day.words()));
    plan_lines(db, Which { lesson: set.lesson })
}

fn read(p: &mut Problems, lines: Vec<LessonLine>) -> Vec<LessonLine> {
    if lines.len() > LINES {
        p.add("lines", "too_many", format!("A lesson has room for {LINES} lines."));
    }
    let mut read = Vec::new();
    for (n, line) in lines.into_iter().enumerate() {
        p.within(&format!("lines[{n}]."), |p| {
            let minutes = p.within_bounds("minutes", line.minutes, 1, 600, "The minutes");
            let drill = p.line("drill", &line.drill, "The drill");
            let words = p.line("words", &line.words, "What is done");
            if drill.is_empty() && words.is_empty() && line.goal.is_none() {
                p.add("words", "empty", "Say what is done, or choose a drill or a goal.");
            }
            read.push(LessonLine { minutes, drill, goal: line.goal, words });
        });
    }
    read
}

/// A student on a lesson, as a plan needs to know them.
struct Theirs {
    name: String,
    /// Every goal, the most urgent first.
    goals: Vec<Shown>,
    /// The drills of the student's sport.
    drills: Vec<DrillLine>,
}

/// Everyone on a lesson.
fn each(db: &Reading<'_>, lesson: &Lesson) -> Result<Vec<Theirs>> {
    let mut all = Vec::new();
    for one in &lesson.students {
        let student = students::show(db, students::Which { student: one.student })?;
        all.push(Theirs {
            name: one.name.clone(),
            goals: goals_of(db, one.student)?,
            drills: drills(db, OfSport { sport: student.profile.sport })?,
        });
    }
    Ok(all)
}

/// The goals worked on now, each with its student: the first of everyone, then the second.
fn by_turns(theirs: &[Theirs]) -> Vec<(&Theirs, &Shown)> {
    let mut turns = Vec::new();
    for n in 0..ACTIVE {
        for one in theirs {
            let mut going = one.goals.iter().filter(|goal| is_carried(goal.standing.state));
            turns.extend(going.nth(n).map(|goal| (one, goal)));
        }
    }
    turns
}

/// Proposes a plan: a warm-up, the retest of each goal that was at an earlier visit, work on each
/// goal with a drill for its skill, the end tests. The minutes are the lesson's, shared out by
/// weight; with little time the last goals are left out. Nothing is written.
///
/// # Errors
/// `NotFound`.
pub fn propose_plan(db: &Reading<'_>, which: Which) -> Result<LessonPlan> {
    let lesson = show(db, which)?;
    let visits: Vec<_> = lesson.students.iter().map(|s| s.visit).collect();
    let theirs = each(db, &lesson)?;
    let mut goals = by_turns(&theirs);
    // Three lines a goal at most, of three minutes at least.
    let room = (lesson.minutes as usize / 3).saturating_sub(1) / 3;
    goals.truncate(room.max(1));
    let line = |goal: Option<GoalId>, drill: &str, words: &str| LessonLine {
        minutes: 0,
        drill: drill.to_owned(),
        goal,
        words: fitting(words),
    };
    let name = |one: &Theirs, goal: &Shown| {
        if theirs.len() > 1 {
            format!("{}: {}", one.name, goal.goal.title)
        } else {
            goal.goal.title.clone()
        }
    };
    let mut weighed: Vec<(i64, LessonLine)> = vec![(5, line(None, "", "Warm-up"))];
    for (one, goal) in &goals {
        let tried = |b: &crate::goals::Block| visits.contains(&b.visit) && b.was_tried();
        let was_before = goal.visits.iter().any(|visit| !visits.contains(visit));
        if was_before && !goal.blocks.iter().any(tried) {
            let words = format!("Retest: {}", name(one, goal));
            weighed.push((5, line(Some(goal.goal.id), "", &words)));
        }
    }
    for (one, goal) in &goals {
        let fits =
            |d: &&DrillLine| !goal.goal.skill.is_empty() && d.skills.contains(&goal.goal.skill);
        let drill = one.drills.iter().find(fits).map_or("", |drill| drill.id.as_str());
        weighed.push((12, line(Some(goal.goal.id), drill, &name(one, goal))));
    }
    for (one, goal) in &goals {
        let words = format!("End test: {}", name(one, goal));
        weighed.push((6, line(Some(goal.goal.id), "", &words)));
    }
    let weights: Vec<i64> = weighed.iter().map(|(weight, _)| *weight).collect();
    let minutes = shared(i64::from(lesson.minutes), &weights);
    let lines = weighed
        .into_iter()
        .zip(minutes)
        .filter(|(_, minutes)| *minutes > 0)
        .map(|((_, line), minutes)| LessonLine { minutes, ..line })
        .collect();
    Ok(shown(&lesson, lines))
}

/// Words that a line has room for.
fn fitting(words: &str) -> String {
    if words.chars().count() <= NAME {
        return words.to_owned();
    }
    let mut cut: String = words.chars().take(NAME - 1).collect();
    cut.push('\u{2026}');
    cut
}

/// Minutes by weight: the whole parts first, what is left by the largest remainder.
fn shared(minutes: i64, weights: &[i64]) -> Vec<i64> {
    let sum: i64 = weights.iter().sum::<i64>().max(1);
    let mut parts: Vec<i64> = weights.iter().map(|weight| minutes * weight / sum).collect();
    let mut order: Vec<usize> = (0..weights.len()).collect();
    order.sort_by_key(|&n| std::cmp::Reverse(minutes * weights[n] % sum));
    let left = minutes - parts.iter().sum::<i64>();
    for &n in order.iter().take(usize::try_from(left).unwrap_or(0)) {
        parts[n] += 1;
    }
    parts
}

/// Keeps lines as a template; a template of that name is replaced. Goals are left out of it.
///
/// # Errors
/// `Refused` without a name or lines, or with a line that is wrong.
pub fn keep_template(db: &Writing<'_>, keep: KeepTemplate) -> Result<Vec<Template>> {
    let mut p = Problems::new();
    let name = p.name("name", &keep.name, "The name");
    if keep.lines.is_empty() {
        p.add("lines", "empty", "A template has at least one line.");
    }
    let mut lines = read(&mut p, keep.lines);
    p.done()?;
    for line in &mut lines {
        line.goal = None;
    }
    let kept = serde_json::to_string(&lines).map_err(|e| Error::Fault(e.to_string()))?;
    store::keep_template(db, &name, &kept)?;
    db.label(format!("Template kept: {name}"));
    templates(db, crate::lessons::AllTemplates {})
}

/// Every template, by name.
///
/// # Errors
/// `Storage`; `Fault` when stored lines cannot be read.
pub fn templates(db: &Reading<'_>, _: super::AllTemplates) -> Result<Vec<Template>> {
    store::templates(db)?
        .into_iter()
        .map(|(id, name, lines)| {
            let lines = serde_json::from_str(&lines).map_err(|e| Error::Fault(e.to_string()))?;
            Ok(Template { id, name, lines })
        })
        .collect()
}

/// Shows a template's lines as a plan for a lesson, without the drills that are of another sport.
/// Nothing is written.
///
/// # Errors
/// `NotFound`.
pub fn use_template(db: &Reading<'_>, chosen: UseTemplate) -> Result<LessonPlan> {
    let lesson = show(db, Which { lesson: chosen.lesson })?;
    let template = templates(db, super::AllTemplates {})?
        .into_iter()
        .find(|template| template.id == chosen.template)
        .ok_or_else(|| Error::NotFound { what: "template", id: chosen.template.to_string() })?;
    let theirs = each(db, &lesson)?;
    let mut lines = template.lines;
    for line in &mut lines {
        if !theirs.iter().any(|one| one.drills.iter().any(|drill| drill.id == line.drill)) {
            line.drill.clear();
        }
    }
    Ok(shown(&lesson, lines))
}

#[cfg(test)]
mod tests {
    use super::shared;

    #[test]
    fn minutes_add_up_to_the_lessons_whatever_the_weights() {
        for minutes in [5, 30, 45, 60, 61, 90, 600] {
            for weights in [vec![5], vec![5, 5, 12, 6], vec![5, 5, 5, 5, 12, 12, 12, 6, 6, 6]] {
                let parts = shared(minutes, &weights);
                assert_eq!(parts.iter().sum::<i64>(), minutes, "{minutes} by {weights:?}");
                assert!(parts.iter().all(|part| *part >= 0));
            }
        }
        assert_eq!(shared(60, &[5, 5, 12, 6]), [11, 11, 25, 13]);
    }
}
