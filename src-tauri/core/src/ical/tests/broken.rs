//! Files that are no whole calendar.

use std::time::Instant;

use proptest::prelude::*;

use super::{calendar, zone};
use crate::ical::{Broken, LARGEST, Read, busy};

fn read(bytes: &[u8]) -> Result<Read, Broken> {
    let day = |text: &str| text.parse().expect("a day");
    busy(bytes, day("2026-03-01"), day("2026-03-31"), &zone("Europe/Berlin"))
}

const EVENT: [&str; 5] = [
    "BEGIN:VEVENT",
    "UID:a@example.org",
    "DTSTART:20260303T170000Z",
    "DURATION:PT1H",
    "END:VEVENT",
];

fn whole() -> String {
    calendar(&EVENT)
}

#[test]
fn a_file_that_does_not_hold_together_is_refused_with_its_line() {
    let text = whole();
    assert_eq!(read(text.as_bytes()).map(|read| read.busy.len()), Ok(1), "as it is, it is whole");
    for (broken, line, named) in [
        (String::new(), 1, "empty"),
        ("\u{feff}\r\n\r\n".to_owned(), 1, "empty"),
        ("%PDF-1.7\n1 0 obj".to_owned(), 1, "no calendar"),
        ("<html><body>Sign in</body></html>".to_owned(), 1, "no calendar"),
        ("BEGIN:VCARD\r\nEND:VCARD\r\n".to_owned(), 1, "no calendar"),
        (text.replace("END:VCALENDAR", ""), 8, "line 8: VCALENDAR from line 1 has no end"),
        (text.replace("END:VEVENT\r\n", ""), 8, "ends VCALENDAR, but what is open there is VEVENT"),
        (text.replace("DURATION:PT1H", "\u{0}\u{1}\u{2}"), 7, "Line 7"),
        (text.replace("UID:", "UID"), 5, "UIDa@example.org"),
        (format!("{text}and so on\r\n"), 10, "After the end"),
        (text.replace("VERSION:2.0", "VERSION:1.0"), 1, "1.0"),
        ("BEGIN:VCALENDAR\n".repeat(100_000), 9, "too many parts"),
    ] {
        let got = read(broken.as_bytes()).expect_err("it is broken");
        assert_eq!(got.line, line, "{got}");
        assert!(got.words.contains(named), "“{got}” says {named}");
        assert!(got.words.ends_with('.') && !got.words.contains('\n'), "“{got}” is one sentence");
    }
}

#[test]
fn a_file_of_a_hundred_megabytes_is_refused_by_its_size() {
    let huge = vec![b'x'; 100 * 1_024 * 1_024];
    let began = Instant::now();
    let got = read(&huge).expect_err("too large");
    assert!(began.elapsed().as_millis() < 50, "it is not looked into: {:?}", began.elapsed());
    assert_eq!((got.line, got.words.contains("100 MB")), (0, true), "{got}");
}

#[test]
fn the_largest_file_that_is_read_is_read_in_seconds() {
    let event = EVENT.join("\r\n") + "\r\nRRULE:FREQ=SECONDLY\r\n";
    let mut text = String::from("BEGIN:VCALENDAR\r\n");
    let mut n = 0;
    while text.len() + 200 < LARGEST {
        n += 1;
        let rule = "RRULE:FREQ=SECONDLY\r\nEND:VEVENT\r\n";
        text.push_str(
            &event
                .replace("a@", &format!("{n}@"))
                .replace("END:VEVENT\r\nRRULE:FREQ=SECONDLY\r\n", rule),
        );
    }
    text.push_str("END:VCALENDAR\r\n");
    let began = Instant::now();
    let got = read(text.as_bytes()).expect("it is whole");
    assert!(began.elapsed().as_secs() < 20, "{n} events took {:?}", began.elapsed());
    assert_eq!((got.events, got.busy.len()), (n, n), "of each, its first time");
    assert_eq!(got.skipped.len(), 51, "the notes are cut short, and say so");
    assert_eq!(got.skipped[50], format!("And {} more such notes.", n - 50));
}

