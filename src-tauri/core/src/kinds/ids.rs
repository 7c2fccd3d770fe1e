//! Ids. Every row has a UUIDv7 (RFC 9562) kept as text, and every kind of thing has an id type of
//! its own, so that a lesson's id cannot be handed in where a visit's is wanted.

use std::sync::Mutex;
use std::sync::atomic::{AtomicU64, Ordering};

use uuid::{ContextV7, Timestamp, Uuid};

use super::Instant;

/// Where new ids come from; passed in, so that a test or the sample season can repeat them.
pub trait Ids: Send + Sync {
    /// The next id for something recorded at `now`.
    fn next(&self, now: Instant) -> Uuid;
}

/// Ids as the program makes them: time-ordered, with random bits.
pub struct RandomIds(Mutex<ContextV7>);

impl Default for RandomIds {
    fn default() -> Self {
        Self(Mutex::new(ContextV7::new()))
    }
}

impl Ids for RandomIds {
    fn next(&self, now: Instant) -> Uuid {
        let context = self.0.lock().unwrap_or_else(std::sync::PoisonError::into_inner);
        let (seconds, nanos) = now.unix();
        Uuid::new_v7(Timestamp::from_unix(&*context, seconds, nanos))
    }
}

/// Ids that are the same in every run with the same seed: for the sample season and for tests.
pub struct CountedIds {
    seed: u64,
    count: AtomicU64,
}

impl CountedIds {
    /// A fresh row of ids for this seed.
    pub fn new(seed: u64) -> Self {
        Self { seed, count: AtomicU64::new(0) }
    }
}

impl Ids for CountedIds {
    fn next(&self, now: Instant) -> Uuid {
        let n = self.count.fetch_add(1, Ordering::Relaxed);
        let (seconds, nanos) = now.unix();
        let millis = seconds * 1000 + u64::from(nanos) / 1_000_000;
        let mut random = [0_u8; 10];
        // The count stands first, so that ids of one millisecond still sort in the order made.
        random[0..2].copy_from_slice(&((n >> 16) as u16).to_be_bytes());
        random[2..4].copy_from_slice(&(n as u16).to_be_bytes());
        random[2] &= 0x3f;
        random[4..].copy_from_slice(&mix(self.seed ^ n).to_be_bytes()[..6]);
        uuid::Builder::from_unix_timestamp_millis(millis, &random).into_uuid()
    }
}

/// One step of SplitMix64 (Steele, Lea and Flood 2014): spreads a counter over all bits.
fn mix(seed: u64) -> u64 {
    let mut z = seed.wrapping_add(0x9e37_79b9_7f4a_7c15);
    z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    z ^ (z >> 31)
}

/// Declares an id type: text in the coach file and in JSON, its own type in the code.
macro_rules! id_types {
    ($($(#[$doc:meta])* $name:ident),+ $(,)?) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, serde::Serialize, serde::Deserialize)]
        #[serde(transparent)]
        pub struct $name(pub Uuid);

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                self.0.hyphenated().fmt(f)
            }
        }

        impl schemars::JsonSchema for $name {
            fn schema_name() -> std::borrow::Cow<'static, str> {
                stringify!($name).into()
            }
            fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
                schemars::json_schema!({ "type": "string", "format": "uuid" })
            }
        }

        impl rusqlite::ToSql for $name {
            fn to_sql(&self) -> rusqlite::Result<rusqlite::types::ToSqlOutput<'_>> {
                Ok(self.to_string().into())
            }
        }

        impl rusqlite::types::FromSql for $name {
            fn column_result(value: rusqlite::types::ValueRef<'_>) -> rusqlite::types::FromSqlResult<Self> {
                Uuid::parse_str(value.as_str()?)
                    .map($name)
                    .map_err(rusqlite::types::FromSqlError::other)
            }
        }

        impl From<Uuid> for $name {
            fn from(id: Uuid) -> Self {
                Self(id)
            }
        }
    )+};
}

