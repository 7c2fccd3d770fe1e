//! Eyewear for racket sports: the standards by name and edition, and the sports in which it is asked
//! for before every lesson.
//!
//! ASTM F3164 covers racket sports; its 2024 edition (F3164-24) names racquetball, squash, tennis and
//! pickleball, the one of 2019 (F3164-19) the first three. ASTM F803 came before it, and rulebooks
//! still cite it. USA Racquetball's rule 2.5 has every player wear it. The policy statement of the
//! American Academy of Pediatrics and the American Academy of Ophthalmology (Protective Eyewear for
//! Young Athletes) says that fitted protectors cut significant eye injury by at least 90 %, that
//! glasses and contact lenses do not protect, and that whoever sees well with one eye only always
//! wears them.

use schemars::JsonSchema;
use serde::Serialize;

/// A standard that may be printed on eyewear.
#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
pub struct EyewearStandard {
    /// Its name, as printed.
    pub name: &'static str,
    /// Its edition.
    pub edition: &'static str,
    /// What it is for.
    pub about: &'static str,
}

/// The standards that can be chosen; any other can be typed.
pub const STANDARDS: [EyewearStandard; 2] = [
    EyewearStandard {
        name: "ASTM F3164",
        edition: "2024",
        about: "racket sports: racquetball, squash, tennis, pickleball",
    },
    EyewearStandard {
        name: "ASTM F803",
        edition: "before F3164",
        about: "the older standard, which rulebooks still cite",
    },
];

/// Whether eyewear is asked for before a lesson in a sport: on closed courts, where ball and racquet
/// come from every side. Elsewhere the notice advises it, and the facility's rules hold.
pub fn asked_for(sport: &str) -> bool {
    matches!(sport, "racquetball" | "squash")
}
