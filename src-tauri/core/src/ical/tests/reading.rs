//! Reading.

use super::{calendar, zone};
use crate::ical::{Read, busy};

/// What a calendar with these lines says of March 2026 on a clock in Berlin.
fn march(lines: &[&str]) -> Read {
    read(&calendar(lines), "2026-03-01", "2026-03-31", "Europe/Berlin")
}

fn read(text: &str, first: &str, last: &str, home: &str) -> Read {
    let day = |text: &str| text.parse().expect("a day");
    busy(text.as_bytes(), day(first), day(last), &zone(home)).expect("a whole calendar")
}

/// `03 17:00-18:00` in UTC, or the days of an event of whole days.
fn told(read: &Read) -> Vec<String> {
    let one = |busy: &crate::ical::Busy| match busy.all_day {
        Some((first, last)) => format!("{first}..{last}"),
        None => format!("{}-{}", busy.starts.format("%d %H:%M"), busy.ends.format("%H:%M")),
    };
    read.busy.iter().map(one).collect()
}

/// One event of these lines, everything read.
fn event(lines: &[&str]) -> Vec<String> {
    let read = march(&[&["BEGIN:VEVENT", "UID:a@example.org"], lines, &["END:VEVENT"]].concat());
    assert_eq!(read.skipped, Vec::<String>::new());
    told(&read)
}

#[test]
fn each_way_to_write_a_time_is_read() {
    for (lines, expect) in [
        (vec!["DTSTART:20260303T170000Z", "DTEND:20260303T180000Z"], "03 17:00-18:00"),
        (vec!["DTSTART:20260303T170000Z", "DURATION:PT1H30M"], "03 17:00-18:30"),
        // Without a zone: on the clock at home.
        (vec!["DTSTART:20260303T170000", "DURATION:PT1H"], "03 16:00-17:00"),
        (vec!["DTSTART;TZID=America/New_York:20260303T170000", "DURATION:PT1H"], "03 22:00-23:00"),
        (
            vec!["DTSTART;TZID=\"america/new_york\":20260303T170000", "DURATION:PT1H"],
            "03 22:00-23:00",
        ),
        // Unicode CLDR, windowsZones: "Eastern Standard Time" is America/New_York.
        (
            vec!["DTSTART;TZID=Eastern Standard Time:20260303T170000", "DURATION:PT1H"],
            "03 22:00-23:00",
        ),
        (
            vec!["DTSTART;TZID=/example.org/2026/Asia/Tokyo:20260303T170000", "DURATION:PT1H"],
            "03 08:00-09:00",
        ),
        (
            vec!["DTSTART;TZID=Asia/Tokyo:20260303T170000", "DTEND:20260303T093000Z"],
            "03 08:00-09:30",
        ),
        (
            vec!["DTSTART;VALUE=DATE:20260303", "DTEND;VALUE=DATE:20260306"],
            "2026-03-03..2026-03-05",
        ),
        (vec!["DTSTART;VALUE=DATE:20260303"], "2026-03-03..2026-03-03"),
        (
            vec!["DTSTART;VALUE=DATE:20260303", "DTEND;VALUE=DATE:20260303"],
            "2026-03-03..2026-03-03",
        ),
        (vec!["DTSTART;VALUE=DATE:20260303", "DURATION:P1W"], "2026-03-03..2026-03-09"),
        (
            vec!["DTSTART;VALUE=DATE:20260227", "DTEND;VALUE=DATE:20260302"],
            "2026-02-27..2026-03-01",
        ),
        (vec!["dtstart:20260303T170000Z", "Duration:pt1h"], "03 17:00-18:00"),
    ] {
        assert_eq!(event(&lines), [expect], "{lines:?}");
    }
}

#[test]
fn a_byte_order_mark_bare_line_feeds_and_a_fold_inside_a_character_are_read() {
    let text = calendar(&["BEGIN:VEVENT", "SUMMARY:Zoë", "DTSTART:20260303", "END:VEVENT"]);
    let day = |text: &str| text.parse().expect("a day");
    let at = text.find('ë').expect("the letter") + 1;
    let (before, after) = text.as_bytes().split_at(at);
    let folded = [b"\xEF\xBB\xBF", before, b"\r\n ", after, b"\n\n"].concat();
    let plain: Vec<u8> = folded.iter().copied().filter(|b| *b != b'\r').collect();
    for bytes in [folded, plain] {
        let read = busy(&bytes, day("2026-03-01"), day("2026-03-31"), &zone("UTC")).expect("whole");
        assert_eq!(read.busy[0].summary, "Zoë");
    }
}

