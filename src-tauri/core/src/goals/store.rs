//! All SQL of goals. Of visits it reads only when they were and whether they are over, which is
//! what puts a goal's blocks in time.

use std::collections::{BTreeMap, BTreeSet};

use rusqlite::{Row, params};

use super::numbers::Count;
use super::standing::{Kept, KeptMove};
use super::state::{AtVisit, History, How, State};
use super::{
    Block, Choice, Condition, Counts, Criterion, CriterionKind, Decision, Goal, Kind, Miss, Source,
    Words,
};
use crate::app::{Reading, Writing};
use crate::db::limit;
use crate::error::Result;
use crate::kinds::Day;
use crate::kinds::ids::{BlockId, GoalId, LessonId, RowId, StudentId, VisitId};
use crate::kinds::text::folded;

crate::db::words! {
    Condition { Fed = "fed", Live = "live", SetGame = "set_game", Match = "match" }
    Counts { Cue = "cue", Result = "result", Choice = "choice" }
    CriterionKind { Of = "of", Rate = "rate", AtMost = "at_most" }
    State {
        Working = "working", Met = "met", Kept = "kept", Slipped = "slipped", Raised = "raised",
        Closed = "closed", SetAside = "set_aside",
    }
    Kind { Retest = "retest", Practice = "practice", EndTest = "end_test", LookBack = "look_back" }
    Source {
        CountedLive = "counted_live", TotalEntered = "total_entered", GameChances = "game_chances", Told = "told",
    }
    Choice { CarryOn = "carry_on", Raise = "raise", Close = "close", SetAside = "set_aside", TakeUp = "take_up" }
    How { Set = "set", Carried = "carried" }
}

pub(super) fn insert(db: &Writing<'_>, g: &Goal) -> Result<()> {
    db.execute(
        "INSERT INTO goal (id, student, title, skill, condition, counts, need, of, uncounted, rank, set_on, came_from,
                           criterion, least, apart)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        params![
            g.id,
            g.student,
            g.title,
            g.skill,
            g.condition,
            g.counts,
            g.criterion.need,
            g.criterion.of,
            g.uncounted,
            g.rank,
            g.set_on,
            g.came_from,
            kind_stored(g.criterion.kind),
            g.criterion.least,
            g.apart
        ],
    )?;
    for words in &g.words {
        insert_words(db, g.id, words)?;
    }
    Ok(())
}

/// `need of of` is stored as NULL: goals older than the other kinds have no word for it.
fn kind_stored(kind: CriterionKind) -> Option<CriterionKind> {
    (kind != CriterionKind::Of).then_some(kind)
}

pub(super) fn insert_words(db: &Writing<'_>, goal: GoalId, words: &Words) -> Result<()> {
    let id: RowId = db.id();
    db.execute(
        "INSERT INTO goal_words (id, goal, since, cue, aim) VALUES (?, ?, ?, ?, ?)",
        params![id, goal, words.since, words.cue, words.aim],
    )?;
    Ok(())
}

/// Words set and changed on one day are the words of that day: the later ones replace the earlier.
pub(super) fn replace_words_of_day(db: &Writing<'_>, goal: GoalId, words: &Words) -> Result<bool> {
    let changed = db.execute(
        "UPDATE goal_words SET cue = ?1, aim = ?2, landed = CASE WHEN cue = ?1 THEN landed END
         WHERE goal = ?3 AND since = ?4",
        params![words.cue, words.aim, goal, words.since],
    )?;
    Ok(changed > 0)
}

pub(super) fn set_rank(db: &Writing<'_>, goal: GoalId, rank: u32) -> Result<()> {
    db.execute("UPDATE goal SET rank = ? WHERE id = ? AND rank <> ?", params![rank, goal, rank])?;
    Ok(())
}

pub(super) fn next_rank(db: &Reading<'_>, student: StudentId) -> Result<u32> {
    let rank = db.one(
        "SELECT coalesce(max(rank), 0) + 1 AS rank FROM goal WHERE student = ?",
        [student],
        |row| row.get("rank"),
    )?;
    Ok(rank.unwrap_or(1))
}

