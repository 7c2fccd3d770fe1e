//! The coach's calendars: files that are read, and a server kept in step, here one in memory that
//! can be cut off at any moment. Real servers are talked to by the tests of the whole program.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod world;

use std::collections::BTreeMap;
use std::sync::Mutex;

use carryover_core::calendar::remote::{
    Account, Calendars, Changes, Expect, Found, Stored, Trouble,
};
use carryover_core::calendar::server::{self, Exchanged};
use carryover_core::kinds::{Clock, Span, SystemClock};
use serde_json::{Value, json};
use world::{World, id};

/// A file with one event after another.
fn file_of(events: &[&str]) -> String {
    let all: Vec<String> = events
        .iter()
        .enumerate()
        .map(|(n, event)| {
            let event = event.replace(' ', "\r\n");
            format!(
                "BEGIN:VEVENT\r\nUID:{n}@x\r\nDTSTAMP:20260101T000000Z\r\n{event}\r\nEND:VEVENT\r\n"
            )
        })
        .collect();
    format!("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:x\r\n{}END:VCALENDAR\r\n", all.concat())
}

/// What takes the coach's time on a day, as a plan for that day finds it.
fn taken(w: &mut World, day: &str) -> Vec<String> {
    let day = carryover_core::kinds::Day::parse(day).unwrap();
    let zone = carryover_core::kinds::zones::Zone::parse("Europe/Lisbon").unwrap();
    let span = Span { first: day, last: day };
    let all = w.file.read(|db| carryover_core::own_time::occupied(db, span, &zone)).unwrap();
    let hour = |m: u32| format!("{:02}:{:02}", m / 60, m % 60);
    all.iter().map(|o| format!("{} to {} {}", hour(o.from), hour(o.to), o.what)).collect()
}

#[test]
fn a_calendar_file_takes_the_coachs_time_until_it_is_read_anew_or_taken_out() {
    let mut w = World::new();
    let text = file_of(&[
        "SUMMARY:Dentist DTSTART;TZID=Europe/Lisbon:20260310T090000 DTEND;TZID=Europe/Lisbon:20260310T100030",
        "SUMMARY:League DTSTART;TZID=Europe/Madrid:20260303T190000 DTEND;TZID=Europe/Madrid:20260303T230000 RRULE:FREQ=WEEKLY",
        "SUMMARY:Away DTSTART;VALUE=DATE:20260311 DTEND;VALUE=DATE:20260313",
        "SUMMARY:Free DTSTART:20260310T120000Z DTEND:20260310T130000Z TRANSP:TRANSPARENT",
        "DTSTART:20260310T220000Z DTEND:20260311T013000Z",
    ]);
    let read = w.act("calendar.read", json!({ "name": "Home", "text": text }));
    assert_eq!(read["events"], 5);
    assert_eq!(
        taken(&mut w, "2026-03-10"),
        ["09:00 to 10:01 Dentist", "18:00 to 22:00 League", "22:00 to 24:00 Home"],
        "a minute begun is taken; what has no name is called after its calendar"
    );
    assert_eq!(taken(&mut w, "2026-03-11"), ["00:00 to 24:00 Away", "00:00 to 01:30 Home"]);
    assert_eq!(taken(&mut w, "2026-03-12"), ["00:00 to 24:00 Away"]);
    assert!(taken(&mut w, "2026-03-13").is_empty());

    let calendar = id(&read, "/id");
    let broken = &text[..text.len() - 40];
    let again = json!({ "calendar": calendar, "text": broken });
    let words = w.refused("calendar.read", again).to_string();
    assert!(words.contains("breaks off"), "{words}");
    assert_eq!(taken(&mut w, "2026-03-12").len(), 1, "what was read before stays");

    let text = file_of(&["SUMMARY:Other DTSTART:20260312T090000Z DTEND:20260312T100000Z"]);
    w.act("calendar.read", json!({ "calendar": calendar, "text": text }));
    assert_eq!(taken(&mut w, "2026-03-12"), ["09:00 to 10:00 Other"]);
    assert!(taken(&mut w, "2026-03-10").is_empty());

    w.act("calendar.remove", json!({ "calendar": calendar }));
    assert!(taken(&mut w, "2026-03-12").is_empty());
    assert_eq!(w.act("calendar.calendars", json!({})), json!([]));
}

