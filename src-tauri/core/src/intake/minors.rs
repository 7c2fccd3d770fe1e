//! Minors: how old someone is on the day of a lesson, and the rules that the coach has written down.
//! The age of majority, and what else holds, is local law's and the facility's to say.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::past_day;
use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::kinds::Day;
use crate::settings::{keep, kept};

const KEPT_AS: &str = "minors";

/// The coach's rules for minors, as the sport's body, the federation or local law has them; the form
/// and the record are the same.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct MinorRules {
    /// From this age on one decides alone. 18 in most places; local law says.
    pub majority: i64,
    /// Whether a lesson of a minor must be on a court that can be seen from outside.
    pub observable: bool,
    /// Whether another adult must be there.
    pub adult_present: bool,
    /// After so many months a guardian's consent to lessons is asked for again; 0: never.
    pub consent_months: i64,
    /// Whether a second adult stands on every message to a minor.
    pub second_adult: bool,
    /// Where these rules are from.
    pub source: String,
    /// The day the coach read them, as YYYY-MM-DD.
    pub seen: String,
}

impl Default for MinorRules {
    /// Recommended to all coaches by the U.S. Center for SafeSport's Minor Athlete Abuse Prevention
    /// Policies: lessons observable and interruptible, written consent at least yearly, another adult
    /// on messages.
    fn default() -> Self {
        Self {
            majority: 18,
            observable: true,
            adult_present: false,
            consent_months: 12,
            second_adult: true,
            source: String::new(),
            seen: String::new(),
        }
    }
}

/// Shows the rules.
///
/// # Errors
/// `Storage`.
pub fn rules(db: &Reading<'_>) -> Result<MinorRules> {
    kept(db, KEPT_AS).map(Option::unwrap_or_default)
}

/// Writes the rules down.
///
/// # Errors
/// `Refused` with every field that is wrong.
pub fn set_rules(db: &Writing<'_>, rules: MinorRules) -> Result<MinorRules> {
    let mut p = Problems::new();
    let read = MinorRules {
        majority: p.within_bounds("majority", rules.majority, 14, 25, "The age of majority"),
        consent_months: p.within_bounds(
            "consent_months",
            rules.consent_months,
            0,
            60,
            "The number of months",
        ),
        source: p.note("source", &rules.source, "Where the rules are from"),
        seen: past_day(&mut p, "seen", &rules.seen, "The day you read them", db.today())
            .map(|day| day.to_string())
            .unwrap_or_default(),
        ..rules
    };
    p.done()?;
    keep(db, KEPT_AS, &read)?;
    db.label("Rules for minors written down");
    Ok(read)
}

/// Whole years from a birth date to a day; `None` before birth. Who was born on 29 February is a
/// year older on 1 March in other years: the later of the two days that laws choose, so that nobody
/// counts as of age too early.
pub fn age_on(born: Day, day: Day) -> Option<i64> {
    day.date().years_since(born.date()).map(i64::from)
}

/// Whether someone is a minor on a day; `None` while the birth date is not known.
pub fn is_minor(rules: &MinorRules, born: Option<Day>, day: Day) -> Option<bool> {
    born.map(|born| age_on(born, day).unwrap_or(0) < rules.majority)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The turns of the calendar; Python's `datetime` and `dateutil` are asked the same in
    /// `tests/outside`.
    #[test]
    fn a_birthday_is_the_day_itself_and_29_february_waits_for_march() {
        let day = |text| Day::parse(text).unwrap();
        for (born, on, years) in [
            ("2010-06-15", "2028-06-14", Some(17)),
            ("2010-06-15", "2028-06-15", Some(18)),
            ("2008-02-29", "2026-02-28", Some(17)),
            ("2008-02-29", "2026-03-01", Some(18)),
            ("2008-02-29", "2028-02-29", Some(20)),
            ("2026-03-02", "2026-03-01", None),
            ("2026-03-02", "2026-03-02", Some(0)),
        ] {
            assert_eq!(age_on(day(born), day(on)), years, "born {born}, on {on}");
        }
        let rules = MinorRules::default();
        assert_eq!(is_minor(&rules, None, day("2026-03-01")), None);
        assert_eq!(is_minor(&rules, Some(day("2008-02-29")), day("2026-02-28")), Some(true));
    }
}
