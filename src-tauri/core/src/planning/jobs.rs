//! Plans being made, each on a thread of its own: begun, looked at, stopped. A plan holds no
//! connection to the coach file while it is made, so everything else goes on.

use std::collections::VecDeque;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Condvar, LazyLock, Mutex, MutexGuard, PoisonError};
use std::time::Duration;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::gather::{Gathered, gather};
use super::propose::proposal;
use super::{AskPlan, PlanMade, WouldFree, changes};
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::kinds::ids::JobId;
use crate::kinds::{Clock, Ids, RandomIds, SystemClock};
use crate::planner::{Plan, Refusal, plan};

/// The longest an answer waits for a plan, in milliseconds.
const LONGEST_WAIT: u64 = 60_000;
/// How many plans are remembered.
const REMEMBERED: usize = 8;
/// A change is tried for this long before it is left aside.
const A_TRY: Duration = Duration::from_secs(2);

/// A plan to begin.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BeginPlan {
    /// What to plan.
    pub plan: AskPlan,
    /// So many milliseconds the answer waits for the plan, at most a minute; 0 not at all.
    #[serde(default)]
    pub wait: u64,
}

/// Which plan.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichJob {
    /// The plan, by the id it was begun under.
    pub job: JobId,
}

/// Where a plan's making is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum PlanStage {
    /// Looking for the best plan.
    Planning,
    /// The plan is there; changes are tried that would make room for what is missing.
    Trying,
    /// Done.
    Done,
    /// Stopped.
    Stopped,
    /// It could not be made.
    Failed,
}

/// How far a plan is.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct PlanLook {
    /// Where its making is.
    pub stage: PlanStage,
    /// The plan, once there is one.
    pub proposal: Option<PlanMade>,
    /// Changes that make room for more, as far as they were tried.
    pub would_free: Vec<WouldFree>,
    /// So many changes were tried.
    pub tried: u32,
    /// Of so many.
    pub of: u32,
    /// Why it could not be made; empty when it could.
    pub trouble: String,
}

/// A plan that was begun.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct PlanBegun {
    /// To look at it and stop it.
    pub job: JobId,
    /// How far it is.
    pub look: PlanLook,
}

struct Job {
    id: JobId,
    stopped: AtomicBool,
    look: Mutex<PlanLook>,
    changed: Condvar,
}

/// A plan is nothing that is kept: its id is the machine's.
static IDS: LazyLock<RandomIds> = LazyLock::new(RandomIds::default);

static JOBS: LazyLock<Mutex<VecDeque<Arc<Job>>>> = LazyLock::new(Mutex::default);

fn locked<T>(of: &Mutex<T>) -> MutexGuard<'_, T> {
    of.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Begins a plan, and stops those begun before that nobody can be waiting for any more.
///
/// # Errors
/// `Refused` when the days cannot be planned; `NotFound`.
pub fn begin(db: &Reading<'_>, begin: BeginPlan) -> Result<PlanBegun> {
    let gathered = gather(db, begin.plan)?;
    let look = PlanLook {
        stage: PlanStage::Planning,
        proposal: None,
        would_free: Vec::new(),
        tried: 0,
        of: 0,
        trouble: String::new(),
    };
    let job = Arc::new(Job {
        id: JobId(IDS.next(SystemClock.now())),
        stopped: AtomicBool::new(false),
        look: Mutex::new(look),
        changed: Condvar::new(),
    });
    {
        let mut jobs = locked(&JOBS);
        jobs.push_back(Arc::clone(&job));
        if jobs.len() > REMEMBERED
            && let Some(oldest) = jobs.pop_front()
        {
            oldest.stopped.store(true, Ordering::Relaxed);
        }
    }
    let own = Arc::clone(&job);
    std::thread::Builder::new()
        .name("plan".to_owned())
        .spawn(move || own.work(&gathered))
        .map_err(|e| Error::Fault(e.to_string()))?;
    let wait = Duration::from_millis(begin.wait.min(LONGEST_WAIT));
    let over = |look: &mut PlanLook| matches!(look.stage, PlanStage::Planning | PlanStage::Trying);
    let waited = job.changed.wait_timeout_while(locked(&job.look), wait, over);
    let look = waited.unwrap_or_else(PoisonError::into_inner).0.clone();
    Ok(PlanBegun { job: job.id, look })
}

fn found(which: WhichJob) -> Result<Arc<Job>> {
    locked(&JOBS)
        .iter()
        .find(|job| job.id == which.job)
        .cloned()
        .ok_or_else(|| Error::not_possible("gone", "This plan is no longer there. Plan again."))
}

/// How far a plan is.
///
/// # Errors
/// `NotPossible` when it is no longer there.
pub fn look(_: &Reading<'_>, which: WhichJob) -> Result<PlanLook> {
    Ok(locked(&found(which)?.look).clone())
}

/// Stops a plan; what was found so far stays.
///
/// # Errors
/// `NotPossible` when it is no longer there.
pub fn stop(_: &Reading<'_>, which: WhichJob) -> Result<PlanLook> {
    let job = found(which)?;
    job.stopped.store(true, Ordering::Relaxed);
    let over = |look: &mut PlanLook| matches!(look.stage, PlanStage::Planning | PlanStage::Trying);
    let short = Duration::from_millis(500);
    let waited = job.changed.wait_timeout_while(locked(&job.look), short, over);
    Ok(waited.unwrap_or_else(PoisonError::into_inner).0.clone())
}

impl Job {
    fn say(&self, change: impl FnOnce(&mut PlanLook)) {
        change(&mut locked(&self.look));
        self.changed.notify_all();
    }

    fn goes_on(&self) -> bool {
        !self.stopped.load(Ordering::Relaxed)
    }

    fn end(&self) {
        let stage = if self.goes_on() { PlanStage::Done } else { PlanStage::Stopped };
        self.say(|look| look.stage = stage);
    }

    fn work(&self, of: &Gathered) {
        let board = of.board(&of.ask.changes);
        let found = match plan(&board.ask, &|| self.goes_on()) {
            Ok(found) => found,
            Err(Refusal::TooLarge(words) | Refusal::Fault(words)) => {
                self.say(|look| {
                    look.stage = PlanStage::Failed;
                    look.trouble = words;
                });
                return;
            }
        };
        let said = proposal(of, &board, &found);
        self.say(|look| look.proposal = Some(said));
        if found.unplaced.is_empty() {
            return self.end();
        }
        self.try_changes(of, &found, &changes::worth_trying(of, &board, &found));
        self.end();
    }

    fn try_changes(&self, of: &Gathered, found: &Plan, changes: &[super::WhatIf]) {
        let many = u32::try_from(changes.len()).unwrap_or(0);
        self.say(|look| {
            look.stage = PlanStage::Trying;
            look.of = many;
        });
        for change in changes {
            if !self.goes_on() {
                return;
            }
            let began = std::time::Instant::now();
            let go_on = || self.goes_on() && began.elapsed() < A_TRY;
            let frees = changes::tried(of, change, found.lessons.len(), &go_on);
            self.say(|look| {
                look.tried += 1;
                look.would_free.extend(frees);
            });
        }
    }
}