#[test]
fn a_calendar_read_by_mistake_is_taken_back_by_undo() {
    let mut w = World::new();
    let text = file_of(&["SUMMARY:Other DTSTART:20260312T090000Z DTEND:20260312T100000Z"]);
    let input = json!({ "name": "Home", "text": text });
    let read = carryover_core::commands::call(&mut w.file, "calendar.read", input).unwrap();
    assert_eq!(taken(&mut w, "2026-03-12").len(), 1);
    w.act("journal.undo", json!({ "act": read.act }));
    assert!(taken(&mut w, "2026-03-12").is_empty());
    assert!(carryover_core::commands::check(&w.file).unwrap().sound);
}

#[test]
fn times_are_worked_out_further_ahead_as_time_goes_by() {
    let mut w = World::new();
    let rule = "SUMMARY:League DTSTART:20260303T190000Z DTEND:20260303T210000Z RRULE:FREQ=WEEKLY";
    w.act("calendar.read", json!({ "name": "Home", "text": file_of(&[rule]) }));
    w.on("2028-06-01");
    assert!(taken(&mut w, "2028-06-06").is_empty(), "it was read two years ago");
    carryover_core::commands::catch_up(&mut w.file).unwrap();
    assert_eq!(taken(&mut w, "2028-06-06"), ["20:00 to 22:00 League"]);
}

#[test]
fn a_file_too_large_is_refused_before_it_is_read() {
    let error = carryover_core::calendar::not_too_large(100 << 20).unwrap_err().to_string();
    assert!(error.contains("100 MB"), "{error}");
    assert!(carryover_core::calendar::not_too_large(20 << 20).is_ok());
}

/// A server in memory. Each call that changes something counts; at the one named by `cut` the
/// connection is lost, before or after the server did what it was asked.
#[derive(Default)]
struct Memory(Mutex<State>);

#[derive(Default)]
struct State {
    texts: BTreeMap<String, (u32, String)>,
    version: u32,
    /// What happened to each path, in order.
    history: Vec<(String, bool)>,
    forgets: bool,
    calls: u32,
    cut: Option<(u32, bool)>,
    puts: u32,
}

impl State {
    fn call(&mut self) -> Result<bool, Trouble> {
        self.calls += 1;
        match self.cut {
            Some((at, before)) if at == self.calls && before => Err(Trouble::Away(String::new())),
            Some((at, _)) if at == self.calls => Ok(false),
            _ => Ok(true),
        }
    }

    fn set(&mut self, href: &str, text: Option<String>) -> String {
        self.version += 1;
        self.history.push((href.to_owned(), text.is_some()));
        match text {
            Some(text) => self.texts.insert(href.to_owned(), (self.version, text)),
            None => self.texts.remove(href),
        };
        format!("\"{}\"", self.version)
    }

    fn stored(&self, href: &str) -> Option<Stored> {
        let (version, text) = self.texts.get(href)?;
        Some(Stored { href: href.to_owned(), etag: format!("\"{version}\""), text: text.clone() })
    }
}

impl Memory {
    fn at<T>(&self, with: impl FnOnce(&mut State) -> T) -> T {
        with(&mut self.0.lock().unwrap())
    }

    /// Another program changes a text.
    fn change(&self, href: &str, from: &str, to: &str) {
        self.at(|s| {
            let text = s.texts[href].1.clone();
            assert!(text.contains(from), "{from} in {text}");
            s.set(href, Some(text.replace(from, to)));
        });
    }

    fn one_text(&self) -> (String, String) {
        self.at(|s| {
            assert_eq!(s.texts.len(), 1, "{:?}", s.texts.keys());
            let (href, (_, text)) = s.texts.iter().next().unwrap();
            (href.clone(), text.clone())
        })
    }
}

impl Calendars for Memory {
    fn calendars(&self, _: &Account) -> Result<Vec<Found>, Trouble> {
        Ok(vec![])
    }

    fn make(&self, _: &Account, name: &str) -> Result<Found, Trouble> {
        Ok(Found { href: format!("/{name}/"), name: name.to_owned(), writable: true })
    }