/// RFC 5545 §3.3.11.
#[test]
fn text_is_read_as_it_is_meant() {
    let summary = r"SUMMARY:Serve\, volley\; \\ and\nmore\N: ";
    let lines = ["BEGIN:VEVENT", summary, "DTSTART:20260303", "END:VEVENT"];
    assert_eq!(march(&lines).busy[0].summary, "Serve, volley; \\ and\nmore\n:");
}

/// RFC 5545 §3.8.2.7, §3.8.1.11; RFC 5546 §3.2.5; an event without length: RFC 5545 §3.6.1.
#[test]
fn what_takes_nobodys_time_is_left_out() {
    let at = ["DTSTART:20260303T170000Z", "DURATION:PT1H"];
    let with = |line| event(&[at[0], at[1], line]);
    assert_eq!(with("TRANSP:OPAQUE").len(), 1);
    assert_eq!(with("STATUS:TENTATIVE").len(), 1, "what may be is kept free");
    assert_eq!(with("TRANSP:TRANSPARENT"), [""; 0]);
    assert_eq!(with("STATUS:cancelled"), [""; 0]);
    assert_eq!(event(&[at[0]]), [""; 0]);
    let called_off = march(&["METHOD:CANCEL", "BEGIN:VEVENT", at[0], at[1], "END:VEVENT"]);
    assert_eq!((called_off.events, called_off.busy.len()), (1, 0));
}

/// Skipped times are read with the offset before, of two the first is meant (RFC 5545 §3.3.5).
/// Instants: Python zoneinfo, tzdata 2026.6, fold=0.
#[test]
fn skipped_and_repeated_times_are_read_as_the_standard_says() {
    for (zone, local, utc) in [
        ("America/New_York", "20260308T023000", "2026-03-08T07:30:00Z"),
        ("America/New_York", "20261101T013000", "2026-11-01T05:30:00Z"),
        ("America/New_York", "20270314T023000", "2027-03-14T07:30:00Z"),
        ("America/New_York", "20271107T013000", "2027-11-07T05:30:00Z"),
        ("America/Phoenix", "20260308T023000", "2026-03-08T09:30:00Z"),
        ("America/Phoenix", "20261101T013000", "2026-11-01T08:30:00Z"),
        ("Europe/Berlin", "20260329T023000", "2026-03-29T01:30:00Z"),
        ("Europe/Berlin", "20261025T023000", "2026-10-25T00:30:00Z"),
        ("Europe/Berlin", "20270328T023000", "2027-03-28T01:30:00Z"),
        ("Europe/Berlin", "20271031T023000", "2027-10-31T00:30:00Z"),
        ("Australia/Lord_Howe", "20260405T014500", "2026-04-04T14:45:00Z"),
        ("Australia/Lord_Howe", "20261004T021500", "2026-10-03T15:45:00Z"),
        ("Australia/Lord_Howe", "20261004T023000", "2026-10-03T15:30:00Z"),
        ("Australia/Lord_Howe", "20270404T014500", "2027-04-03T14:45:00Z"),
        ("Australia/Lord_Howe", "20271003T021500", "2027-10-02T15:45:00Z"),
        ("America/Vancouver", "20261103T090000", "2026-11-03T16:00:00Z"),
    ] {
        let start = format!("DTSTART;TZID={zone}:{local}");
        let text = calendar(&["BEGIN:VEVENT", &start, "DURATION:PT1H", "END:VEVENT"]);
        let found = read(&text, "2026-01-01", "2027-12-31", "UTC");
        assert_eq!(
            found.busy[0].starts.to_rfc3339(),
            utc.replace('Z', "+00:00"),
            "{local} in {zone}"
        );
    }
}

/// RFC 5545 §3.8.5.3: daily at 02:30 in New York, whose clock skips that time on 14 March 2027 and
/// shows 01:30 twice on 7 November 2027 (Python zoneinfo, tzdata 2026.6).
#[test]
fn a_rule_keeps_the_time_on_the_wall_when_the_clock_is_changed() {
    let text = |start: &str| {
        let start = format!("DTSTART;TZID=America/New_York:{start}");
        let rule = "RRULE:FREQ=DAILY;COUNT=3";
        calendar(&["BEGIN:VEVENT", &start, "DURATION:PT1H", rule, "END:VEVENT"])
    };
    let spring = read(&text("20270313T023000"), "2027-03-01", "2027-03-31", "UTC");
    assert_eq!(told(&spring), ["13 07:30-08:30", "14 07:30-08:30", "15 06:30-07:30"]);
    let autumn = read(&text("20271106T013000"), "2027-11-01", "2027-11-30", "UTC");
    assert_eq!(told(&autumn), ["06 05:30-06:30", "07 05:30-06:30", "08 06:30-07:30"]);
}

