//! Rules that repeat.

use std::time::Instant;

use chrono::{NaiveDate, NaiveDateTime};

use crate::ical::recur::occurrences;

fn day(text: &str) -> NaiveDate {
    text.parse().expect("a day")
}

fn nine(text: &str) -> NaiveDateTime {
    day(text).and_hms_opt(9, 0, 0).expect("a time")
}

/// The days a rule gives from its start at nine o'clock for `years` years, as `MMDD` of each.
fn days(starts: &str, rule: &str, except: &[&str], years: i32) -> String {
    let except: Vec<NaiveDate> = except.iter().map(|text| day(text)).collect();
    let first = day(starts);
    let last = first + chrono::Months::new(years.unsigned_abs() * 12);
    let found = occurrences(rule, nine(starts), &except, first, last).expect("a rule");
    assert!(found.iter().all(|at| at.format("%H%M").to_string() == "0900"), "each at nine");
    found.iter().map(|at| at.format("%y%m%d").to_string()).collect::<Vec<_>>().join(" ")
}

/// RFC 5545 §3.8.5.3 and the last example of §3.3.10, the dates as printed there.
#[test]
fn the_examples_of_the_standard_come_out_as_printed() {
    for (starts, rule, except, expect) in [
        (
            "1997-09-02",
            "FREQ=DAILY;COUNT=10",
            vec![],
            "970902 970903 970904 970905 970906 970907 970908 970909 970910 970911",
        ),
        (
            "1997-09-02",
            "FREQ=WEEKLY;UNTIL=19971007T000000Z;WKST=SU;BYDAY=TU,TH",
            vec![],
            "970902 970904 970909 970911 970916 970918 970923 970925 970930 971002",
        ),
        (
            "1997-09-01",
            "FREQ=WEEKLY;INTERVAL=2;UNTIL=19971224T000000Z;WKST=SU;BYDAY=MO,WE,FR",
            vec![],
            "970901 970903 970905 970915 970917 970919 970929 971001 971003 971013 971015 971017 \
             971027 971029 971031 971110 971112 971114 971124 971126 971128 971208 971210 971212 \
             971222",
        ),
        (
            "1997-09-05",
            "FREQ=MONTHLY;COUNT=10;BYDAY=1FR",
            vec![],
            "970905 971003 971107 971205 980102 980206 980306 980403 980501 980605",
        ),
        (
            "1997-09-22",
            "FREQ=MONTHLY;COUNT=6;BYDAY=-2MO",
            vec![],
            "970922 971020 971117 971222 980119 980216",
        ),
        (
            "1997-08-05",
            "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO",
            vec![],
            "970805 970810 970819 970824",
        ),
        (
            "1997-08-05",
            "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU",
            vec![],
            "970805 970817 970819 970831",
        ),
        (
            "2007-01-15",
            "FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5",
            vec![],
            "070115 070130 070215 070315 070330",
        ),
        (
            "1997-09-29",
            "FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-2;COUNT=7",
            vec![],
            "970929 971030 971127 971230 980129 980226 980330",
        ),
        (
            "1997-09-02",
            "FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13;COUNT=6",
            vec!["1997-09-02"],
            "980213 980313 981113 990813 001013 010413",
        ),
        (
            "1996-11-05",
            "FREQ=YEARLY;INTERVAL=4;BYMONTH=11;BYDAY=TU;BYMONTHDAY=2,3,4,5,6,7,8",
            vec![],
            "961105 001107 041102",
        ),
        ("1997-05-12", "FREQ=YEARLY;BYWEEKNO=20;BYDAY=MO;COUNT=3", vec![], "970512 980511 990517"),
        ("1997-05-19", "FREQ=YEARLY;BYDAY=20MO;COUNT=3", vec![], "970519 980518 990517"),
        (
            "1997-01-01",
            "FREQ=YEARLY;INTERVAL=3;COUNT=10;BYYEARDAY=1,100,200",
            vec![],
            "970101 970410 970719 000101 000409 000718 030101 030410 030719 060101",
        ),
    ] {
        assert_eq!(days(starts, rule, &except, 9), expect, "{rule}");
    }
}