pub(super) fn find(db: &Reading<'_>, id: GoalId) -> Result<Goal> {
    let mut goal = db.found("goal", &id, "SELECT * FROM goal WHERE id = ?", [id], goal)?;
    goal.words = db.all(
        "SELECT since, cue, aim, landed FROM goal_words WHERE goal = ? ORDER BY since",
        [id],
        words,
    )?;
    Ok(goal)
}

pub(super) fn of_student(db: &Reading<'_>, student: StudentId) -> Result<Vec<Goal>> {
    let mut goals =
        db.all("SELECT * FROM goal WHERE student = ? ORDER BY rank, id", [student], goal)?;
    for goal in &mut goals {
        goal.words = db.all(
            "SELECT since, cue, aim, landed FROM goal_words WHERE goal = ? ORDER BY since",
            [goal.id],
            words,
        )?;
    }
    Ok(goals)
}

/// So many goals after one of a title and id, by title: each with its title.
pub(super) fn titles_after(
    db: &Reading<'_>,
    after: &(String, String),
    most: usize,
) -> Result<Vec<(String, String)>> {
    db.all(
        "SELECT title, id FROM goal WHERE (title, id) > (?, ?) ORDER BY title, id LIMIT ?",
        params![after.0, after.1, limit(most)],
        |row| Ok((row.get("title")?, row.get("id")?)),
    )
}

/// A goal of a current student with its title and whose it is; `None` for one put away.
pub(super) fn titled(db: &Reading<'_>, goal: &str) -> Result<Option<(GoalId, String, String)>> {
    db.one(
        "SELECT g.id, g.title, s.name FROM goal g JOIN student s ON s.id = g.student
         WHERE g.id = ? AND s.archived IS NULL",
        [goal],
        |row| Ok((row.get("id")?, row.get("title")?, row.get("name")?)),
    )
}

fn goal(row: &Row<'_>) -> rusqlite::Result<Goal> {
    Ok(Goal {
        id: row.get("id")?,
        student: row.get("student")?,
        title: row.get("title")?,
        skill: row.get("skill")?,
        condition: row.get("condition")?,
        counts: row.get("counts")?,
        apart: row.get("apart")?,
        criterion: Criterion {
            kind: row.get::<_, Option<CriterionKind>>("criterion")?.unwrap_or_default(),
            need: row.get("need")?,
            of: row.get("of")?,
            least: row.get("least")?,
        },
        uncounted: row.get("uncounted")?,
        rank: row.get("rank")?,
        set_on: row.get("set_on")?,
        came_from: row.get("came_from")?,
        words: Vec::new(),
    })
}

fn words(row: &Row<'_>) -> rusqlite::Result<Words> {
    Ok(Words {
        since: row.get("since")?,
        cue: row.get("cue")?,
        aim: row.get("aim")?,
        landed: row.get("landed")?,
    })
}

pub(super) fn put_at_visit(db: &Writing<'_>, goal: GoalId, visit: VisitId, how: How) -> Result<()> {
    db.execute(
        "INSERT INTO goal_visit (id, goal, visit, how) VALUES (?, ?, ?, ?) ON CONFLICT (goal, visit) DO NOTHING",
        params![format!("{goal}:{visit}"), goal, visit, how],
    )?;
    Ok(())
}

pub(super) fn how_at(db: &Reading<'_>, goal: GoalId, visit: VisitId) -> Result<Option<How>> {
    db.one("SELECT how FROM goal_visit WHERE goal = ? AND visit = ?", params![goal, visit], |row| {
        row.get("how")
    })
}

