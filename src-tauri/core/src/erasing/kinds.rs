//! The kinds of things kept about a person, each with its noun and why it is kept.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::app::Reading;
use crate::app::erase::{Belonging, tables_of};
use crate::error::Result;
use crate::kinds::text::counted;

/// The table of people.
pub(super) const STUDENT: &str = "student";

/// A kind of things kept about a person.
pub(super) struct Kind {
    /// The tables it is in, the one whose rows are counted first.
    pub tables: &'static [&'static str],
    /// One of them; empty where there is only ever one.
    one: &'static str,
    /// Several of them.
    pub many: &'static str,
    /// Why it is kept.
    why: &'static str,
}

/// All kinds, in the order of the screen and of a person's copy. A test asks that every table that can
/// hold something of a person is in one of them.
pub(super) const KINDS: &[Kind] = &[
    Kind {
        tables: &[STUDENT, "student_contact", "student_fact", "student_payer", "payer"],
        one: "",
        many: "who they are",
        why: "To know who comes, how to reach them, and who answers and pays for them.",
    },
    Kind {
        tables: &["intake", "emergency_contact", "intake_page"],
        one: "",
        many: "what was asked before court",
        why: "Whom to call in an emergency, equipment and eyewear.",
    },
    Kind {
        tables: &["injury"],
        one: "injury or restriction",
        many: "injuries and restrictions",
        why: "To plan lessons with care, in their own words.",
    },
    Kind {
        tables: &["readiness"],
        one: "set of readiness answers",
        many: "sets of readiness answers",
        why: "To know when a physician is to be asked first.",
    },
    Kind {
        tables: &["clearance"],
        one: "clearance",
        many: "clearances",
        why: "What a professional wrote about a return to play or about exercise.",
    },
    Kind {
        tables: &["acknowledgement", "facility_form", "scan"],
        one: "acknowledgement of a notice",
        many: "acknowledgements of notices",
        why: "Who accepted which text, and which forms of a facility were signed.",
    },
    Kind {
        tables: &["consent"],
        one: "consent",
        many: "consents",
        why: "What was agreed to, by whom, and what was withdrawn.",
    },
    Kind {
        tables: &["incident", "incident_addition"],
        one: "incident report",
        many: "incident reports",
        why: "What happened. An insurer or the law may have it kept: ask before it goes.",
    },
    Kind {
        tables: &["went_on"],
        one: "reason to go on",
        many: "reasons to go on",
        why: "Why a lesson began although something was missing.",
    },
    Kind {
        tables: &["visit", "wish", "wish_shared", "wish_sharer"],
        one: "visit",
        many: "visits",
        why: "When they came or will come, and what they wished for.",
    },
    Kind {
        tables: &["lesson_student", "lesson", "plan_line"],
        one: "lesson",
        many: "lessons",
        why: "What was planned and given, and what is next. A lesson with others stays theirs.",
    },
    Kind {
        tables: &["goal", "goal_words", "goal_visit", "decision"],
        one: "focus goal",
        many: "focus goals",
        why: "What is worked on, in which words, and what was decided.",
    },
    Kind {
        tables: &["block", "block_try", "block_miss"],
        one: "block of tries",
        many: "blocks of tries",
        why: "What was counted: where each goal stands follows from it.",
    },
    Kind {
        tables: &["observation", "sighting"],
        one: "strength or fault seen",
        many: "strengths and faults seen",
        why: "What was seen, and how often.",
    },
    Kind {
        tables: &["jotting"],
        one: "quick note",
        many: "quick notes",
        why: "What was noted on court.",
    },
    Kind {
        tables: &["assessment", "assessment_level"],
        one: "assessment",
        many: "assessments",
        why: "Levels at a date, to compare with later.",
    },
    Kind {
        tables: &["test_taken"],
        one: "test taken",
        many: "tests taken",
        why: "Results of published tests, to compare with later.",
    },
    Kind {
        tables: &["home_plan", "home_line"],
        one: "home plan",
        many: "home plans",
        why: "What to do between visits, and what was told of it.",
    },
    Kind {
        tables: &["letter"],
        one: "letter",
        many: "letters",
        why: "What was written after a visit, as it was sent.",
    },
    Kind {
        tables: &["offer"],
        one: "offer",
        many: "offers",
        why: "Which days, lessons and prices were offered, and the answer.",
    },
    Kind {
        tables: &["invitation"],
        one: "invitation",
        many: "invitations",
        why: "Which times their calendar was told.",
    },
    Kind {
        tables: &["message", "message_part", "message_step", "follow_up_left"],
        one: "message",
        many: "messages",
        why: "What was sent or told, to which address, and what came of it.",
    },
    Kind {
        tables: &["package_student"],
        one: "package",
        many: "packages",
        why: "Whose lessons a package pays for. What was sold stays in the accounts.",
    },
    Kind {
        tables: &["settled"],
        one: "lesson settled",
        many: "lessons settled",
        why: "How each lesson was paid. What was invoiced stays in the accounts.",
    },
];

/// One kind of things kept about a person.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct KindKept {
    /// How many there are.
    pub many: u32,
    /// "12 lessons".
    pub words: String,
    /// Why they are kept.
    pub why: String,
}

/// What is kept of each kind, those left out of which there is nothing. A table that is in no kind
/// yet is named all the same.
pub(super) fn kept(db: &Reading<'_>, belonging: &Belonging) -> Result<Vec<KindKept>> {
    let mut kept = Vec::new();
    for kind in KINDS {
        let Some(head) = kind.tables.first() else { continue };
        let many = belonging.of_table(head).count();
        if many > 0 {
            kept.push(KindKept {
                many: u32::try_from(many).unwrap_or(u32::MAX),
                words: kind.counted(many),
                why: kind.why.to_owned(),
            });
        }
    }
    for table in without_words(db)? {
        let many = belonging.of_table(&table).count();
        if many > 0 {
            kept.push(KindKept {
                many: u32::try_from(many).unwrap_or(u32::MAX),
                words: format!("{}: {many}", plain(&table)),
                why: String::new(),
            });
        }
    }
    Ok(kept)
}

impl Kind {
    fn counted(&self, many: usize) -> String {
        if self.one.is_empty() {
            return self.many.to_owned();
        }
        counted(i64::try_from(many).unwrap_or(i64::MAX), self.one, self.many)
    }
}

/// Tables that can hold something of a person and are in no kind.
///
/// # Errors
/// `Storage`.
pub fn without_words(db: &Reading<'_>) -> Result<Vec<String>> {
    let named = |table: &String| KINDS.iter().any(|kind| kind.tables.contains(&table.as_str()));
    Ok(tables_of(db, STUDENT)?.into_iter().filter(|table| !named(table)).collect())
}

/// What one row of a table is called.
pub(super) fn noun(table: &str) -> String {
    let own = match table {
        "student" => "Profile",
        "student_contact" => "Guardian or payer",
        "student_fact" => "Background",
        "lesson" => "Lesson",
        "plan_line" => "Lesson plan",
        "lesson_student" => "Part in a lesson",
        "goal_words" => "Words of a goal",
        "observation" => "Strength or fault seen",
        "jotting" => "Quick note",
        "home_line" => "Line of a home plan",
        "own_busy" => "Your own time",
        "plan_template" => "Template of a lesson plan",
        "setting" => "Your settings",
        _ => return plain(table),
    };
    own.to_owned()
}

/// A name of the schema as words: "facility card".
pub(super) fn plain(name: &str) -> String {
    let words = name.replace('_', " ");
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
