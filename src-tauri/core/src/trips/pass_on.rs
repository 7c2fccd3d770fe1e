//! Costs passed on to whoever was there: split over the students of some days, each share a line on the
//! draft of whoever pays.

use std::collections::HashMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::result::lessons_on;
use crate::app::{Reading, Writing};
use crate::costs::{self, Cost};
use crate::error::{Error, Problems, Result};
use crate::invoices::{self, LineForm};
use crate::kinds::ids::{CostId, StudentId};
use crate::kinds::text::counted;
use crate::kinds::{Currency, Day, Span};
use crate::lessons::Attending;
use crate::money::split;
use crate::payers;
use crate::prices::What;
use crate::students;
use crate::visits::{self, Stage};

/// The most costs at once.
const MOST_COSTS: usize = 50;
/// The most characters of a line.
const MOST_WORDS: usize = 200;

/// How a cost is split.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum CostSplitBy {
    /// The same for everyone.
    #[default]
    Equal,
    /// By how many lessons each has on these days.
    Lessons,
}

/// Costs to pass on.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AskCostSplit {
    /// Which costs: what is left of each.
    pub costs: Vec<CostId>,
    /// The first of the days whose students share them; left out for that of the costs.
    #[serde(default)]
    pub first: Option<Day>,
    /// The last of these days; left out for that of the costs.
    #[serde(default)]
    pub last: Option<Day>,
    /// How.
    #[serde(default)]
    pub by: CostSplitBy,
    /// Over whom; left out for everyone who is there on these days.
    #[serde(default)]
    pub students: Option<Vec<StudentId>>,
}

/// Someone who is there on the days.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct CostSplitStudent {
    /// The student.
    pub student: StudentId,
    /// The name.
    pub name: String,
    /// Who would pay.
    pub paid_by: String,
    /// Lessons on these days, those called off or missed left out.
    pub lessons: u32,
    /// Whether a share falls on them.
    pub chosen: bool,
    /// What would fall on them, one amount for each currency.
    pub amounts: Vec<String>,
}

/// What of a cost falls on a student.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct CostSplitShare {
    /// Which cost.
    pub cost: CostId,
    /// On whom.
    pub student: StudentId,
    /// How much, a decimal.
    pub amount: String,
    /// The currency.
    pub currency: String,
    /// The line, in words.
    pub words: String,
}

/// How costs would be passed on.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct CostSplit {
    /// The days whose students share them.
    pub days: Span,
    /// Everyone who is there then, by name.
    pub students: Vec<CostSplitStudent>,
    /// Each share.
    pub shares: Vec<CostSplitShare>,
    /// What would be passed on, one amount for each currency.
    pub sums: Vec<String>,
}

/// Costs that were passed on.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct CostsPassedOn {
    /// The costs, each with its shares.
    pub costs: Vec<Cost>,
    /// What was done, as a sentence.
    pub words: String,
}