pub(super) fn history(db: &Reading<'_>, goal: &Goal) -> Result<History> {
    let mut blocks: BTreeMap<VisitId, Vec<Block>> = BTreeMap::new();
    for block in blocks_of_goal(db, goal.id)? {
        blocks.entry(block.visit).or_default().push(block);
    }
    let visits = db.all(
        "SELECT gv.visit, gv.how, v.first_day, v.closed IS NOT NULL AS closed
         FROM goal_visit gv JOIN visit v ON v.id = gv.visit
         WHERE gv.goal = ? ORDER BY v.first_day, v.id",
        [goal.id],
        |row| {
            let visit: VisitId = row.get("visit")?;
            Ok(AtVisit {
                visit,
                day: row.get("first_day")?,
                how: row.get("how")?,
                closed: row.get("closed")?,
                blocks: blocks.remove(&visit).unwrap_or_default(),
            })
        },
    )?;
    let decisions = db.all(
        "SELECT id, visit, day, kind, reason, raised_to FROM decision WHERE goal = ? ORDER BY day, id",
        [goal.id],
        |row| {
            Ok(Decision {
                id: row.get("id")?,
                visit: row.get("visit")?,
                day: row.get("day")?,
                kind: row.get("kind")?,
                reason: row.get("reason")?,
                raised_to: row.get("raised_to")?,
            })
        },
    )?;
    Ok(History { criterion: goal.criterion, condition: goal.condition, visits, decisions })
}

pub(super) fn insert_decision(db: &Writing<'_>, goal: GoalId, d: &Decision) -> Result<()> {
    db.execute(
        "INSERT INTO decision (id, goal, visit, day, kind, reason, raised_to) VALUES (?, ?, ?, ?, ?, ?, ?)",
        params![d.id, goal, d.visit, d.day, d.kind, d.reason, d.raised_to],
    )?;
    Ok(())
}

const BLOCK: &str =
    "SELECT id, goal, visit, lesson, place, kind, condition, source, day, uncounted, made, tries,
    also, in_game, ended IS NOT NULL AS ended FROM block";

fn blocks_of_goal(db: &Reading<'_>, goal: GoalId) -> Result<Vec<Block>> {
    let mut blocks =
        db.all(&format!("{BLOCK} WHERE goal = ? ORDER BY visit, place"), [goal], block)?;
    for block in blocks.iter_mut().filter(|b| b.source == Source::CountedLive) {
        count_live(db, block)?;
    }
    let misses = db.all(
        "SELECT m.block, m.reason, m.times FROM block_miss m JOIN block b ON b.id = m.block
         WHERE b.goal = ? ORDER BY m.times DESC, m.reason",
        [goal],
        |row| Ok((row.get::<_, BlockId>("block")?, miss(row)?)),
    )?;
    for (id, miss) in misses {
        if let Some(block) = blocks.iter_mut().find(|b| b.id == id) {
            block.misses.push(miss);
        }
    }
    Ok(blocks)
}

fn miss(row: &Row<'_>) -> rusqlite::Result<Miss> {
    Ok(Miss { reason: row.get("reason")?, times: row.get("times")? })
}

/// What the misses of a block were put down to, in place of what was said before.
pub(super) fn replace_misses(db: &Writing<'_>, block: BlockId, misses: &[Miss]) -> Result<()> {
    db.execute("DELETE FROM block_miss WHERE block = ?", [block])?;
    for miss in misses {
        db.execute(
            "INSERT INTO block_miss (id, block, reason, times) VALUES (?, ?, ?, ?)",
            params![format!("{block}:{}", folded(&miss.reason)), block, miss.reason, miss.times],
        )?;
    }
    Ok(())
}

pub(super) fn misses_of(db: &Reading<'_>, block: BlockId) -> Result<Vec<Miss>> {
    db.all(
        "SELECT reason, times FROM block_miss WHERE block = ? ORDER BY times DESC, reason",
        [block],
        miss,
    )
}

/// The reasons given for misses of a student, the most frequent first.
pub(super) fn reasons(db: &Reading<'_>, student: StudentId) -> Result<Vec<String>> {
    db.all(
        "SELECT m.reason FROM block_miss m JOIN block b ON b.id = m.block JOIN goal g ON g.id = b.goal
         WHERE g.student = ? GROUP BY m.reason ORDER BY sum(m.times) DESC, m.reason LIMIT 12",
        [student],
        |row| row.get("reason"),
    )
}

/// Marks the words in force as having landed on a day; false where there are none.
pub(super) fn set_landed(
    db: &Writing<'_>,
    goal: GoalId,
    since: Day,
    landed: Option<Day>,
) -> Result<()> {
    db.execute(
        "UPDATE goal_words SET landed = ? WHERE goal = ? AND since = ?",
        params![landed, goal, since],
    )?;
    Ok(())
}