/// RFC 5545 §3.3.10: a day that a month lacks is left out, not moved; §3.8.5.3: the start counts.
#[test]
fn a_month_without_the_day_is_passed_over_and_the_start_always_counts() {
    assert_eq!(days("2026-01-31", "FREQ=MONTHLY;COUNT=4", &[], 1), "260131 260331 260531 260731");
    assert_eq!(days("2024-02-29", "FREQ=YEARLY;COUNT=3", &[], 9), "240229 280229 320229");
    assert_eq!(days("2026-03-03", "FREQ=WEEKLY;BYDAY=TH;COUNT=2", &[], 1), "260303 260305 260312");
}

/// ISO 8601: 2020 has a week 53, 2021 none, so 2 January 2022 is in week 52.
#[test]
fn the_last_week_belongs_to_the_year_that_has_it() {
    let found = days("2020-01-05", "FREQ=YEARLY;BYWEEKNO=53;BYDAY=SU", &["2020-01-05"], 7);
    assert_eq!(found, "210103 270103");
}

#[test]
fn hours_and_minutes_keep_step_with_the_start() {
    let told = |rule: &str, from: &str, to: &str| -> Vec<String> {
        let found = occurrences(rule, nine("1997-09-02"), &[], day(from), day(to)).expect("a rule");
        found.iter().map(|at| at.format("%d %H:%M").to_string()).collect()
    };
    // RFC 5545 §3.8.5.3, two of its examples.
    assert_eq!(
        told("FREQ=MINUTELY;INTERVAL=90;COUNT=4", "1997-09-02", "1997-09-02"),
        ["02 09:00", "02 10:30", "02 12:00", "02 13:30"]
    );
    assert_eq!(
        told("FREQ=HOURLY;INTERVAL=3;UNTIL=19970902T170000", "1997-09-01", "1997-09-09"),
        ["02 09:00", "02 12:00", "02 15:00"]
    );
    // Every 7th minute, but only on Mondays at nine: 10,080 minutes a week are 1,440 sevens, so the
    // minutes are the same each week. Six days from the start to 8 September are 8,640 minutes,
    // 2 short of a multiple of seven (by arithmetic).
    assert_eq!(
        told("FREQ=MINUTELY;INTERVAL=7;BYDAY=MO;BYHOUR=9", "1997-09-08", "1997-09-15")[..3],
        ["08 09:05", "08 09:12", "08 09:19"]
    );
}

#[test]
fn a_rule_entered_late_gives_what_it_gives_when_followed_from_its_start() {
    for rule in [
        "FREQ=DAILY;INTERVAL=13",
        "FREQ=WEEKLY;INTERVAL=3;BYDAY=SU,MO;WKST=SU",
        "FREQ=WEEKLY;INTERVAL=3;BYDAY=SU,MO;WKST=MO",
        "FREQ=MONTHLY;INTERVAL=5;BYDAY=-1WE",
        "FREQ=YEARLY;INTERVAL=3;BYMONTH=3,11;BYMONTHDAY=-1",
        "FREQ=HOURLY;INTERVAL=350",
    ] {
        let last = day("2026-12-31");
        let ask = |first: &str| occurrences(rule, nine("2001-04-25"), &[], day(first), last);
        let mut all = ask("2001-04-25").expect("a rule");
        all.retain(|at| at.date() >= day("2025-01-01"));
        assert!(!all.is_empty());
        assert_eq!(ask("2025-01-01").expect("a rule"), all, "{rule}");
    }
}