    fn changes(
        &self,
        _: &Account,
        calendar: &str,
        token: Option<&str>,
        _: Span,
    ) -> Result<Changes, Trouble> {
        self.at(|s| {
            if !s.call()? {
                return Err(Trouble::Away(String::new()));
            }
            let here = |href: &str| href.starts_with(calendar);
            let next = Some(s.history.len().to_string());
            let since = token.filter(|_| !s.forgets).and_then(|t| t.parse::<usize>().ok());
            let Some(since) = since else {
                let all = s.texts.keys().filter(|h| here(h));
                let changed = all.filter_map(|h| s.stored(h)).collect();
                return Ok(Changes { token: next, whole: true, changed, gone: vec![] });
            };
            let mut last = BTreeMap::new();
            for (href, there) in s.history.iter().skip(since).filter(|(h, _)| here(h)) {
                last.insert(href.clone(), *there);
            }
            let changed = last.keys().filter_map(|h| s.stored(h)).collect();
            let gone = last.iter().filter(|(_, there)| !**there).map(|(h, _)| h.clone()).collect();
            Ok(Changes { token: next, whole: false, changed, gone })
        })
    }

    fn get(&self, _: &Account, href: &str) -> Result<Option<Stored>, Trouble> {
        self.at(|s| if s.call()? { Ok(s.stored(href)) } else { Err(Trouble::Away(String::new())) })
    }

    fn put(
        &self,
        _: &Account,
        href: &str,
        text: &str,
        expect: &Expect,
    ) -> Result<Option<String>, Trouble> {
        self.at(|s| {
            let answered = s.call()?;
            let there = s.stored(href).map(|stored| stored.etag);
            let fits = match expect {
                Expect::Nothing => there.is_none(),
                Expect::Version(version) => there.as_ref() == Some(version),
            };
            if !fits {
                return Err(Trouble::OtherVersion);
            }
            s.puts += 1;
            let etag = s.set(href, Some(text.to_owned()));
            // Every second time the version is not told, as some servers never do.
            let told = (s.puts % 2 == 0).then_some(etag);
            if answered { Ok(told) } else { Err(Trouble::Away(String::new())) }
        })
    }

    fn remove(&self, _: &Account, href: &str, version: &str) -> Result<(), Trouble> {
        self.at(|s| {
            let answered = s.call()?;
            match s.stored(href) {
                None => return Err(Trouble::Gone),
                Some(stored) if stored.etag != version => return Err(Trouble::OtherVersion),
                Some(_) => s.set(href, None),
            };
            if answered { Ok(()) } else { Err(Trouble::Away(String::new())) }
        })
    }
}

/// One exchange; what stood in the way, if anything.
fn exchange(w: &mut World, on: &Memory) -> (Exchanged, Option<Trouble>) {
    let stamp = SystemClock.now().utc();
    let asked = w.file.read(|db| server::ask(db, "secret", stamp)).unwrap().unwrap();
    let outcome = server::exchange(&asked, on, &|| true);
    let trouble = outcome.trouble.clone();
    let kept =
        w.file.write("calendar.exchange", "Calendars exchanged", |db| server::keep(db, outcome));
    (kept.unwrap().value, trouble)
}

/// An exchange that nothing stands in the way of.
fn in_step(w: &mut World, on: &Memory) -> Exchanged {
    let (done, trouble) = exchange(w, on);
    assert_eq!(trouble, None);
    assert!(done.notes.is_empty(), "{:?}", done.notes);
    done
}

/// A world with a lesson for Ana on 10 March at nine, and calendars chosen.
fn set_up() -> (World, Memory, String) {
    let mut w = World::new();
    let student = w.student("Ana");
    let visit = w.planned(&student, "2026-03-10", "2026-03-12");
    let lesson = lesson(&mut w, &visit, "2026-03-10", "09:00");
    w.act(
        "calendar.set_account",
        json!({
            "address": "https://calendar.example.org/", "user": "nuala",
            "busy": [{ "href": "/private/", "name": "Private" }],
            "lessons": { "href": "/lessons/", "name": "Lessons" },
        }),
    );
    (w, Memory::default(), lesson)
}

