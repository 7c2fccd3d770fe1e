//! The small kinds everything else is made of: ids, civil dates and times, zones, money, text, clocks.

pub mod civil;
pub mod clock;
pub mod ids;
pub mod language;
pub mod money;
pub mod stretches;
pub mod text;
pub mod zones;

pub use civil::{Day, Span, Time};
pub use clock::{Clock, FixedClock, Instant, SystemClock};
pub use ids::{CountedIds, Ids, RandomIds};
pub use language::Language;
pub use money::{Currency, decimal};