#[test]
fn old_and_endless_rules_are_quick_and_hopeless_ones_end() {
    let began = Instant::now();
    let ask = |rule: &str| {
        occurrences(rule, nine("1970-01-01"), &[], day("2026-03-01"), day("2026-03-31"))
    };
    assert_eq!(ask("FREQ=DAILY").map(|found| found.len()), Ok(31));
    assert_eq!(ask("FREQ=DAILY;COUNT=30000").map(|found| found.len()), Ok(31));
    assert_eq!(ask("FREQ=HOURLY;BYHOUR=9").map(|found| found.len()), Ok(31));
    assert_eq!(ask("FREQ=SECONDLY;BYHOUR=9;BYMINUTE=0;BYSECOND=0").map(|f| f.len()), Ok(31));
    assert_eq!(ask("FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30"), Ok(vec![]), "there is no such day");
    assert_eq!(ask("FREQ=DAILY;COUNT=3"), Ok(vec![]), "it ended in 1970");
    let every = (0..60).map(|n| n.to_string()).collect::<Vec<_>>().join(",");
    for rule in [
        "FREQ=SECONDLY".to_owned(),
        "FREQ=SECONDLY;COUNT=4000000000".to_owned(),
        format!("FREQ=YEARLY;BYMONTHDAY=1,2,3,4;BYHOUR=1,2,3,4;BYMINUTE={every};BYSECOND={every}"),
    ] {
        let words = ask(&rule).expect_err("too many");
        assert!(words.contains("times") || words.contains("too often"), "{words}");
    }
    assert!(began.elapsed().as_secs() < 5, "all of it took {:?}", began.elapsed());
}

#[test]
fn the_edge_of_the_calendar_ends_a_rule_without_a_crash() {
    let far = NaiveDate::MAX;
    for rule in ["FREQ=YEARLY;INTERVAL=4000000000", "FREQ=MONTHLY;INTERVAL=4000000000"] {
        let found = occurrences(rule, nine("2026-01-01"), &[], day("2026-01-01"), far);
        assert_eq!(found, Ok(vec![nine("2026-01-01")]), "{rule}");
    }
    let before =
        occurrences("FREQ=DAILY", nine("2026-01-01"), &[], NaiveDate::MIN, day("2025-01-01"));
    assert_eq!(before, Ok(vec![]));
    let backwards =
        occurrences("FREQ=DAILY", nine("2026-01-01"), &[], day("2026-02-01"), day("2026-01-15"));
    assert_eq!(backwards, Ok(vec![]), "the last day lies before the first");
}

#[test]
fn a_rule_that_is_none_is_refused_in_one_sentence() {
    for (rule, named) in [
        ("", "FREQ"),
        ("INTERVAL=2", "FREQ"),
        ("FREQ=SOMETIMES", "FREQ=SOMETIMES"),
        ("FREQ=DAILY;INTERVAL=0", "INTERVAL=0"),
        ("FREQ=DAILY;COUNT=0", "COUNT=0"),
        ("FREQ=DAILY;BYHOUR=24", "BYHOUR=24"),
        ("FREQ=DAILY;UNTIL=2026", "UNTIL=2026"),
        ("FREQ=DAILY;FREQ=DAILY", "FREQ"),
        ("FREQ=YEARLY;BYDAY=99999MO", "BYDAY=99999MO"),
        ("FREQ=WEEKLY;BYDAY=1MO", "BYDAY"),
        ("FREQ=WEEKLY;BYMONTHDAY=1", "BYMONTHDAY"),
        ("FREQ=MONTHLY;BYWEEKNO=1", "BYWEEKNO"),
        ("FREQ=DAILY;BYYEARDAY=1", "BYYEARDAY"),
        ("FREQ=YEARLY;BYWEEKNO=1;BYDAY=1MO", "BYDAY"),
        ("RSCALE=HEBREW;FREQ=YEARLY", "RSCALE=HEBREW"),
        ("FREQ=DAILY;BYDAY=🎾", "BYDAY"),
    ] {
        let at = day("2026-01-01");
        let words = occurrences(rule, nine("2026-01-01"), &[], at, at).expect_err(rule);
        assert!(words.contains(named) && words.ends_with('.'), "“{words}” names {named}");
    }
}