pub(super) fn find_block(db: &Reading<'_>, id: BlockId) -> Result<Block> {
    let mut block = db.found("block", &id, &format!("{BLOCK} WHERE id = ?"), [id], block)?;
    if block.source == Source::CountedLive {
        count_live(db, &mut block)?;
    }
    Ok(block)
}

pub(super) fn blocks_at(db: &Reading<'_>, goal: GoalId, visit: VisitId) -> Result<Vec<Block>> {
    let mut blocks = db.all(
        &format!("{BLOCK} WHERE goal = ? AND visit = ? ORDER BY place"),
        params![goal, visit],
        block,
    )?;
    for block in blocks.iter_mut().filter(|b| b.source == Source::CountedLive) {
        count_live(db, block)?;
    }
    Ok(blocks)
}

fn block(row: &Row<'_>) -> rusqlite::Result<Block> {
    let (made, tries): (Option<u32>, Option<u32>) = (row.get("made")?, row.get("tries")?);
    Ok(Block {
        id: row.get("id")?,
        goal: row.get("goal")?,
        visit: row.get("visit")?,
        lesson: row.get("lesson")?,
        place: row.get("place")?,
        kind: row.get("kind")?,
        condition: row.get("condition")?,
        source: row.get("source")?,
        day: row.get("day")?,
        uncounted: row.get("uncounted")?,
        tries: Vec::new(),
        count: Count { made: made.unwrap_or(0), tries: tries.unwrap_or(0) },
        also: row.get("also")?,
        in_game: row.get("in_game")?,
        misses: Vec::new(),
        ended: row.get("ended")?,
    })
}

/// Fills in the tries of a block counted live, and their count after the uncounted first ones.
fn count_live(db: &Reading<'_>, block: &mut Block) -> Result<()> {
    let tries: Vec<(bool, Option<bool>)> = db.all(
        "SELECT made, also FROM block_try WHERE block = ? AND taken_back = 0 ORDER BY place",
        [block.id],
        |row| Ok((row.get("made")?, row.get("also")?)),
    )?;
    let counted = || tries.iter().skip(block.uncounted as usize);
    block.count = counted().fold(Count { made: 0, tries: 0 }, |count, (made, _)| Count {
        made: count.made + u32::from(*made),
        tries: count.tries + 1,
    });
    // The second fact is a count of the same tries only where it is known of each of them.
    block.also = counted().map(|(_, also)| also.map(u32::from)).sum();
    block.also = block.also.filter(|_| block.count.tries > 0);
    block.tries = tries.into_iter().map(|(made, _)| made).collect();
    Ok(())
}

pub(super) fn insert_block(db: &Writing<'_>, b: &Block) -> Result<()> {
    let total = (b.source != Source::CountedLive && b.in_game.is_none()).then_some(b.count);
    db.execute(
        "INSERT INTO block (id, goal, visit, lesson, place, kind, condition, source, day, uncounted, made, tries, ended,
                            also, in_game)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        params![
            b.id,
            b.goal,
            b.visit,
            b.lesson,
            b.place,
            b.kind,
            b.condition,
            b.source,
            b.day,
            b.uncounted,
            total.map(|c| c.made),
            total.map(|c| c.tries),
            b.ended.then(|| db.now()),
            b.also,
            b.in_game,
        ],
    )?;
    Ok(())
}

pub(super) fn end_block(db: &Writing<'_>, id: BlockId) -> Result<()> {
    db.execute("UPDATE block SET ended = ? WHERE id = ? AND ended IS NULL", params![db.now(), id])?;
    Ok(())
}

pub(super) fn end_blocks_of(db: &Writing<'_>, visit: VisitId) -> Result<()> {
    db.execute(
        "UPDATE block SET ended = ? WHERE visit = ? AND ended IS NULL",
        params![db.now(), visit],
    )?;
    Ok(())
}

pub(super) fn end_blocks_in(db: &Writing<'_>, lesson: LessonId) -> Result<()> {
    db.execute(
        "UPDATE block SET ended = ? WHERE lesson = ? AND ended IS NULL
           AND EXISTS (SELECT 1 FROM block_try t WHERE t.block = block.id AND t.taken_back = 0)",
        params![db.now(), lesson],
    )?;
    Ok(())
}