/// RFC 5545 §3.8.5.3: from a DTEND each time lasts equally long, from a DURATION of a day until the
/// same time on the wall. Berlin skips an hour on 29 March 2026.
#[test]
fn a_day_may_be_an_hour_short() {
    let start = "DTSTART;TZID=Europe/Berlin:20260327T120000";
    let rule = "RRULE:FREQ=DAILY;COUNT=2";
    let end = "DTEND;TZID=Europe/Berlin:20260328T120000";
    assert_eq!(event(&[start, end, rule]), ["27 11:00-11:00", "28 11:00-11:00"]);
    assert_eq!(event(&[start, "DURATION:P1D", rule]), ["27 11:00-11:00", "28 11:00-10:00"]);
    assert_eq!(event(&[start, "DURATION:PT24H", rule]), ["27 11:00-11:00", "28 11:00-11:00"]);
}

/// RFC 5545 §3.3.10 (UNTIL is included, and in UTC), §3.8.5.1, §3.8.5.2.
#[test]
fn until_exdate_and_rdate_are_read_on_the_clock_of_the_event() {
    let start = "DTSTART;TZID=America/New_York:20260303T210000";
    let daily = |until: &str| format!("RRULE:FREQ=DAILY;UNTIL={until}");
    let len = |rule: &str, more: &str| event(&[start, "DURATION:PT1H", rule, more]).len();
    // 21:00 in New York on 5 March is 02:00 in UTC on 6 March.
    assert_eq!(len(&daily("20260306T020000Z"), "SEQUENCE:0"), 3);
    assert_eq!(len(&daily("20260306T015959Z"), "SEQUENCE:0"), 2);
    assert_eq!(len(&daily("20260305"), "SEQUENCE:0"), 3, "a day is meant to its end");
    let rule = "RRULE:FREQ=DAILY;COUNT=3";
    assert_eq!(len(rule, "EXDATE;TZID=America/New_York:20260304T210000"), 2);
    assert_eq!(len(rule, "EXDATE:20260305T020000Z"), 2, "the same, in UTC");
    assert_eq!(len(rule, "EXDATE;VALUE=DATE:20260304,20260305"), 1);
    assert_eq!(len(rule, "EXDATE;TZID=America/New_York:20260304T200000"), 3, "no such time");
    assert_eq!(len(rule, "RDATE:20260305T020000Z,20260320T010000Z"), 4, "one is there already");
    let period = "RDATE;VALUE=PERIOD:20260320T100000Z/PT2H";
    assert_eq!(event(&["DTSTART:20260303T170000Z", "DURATION:PT1H", period])[1], "20 10:00-12:00");
    let days = ["DTSTART;VALUE=DATE:20260303", "RRULE:FREQ=WEEKLY;UNTIL=20260317T000000Z"];
    assert_eq!(event(&days).len(), 3);
}

/// RFC 5545 §3.8.4.4; RFC 5546 §2.1.5 (the higher SEQUENCE, then the later DTSTAMP, is the newer).
#[test]
fn moved_cancelled_and_renewed_times_take_the_place_of_the_old() {
    let weekly = [
        "BEGIN:VEVENT",
        "UID:a@example.org",
        "DTSTART;TZID=Europe/Berlin:20260303T180000",
        "DURATION:PT1H",
        "RRULE:FREQ=WEEKLY;COUNT=4",
        "END:VEVENT",
    ];
    let change = |id: &'static str, lines: &[&'static str]| {
        [&["BEGIN:VEVENT", "UID:a@example.org", id], lines, &["END:VEVENT"]].concat()
    };
    let id = "RECURRENCE-ID;TZID=Europe/Berlin:20260310T180000";
    let moved = ["DTSTART:20260311T080000Z", "DURATION:PT2H"];
    let expect = ["03 17:00-18:00", "11 08:00-10:00", "17 17:00-18:00", "24 17:00-18:00"];
    let with = |change: Vec<&str>| told(&march(&[&weekly[..], &change].concat()));
    assert_eq!(with(change(id, &moved)), expect);
    assert_eq!(with(change("RECURRENCE-ID:20260310T170000Z", &moved)), expect);
    assert_eq!(with(change("RECURRENCE-ID;VALUE=DATE:20260310", &moved)), expect);
    let off = ["DTSTART:20260310T170000Z", "DURATION:PT1H", "STATUS:CANCELLED"];
    assert_eq!(with(change(id, &off)), [expect[0], expect[2], expect[3]]);
    let newer = ["DTSTART:20260312T080000Z", "DURATION:PT1H", "SEQUENCE:1"];
    let both = [change(id, &newer), change(id, &moved)].concat();
    assert_eq!(with(both)[1], "12 08:00-09:00", "the higher SEQUENCE counts, wherever it stands");
    assert_eq!(told(&march(&change(id, &moved))), ["11 08:00-10:00"], "also without the whole");
}