fn lesson(w: &mut World, visit: &str, day: &str, starts: &str) -> String {
    let hall = w.hall.clone();
    let input = json!({
        "visits": [visit], "facility": hall, "day": day, "starts": starts, "minutes": 60,
    });
    id(&w.act("lessons.plan", input), "/id")
}

fn moved(w: &mut World, lesson: &str, day: &str, starts: &str) {
    let hall = w.hall.clone();
    let input = json!({
        "lesson": lesson, "facility": hall, "day": day, "starts": starts, "minutes": 60,
    });
    w.act("lessons.change", input);
}

fn account(w: &mut World) -> Value {
    w.act("calendar.account", json!({}))
}

fn starts(w: &mut World, lesson: &str) -> String {
    let l = w.act("lessons.show", json!({ "lesson": lesson }));
    format!("{} {} {}", id(&l, "/state"), id(&l, "/day"), id(&l, "/starts"))
}

#[test]
fn a_lesson_is_written_once_and_again_only_when_it_changes() {
    let (mut w, on, lesson) = set_up();
    assert_eq!(account(&mut w)["to_write"], 1);
    assert_eq!(in_step(&mut w, &on).written, 1);
    let (href, text) = on.one_text();
    assert_eq!(href, format!("/lessons/{lesson}.ics"));
    assert!(text.contains("SUMMARY:Lesson: Ana\r\n"), "{text}");
    assert!(text.contains("DTSTART;TZID=Europe/Lisbon:20260310T090000\r\n"), "{text}");
    // RFC 4791 (4.1): a stored object has no METHOD.
    assert!(!text.contains("METHOD"), "{text}");
    assert_eq!(account(&mut w)["to_write"], 0);
    assert_eq!(in_step(&mut w, &on), Exchanged { read: 1, ..Exchanged::default() });

    // The coach adds an alarm on the telephone; the lesson then moves here.
    let alarm = "BEGIN:VALARM\r\nACTION:DISPLAY\r\nTRIGGER:-PT30M\r\nDESCRIPTION:Go\r\nEND:VALARM\r\nEND:VEVENT";
    on.change(&href, "END:VEVENT", alarm);
    assert_eq!(in_step(&mut w, &on).differs, 0, "an alarm is nothing to decide about");
    moved(&mut w, &lesson, "2026-03-11", "10:00");
    assert_eq!(account(&mut w)["to_write"], 1);
    assert_eq!(in_step(&mut w, &on).written, 1);
    let (_, text) = on.one_text();
    assert!(text.contains("DTSTART;TZID=Europe/Lisbon:20260311T100000\r\n"), "{text}");
    assert!(text.contains("SEQUENCE:1\r\n") && text.contains("TRIGGER:-PT30M"), "{text}");
    assert_eq!(text.matches("DTSTART").count(), text.matches("BEGIN:").count() - 3, "{text}");
}

#[test]
fn a_lesson_called_off_is_taken_out_and_one_taken_back_by_undo_too() {
    let (mut w, on, lesson) = set_up();
    in_step(&mut w, &on);
    w.act("lessons.call_off", json!({ "lesson": lesson, "reason": "ill" }));
    assert_eq!(in_step(&mut w, &on).removed, 1);
    assert!(on.at(|s| s.texts.is_empty()));

    let visit = id(&w.act("visits.list", json!({}))[0], "/id");
    let hall = w.hall.clone();
    let input = json!({
        "visits": [visit], "facility": hall, "day": "2026-03-12", "starts": "09:00", "minutes": 60,
    });
    let planned = carryover_core::commands::call(&mut w.file, "lessons.plan", input).unwrap();
    assert_eq!(in_step(&mut w, &on).written, 1);
    w.act("journal.undo", json!({ "act": planned.act }));
    assert_eq!(account(&mut w)["to_write"], 1);
    assert_eq!(in_step(&mut w, &on).removed, 1);
    assert!(on.at(|s| s.texts.is_empty()));
}