/// Whose block it is, and the day it is played.
pub(super) fn whose_block(db: &Reading<'_>, block: BlockId) -> Result<(StudentId, Day)> {
    db.found(
        "block",
        &block,
        "SELECT g.student, b.day FROM block b JOIN goal g ON g.id = b.goal WHERE b.id = ?",
        [block],
        |row| Ok((row.get("student")?, row.get("day")?)),
    )
}

/// What a touch needs to know of its block: whether it is still open, and the next place.
pub(super) fn for_touch(db: &Reading<'_>, id: BlockId) -> Result<(bool, u32)> {
    db.found(
        "block",
        &id,
        "SELECT ended IS NULL AND source = 'counted_live' AS open,
                (SELECT coalesce(max(place), 0) + 1 FROM block_try WHERE block = ?1) AS next
         FROM block WHERE id = ?1",
        [id],
        |row| Ok((row.get("open")?, row.get("next")?)),
    )
}

pub(super) fn insert_try(
    db: &Writing<'_>,
    block: BlockId,
    place: u32,
    made: bool,
    also: Option<bool>,
) -> Result<()> {
    let id: RowId = db.id();
    db.execute(
        "INSERT INTO block_try (id, block, place, made, also) VALUES (?, ?, ?, ?, ?)",
        params![id, block, place, made, also],
    )?;
    Ok(())
}

/// Takes the last try back; false when there is none.
pub(super) fn take_back_last(db: &Writing<'_>, block: BlockId) -> Result<bool> {
    let changed = db.execute(
        "UPDATE block_try SET taken_back = 1 WHERE block = ?1 AND taken_back = 0
           AND place = (SELECT max(place) FROM block_try WHERE block = ?1 AND taken_back = 0)",
        [block],
    )?;
    Ok(changed > 0)
}

/// Goals at a visit, in order of priority.
pub(super) fn at_visit(db: &Reading<'_>, visit: VisitId) -> Result<Vec<(GoalId, How)>> {
    db.all(
        "SELECT gv.goal, gv.how FROM goal_visit gv JOIN goal g ON g.id = gv.goal
         WHERE gv.visit = ? ORDER BY g.rank, g.id",
        [visit],
        |row| Ok((row.get("goal")?, row.get("how")?)),
    )
}

/// When a visit is: its student, first day, and whether blocks can be recorded at it.
pub(super) fn visit(db: &Reading<'_>, id: VisitId) -> Result<VisitSeen> {
    db.found(
        "visit",
        &id,
        "SELECT student, first_day, last_day, opened, closed, note FROM visit WHERE id = ?",
        [id],
        |row| {
            Ok(VisitSeen {
                student: row.get("student")?,
                first_day: row.get("first_day")?,
                last_day: row.get("last_day")?,
                opened: row.get::<_, Option<Day>>("opened")?.is_some(),
                closed: row.get::<_, Option<Day>>("closed")?.is_some(),
            })
        },
    )
}

/// What goals see of a visit.
pub(super) struct VisitSeen {
    pub student: StudentId,
    pub first_day: Option<Day>,
    pub last_day: Option<Day>,
    pub opened: bool,
    pub closed: bool,
}

/// The student's opened visits in time, for the columns of the chart.
pub(super) fn opened_visits(
    db: &Reading<'_>,
    student: StudentId,
) -> Result<Vec<super::chart::Column>> {
    db.all(
        "SELECT id, first_day, last_day, note, closed IS NULL AS here FROM visit
         WHERE student = ? AND opened IS NOT NULL ORDER BY first_day, id",
        [student],
        |row| {
            let (first, last): (Day, Day) = (row.get("first_day")?, row.get("last_day")?);
            Ok(super::chart::Column {
                visit: row.get("id")?,
                head: first.month_words(),
                note: row.get("note")?,
                first_day: first,
                last_day: last,
                open: row.get("here")?,
            })
        },
    )
}

