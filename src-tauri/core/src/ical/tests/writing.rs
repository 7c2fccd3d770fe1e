//! Writing.

use chrono::NaiveDateTime;
use proptest::prelude::*;

use super::zone;
use crate::ical::{Event, Method, Person, Unwritable, busy, write};

fn time(text: &str) -> NaiveDateTime {
    NaiveDateTime::parse_from_str(text, "%Y-%m-%dT%H:%M").expect("a time")
}

fn person(name: &str, email: &str) -> Person {
    Person { name: name.to_owned(), email: email.to_owned() }
}

/// A lesson in New York from 17:00 to 18:00 on 3 March 2026.
fn lesson() -> Event {
    Event {
        uid: "lesson-1@example.org".to_owned(),
        sequence: 0,
        stamp: "2026-02-01T08:00:00Z".parse().expect("an instant"),
        zone: zone("America/New_York"),
        starts: time("2026-03-03T17:00"),
        ends: time("2026-03-03T18:00"),
        second: false,
        summary: "Lesson".to_owned(),
        place: String::new(),
        words: String::new(),
        organizer: Some(person("Coach Pat", "pat@example.org")),
        attendees: vec![person("Ana", "ana@example.org")],
        cancelled: false,
    }
}

fn request(event: &Event) -> String {
    write(Some(Method::Request), std::slice::from_ref(event)).expect("an invitation")
}

/// The lines with their folds undone.
fn unfolded(text: &str) -> Vec<String> {
    text.replace("\r\n ", "").split_terminator("\r\n").map(str::to_owned).collect()
}

fn line<'a>(lines: &'a [String], name: &str) -> &'a str {
    let mut found = lines.iter().filter(|line| line.starts_with(name));
    let line = found.next().unwrap_or_else(|| panic!("there is a line {name}"));
    assert_eq!(found.next(), None, "there is one line {name}");
    line
}

/// RFC 5545 §3.6, §3.6.5; RFC 5546 §3.2.2. The changes of New York's clock: Python zoneinfo,
/// tzdata 2026.6.
#[test]
fn an_invitation_says_all_that_the_standard_asks_for() {
    let year = |dst: &str, at: &str, from: &str, to: &str, name: &str| {
        format!(
            "BEGIN:{dst}\r\nDTSTART:{at}\r\nRDATE:{at}\r\nTZOFFSETFROM:{from}\r\n\
             TZOFFSETTO:{to}\r\nTZNAME:{name}\r\nEND:{dst}\r\n"
        )
    };
    let winter = |at| year("STANDARD", at, "-0400", "-0500", "EST");
    let summer = |at| year("DAYLIGHT", at, "-0500", "-0400", "EDT");
    let changes = [
        winter("20241103T020000"),
        summer("20250309T020000"),
        winter("20251102T020000"),
        summer("20260308T020000"),
        winter("20261101T020000"),
        summer("20270314T020000"),
        winter("20271107T020000"),
    ];
    let expect = format!(
        "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Carryover//Carryover//EN\r\nMETHOD:REQUEST\r\n\
         BEGIN:VTIMEZONE\r\nTZID:America/New_York\r\n{}END:VTIMEZONE\r\n\
         BEGIN:VEVENT\r\nUID:lesson-1@example.org\r\nSEQUENCE:0\r\nDTSTAMP:20260201T080000Z\r\n\
         DTSTART;TZID=America/New_York:20260303T170000\r\n\
         DTEND;TZID=America/New_York:20260303T180000\r\nSUMMARY:Lesson\r\nSTATUS:CONFIRMED\r\n\
         ORGANIZER;CN=Coach Pat:mailto:pat@example.org\r\n\
         ATTENDEE;ROLE=REQ-PARTICIPANT;PARTSTAT=NEEDS-ACTION;RSVP=TRUE;CN=Ana:mailto\r\n \
         :ana@example.org\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n",
        changes.concat()
    );
    assert_eq!(request(&lesson()), expect);
}

/// RFC 5546 §3.2.5, §2.1.4.
#[test]
fn calling_off_keeps_the_uid_and_says_cancelled() {
    let event = Event { sequence: 3, ..lesson() };
    let lines = unfolded(&write(Some(Method::Cancel), &[event]).expect("a calling-off"));
    assert_eq!(line(&lines, "METHOD"), "METHOD:CANCEL");
    assert_eq!(line(&lines, "STATUS"), "STATUS:CANCELLED");
    assert_eq!(line(&lines, "SEQUENCE"), "SEQUENCE:3");
    assert_eq!(line(&lines, "UID"), "UID:lesson-1@example.org");
    assert!(!line(&lines, "ATTENDEE").contains("RSVP"), "nobody is asked to answer");
}

