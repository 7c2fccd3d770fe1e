//! Decisions at a visit's end: each comes proposed, and one act takes them all.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::show::{Shown, show};
use super::state::{How, State, is_carried};
use super::{Choice, Decision, Which, store};
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::{GoalId, VisitId};

/// A decision to record.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Decide {
    /// Which goal.
    pub goal: GoalId,
    /// The visit; left out between visits.
    #[serde(default)]
    pub visit: Option<VisitId>,
    /// Carry on, close, set aside or take up. A raise is an act of its own.
    pub kind: Choice,
    /// Why; needed to close and to set aside.
    #[serde(default)]
    pub reason: String,
}

/// Whose decisions.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AtVisit {
    /// The visit.
    pub visit: VisitId,
}

/// What is proposed for a goal at a visit's end.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Proposal {
    /// The goal and where it stands.
    pub goal: Shown,
    /// How it came to be at the visit.
    pub how: How,
    /// What is proposed: carry on; `None` for a goal that closes by itself because it is kept, or
    /// that is closed already.
    pub propose: Option<Choice>,
    /// Why, in words.
    pub why: String,
    /// Whether it was decided at this visit already.
    pub decided: Option<Decision>,
}

/// Records a decision.
///
/// # Errors
/// `NotFound`; `Refused` when a reason is missing; `NotPossible` when the goal is closed already.
pub fn decide(db: &Writing<'_>, decide: Decide) -> Result<Shown> {
    let before = show(db, Which { goal: decide.goal })?;
    let mut p = Problems::new();
    let needs_reason = matches!(decide.kind, Choice::Close | Choice::SetAside);
    let reason = if needs_reason {
        p.reason("reason", &decide.reason, "The reason")
    } else {
        p.note("reason", &decide.reason, "The reason")
    };
    if decide.kind == Choice::Raise {
        p.add("kind", "own_act", "A goal is raised by setting the harder goal.");
    }
    p.done()?;
    let state = before.standing.state;
    let fits = match decide.kind {
        Choice::TakeUp => matches!(state, State::SetAside | State::Closed),
        _ => is_carried(state) || state == State::Kept,
    };
    if !fits {
        let words = match (decide.kind, state) {
            (Choice::TakeUp, _) => "This goal is being worked on already.",
            (_, State::SetAside) => "This goal is set aside. Take it up again first.",
            _ => "This goal is closed already.",
        };
        return Err(Error::not_possible("does_not_fit", words));
    }
    let decision = Decision {
        id: db.id(),
        visit: decide.visit,
        day: db.today(),
        kind: decide.kind,
        reason,
        raised_to: None,
    };
    store::insert_decision(db, decide.goal, &decision)?;
    db.label(format!("{}: {}", decide.kind.words(), before.goal.title));
    show(db, Which { goal: decide.goal })
}

/// What is proposed for each goal at a visit, in order of priority.
///
/// # Errors
/// `NotFound`.
pub fn proposals(db: &Reading<'_>, at: AtVisit) -> Result<Vec<Proposal>> {
    store::visit(db, at.visit)?;
    store::at_visit(db, at.visit)?
        .into_iter()
        .map(|(goal, how)| propose(db, at.visit, goal, how))
        .collect()
}

fn propose(db: &Reading<'_>, visit: VisitId, goal: GoalId, how: How) -> Result<Proposal> {
    let goal = show(db, Which { goal })?;
    let decided =
        store::history(db, &goal.goal)?.decisions.into_iter().rfind(|d| d.visit == Some(visit));
    let (propose, why) = match goal.standing.state {
        State::Working | State::Slipped => (Some(Choice::CarryOn), "still to be reached"),
        State::Met => (
            Some(Choice::CarryOn),
            "met; the retest at the next visit will tell whether it is kept",
        ),
        State::Kept => (None, "kept; it closes with this visit"),
        State::Raised => (None, "raised"),
        State::Closed => (None, "closed"),
        State::SetAside => (None, "set aside"),
    };
    Ok(Proposal { goal, how, propose, why: why.to_owned(), decided })
}

/// Takes every proposal of a visit that was not decided yet.
///
/// # Errors
/// `NotFound`.
pub fn accept(db: &Writing<'_>, at: AtVisit) -> Result<Vec<Proposal>> {
    for proposal in proposals(db, at)? {
        if let (Some(kind), None) = (proposal.propose, &proposal.decided) {
            let decision = Decision {
                id: db.id(),
                visit: Some(at.visit),
                day: db.today(),
                kind,
                reason: String::new(),
                raised_to: None,
            };
            store::insert_decision(db, proposal.goal.goal.id, &decision)?;
        }
    }
    db.label("Decisions taken as proposed");
    proposals(db, at)
}

impl Choice {
    /// As said on screen and in history.
    pub fn words(self) -> &'static str {
        match self {
            Self::CarryOn => "Carried on",
            Self::Raise => "Raised",
            Self::Close => "Closed",
            Self::SetAside => "Set aside",
            Self::TakeUp => "Taken up again",
        }
    }
}