id_types! {
    /// One act in the journal.
    ActId,
    /// Something that takes the coach's time besides lessons.
    BusyId,
    /// A calendar of the coach's.
    CalendarId,
    /// Lessons of a wish that others share.
    SharedLessonsId,
    /// One who shares lessons of a wish.
    SharerId,
    /// A court that was asked for.
    BookingId,
    /// A price of the coach's.
    PriceId,
    /// What tax the coach says counts for a kind of line.
    TaxRuleId,
    /// Whoever pays.
    PayerId,
    /// Prepaid lessons.
    PackageId,
    /// A new last day of a package.
    ExtensionId,
    /// An invoice or credit note.
    InvoiceId,
    /// A line of an invoice.
    InvoiceLineId,
    /// What is taken off an invoice, or put on it.
    InvoiceExtraId,
    /// A part in which an invoice is to be paid.
    InvoicePartId,
    /// A reminder of an invoice.
    ReminderId,
    /// A message in the out-tray.
    MessageId,
    /// A file that a message carries.
    MessagePartId,
    /// Something that became of a message.
    MessageStepId,
    /// An entry in the ledger.
    EntryId,
    /// A part of an entry.
    PostingId,
    /// Lessons that an entry adds to a package, or takes from it.
    UnitMoveId,
    /// What was offered to a student.
    OfferId,
    /// What is kept for the accounts of someone who was erased.
    KeptId,
    /// A plan being made; only as long as the program runs.
    JobId,
    /// A calendar invitation.
    InvitationId,
    /// A student.
    StudentId,
    /// A facility: a place with courts.
    FacilityId,
    /// A court in a facility.
    CourtId,
    /// A visit: a run of days with one student in one town.
    VisitId,
    /// A lesson.
    LessonId,
    /// A focus goal.
    GoalId,
    /// A block of tries.
    BlockId,
    /// A decision about a goal.
    DecisionId,
    /// A quick note made on court.
    JottingId,
    /// A skill the coach added to a sport.
    SkillId,
    /// A progress letter.
    LetterId,
    /// A strength or a fault of a student, however often it was seen.
    ObservationId,
    /// An assessment: levels at a date.
    AssessmentId,
    /// A published test taken at a date.
    TestId,
    /// A drill the coach added to a sport.
    DrillId,
    /// A template of a lesson plan.
    TemplateId,
    /// A home plan.
    HomePlanId,
    /// A line of a home plan.
    HomeLineId,
    /// A short dated fact about a student: equipment, level, history.
    FactId,
    /// A set of answers to the readiness questions.
    ReadinessId,
    /// An injury or restriction.
    InjuryId,
    /// A clearance by a professional.
    ClearanceId,
    /// A signed paper as a picture or a PDF.
    ScanId,
    /// A notice about injury, liability and health data.
    NoticeId,
    /// A version of a notice.
    VersionId,
    /// An acknowledgement of a notice.
    AcknowledgementId,
    /// An answer about a consent.
    ConsentId,
    /// A facility's form that was signed.
    FormId,
    /// A paper of the coach's own.
    CertificateId,
    /// A page that a student fills in at home.
    PageId,
    /// An incident report.
    IncidentId,
    /// Something the coach spent.
    CostId,
    /// A rate by which costs are counted.
    RateId,
    /// A part of a cost that was passed on.
    CostPassedId,
    /// A row of a kind that nothing else points at: words of a goal, one try.
    RowId,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn counted_ids_repeat_sort_and_are_version_7() {
        let now = Instant::from_unix_millis(1_770_000_000_000);
        let make = || {
            let ids = CountedIds::new(7);
            (0..100).map(|_| ids.next(now)).collect::<Vec<_>>()
        };
        let (a, b) = (make(), make());
        assert_eq!(a, b, "the same seed gives the same ids");
        assert!(a.is_sorted(), "ids of one moment sort in the order they were made");
        assert!(a.iter().all(|id| id.get_version_num() == 7));
    }

    #[test]
    fn random_ids_of_one_moment_sort_in_the_order_made() {
        let ids = RandomIds::default();
        let now = Instant::from_unix_millis(1_770_000_000_000);
        let made: Vec<_> = (0..1000).map(|_| ids.next(now)).collect();
        assert!(made.is_sorted());
    }
}