#[test]
fn lists_without_end_and_zones_without_number_end_in_seconds() {
    let began = Instant::now();
    let many = |one: &dyn Fn(usize) -> String, n: usize| (0..n).map(one).collect::<String>();
    let second = |n: usize| format!("{:02}{:02}{:02}", n / 3_600 % 24, n / 60 % 60, n % 60);
    let start = "DTSTART:20260303T170000Z\r\nDURATION:PT1H\r\n";
    let tail = "END:VEVENT\r\nEND:VCALENDAR\r\n";
    let lists = format!(
        "BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\n{start}RRULE:FREQ=MINUTELY;INTERVAL=30;BYDAY=MO{}\r\n\
         EXDATE:20260302T000000Z{}\r\nRDATE:20260302T000000Z{}\r\n{tail}",
        ",TU".repeat(500_000),
        many(&|n| format!(",20260304T{}Z", second(n)), 300_000),
        many(&|n| format!(",20260305T{}Z", second(n)), 300_000),
    );
    let read_lists = read(lists.as_bytes()).expect("whole");
    assert!(read_lists.busy.len() > 80_000, "the seconds of 5 March are all there");
    let zones = format!(
        "BEGIN:VCALENDAR\r\n{}{}END:VCALENDAR\r\n",
        many(&|n| format!("BEGIN:VTIMEZONE\r\nTZID:z{n}\r\nEND:VTIMEZONE\r\n"), 100_000),
        many(
            &|n| format!(
                "BEGIN:VEVENT\r\nDTSTART;TZID=z{n}:20260303T170000\r\n\
                 DURATION:PT1H\r\nEND:VEVENT\r\n"
            ),
            100_000
        ),
    );
    assert_eq!(read(zones.as_bytes()).map(|read| read.busy.len()), Ok(100_000));
    let slashes = format!("DTSTART;TZID={}:20260303T170000", "/x".repeat(1_000_000));
    let text = calendar(&["BEGIN:VEVENT", &slashes, "DURATION:PT1H", "END:VEVENT"]);
    assert_eq!(read(text.as_bytes()).map(|read| read.busy.len()), Ok(1));
    assert!(began.elapsed().as_secs() < 20, "all of it took {:?}", began.elapsed());
}

#[test]
fn an_event_that_cannot_be_read_is_told_and_the_others_are_read() {
    let bad =
        |line: &str, with: &str| EVENT.map(|one| if one == line { with } else { one }.to_owned());
    for (line, with, named) in [
        ("DTSTART:20260303T170000Z", "DTSTART:20261303T170000Z", "no date"),
        (
            "DTSTART:20260303T170000Z",
            "SUMMARY:Yoga",
            "“Yoga” (line 9) is left out: it has no start",
        ),
        ("DURATION:PT1H", "DURATION:1H", "no length"),
        ("DURATION:PT1H", "DTEND:20260303T160000Z", "ends before it starts"),
    ] {
        let lines: Vec<String> =
            EVENT.map(str::to_owned).into_iter().chain(bad(line, with)).collect();
        let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
        let got = read(calendar(&lines).as_bytes()).expect("whole");
        assert_eq!((got.events, got.busy.len(), got.skipped.len()), (2, 1, 1), "{with}");
        assert!(got.skipped[0].contains(named), "“{}” says {named}", got.skipped[0]);
    }
}

proptest! {
    #[test]
    fn no_part_of_a_calendar_passes_for_a_whole_one(cut in 0usize..1_000) {
        let text = whole();
        let end = text.trim_end().len();
        let cut = cut % end;
        prop_assert!(read(&text.as_bytes()[..cut]).is_err(), "cut after {} of {}", cut, end);
    }

    #[test]
    fn no_bytes_at_all_bring_the_reader_down(
        bytes in proptest::collection::vec(any::<u8>(), 0..400),
        value in "[0-9TZPDHMSW:;,=+/ -]{0,30}",
        name in "(DTSTART|DTEND|DURATION|RRULE|RDATE|EXDATE|RECURRENCE-ID)",
    ) {
        let _ = read(&bytes);
        let line = format!("{name}:{value}");
        let lines = ["BEGIN:VEVENT", "DTSTART:20260303", &line, "END:VEVENT"];
        let got = read(calendar(&lines).as_bytes());
        prop_assert_eq!(got.map(|read| read.events), Ok(1));
    }

    #[test]
    fn one_changed_byte_is_a_refusal_or_an_answer(at in 0usize..1_000, to: u8) {
        let mut bytes = whole().into_bytes();
        let at = at % bytes.len();
        bytes[at] = to;
        if let Ok(got) = read(&bytes) {
            prop_assert!(got.events <= 1);
        }
    }
}
