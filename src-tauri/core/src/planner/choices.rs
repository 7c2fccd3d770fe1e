//! The choices of a day: who is taught how often, within what each person may have a day.

use std::collections::HashMap;

use super::ask::Ask;

/// More choices than this in a day are not begun.
const MOST_CHOICES: usize = 200_000;

/// The choices of a day: for each of its students, how many lessons.
pub(super) struct Choices {
    /// The students who can have a lesson that day.
    pub students: Vec<usize>,
    /// For each choice, the lessons of each of them; the first is nobody.
    pub counts: Vec<Vec<u8>>,
    /// For each choice and each of them, the choice with one lesson more.
    pub more: Vec<u32>,
}

/// No choice.
pub(super) const NONE: u32 = u32::MAX;

/// The people behind some entries.
pub(super) struct People {
    /// Who they are, by the place of their own entry.
    pub who: Vec<usize>,
    /// For each entry, its people by their number here.
    pub of: Vec<Vec<usize>>,
}

impl People {
    pub fn of(ask: &Ask, entries: impl Iterator<Item = usize>) -> People {
        let mut people = People { who: Vec::new(), of: Vec::new() };
        for entry in entries {
            let mut numbers = Vec::new();
            for person in ask.people(entry) {
                let known = people.who.iter().position(|who| *who == person);
                numbers.push(known.unwrap_or_else(|| {
                    people.who.push(person);
                    people.who.len() - 1
                }));
            }
            people.of.push(numbers);
        }
        people
    }

    /// How many lessons of a choice one of them has part in.
    pub fn lessons(&self, person: usize, counts: &[u8]) -> u32 {
        let theirs = self.of.iter().zip(counts).filter(|(of, _)| of.contains(&person));
        theirs.map(|(_, n)| u32::from(*n)).sum()
    }
}

impl Choices {
    /// All choices that fit into `most` slots and give nobody more lessons than their own number a
    /// day; `None` when there are too many of them.
    pub fn of(ask: &Ask, students: &[(usize, u32)], most: u32) -> Option<Choices> {
        let none = vec![0; students.len()];
        // Whose numbers an entry's lessons count for, where others' lessons do as well.
        let people = People::of(ask, students.iter().map(|(s, _)| *s));
        let mut number: HashMap<Vec<u8>, u32> = HashMap::from([(none.clone(), 0)]);
        let mut choices = Choices {
            counts: vec![none],
            more: Vec::new(),
            students: students.iter().map(|(s, _)| *s).collect(),
        };
        let mut at = 0;
        while at < choices.counts.len() {
            let counts = choices.counts[at].clone();
            let slots = |(n, s): (&u8, &usize)| u32::from(*n) * ask.length(*s);
            let taken: u32 = counts.iter().zip(&choices.students).map(slots).sum();
            for (n, (s, cap)) in students.iter().enumerate() {
                let room = u32::from(counts[n]) < *cap
                    && taken + ask.length(*s) <= most
                    && people.of[n].iter().all(|p| {
                        people.lessons(*p, &counts) < ask.students[people.who[*p]].per_day
                    });
                if !room {
                    choices.more.push(NONE);
                    continue;
                }
                let mut larger = counts.clone();
                larger[n] += 1;
                let next = u32::try_from(choices.counts.len()).ok()?;
                let known = *number.entry(larger).or_insert_with_key(|larger| {
                    choices.counts.push(larger.clone());
                    next
                });
                choices.more.push(known);
            }
            at += 1;
            if choices.counts.len() > MOST_CHOICES {
                return None;
            }
        }
        Some(choices)
    }
}