/// RFC 4791 §4.1 (no METHOD in a stored file), RFC 6638 §7.1, RFC 5546 §3.2.1.
#[test]
fn a_file_has_no_method_and_a_notice_no_attendee() {
    let file = unfolded(&write(None, &[lesson()]).expect("a file"));
    assert!(!file.iter().any(|line| line.starts_with("METHOD")));
    assert!(line(&file, "ATTENDEE").contains("SCHEDULE-AGENT=CLIENT"));
    let notice = unfolded(&write(Some(Method::Publish), &[lesson()]).expect("a notice"));
    assert!(!notice.iter().any(|line| line.starts_with("ATTENDEE")));
    let called_off = Event { cancelled: true, ..lesson() };
    let file = unfolded(&write(None, &[called_off]).expect("a file"));
    assert_eq!(line(&file, "STATUS"), "STATUS:CANCELLED");
}

/// RFC 6868 §3.1, §3.2; RFC 5545 §3.2 (quotes), §3.3.11 (text), RFC 6068 §2 (addresses).
#[test]
fn names_texts_and_addresses_stay_inside_their_places() {
    for (name, email, expect) in [
        (
            r#"Coach, Pat: "PJ""#,
            "p@example.org",
            r#";CN="Coach, Pat: ^'PJ^'":mailto:p@example.org"#,
        ),
        ("^hat", "p@example.org", ";CN=^^hat:mailto:p@example.org"),
        ("<b>Bo</b> & \u{7}Co", "p@example.org", ";CN=<b>Bo</b> & Co:mailto:p@example.org"),
        ("", "j.o+x@example.org", ":mailto:j.o+x@example.org"),
        ("Jörg", "jörg@example.org", ";CN=Jörg:mailto:j%C3%B6rg@example.org"),
        (
            "Eve",
            "eve@example.org\r\nATTENDEE:x",
            ";CN=Eve:mailto:eve@example.org%0D%0AATTENDEE%3Ax",
        ),
        ("Al", "a;b,c<d>\"%@example.org", ";CN=Al:mailto:a%3Bb%2Cc%3Cd%3E%22%25@example.org"),
    ] {
        let event = Event { organizer: Some(person(name, email)), ..lesson() };
        assert_eq!(line(&unfolded(&request(&event)), "ORGANIZER"), format!("ORGANIZER{expect}"));
    }
    let event = Event {
        summary: "Serve; volley, \\ and\r\nmore\u{0}".to_owned(),
        place: "Court 1\nEND:VEVENT".to_owned(),
        words: "a:b\u{2028}c\td".to_owned(),
        ..lesson()
    };
    let lines = unfolded(&request(&event));
    assert_eq!(line(&lines, "SUMMARY"), r"SUMMARY:Serve\; volley\, \\ and\nmore");
    assert_eq!(line(&lines, "LOCATION"), r"LOCATION:Court 1\nEND:VEVENT");
    assert_eq!(line(&lines, "DESCRIPTION"), "DESCRIPTION:a:b\\nc\td");
}

/// A name with a line end in it must not become a line of its own.
#[test]
fn no_name_can_add_a_line() {
    for end in ["\r\n", "\n", "\r", "\u{85}", "\u{2028}", "\u{b}", "\u{1c}"] {
        let name = format!("Eve{end}ATTENDEE:mailto:x@example.org{end}");
        let event = Event { attendees: vec![person(&name, "eve@example.org")], ..lesson() };
        let text = request(&event);
        let lines: Vec<&str> =
            text.split(['\r', '\n', '\u{85}', '\u{2028}', '\u{b}', '\u{1c}']).collect();
        let found = lines.iter().filter(|line| line.starts_with("ATTENDEE")).count();
        assert_eq!(found, 1, "{end:?} adds nothing");
    }
}