#[test]
fn what_was_moved_on_the_server_moves_here_only_when_the_coach_says_so() {
    let (mut w, on, lesson) = set_up();
    in_step(&mut w, &on);
    let (href, _) = on.one_text();
    on.change(&href, ":20260310T090000", ":20260310T103000");
    on.change(&href, ":20260310T100000", ":20260310T113000");
    assert_eq!(in_step(&mut w, &on).differs, 1);
    assert_eq!(starts(&mut w, &lesson), "planned 2026-03-10 09:00");
    let differs = &account(&mut w)["differs"][0];
    assert_eq!(differs["here"], "Tuesday 10 March 2026, 09:00 to 10:00, Hall");
    assert_eq!(differs["there"], "Tuesday 10 March 2026, 10:30 to 11:30, Hall");
    assert_eq!(in_step(&mut w, &on).differs, 1, "it waits for the coach");
    w.act("calendar.take", json!({ "lesson": lesson }));
    assert_eq!(starts(&mut w, &lesson), "planned 2026-03-10 10:30");
    assert_eq!(in_step(&mut w, &on), Exchanged { read: 1, ..Exchanged::default() });
}

#[test]
fn what_was_changed_on_both_sides_is_shown_and_can_be_put_back() {
    let (mut w, on, lesson) = set_up();
    in_step(&mut w, &on);
    let (href, _) = on.one_text();
    on.change(&href, ":20260310T090000", ":20260310T083000");
    moved(&mut w, &lesson, "2026-03-11", "14:00");
    assert_eq!(in_step(&mut w, &on).differs, 1);
    w.act("calendar.put_back", json!({ "lesson": lesson }));
    assert_eq!(in_step(&mut w, &on).written, 1);
    assert!(on.one_text().1.contains(":20260311T140000"));
    assert_eq!(in_step(&mut w, &on), Exchanged { read: 1, ..Exchanged::default() });
}

#[test]
fn moving_by_hand_to_what_the_server_says_settles_it() {
    let (mut w, on, lesson) = set_up();
    in_step(&mut w, &on);
    let (href, _) = on.one_text();
    on.change(&href, ":20260310T090000", ":20260310T103000");
    on.change(&href, ":20260310T100000", ":20260310T113000");
    in_step(&mut w, &on);
    moved(&mut w, &lesson, "2026-03-10", "10:30");
    assert_eq!(in_step(&mut w, &on), Exchanged { read: 1, ..Exchanged::default() });
}

#[test]
fn what_was_deleted_on_the_server_is_called_off_here_or_written_again() {
    let (mut w, on, lesson) = set_up();
    in_step(&mut w, &on);
    let (href, _) = on.one_text();
    on.at(|s| s.set(&href, None));
    assert_eq!(in_step(&mut w, &on).differs, 1);
    w.act("calendar.put_back", json!({ "lesson": lesson }));
    assert_eq!(in_step(&mut w, &on).written, 1);

    on.at(|s| s.forgets = true);
    on.at(|s| s.set(&href, None));
    assert_eq!(in_step(&mut w, &on).differs, 1, "a server that forgot its token tells it as well");
    w.act("calendar.take", json!({ "lesson": lesson }));
    assert!(starts(&mut w, &lesson).starts_with("called_off"));
    assert_eq!(in_step(&mut w, &on), Exchanged { read: 1, ..Exchanged::default() });
}

#[test]
fn what_comes_again_on_the_server_can_only_be_put_back() {
    let (mut w, on, lesson) = set_up();
    in_step(&mut w, &on);
    let (href, _) = on.one_text();
    on.change(&href, "STATUS:CONFIRMED", "STATUS:CONFIRMED\r\nRRULE:FREQ=DAILY;COUNT=3");
    in_step(&mut w, &on);
    assert_eq!(account(&mut w)["differs"][0]["take"], "");
    let error = w.refused("calendar.take", json!({ "lesson": lesson }));
    assert!(error.to_string().contains("by hand"), "{error}");
    w.act("calendar.put_back", json!({ "lesson": lesson }));
    assert_eq!(in_step(&mut w, &on).written, 1);
    assert!(!on.one_text().1.contains("RRULE"));
}