pub(super) fn insert_jotting(
    db: &Writing<'_>,
    at: (StudentId, VisitId, Option<LessonId>, Option<GoalId>),
    day: Day,
    words: &str,
) -> Result<()> {
    let id: crate::kinds::ids::JottingId = db.id();
    db.execute(
        "INSERT INTO jotting (id, student, visit, lesson, goal, day, words) VALUES (?, ?, ?, ?, ?, ?, ?)",
        params![id, at.0, at.1, at.2, at.3, day, words],
    )?;
    Ok(())
}

pub(super) fn jottings(db: &Reading<'_>, visit: VisitId) -> Result<Vec<super::court::Jotting>> {
    db.all(
        "SELECT id, goal, day, words FROM jotting WHERE visit = ? ORDER BY day, id",
        [visit],
        |row| {
            Ok(super::court::Jotting {
                id: row.get("id")?,
                goal: row.get("goal")?,
                day: row.get("day")?,
                words: row.get("words")?,
            })
        },
    )
}

pub(super) fn was_at_a_visit(db: &Reading<'_>, goal: GoalId) -> Result<bool> {
    Ok(db.one("SELECT 1 FROM goal_visit WHERE goal = ? LIMIT 1", [goal], |_| Ok(()))?.is_some())
}

/// Every goal.
pub(super) fn every(db: &Reading<'_>) -> Result<Vec<GoalId>> {
    db.all("SELECT id FROM goal ORDER BY id", [], |row| row.get("id"))
}

/// Goals that have a block still open.
pub(super) fn with_open_blocks(db: &Reading<'_>) -> Result<Vec<GoalId>> {
    db.all("SELECT DISTINCT goal FROM block WHERE ended IS NULL", [], |row| row.get("goal"))
}

/// Goals whose evidence changed since they were kept, or that were derived by other rules.
pub(super) fn behind(db: &Reading<'_>, rules: i64) -> Result<BTreeSet<GoalId>> {
    let goals = db.all(
        "SELECT goal FROM standing_due
         UNION SELECT goal FROM standing WHERE rules < ?1
         UNION SELECT goal FROM standing WHERE rules > ?1",
        [rules],
        |row| row.get("goal"),
    )?;
    Ok(goals.into_iter().collect())
}

/// Some of the goals whose evidence changed.
pub(super) fn marked(db: &Reading<'_>, most: usize) -> Result<Vec<GoalId>> {
    db.all("SELECT goal FROM standing_due LIMIT ?", [limit(most)], |row| row.get("goal"))
}

/// Keeps where a goal stands, in place of what was kept of it; of one that is gone, nothing.
pub(super) fn keep_standing(
    db: &Writing<'_>,
    goal: GoalId,
    kept: Option<&Kept>,
    rules: i64,
) -> Result<()> {
    db.execute("DELETE FROM standing WHERE goal = ?", [goal])?;
    db.execute("DELETE FROM standing_move WHERE goal = ?", [goal])?;
    if let Some(kept) = kept {
        db.execute(
            "INSERT INTO standing (goal, state, why, visit, since, rules) VALUES (?, ?, ?, ?, ?, ?)",
            params![goal, kept.state, kept.why, kept.visit, kept.since, rules],
        )?;
        for (place, one) in (1..).zip(&kept.moves) {
            let place: i64 = place;
            db.execute(
                "INSERT INTO standing_move (goal, place, day, state, visit, why) VALUES (?, ?, ?, ?, ?, ?)",
                params![goal, place, one.day, one.to, one.visit, one.why],
            )?;
        }
    }
    db.execute("DELETE FROM standing_due WHERE goal = ?", [goal])?;
    Ok(())
}

/// What is kept of a goal.
pub(super) fn kept(db: &Reading<'_>, goal: GoalId) -> Result<Option<Kept>> {
    let moves = db.all(
        "SELECT day, state, visit, why FROM standing_move WHERE goal = ? ORDER BY place",
        [goal],
        |row| {
            Ok(KeptMove {
                day: row.get("day")?,
                to: row.get("state")?,
                visit: row.get("visit")?,
                why: row.get("why")?,
            })
        },
    )?;
    db.one("SELECT state, why, visit, since FROM standing WHERE goal = ?", [goal], |row| {
        Ok(Kept {
            state: row.get("state")?,
            why: row.get("why")?,
            visit: row.get("visit")?,
            since: row.get("since")?,
            moves,
        })
    })
}