/// RFC 5545 §3.3.5: a TZID means the first of a time that comes twice. Instants: Python zoneinfo,
/// tzdata 2026.6.
#[test]
fn times_the_clock_cannot_tell_are_written_in_utc() {
    let at = |from: &str, to: &str, second: bool| {
        let event = Event { starts: time(from), ends: time(to), second, ..lesson() };
        let lines = unfolded(&request(&event));
        assert_eq!(
            lines.iter().any(|line| line == "BEGIN:VTIMEZONE"),
            lines.iter().any(|line| line.contains(";TZID=")),
            "a zone is described if and only if it is used (RFC 5545 §3.6.5)"
        );
        let start = lines.iter().find(|line| line.starts_with("DTSTART:") && line.ends_with('Z'));
        let end = lines.iter().find(|line| line.starts_with("DTEND:"));
        (start.cloned().unwrap_or_default(), end.cloned().unwrap_or_default())
    };
    let utc = |from: &str, to: &str| (format!("DTSTART:{from}"), format!("DTEND:{to}"));
    let on_the_clock = (String::new(), String::new());
    assert_eq!(at("2026-11-01T01:30", "2026-11-01T02:30", false), on_the_clock);
    assert_eq!(
        at("2026-11-01T01:30", "2026-11-01T02:30", true),
        utc("20261101T063000Z", "20261101T073000Z")
    );
    // From the first quarter to two to the second quarter past one: half an hour.
    assert_eq!(
        at("2026-11-01T01:45", "2026-11-01T01:15", false),
        utc("20261101T054500Z", "20261101T061500Z")
    );
    assert_eq!(
        at("2026-03-08T02:30", "2026-03-08T03:45", false),
        utc("20260308T073000Z", "20260308T074500Z")
    );
    assert_eq!(at("2026-03-03T17:00", "2026-03-03T18:00", true), on_the_clock);
    let event = Event { zone: zone("Etc/UTC"), ..lesson() };
    assert_eq!(line(&unfolded(&request(&event)), "DTSTART"), "DTSTART:20260303T170000Z");
}

#[test]
fn what_cannot_be_an_invitation_is_refused_by_name() {
    let uid = || "lesson-1@example.org".to_owned();
    let refused = |events: &[Event]| write(Some(Method::Request), events).expect_err("refused");
    let nobody = Event { attendees: vec![], ..lesson() };
    assert_eq!(refused(&[nobody]), Unwritable::NoAttendee(uid()));
    let from_nobody = Event { organizer: None, ..lesson() };
    assert_eq!(refused(&[from_nobody]), Unwritable::NoOrganizer(uid()));
    let backwards = Event { ends: lesson().starts, ..lesson() };
    assert_eq!(refused(&[backwards]), Unwritable::Backwards(uid()));
    let other = Event { uid: "lesson-2@example.org".to_owned(), ..lesson() };
    assert_eq!(refused(&[lesson(), other.clone()]), Unwritable::Another(uid()));
    assert!(write(None, &[lesson(), other]).is_ok(), "a file may hold many");
    let far = NaiveDateTime::MAX;
    let never = Event { ends: far, ..lesson() };
    let words = refused(&[never]).to_string();
    assert!(words.contains("lesson-1@example.org") && words.contains("years"), "{words}");
}

proptest! {
    /// RFC 5545 §3.1: 75 octets, CRLF; and our own reader finds the very same time and text.
    #[test]
    fn whatever_is_written_is_folded_right_and_read_back(
        summary in r"[\PC&&[^\u{2028}\u{2029}]]{0,80}",
        name in any::<String>(), place in any::<String>(),
        minute in 0i64..3_000_000, length in 1i64..300, pick in 0usize..400, second: bool,
    ) {
        let names = crate::kinds::zones::names();
        let starts = time("2023-01-01T00:00") + chrono::Duration::minutes(minute);
        let event = Event {
            zone: zone(&names[pick % names.len()]),
            starts,
            ends: starts + chrono::Duration::minutes(length),
            second,
            summary: summary.clone(),
            place,
            attendees: vec![person(&name, "ana@example.org")],
            ..lesson()
        };
        // An hour that is skipped can make the end come before the start.
        let Ok(text) = write(Some(Method::Request), std::slice::from_ref(&event)) else {
            return Ok(());
        };
        for line in text.split("\r\n") {
            prop_assert!(line.len() <= 75 && !line.contains(['\r', '\n']));
        }
        prop_assert_eq!(unfolded(&text).iter().filter(|l| l.starts_with("ATTENDEE")).count(), 1);
        let around = chrono::Days::new(3);
        let (first, last) = (starts.date() - around, event.ends.date() + around);
        let read = busy(text.as_bytes(), first, last, &zone("UTC")).expect("whole");
        prop_assert_eq!(read.skipped, Vec::<String>::new());
        prop_assert_eq!(read.busy.len(), 1);
        prop_assert_eq!(&read.busy[0].summary, &summary.trim().to_owned());
        let clock = |at| crate::kinds::zones::local_of(&at, &event.zone).expect("in range");
        let shown = clock(read.busy[0].starts);
        let skipped = matches!(
            crate::kinds::zones::resolve(starts, &event.zone),
            Ok(crate::kinds::zones::Moment::Gap { .. })
        );
        prop_assert!(skipped || shown == starts, "{} is shown as {}", starts, shown);
    }
}