#[test]
fn busy_times_come_in_and_our_own_lessons_are_not_counted_twice() {
    let (mut w, on, lesson) = set_up();
    let text = file_of(&["SUMMARY:Dentist DTSTART:20260310T120000Z DTEND:20260310T130000Z"]);
    on.at(|s| s.set("/private/a.ics", Some(text)));
    let own = file_of(&["SUMMARY:Lesson DTSTART:20260310T090000Z DTEND:20260310T100000Z"])
        .replace("0@x", &format!("{lesson}@carryover"));
    on.at(|s| s.set("/private/b.ics", Some(own)));
    assert_eq!(in_step(&mut w, &on).read, 1);
    assert_eq!(taken(&mut w, "2026-03-10"), ["12:00 to 13:00 Dentist"]);
    on.change("/private/a.ics", "T120000Z", "T113000Z");
    in_step(&mut w, &on);
    assert_eq!(taken(&mut w, "2026-03-10"), ["11:30 to 13:00 Dentist"]);
    on.at(|s| s.set("/private/a.ics", None));
    in_step(&mut w, &on);
    assert!(taken(&mut w, "2026-03-10").is_empty());

    on.at(|s| s.set("/private/c.ics", Some("BEGIN:VCALENDAR\r\n".to_owned())));
    in_step(&mut w, &on);
    let private = w.act("calendar.calendars", json!({}));
    assert!(
        id(&private[1], "/notes/0").contains("left out"),
        "one text that is not whole spoils nothing: {private}"
    );
}

/// What both sides are to come to, whatever happens on the way.
fn comes_right(w: &mut World, on: &Memory, why: &str) {
    for _ in 0..3 {
        on.at(|s| s.cut = None);
        let (_, trouble) = exchange(w, on);
        assert_eq!(trouble, None, "{why}");
    }
    let account = account(w);
    assert_eq!(account["to_write"], 0, "{why}");
    assert_eq!(account["differs"], json!([]), "{why}: {:?}", on.at(|s| s.history.clone()));
    let stand: Vec<String> = w
        .act("lessons.list", json!({}))
        .as_array()
        .unwrap()
        .iter()
        .filter(|l| l["state"] == "planned")
        .map(|l| {
            let day = id(l, "/day").replace('-', "");
            let time = id(l, "/starts").replace(':', "");
            format!("{} {day}T{time}00", id(l, "/id"))
        })
        .collect();
    let there: Vec<String> = on.at(|s| {
        let mut all: Vec<String> = s
            .texts
            .iter()
            .map(|(href, (_, text))| {
                let name = href.trim_start_matches("/lessons/").trim_end_matches(".ics");
                let line = text.lines().find(|l| l.starts_with("DTSTART;TZID=Europe")).unwrap();
                format!("{name} {}", line.rsplit(':').next().unwrap())
            })
            .collect();
        all.sort();
        all
    });
    let mut stand = stand;
    stand.sort();
    assert_eq!(stand, there, "{why}");
}

#[test]
fn a_connection_lost_at_any_moment_leaves_nothing_twice_and_nothing_out() {
    for before in [true, false] {
        for at in 1..=14 {
            let why = format!("cut {} call {at}", if before { "before" } else { "after" });
            let (mut w, on, lesson_a) = set_up();
            let visit = id(&w.act("visits.list", json!({}))[0], "/id");
            let lesson_b = lesson(&mut w, &visit, "2026-03-11", "09:00");
            in_step(&mut w, &on);
            // One is new, one moved, one called off.
            lesson(&mut w, &visit, "2026-03-12", "09:00");
            moved(&mut w, &lesson_a, "2026-03-10", "15:00");
            w.act("lessons.call_off", json!({ "lesson": lesson_b, "reason": "ill" }));
            let so_far = on.at(|s| s.calls);
            on.at(|s| s.cut = Some((so_far + at, before)));
            exchange(&mut w, &on);
            comes_right(&mut w, &on, &why);
        }
    }
}

#[test]
fn an_exchange_whose_outcome_was_lost_is_made_up_for_by_the_next() {
    let (mut w, on, lesson) = set_up();
    let stamp = SystemClock.now().utc();
    let asked = w.file.read(|db| server::ask(db, "", stamp)).unwrap().unwrap();
    // The program ends here: what the server was told is written down nowhere.
    drop(server::exchange(&asked, &on, &|| true));
    comes_right(&mut w, &on, "new");
    moved(&mut w, &lesson, "2026-03-11", "15:00");
    let asked = w.file.read(|db| server::ask(db, "", stamp)).unwrap().unwrap();
    drop(server::exchange(&asked, &on, &|| true));
    comes_right(&mut w, &on, "moved");
    w.act("lessons.call_off", json!({ "lesson": lesson, "reason": "ill" }));
    let asked = w.file.read(|db| server::ask(db, "", stamp)).unwrap().unwrap();
    drop(server::exchange(&asked, &on, &|| true));
    comes_right(&mut w, &on, "called off");
}