/// How costs would be split, by largest remainder: what of them is not passed on yet.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong; `NotPossible` when a cost was taken back.
pub fn split_proposal(db: &Reading<'_>, ask: AskCostSplit) -> Result<CostSplit> {
    let mut p = Problems::new();
    if ask.costs.is_empty() {
        p.add("costs", "empty", "Choose the costs to pass on.");
    }
    if ask.costs.len() > MOST_COSTS {
        p.add("costs", "too_many", format!("There is room for {MOST_COSTS} costs at once."));
    }
    let mut lefts: Vec<(Cost, Currency, i64)> = Vec::new();
    for (n, id) in ask.costs.iter().enumerate() {
        let field = format!("costs[{n}]");
        if ask.costs.iter().take(n).any(|known| known == id) {
            p.add(&field, "twice", "This cost stands above already.");
            continue;
        }
        let cost = costs::show(db, *id)?;
        let (currency, left) = costs::left(&cost)?;
        if left == 0 {
            let words = format!("All of \u{201c}{}\u{201d} is passed on already.", cost.words);
            p.add(&field, "passed_on", words);
        }
        lefts.push((cost, currency, left));
    }
    let first = ask.first.or_else(|| lefts.iter().map(|(cost, ..)| cost.day).min());
    let last = ask.last.or_else(|| lefts.iter().map(|(cost, ..)| cost.last).max());
    let Some((first, last)) = first.zip(last) else {
        p.done()?;
        return Err(Error::Fault("costs without days".to_owned()));
    };
    let days = Span { first, last };
    if days.last < days.first {
        return Err(Error::field("last", "end_before_start", "The last day is before the first."));
    }
    let mut students = there(db, days)?;
    if let Some(chosen) = &ask.students {
        for (n, id) in chosen.iter().enumerate() {
            if students.iter().all(|known| known.student != *id) {
                let words = "They are not there on these days.";
                p.add(&format!("students[{n}]"), "not_there", words);
            }
        }
        for one in &mut students {
            one.chosen = chosen.contains(&one.student);
        }
    }
    if students.is_empty() {
        p.add("students", "nobody", "Nobody is in town or has a lesson on these days.");
    } else if !students.iter().any(|one| one.chosen) {
        p.add("students", "empty", "Choose at least one student.");
    }
    let weights: Vec<u64> = students.iter().map(|one| weight(one, ask.by)).collect();
    if students.iter().any(|one| one.chosen) && weights.iter().all(|weight| *weight == 0) {
        p.add("by", "no_lessons", "None of them has a lesson on these days: split it equally.");
    }
    p.done()?;
    let shares = shares(&lefts, &students, &weights)?;
    let mut sums: Vec<(Currency, i64)> = Vec::new();
    for one in &mut students {
        let mut own: Vec<(Currency, i64)> = Vec::new();
        for (_, currency, amount) in shares.iter().filter(|(s, ..)| s.student == one.student) {
            add(&mut own, *currency, *amount);
            add(&mut sums, *currency, *amount);
        }
        one.amounts = own.iter().map(|(currency, amount)| currency.words(*amount)).collect();
    }
    Ok(CostSplit {
        days,
        students,
        shares: shares.into_iter().map(|(share, ..)| share).collect(),
        sums: sums.iter().map(|(currency, amount)| currency.words(*amount)).collect(),
    })
}

fn weight(one: &CostSplitStudent, by: CostSplitBy) -> u64 {
    match (one.chosen, by) {
        (false, _) => 0,
        (true, CostSplitBy::Equal) => 1,
        (true, CostSplitBy::Lessons) => u64::from(one.lessons),
    }
}

fn add(sums: &mut Vec<(Currency, i64)>, currency: Currency, amount: i64) {
    match sums.iter_mut().find(|(known, _)| *known == currency) {
        Some((_, sum)) => *sum += amount,
        None => sums.push((currency, amount)),
    }
}

/// Each share of each cost. All costs of a currency are split as one sum, cost by cost, so that nobody
/// has a unit too much over all of them.
fn shares(
    lefts: &[(Cost, Currency, i64)],
    students: &[CostSplitStudent],
    weights: &[u64],
) -> Result<Vec<(CostSplitShare, Currency, i64)>> {
    let none = || Error::Fault("a cost that cannot be split".to_owned());
    let mut before: HashMap<&str, (i64, Vec<i64>)> = HashMap::new();
    let mut all = Vec::new();
    for (cost, currency, left) in lefts {
        let known = before.entry(currency.code()).or_insert_with(|| (0, vec![0; weights.len()]));
        let sum = known.0.checked_add(*left).ok_or_else(none)?;
        let upto = split(sum, weights).ok_or_else(none)?;
        let mut parts: Vec<i64> = upto.iter().zip(&known.1).map(|(now, then)| now - then).collect();
        // With unequal weights a larger sum can give one a unit less: then the cost is split by itself.
        if parts.iter().any(|part| *part < 0) {
            parts = split(*left, weights).ok_or_else(none)?;
            known.1 = known.1.iter().zip(&parts).map(|(then, part)| then + part).collect();
        } else {
            known.1 = upto;
        }
        known.0 = sum;
        for (one, part) in students.iter().zip(parts).filter(|(_, part)| *part > 0) {
            let share = CostSplitShare {
                cost: cost.id,
                student: one.student,
                amount: currency.plain(part),
                currency: currency.code().to_owned(),
                words: words(cost, &one.name),
            };
            all.push((share, *currency, part));
        }
    }
    Ok(all)
}

