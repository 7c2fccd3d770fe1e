//! How long a trip keeps the coach away from home.

use super::TripAway;
use crate::error::Problems;
use crate::kinds::Span;
use crate::kinds::text::counted;

/// The minutes of a day.
const DAY: i64 = 1440;

/// Away from leaving to coming home, where both are said, on one clock; else whole days.
pub(super) fn away(p: &mut Problems, days: Span, leaves: &str, returns: &str) -> TripAway {
    let [leaves, returns] = [("leaves", leaves), ("returns", returns)].map(|(field, typed)| {
        let typed = typed.trim();
        (!typed.is_empty()).then(|| i64::from(p.time(field, typed, "The time").minutes()))
    });
    match (leaves, returns) {
        (Some(leaves), Some(returns)) => {
            let minutes = (days.days() - 1) * DAY + returns - leaves;
            if minutes <= 0 && !p.any() {
                p.add("returns", "before", "You would be home before you leave.");
            }
            TripAway { minutes, said: true, words: "From leaving to coming home.".to_owned() }
        }
        (None, None) => whole(days),
        (leaves, _) => {
            let field = if leaves.is_none() { "leaves" } else { "returns" };
            p.add(field, "empty", "Say when you leave and when you are home again, or neither.");
            whole(days)
        }
    }
}

/// Away for whole days.
pub(super) fn whole(days: Span) -> TripAway {
    let many = days.days();
    TripAway {
        minutes: many * DAY,
        said: false,
        words: format!(
            "Counted as {} of 24 hours: it is not said when you leave and are home again.",
            counted(many, "whole day", "whole days")
        ),
    }
}