#[test]
fn leaving_the_server_leaves_nothing_of_it_here() {
    let (mut w, on, _) = set_up();
    in_step(&mut w, &on);
    let shown = w.act("calendar.leave", json!({}));
    assert_eq!((&shown["address"], &shown["calendars"]), (&json!(""), &json!([])));
    assert_eq!(on.at(|s| s.texts.len()), 1, "what stands there stays");
}

#[test]
fn an_account_needs_an_address_and_a_calendar() {
    let mut w = World::new();
    let error = w.refused("calendar.set_account", json!({ "address": " " }));
    let fields: Vec<String> = world::codes(&error).into_iter().map(|(field, _)| field).collect();
    assert_eq!(fields, ["address", "lessons"]);
}

#[test]
fn an_erased_person_goes_from_the_calendars_too() {
    let name = "Quorthwyn Zibelius";
    let (mut w, on, _) = set_up();
    let student = w.student(name);
    let visit = w.planned(&student, "2026-03-10", "2026-03-12");
    let own = lesson(&mut w, &visit, "2026-03-11", "09:00");
    let visits = w.act("visits.list", json!({}));
    let both: Vec<&Value> = visits.as_array().unwrap().iter().map(|v| &v["id"]).collect();
    let hall = w.hall.clone();
    let shared = json!({
        "visits": both, "facility": hall, "day": "2026-03-12", "starts": "09:00", "minutes": 60,
    });
    let shared = id(&w.act("lessons.plan", shared), "/id");
    let event = |uid: &str, what: &str| {
        format!(
            "BEGIN:VEVENT\r\nUID:{uid}\r\nDTSTAMP:20260101T000000Z\r\nSUMMARY:{what}\r\nDTSTART:20260311T090000Z\r\nDTEND:20260311T100000Z\r\nEND:VEVENT\r\n"
        )
    };
    let copied = event(&format!("{own}@carryover"), &format!("Lesson: {name}"));
    let text = [copied, event("2@x", "Dentist")].concat();
    let text = format!("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:x\r\n{text}END:VCALENDAR\r\n");
    // The coach keeps a copy of a lesson in the private calendar, and in a file that was read.
    on.at(|s| s.set("/private/1.ics", Some(text.clone())));
    w.act("calendar.read", json!({ "name": "Home", "text": text }));
    assert_eq!(in_step(&mut w, &on).written, 3);
    on.change(&format!("/lessons/{shared}.ics"), "END:VEVENT", "X-OWN:kept\r\nEND:VEVENT");
    in_step(&mut w, &on);

    let erased = w.act("students.erase", json!({ "student": student, "name_typed": name }));
    assert_eq!(erased["calendar"], true);
    assert!(id(&erased, "/left/0").contains("in step"), "{erased}");
    w.act("calendar.calendars", json!({}));
    assert!(taken(&mut w, "2026-03-11").iter().any(|words| words.ends_with("Dentist")));
    let there = std::fs::read(w.file.path()).unwrap();
    assert!(!there.windows(9).any(|window| window == b"Quorthwyn"), "nothing is left in the file");

    let done = in_step(&mut w, &on);
    assert_eq!((done.removed, done.written), (1, 1), "one is taken out, one written anew");
    on.at(|s| {
        assert!(!s.texts.contains_key(&format!("/lessons/{own}.ics")));
        let text = &s.texts[&format!("/lessons/{shared}.ics")].1;
        assert!(text.contains("SUMMARY:Lesson: Ana\r\n"), "{text}");
        assert!(text.contains("X-OWN:kept"), "what was put there by hand stays: {text}");
    });
    assert_eq!(in_step(&mut w, &on), Exchanged { read: 1, ..Exchanged::default() });
    assert!(carryover_core::commands::check(&w.file).unwrap().sound);
}