/// "Share of Harbour Inn, 10 – 11 March 2026: Ana Silva", as long as a line may be.
fn words(cost: &Cost, name: &str) -> String {
    let rest = format!(", {}: {name}", cost.days().words());
    let room = MOST_WORDS.saturating_sub("Share of ".len() + rest.chars().count());
    let what: String = if cost.words.chars().count() > room {
        cost.words.chars().take(room.saturating_sub(1)).chain(['\u{2026}']).collect()
    } else {
        cost.words.clone()
    };
    format!("Share of {what}{rest}").chars().take(MOST_WORDS).collect()
}

/// Everyone who has a lesson on some days or is in town, by name.
fn there(db: &Reading<'_>, days: Span) -> Result<Vec<CostSplitStudent>> {
    let mut all: Vec<(StudentId, String, u32)> = Vec::new();
    let lessons = lessons_on(db, days)?;
    for lesson in lessons.iter().filter(|lesson| lesson.state.takes_place()) {
        for Attending { student, name, .. } in &lesson.students {
            match all.iter_mut().find(|(known, ..)| known == student) {
                Some((_, _, many)) => *many += 1,
                None => all.push((*student, name.clone(), 1)),
            }
        }
    }
    for visit in visits::around(db, days)? {
        let known = all.iter().any(|(known, ..)| *known == visit.student);
        if !known && visit.stage != Stage::CalledOff {
            all.push((visit.student, visit.name, 0));
        }
    }
    all.sort_by(|a, b| a.1.cmp(&b.1).then(a.0.cmp(&b.0)));
    let mut students = Vec::new();
    for (student, name, lessons) in all {
        let pays = payers::of_student(db, students::Which { student })?;
        let paid_by = pays.payer.map_or(pays.proposed.name, |payer| payer.form.name);
        let (chosen, amounts) = (true, Vec::new());
        students.push(CostSplitStudent { student, name, paid_by, lessons, chosen, amounts });
    }
    Ok(students)
}

/// Passes costs on: each share becomes a line on the draft of whoever pays for the student.
///
/// # Errors
/// As [`split_proposal`].
pub fn pass_on(db: &Writing<'_>, ask: AskCostSplit) -> Result<CostsPassedOn> {
    let ids = ask.costs.clone();
    let split = split_proposal(db, ask)?;
    let mut payers: Vec<_> = Vec::new();
    for share in &split.shares {
        let payer = payers::ensure(db, share.student)?;
        let currency = Currency::parse(&share.currency)
            .ok_or_else(|| Error::Fault(format!("{} is no currency", share.currency)))?;
        let cost = costs::show(db, share.cost)?;
        let mut line = LineForm::of(What::Travel, share.words.clone(), share.amount.clone());
        line.day = cost.day.to_string();
        let (_, line) = invoices::add_line(db, payer, currency, line, None)?;
        costs::pass(db, share.cost, line)?;
        if !payers.contains(&payer) {
            payers.push(payer);
        }
    }
    let many = i64::try_from(payers.len()).unwrap_or(i64::MAX);
    let words = format!(
        "{} passed on: {} on the drafts of {}.",
        split.sums.join(" and "),
        counted(i64::try_from(split.shares.len()).unwrap_or(i64::MAX), "line", "lines"),
        counted(many, "payer", "payers"),
    );
    db.label(format!("Costs passed on: {}", split.sums.join(" and ")));
    let costs = ids.into_iter().map(|id| costs::show(db, id)).collect::<Result<_>>()?;
    Ok(CostsPassedOn { costs, words })
}
