//! The price list, with its history: what lessons, packages, analyses and travel cost, from which day,
//! at which place; and what tax counts for which kind of line. A price that is not in the list, and a
//! tax that was not set, are asked for: neither is guessed.

mod add;
mod find;
mod store;
mod tax;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use add::{
    AddPrice, LessonRates, PriceForm, WhichPrice, add, end, lesson_rates, list, set_lesson_rates,
};
pub use find::{lesson_price, of_lesson};
pub(crate) use tax::read as read_tax;
pub use tax::{SetTax, TaxRule, WhichTax, drop_tax, set_tax, tax_of, taxes};

use crate::kinds::Day;
use crate::kinds::ids::{FacilityId, PriceId};

/// What a price is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum PricedAs {
    /// A lesson of a length.
    Lesson,
    /// Prepaid lessons.
    Package,
    /// Looking through a game.
    Analysis,
    /// Coming to another town.
    Travel,
    /// Anything else.
    Other,
}

/// What a line of an invoice is for.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum What {
    /// A lesson.
    Lesson,
    /// A lesson that was called off late, or missed.
    Late,
    /// A court, at cost.
    Court,
    /// Prepaid lessons.
    Package,
    /// Looking through a game.
    Analysis,
    /// Coming to another town.
    Travel,
    /// Anything else.
    Other,
}

crate::db::words! {
    PricedAs {
        Lesson = "lesson", Package = "package", Analysis = "analysis", Travel = "travel", Other = "other",
    }
    What {
        Lesson = "lesson", Late = "late", Court = "court", Package = "package", Analysis = "analysis",
        Travel = "travel", Other = "other",
    }
}

impl What {
    /// In the order of a list.
    pub const ALL: [Self; 7] = [
        Self::Lesson,
        Self::Late,
        Self::Court,
        Self::Package,
        Self::Analysis,
        Self::Travel,
        Self::Other,
    ];

    /// As said in a document.
    pub fn words(self) -> &'static str {
        match self {
            Self::Lesson => "lessons",
            Self::Late => "called off late or missed",
            Self::Court => "courts",
            Self::Package => "packages",
            Self::Analysis => "game analyses",
            Self::Travel => "travel",
            Self::Other => "other",
        }
    }
}

/// A price as kept.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Price {
    /// Which one.
    pub id: PriceId,
    /// What it is for.
    pub what: PricedAs,
    /// Its name, or empty.
    pub words: String,
    /// Where it holds; `None` everywhere.
    pub facility: Option<FacilityId>,
    /// The place's name, or empty.
    pub place: String,
    /// The length of the lesson, or of each lesson; `None` any.
    pub minutes: Option<i64>,
    /// So many share the lesson.
    pub sharing: i64,
    /// Whether the amount is for each of them.
    pub each: bool,
    /// Lessons of a package.
    pub lessons: Option<i64>,
    /// So many months a package holds; `None` without end.
    pub months: Option<i64>,
    /// The currency.
    pub currency: String,
    /// The amount, a decimal.
    pub amount: String,
    /// The first day it holds.
    pub since: Day,
    /// The last day; `None` while not known.
    pub until: Option<Day>,
    /// All of it in words, as in "Lesson of 60 minutes, 2 sharing, each".
    pub says: String,
}

impl Price {
    /// Whether it holds on a day.
    pub fn holds(&self, day: Day) -> bool {
        self.since <= day && self.until.is_none_or(|until| day <= until)
    }

    fn says(&self) -> String {
        let mut words = match self.what {
            PricedAs::Lesson => "Lesson".to_owned(),
            PricedAs::Package => {
                let many = self.lessons.unwrap_or_default();
                format!("Package of {}", crate::kinds::text::counted(many, "lesson", "lessons"))
            }
            PricedAs::Analysis => "Game analysis".to_owned(),
            PricedAs::Travel => "Travel".to_owned(),
            PricedAs::Other => String::new(),
        };
        if let Some(minutes) = self.minutes {
            words.push_str(&format!(" of {minutes} minutes"));
        }
        if self.sharing > 1 {
            words.push_str(&format!(", {} sharing", self.sharing));
        }
        if self.each {
            words.push_str(", each");
        }
        if let Some(months) = self.months {
            let months = crate::kinds::text::counted(months, "month", "months");
            words.push_str(&format!(", good for {months}"));
        }
        match (words.is_empty(), self.words.is_empty()) {
            (_, true) => words,
            (true, false) => self.words.clone(),
            (false, false) => format!("{}: {words}", self.words),
        }
    }
}
