//! Everyone beyond the story: as many students and years as asked for, the same for the same seed.

use carryover_core::error::Result;
use serde_json::json;

use crate::Season;
use crate::maker::{Goal, Maker};

const FIRST: [&str; 16] = [
    "Alva", "Bruno", "Carla", "Dario", "Elin", "Finn", "Greta", "Hugo", "Iris", "Jonna", "Kasper",
    "Linnea", "Milo", "Noor", "Otto", "Petra",
];
const LAST: [&str; 16] = [
    "Abel", "Brandvik", "Castell", "Dorn", "Ekelund", "Fontaine", "Grau", "Holm", "Ibsen",
    "Jansen", "Kivi", "Lund", "Moreau", "Nygaard", "Orsini", "Pfeiffer",
];
const GOALS: [(&str, &str); 5] = [
    ("Drive serve to the backhand corner", "drive-serve"),
    ("Pass down the line", "down-the-line"),
    ("Cross-court pass", "cross-court-pass"),
    ("Ceiling ball from deep court", "ceiling-ball"),
    ("Kill shot, knee-high", "kill"),
];

/// Numbers that repeat with the seed: a linear congruential generator with the constants of Knuth's
/// MMIX. It chooses demo content, nothing more.
struct Dice(u64);

impl Dice {
    fn below(&mut self, n: u64) -> u64 {
        self.0 =
            self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % n.max(1)
    }
}

/// Adds the students beyond the story’s fifteen.
pub fn fill(m: &mut Maker, season: &Season) -> Result<()> {
    let mut dice = Dice(season.seed ^ 0x5eed);
    for n in 15..season.students {
        one(m, season, &mut dice, n as usize)?;
    }
    Ok(())
}

fn one(m: &mut Maker, season: &Season, dice: &mut Dice, n: usize) -> Result<()> {
    let name = match n / 256 {
        0 => format!("{} {}", FIRST[n % 16], LAST[n / 16 % 16]),
        more => format!("{} {} {}", FIRST[n % 16], LAST[n / 16 % 16], more + 1),
    };
    let back = 365 * i64::from(season.years);
    let mut day = m.today.plus(-back + dice.below(90) as i64);
    m.on(day);
    let student = m.student(
        json!({ "name": name, "hand": if dice.below(8) == 0 { "left" } else { "right" } }),
    )?;
    let mut goal: Option<String> = None;
    let mut skill = 2 + dice.below(4) as u32;
    while m.today.since(day) > 10 {
        let visit = m.visit(&student, day, 3, "")?;
        let made = |dice: &mut Dice, skill: u32| {
            (0..10).filter(|_| dice.below(10) < u64::from(skill)).count() as u32
        };
        let current = if let Some(goal) = &goal {
            let made = made(dice, skill.saturating_sub(1));
            m.total(goal, &visit, "retest", made, 10)?;
            goal.clone()
        } else {
            let (title, id) = GOALS[dice.below(5) as usize];
            let new = Goal {
                title,
                skill: id,
                condition: "live",
                counts: "result",
                need: 7,
                of: 10,
                cue: "Early racquet.",
                aim: "",
            };
            m.goal(&student, &visit, new)?
        };
        skill = (skill + dice.below(3) as u32).min(9);
        m.given(&[&visit.visit], day, "13:00", 2)?;
        let made = made(dice, skill);
        m.total(&current, &visit, "end_test", made, 10)?;
        m.end(&visit, 3, false)?;
        goal = Some(current).filter(|_| dice.below(6) > 0);
        day = day.plus(60 + dice.below(90) as i64);
    }
    Ok(())
}