#[test]
fn a_zone_the_file_describes_is_used_and_an_unknown_one_is_told() {
    let described = [
        "BEGIN:VTIMEZONE",
        "TZID:Club time",
        "BEGIN:STANDARD",
        "DTSTART:16010101T030000",
        "RRULE:FREQ=YEARLY;BYMONTH=10;BYDAY=-1SU",
        "TZOFFSETFROM:-0300",
        "TZOFFSETTO:-0430",
        "END:STANDARD",
        "BEGIN:DAYLIGHT",
        "DTSTART:16010101T020000",
        "RRULE:FREQ=YEARLY;BYMONTH=3;BYDAY=2SU",
        "TZOFFSETFROM:-0430",
        "TZOFFSETTO:-0300",
        "END:DAYLIGHT",
        "END:VTIMEZONE",
    ];
    // Its clock goes forward from 02:00 to 03:30 on 8 March 2026: 02:30 is read as 07:00 in UTC.
    let event = [
        "BEGIN:VEVENT",
        "DTSTART;TZID=Club time:20260307T023000",
        "DURATION:PT1H",
        "RRULE:FREQ=DAILY;COUNT=3",
        "END:VEVENT",
    ];
    let read = march(&[&described[..], &event].concat());
    assert_eq!(told(&read), ["07 07:00-08:00", "08 07:00-08:00", "09 05:30-06:30"]);
    assert_eq!(read.skipped, Vec::<String>::new());
    let read = march(&event);
    assert_eq!(told(&read)[0], "07 01:30-02:30", "on the clock at home");
    assert_eq!(
        read.skipped,
        ["The time zone “Club time” is not known; its times are read on your own clock."]
    );
}

#[test]
fn a_rule_that_cannot_be_followed_is_told_and_its_first_time_kept() {
    let start = "DTSTART:20260303T170000Z";
    for rule in ["RRULE:FREQ=SECONDLY", "RRULE:FREQ=WEEKLY;BYDAY=XY"] {
        let lines = ["BEGIN:VEVENT", "SUMMARY:Yoga", start, "DURATION:PT1H", rule, "END:VEVENT"];
        let read = march(&lines);
        assert_eq!(told(&read), ["03 17:00-18:00"]);
        assert!(read.skipped[0].starts_with("“Yoga” (line 4) repeats"), "{:?}", read.skipped);
    }
}

#[test]
fn only_the_days_asked_for_are_read_with_what_reaches_into_them() {
    let text = calendar(&[
        "BEGIN:VEVENT",
        "DTSTART:20260228T220000Z",
        "DURATION:PT2H",
        "END:VEVENT",
        "BEGIN:VEVENT",
        "DTSTART:20260301T220000Z",
        "DURATION:PT2H",
        "RRULE:FREQ=DAILY",
        "END:VEVENT",
        "BEGIN:VEVENT",
        "DTSTART:20260101T000000Z",
        "DURATION:P70D",
        "END:VEVENT",
        "BEGIN:VFREEBUSY",
        "FREEBUSY:20260302T100000Z/PT1H,20260302T120000Z/20260302T123000Z",
        "FREEBUSY;FBTYPE=FREE:20260302T140000Z/PT1H",
        "END:VFREEBUSY",
    ]);
    // 2 March in Berlin is from 23:00 to 23:00 in UTC.
    let read = read(&text, "2026-03-02", "2026-03-02", "Europe/Berlin");
    let expect =
        ["01 00:00-00:00", "01 22:00-00:00", "02 10:00-11:00", "02 12:00-12:30", "02 22:00-00:00"];
    assert_eq!((told(&read), read.events), (expect.map(str::to_owned).to_vec(), 3));
}
