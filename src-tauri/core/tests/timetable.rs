//! The week, the trip and the year, through the command table; free hours beside a count of every
//! minute that knows nothing of how they are found.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod world;

use std::collections::BTreeSet;

use carryover_core::kinds::zones::{Zone, local_of};
use carryover_core::kinds::{Day, Time};
use chrono::{DateTime, NaiveDateTime, Timelike, Utc};
use serde_json::{Value, json};
use world::{World, id, problems};

/// Another facility, with a court.
fn facility(w: &mut World, name: &str, zone: &str) -> String {
    let place = json!({ "name": name, "town": format!("{name} Town"), "zone": zone });
    let facility = id(&w.act("facilities.add", place), "/id");
    w.act("facilities.add_court", json!({ "facility": facility, "name": "Court 1" }));
    facility
}

/// A visit at a facility.
fn comes(w: &mut World, student: &str, facility: &str, days: [&str; 2]) -> String {
    let visit = json!({
        "student": student, "facility": facility, "first_day": days[0], "last_day": days[1],
    });
    id(&w.act("visits.plan", visit), "/id")
}

fn lesson(w: &mut World, visits: &[&str], facility: &str, day: &str, starts: &str) -> String {
    let lesson = json!({
        "visits": visits, "facility": facility, "day": day, "starts": starts, "minutes": 60,
    });
    id(&w.act("lessons.plan", lesson), "/id")
}

fn list(value: &Value) -> Vec<Value> {
    value.as_array().unwrap().clone()
}

/// A week's rows, a line each: the name, and what stands on each day that has something.
fn rows(week: &Value) -> Vec<String> {
    let cell = |day: &Value| {
        let mut said: Vec<String> = list(&day["lessons"])
            .iter()
            .map(|l| {
                let of = |field: &str| l[field].as_str().unwrap_or_default().to_owned();
                let with = if of("with").is_empty() {
                    String::new()
                } else {
                    format!(" with {}", of("with"))
                };
                let offer =
                    if l["offer"].is_null() { String::new() } else { format!(" {}", of("offer")) };
                let off = if l["visit_off"] == true { " of a visit called off" } else { "" };
                format!("{}-{} {}{with}{offer}{off}", of("starts"), of("ends"), of("state"))
            })
            .collect();
        said.extend(
            list(&day["offered"]).iter().map(|o| format!("was offered {}", id(o, "/starts"))),
        );
        if said.is_empty() && day["visit"].is_string() {
            said.push("here".to_owned());
        }
        (!said.is_empty()).then(|| format!("{}: {}", &id(day, "/day")[8..], said.join(", ")))
    };
    list(&week["people"])
        .iter()
        .map(|row| {
            let days: Vec<String> = list(&row["days"]).iter().filter_map(cell).collect();
            let next = row["next"].as_str().map(|day| format!("; next {day}")).unwrap_or_default();
            format!("{} | {}{next}", id(row, "/name"), days.join(" | "))
        })
        .collect()
}

#[test]
fn a_week_has_everyone_who_has_a_lesson_is_in_town_or_was_offered_days() {
    let mut w = World::new();
    let hall = w.hall.clone();
    let (ana, ben, cleo) = (w.student("Ana"), w.student("Ben"), w.student("Cleo"));
    let (dan, eva, finn) = (w.student("Dan"), w.student("Eva"), w.student("Finn"));
    // The week is 9 to 15 March 2026; Ana's visit began in the one before and goes on after it.
    let a = comes(&mut w, &ana, &hall, ["2026-03-07", "2026-03-17"]);
    let b = comes(&mut w, &ben, &hall, ["2026-03-10", "2026-03-11"]);
    comes(&mut w, &cleo, &hall, ["2026-03-13", "2026-03-14"]);
    let c2 = comes(&mut w, &cleo, &hall, ["2026-04-01", "2026-04-02"]);
    let d = comes(&mut w, &dan, &hall, ["2026-03-12", "2026-03-12"]);
    let e = comes(&mut w, &eva, &hall, ["2026-03-09", "2026-03-10"]);
    let f = comes(&mut w, &finn, &hall, ["2026-05-04", "2026-05-05"]);
    lesson(&mut w, &[&a], &hall, "2026-03-08", "09:00");
    lesson(&mut w, &[&a, &b], &hall, "2026-03-10", "09:00");
    let off = lesson(&mut w, &[&a], &hall, "2026-03-12", "09:00");
    lesson(&mut w, &[&c2], &hall, "2026-04-02", "09:00");
    lesson(&mut w, &[&f], &hall, "2026-05-04", "09:00");
    w.act("lessons.call_off", json!({ "lesson": off, "reason": "storm" }));
    // Dan's lesson was offered as it stands; Eva's was moved out of the week, with her visit.
    lesson(&mut w, &[&d], &hall, "2026-03-12", "10:00");
    w.act("offers.make", json!({ "visit": d, "words": "Come" }));
    let moved = lesson(&mut w, &[&e], &hall, "2026-03-09", "17:00");
    let made = w.act("offers.make", json!({ "visit": e, "words": "Come" }));
    w.act("lessons.call_off", json!({ "lesson": moved, "reason": "other days" }));
    let change = json!({ "visit": e, "facility": hall, "first_day": "2026-03-20", "last_day": "2026-03-21" });
    w.act("visits.change", change);

    let week = w.act("timetable.week", json!({ "day": "2026-03-11" }));
    assert_eq!(week["days"], json!({ "first": "2026-03-09", "last": "2026-03-15" }));
    assert_eq!(
        rows(&week),
        [
            "Ana | 09: here | 10: 09:00-10:00 planned with Ben | 11: here | 12: 09:00-10:00 called_off | 13: here | 14: here | 15: here",
            "Ben | 10: 09:00-10:00 planned with Ana | 11: here",
            "Cleo | 13: here | 14: here; next 2026-04-02",
            "Dan | 12: 10:00-11:00 planned offered",
            "Eva | 09: 17:00-18:00 called_off offered, was offered 17:00",
        ]
    );
    assert_eq!(week["later"], json!([{ "student": finn, "name": "Finn", "day": "2026-05-04" }]));
    assert_eq!(week["trips"], json!([{ "first": "2026-03-07", "last": "2026-03-17" }]));
    assert_eq!((&week["before"], &week["after"]), (&json!("2026-03-08"), &json!("2026-03-16")));
    assert_eq!(week["zones"], json!(["Europe/Lisbon"]));
    let minutes: Vec<Value> =
        list(&week["coach"]).iter().map(|day| day["minutes"].clone()).collect();
    assert_eq!(
        minutes,
        [0, 60, 0, 60, 0, 0, 0].map(Value::from),
        "what was called off takes no minutes"
    );

    // Once Eva answered, the days she was offered are no longer hers.
    w.act("offers.answer", json!({ "offer": made["id"], "agreed": false }));
    let week = w.act("timetable.week", json!({ "day": "2026-03-15" }));
    assert!(rows(&week).last().unwrap().starts_with("Eva | 09: 17:00-18:00 called_off declined"));
    assert!(!rows(&week).last().unwrap().contains("was offered"));

    let empty = w.act("timetable.week", json!({ "day": "2026-04-15" }));
    assert_eq!(rows(&empty), [""; 0]);
    assert_eq!((&empty["before"], &empty["after"]), (&json!("2026-04-02"), &json!("2026-05-04")));
    let last = w.act("timetable.week", json!({ "day": "2026-06-15" }));
    assert_eq!((&last["before"], &last["after"]), (&json!("2026-05-05"), &Value::Null));
    let today = w.act("timetable.week", json!({}));
    assert_eq!(today["days"]["first"], "2026-02-23", "1 March 2026 is a Sunday");
}

#[test]
fn lessons_of_a_visit_that_was_called_off_are_still_seen() {
    let mut w = World::new();
    let (ana, hall) = (w.student("Ana"), w.hall.clone());
    let visit = comes(&mut w, &ana, &hall, ["2026-03-10", "2026-03-11"]);
    lesson(&mut w, &[&visit], &hall, "2026-03-10", "09:00");
    w.act("visits.call_off", json!({ "visit": visit, "reason": "ill" }));
    let week = w.act("timetable.week", json!({ "day": "2026-03-10" }));
    assert_eq!(rows(&week), ["Ana | 10: 09:00-10:00 planned of a visit called off"]);
    assert_eq!(week["trips"], json!([]));
}

#[test]
fn the_coachs_row_has_days_off_what_takes_time_ways_and_the_limit() {
    let mut w = World::new();
    let (hall, ana) = (w.hall.clone(), w.student("Ana"));
    let far = facility(&mut w, "Ropewalk", "Europe/Madrid");
    w.act(
        "own_time.set",
        json!({
            "hours": [{ "weekdays": [1, 2, 3, 4, 5], "opens": "08:00", "closes": "20:00" }],
            "day_limit": 90, "ways": [{ "one": hall, "other": far, "minutes": 45 }],
        }),
    );
    w.act("own_time.add", json!({ "what": "Dentist", "first": "2026-03-11" }));
    w.act(
        "own_time.add",
        json!({ "what": "A call", "first": "2026-03-10", "starts": "08:00", "ends": "08:30", "zone": "Europe/Lisbon" }),
    );
    let visit = comes(&mut w, &ana, &hall, ["2026-03-10", "2026-03-12"]);
    // Ten in Lisbon is eleven in Madrid: half an hour lies between the two lessons, not an hour and a half.
    lesson(&mut w, &[&visit], &hall, "2026-03-10", "10:00");
    lesson(&mut w, &[&visit], &far, "2026-03-10", "12:30");
    let week = w.act("timetable.week", json!({ "day": "2026-03-10" }));
    assert_eq!(week["zones"], json!(["Europe/Lisbon", "Europe/Madrid"]));
    let coach = list(&week["coach"]);
    assert_eq!(
        coach[1]["ways"],
        json!([{ "from": "Hall", "to": "Ropewalk", "minutes": 45, "between": 30 }])
    );
    assert_eq!((&coach[1]["minutes"], &coach[1]["limit"]), (&json!(120), &json!(90)));
    assert_eq!(coach[1]["taken"], json!([{ "what": "A call", "from": "08:00", "to": "08:30" }]));
    assert_eq!(coach[2]["taken"], json!([{ "what": "Dentist", "from": null, "to": null }]));
    let off: Vec<bool> = coach.iter().map(|day| day["off"] == true).collect();
    assert_eq!(off, [false, false, false, false, false, true, true]);
    let someone: Vec<bool> = coach.iter().map(|day| day["someone"] == true).collect();
    assert_eq!(someone, [false, true, true, true, false, false, false]);
    let lessons = list(&week["people"][0]["days"][1]["lessons"]);
    let at: Vec<String> =
        lessons.iter().map(|l| format!("{} {}", id(l, "/starts"), id(l, "/zone"))).collect();
    assert_eq!(at, ["10:00 Europe/Lisbon", "12:30 Europe/Madrid"]);
}

/// The dates of the changes: as in `kinds::zones`.
#[test]
fn a_lesson_over_a_clock_change_ends_when_the_clock_says() {
    let mut w = World::new();
    let ana = w.student("Ana");
    let there = facility(&mut w, "Pier", "America/New_York");
    let spring = comes(&mut w, &ana, &there, ["2026-03-08", "2026-03-08"]);
    let autumn = comes(&mut w, &ana, &there, ["2026-11-01", "2026-11-01"]);
    lesson(&mut w, &[&spring], &there, "2026-03-08", "01:30");
    for which in ["first", "second"] {
        let input = json!({
            "visits": [autumn], "facility": there, "day": "2026-11-01", "starts": "01:15",
            "minutes": 60, "which": which,
        });
        w.act("lessons.plan", input);
    }
    for (day, expect) in [
        ("2026-03-08", vec!["01:30-03:30 once"]),
        ("2026-11-01", vec!["01:15-01:15 first", "01:15-02:15 second"]),
    ] {
        let trip = w.act("timetable.trip", json!({ "first": day, "last": day }));
        let said: Vec<String> = list(&trip["on"][0]["lessons"])
            .iter()
            .map(|l| format!("{}-{} {}", id(l, "/starts"), id(l, "/ends"), id(l, "/which")))
            .collect();
        assert_eq!(said, expect, "{day}");
        let week = w.act("timetable.week", json!({ "day": day }));
        assert_eq!(rows(&week).len(), 1, "both days are Sundays, the last of their week");
    }
    // The whole day less the lessons: 23 and 25 hours.
    for (day, lessons, hours) in [("2026-03-08", 1, 23), ("2026-11-01", 2, 25)] {
        let trip = w.act("timetable.trip", json!({ "first": day, "last": day }));
        assert_eq!(trip["free_minutes"], json!((hours - lessons) * 60), "{day}");
    }
}

/// Each day's free hours at each place, and what the day comes to.
fn free(trip: &Value) -> Vec<String> {
    let day = |day: &Value| {
        let places = list(&day["places"]).into_iter().map(|place| {
            let free: Vec<String> = list(&place["free"])
                .iter()
                .map(|f| format!("{}-{}", id(f, "/from"), id(f, "/to")))
                .collect();
            format!("{} {}", id(&place, "/place"), free.join(" "))
        });
        let places: Vec<String> = places.collect();
        let nothing = day["nothing"].as_str().unwrap_or_default();
        format!(
            "{}: {} {}{nothing}",
            &id(&day["coach"], "/day")[8..],
            places.join("; "),
            day["free_minutes"]
        )
        .replace("  ", " ")
    };
    list(&trip["on"]).iter().map(day).collect()
}

#[test]
fn a_trip_has_its_stays_travel_days_people_and_what_could_be_sold() {
    let mut w = World::new();
    let (hall, ana, ben) = (w.hall.clone(), w.student("Ana"), w.student("Ben"));
    let far = facility(&mut w, "Ropewalk", "Europe/Lisbon");
    let evening = json!({ "hours": [{ "opens": "20:00", "closes": "00:00" }], "grid": 60 });
    w.act("facilities.set_rules", json!({ "facility": hall, "rules": evening }));
    let rules = json!({
        "hours": [{ "opens": "09:00", "closes": "13:00" }], "day_limit": 120,
        "closures": [{ "first": "2026-03-13", "last": "2026-03-13", "starts": "09:00", "ends": "12:30", "reason": "open play" }],
    });
    w.act("facilities.set_rules", json!({ "facility": far, "rules": rules }));
    w.act(
        "own_time.set",
        json!({ "day_limit": 180, "ways": [{ "one": hall, "other": far, "minutes": 25 }] }),
    );
    let a = comes(&mut w, &ana, &hall, ["2026-03-10", "2026-03-11"]);
    let b = comes(&mut w, &ben, &far, ["2026-03-12", "2026-03-14"]);
    w.act("planning.set_wish", json!({ "visit": b, "wish": { "lessons": 3, "minutes": 45 } }));
    lesson(&mut w, &[&a], &hall, "2026-03-10", "21:00");
    for starts in ["09:00", "10:30"] {
        lesson(&mut w, &[&b], &far, "2026-03-12", starts);
    }
    lesson(&mut w, &[&b], &far, "2026-03-14", "10:00");

    let trip = w.act("timetable.trip", json!({ "first": "2026-03-10", "last": "2026-03-15" }));
    assert_eq!((&trip["shortest"], &trip["shortest_from"]), (&json!(45), &json!("lessons")));
    assert_eq!(
        free(&trip),
        [
            // The lesson takes 21:00 to 22:00; a lesson of 45 minutes begins on the hour. The limit
            // would allow two more hours.
            "10: Hall 20:00-20:45 22:00-22:45 23:00-23:45 120",
            "11: Hall 20:00-20:45 21:00-21:45 22:00-22:45 23:00-23:45 180",
            "12: Ropewalk 0taken",
            "13: Ropewalk 0taken",
            "14: Ropewalk 09:00-10:00 11:00-13:00 60",
            "15: 0nowhere",
        ]
    );
    assert_eq!(trip["free_minutes"], 120 + 180 + 60);
    assert_eq!((&trip["lessons"], &trip["minutes"]), (&json!(4), &json!(240)));
    let stays: Vec<String> = list(&trip["stays"])
        .iter()
        .map(|s| {
            format!(
                "{}, {} {} {}",
                id(s, "/place"),
                id(s, "/town"),
                id(s, "/days/first"),
                id(s, "/days/last")
            )
        })
        .collect();
    assert_eq!(
        stays,
        ["Hall,  2026-03-10 2026-03-11", "Ropewalk, Ropewalk Town 2026-03-12 2026-03-14"]
    );
    let travel: Vec<Value> = list(&trip["on"]).iter().map(|day| day["travel"].clone()).collect();
    assert_eq!(
        travel[2],
        json!({ "from": "Hall", "to": "Ropewalk", "since": "2026-03-11", "minutes": 25 })
    );
    assert_eq!(travel.iter().filter(|t| !t.is_null()).count(), 1);
    let people: Vec<String> = list(&trip["people"])
        .iter()
        .map(|p| format!("{} {} of {}", id(p, "/name"), p["lessons"], p["wished"]))
        .collect();
    assert_eq!(people, ["Ana 1 of null", "Ben 3 of 3"]);

    // A rate of an hour makes an hour the shortest lesson; the coach's limit leaves none of a full day.
    w.act(
        "offers.set_terms",
        json!({ "currency": "EUR", "fees": [{ "minutes": 60, "amount": "40" }, { "minutes": 90, "amount": "55" }] }),
    );
    w.act("own_time.set", json!({ "day_limit": 100 }));
    let trip = w.act("timetable.trip", json!({ "first": "2026-03-10", "last": "2026-03-11" }));
    assert_eq!((&trip["shortest"], &trip["shortest_from"]), (&json!(60), &json!("rates")));
    assert_eq!(free(&trip), ["10: Hall 0limit", "11: Hall 20:00-00:00 100"]);
    // What has passed is not sold any more: the clock stands at noon.
    w.on("2026-03-14");
    let trip = w.act("timetable.trip", json!({ "first": "2026-03-13", "last": "2026-03-14" }));
    assert_eq!(free(&trip), ["13: Ropewalk 0passed", "14: Ropewalk 0limit"]);
    w.act(
        "own_time.set",
        json!({ "hours": [{ "weekdays": [1], "opens": "09:00", "closes": "12:00" }] }),
    );
    let trip = w.act("timetable.trip", json!({ "first": "2026-03-14", "last": "2026-03-14" }));
    assert_eq!(free(&trip), ["14: Ropewalk 0off"]);
}

#[test]
fn days_that_are_no_trip_are_refused_in_words() {
    let mut w = World::new();
    for (last, words) in [
        ("2026-03-01", "The last day is before the first."),
        ("2026-05-03", "One trip has room for 62 days; these are 63."),
    ] {
        let refused = w.refused("timetable.trip", json!({ "first": "2026-03-02", "last": last }));
        assert_eq!(problems(&refused), [("last".to_owned(), words.to_owned())]);
    }
    let trip = w.act("timetable.trip", json!({ "first": "2026-03-02", "last": "2026-05-02" }));
    assert_eq!((&trip["can_plan"], &trip["stays"]), (&json!(false), &json!([])));
    assert_eq!(list(&trip["on"]).len(), 62);
    assert_eq!(problems(&w.refused("timetable.year", json!({ "year": 1512 }))).len(), 1);
    let month = json!({ "year": 2026, "month": 13, "what": "given" });
    assert_eq!(problems(&w.refused("timetable.counted", month))[0].0, "month");
}

/// Numbers that repeat: a linear congruential generator with the constants of Knuth's MMIX.
struct Dice(u64);

impl Dice {
    fn below(&mut self, n: u64) -> u64 {
        self.0 =
            self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % n
    }

    /// A time on the quarters of an hour between two hours.
    fn time(&mut self, from: u64, to: u64) -> String {
        let quarter = from * 4 + self.below((to - from) * 4);
        format!("{:02}:{:02}", quarter / 4, quarter % 4 * 15)
    }

    /// Two such times, the earlier first; the later may be midnight.
    fn times(&mut self, from: u64, to: u64) -> (String, String) {
        let one = from * 4 + self.below((to - from) * 4 - 1);
        let other = one + 1 + self.below(to * 4 - one);
        let said = |q: u64| format!("{:02}:{:02}", q / 4 % 24, q % 4 * 15);
        (said(one), said(other))
    }
}

/// A world as drawn, in plain numbers: what the count of every minute goes by.
#[derive(Default)]
struct Drawn {
    places: Vec<DrawnPlace>,
    /// Of each weekday, from Monday: the coach's hours on the clock's face.
    hours: Option<(u32, u32)>,
    meal: Option<(u32, u32)>,
    /// A day and two faces.
    busy: Vec<(Day, u32, u32)>,
    day_limit: u32,
    longest_run: u32,
    way: i64,
    lessons: Vec<DrawnLesson>,
    shortest: u32,
    now: i64,
}

struct DrawnPlace {
    name: String,
    zone: Zone,
    hours: (u32, u32),
    /// Of each court: when it is closed, every day.
    courts: Vec<Option<(u32, u32)>>,
    grid: u32,
    day_limit: u32,
    least: u32,
    longest: u32,
}

struct DrawnLesson {
    place: usize,
    court: Option<usize>,
    day: Day,
    /// Minutes of the epoch.
    from: i64,
    to: i64,
}

fn face(text: &str) -> u32 {
    Time::parse(text).unwrap().minutes()
}

/// The end of a stretch: midnight is the day's end.
fn until(text: &str) -> u32 {
    if text == "00:00" { 1440 } else { face(text) }
}

/// The minute of the epoch at which a clock shows a time, by looking through all near it.
fn minute_of(day: Day, time: &str, zone: &Zone) -> i64 {
    let wanted = day.date().and_time(Time::parse(time).unwrap().time());
    let about = wanted.and_utc().timestamp() / 60;
    let shows = |minute: &i64| clock(*minute, zone) == wanted;
    (about - 900..about + 900).find(shows).unwrap()
}

fn clock(minute: i64, zone: &Zone) -> NaiveDateTime {
    local_of(&DateTime::<Utc>::from_timestamp(minute * 60, 0).unwrap(), zone).unwrap()
}

impl Drawn {
    /// Whether the coach could be at a place at a minute of the epoch, and some court be had.
    fn can(&self, at: usize, court: usize, day: Day, minute: i64) -> bool {
        let place = &self.places[at];
        let shown = clock(minute, &place.zone);
        let now = shown.hour() * 60 + shown.minute();
        let within = |(from, to): (u32, u32)| from <= now && now < to;
        shown.date() == day.date()
            && minute >= self.now
            && within(place.hours)
            && !place.courts[court].is_some_and(within)
            && self.hours.is_none_or(within)
            && !self.meal.is_some_and(within)
            && !self.busy.iter().any(|(on, from, to)| *on == day && within((*from, *to)))
            && self.lessons.iter().all(|l| {
                let way = if l.place == at { 0 } else { self.way };
                minute < l.from - way || l.to + way <= minute
            })
    }

    /// How many minutes without a break a lesson from one minute to another would be part of.
    fn run(&self, from: i64, to: i64, of: impl Fn(&DrawnLesson) -> bool) -> u32 {
        let taught =
            |minute: i64| self.lessons.iter().any(|l| of(l) && l.from <= minute && minute < l.to);
        let (mut a, mut z) = (from, to);
        while taught(a - 1) {
            a -= 1;
        }
        while taught(z) {
            z += 1;
        }
        u32::try_from(z - a).unwrap()
    }

    /// The minutes of the epoch that could be sold at a place on a day.
    fn minutes(&self, at: usize, day: Day) -> BTreeSet<i64> {
        let place = &self.places[at];
        let least = self.shortest.max(place.least);
        let taught = |of: &dyn Fn(&DrawnLesson) -> bool| {
            let on = self.lessons.iter().filter(|l| l.day == day && of(l));
            u32::try_from(on.map(|l| l.to - l.from).sum::<i64>()).unwrap()
        };
        let limits =
            [(self.day_limit, taught(&|_| true)), (place.day_limit, taught(&|l| l.place == at))];
        if limits.iter().any(|(limit, taught)| *limit > 0 && taught + least > *limit) {
            return BTreeSet::new();
        }
        let midnight = day.date().and_hms_opt(0, 0, 0).unwrap().and_utc().timestamp() / 60;
        let mut sold = BTreeSet::new();
        for court in 0..place.courts.len() {
            let near = midnight - 900..midnight + 1440 + 900;
            let can: BTreeSet<i64> = near.filter(|m| self.can(at, court, day, *m)).collect();
            for from in &can {
                let lesson = *from..from + i64::from(least);
                let shown = clock(*from, &place.zone);
                let on_court = |l: &DrawnLesson| l.place == at && l.court == Some(court);
                let fits = (shown.hour() * 60 + shown.minute()).is_multiple_of(place.grid)
                    && lesson.clone().all(|minute| can.contains(&minute))
                    && (self.longest_run == 0
                        || self.run(lesson.start, lesson.end, |_| true) <= self.longest_run)
                    && (place.longest == 0
                        || self.run(lesson.start, lesson.end, on_court) <= place.longest);
                if fits {
                    sold.extend(lesson);
                }
            }
        }
        sold
    }

    /// As [`free`] says a day.
    fn said(&self, day: Day, places: &[usize]) -> String {
        let mut all = BTreeSet::new();
        let (mut words, mut most) = (Vec::new(), 0);
        for at in places {
            let minutes = self.minutes(*at, day);
            let place = &self.places[*at];
            let mut stretches = Vec::new();
            for minute in &minutes {
                if !minutes.contains(&(minute - 1)) {
                    let end = (*minute..).find(|m| !minutes.contains(m)).unwrap();
                    let said = |m: i64| clock(m, &place.zone).format("%H:%M").to_string();
                    stretches.push(format!("{}-{}", said(*minute), said(end)));
                }
            }
            let here = self.lessons.iter().filter(|l| l.day == day && l.place == *at);
            let here = here.map(|l| l.to - l.from).sum::<i64>();
            let limit = i64::from(place.day_limit);
            let left = if limit == 0 { i64::MAX } else { (limit - here).max(0) };
            most += left.min(i64::try_from(minutes.len()).unwrap());
            words.push(format!("{} {}", place.name, stretches.join(" ")));
            all.extend(minutes);
        }
        let taught: i64 = self.lessons.iter().filter(|l| l.day == day).map(|l| l.to - l.from).sum();
        let limit = i64::from(self.day_limit);
        let left = if limit == 0 { i64::MAX } else { (limit - taught).max(0) };
        let sum = i64::try_from(all.len()).unwrap().min(most).min(left);
        format!("{}: {} {sum}", &day.to_string()[8..], words.join("; ")).replace("  ", " ")
    }
}

/// Draws a world with two places, and says what it drew.
fn drawn(w: &mut World, seed: u64, first: Day) -> Drawn {
    let mut dice = Dice(seed);
    let mut d = Drawn { shortest: [45, 60, 30][dice.below(3) as usize], ..Drawn::default() };
    let zones = [["Europe/Lisbon", "Europe/Madrid"], ["America/New_York", "America/New_York"]];
    let zones = zones[dice.below(2) as usize];
    let mut facilities = Vec::new();
    for (n, zone) in zones.iter().enumerate() {
        let name = ["Hall A", "Hall B"][n];
        let mut shown = w.act("facilities.add", json!({ "name": name, "zone": zone }));
        let facility = id(&shown, "/id");
        let many = 1 + dice.below(2);
        let (mut closures, mut courts) = (Vec::new(), Vec::new());
        for court in 0..many {
            let input = json!({ "facility": facility, "name": format!("Court {court}") });
            shown = w.act("facilities.add_court", input);
            let closed = (dice.below(2) == 0).then(|| dice.times(6, 24));
            if let Some((starts, ends)) = &closed {
                let court = &shown["courts"][court as usize]["id"];
                closures.push(json!({ "court": court, "starts": starts, "ends": ends }));
            }
            courts.push(closed.map(|(starts, ends)| (face(&starts), until(&ends))));
        }
        let (opens, closes) = dice.times(4, 24);
        let place = DrawnPlace {
            name: name.to_owned(),
            zone: Zone::parse(zone).unwrap(),
            hours: (face(&opens), until(&closes)),
            courts,
            grid: [15, 60, 30, 10][dice.below(4) as usize],
            day_limit: [0, 0, 150][dice.below(3) as usize],
            least: [0, 60][dice.below(2) as usize],
            longest: [0, 120][dice.below(2) as usize],
        };
        let rules = json!({
            "hours": [{ "opens": opens, "closes": closes }], "closures": closures, "grid": place.grid,
            "day_limit": place.day_limit, "shortest": place.least, "longest": place.longest,
        });
        w.act("facilities.set_rules", json!({ "facility": facility, "rules": rules }));
        facilities.push((facility, shown));
        d.places.push(place);
    }
    let hours = (dice.below(3) > 0).then(|| dice.times(5, 24));
    let meal = (dice.below(2) == 0).then(|| dice.times(12, 14));
    d.day_limit = [0, 240, 120][dice.below(3) as usize];
    d.longest_run = [0, 120, 180][dice.below(3) as usize];
    d.way = [0, 20, 35][dice.below(3) as usize];
    w.act(
        "own_time.set",
        json!({
            "hours": hours.iter().map(|(a, z)| json!({ "opens": a, "closes": z })).collect::<Vec<_>>(),
            "meal_starts": meal.as_ref().map(|m| m.0.clone()).unwrap_or_default(),
            "meal_ends": meal.as_ref().map(|m| m.1.clone()).unwrap_or_default(),
            "day_limit": d.day_limit, "longest_run": d.longest_run, "travel": d.way,
        }),
    );
    let as_faces = |(a, z): (String, String)| (face(&a), until(&z));
    (d.hours, d.meal) = (hours.map(as_faces), meal.map(as_faces));
    for _ in 0..dice.below(3) {
        let day = first.plus(dice.below(2) as i64);
        let (starts, ends) = dice.times(6, 23);
        let busy = json!({ "what": "Something", "first": day.to_string(), "starts": starts, "ends": ends });
        w.act("own_time.add", busy);
        d.busy.push((day, face(&starts), until(&ends)));
    }
    w.act(
        "offers.set_terms",
        json!({ "currency": "EUR", "fees": [{ "minutes": d.shortest, "amount": "40" }] }),
    );
    // Someone is at each of the places on both days, so that both are looked at.
    for (n, (facility, _)) in facilities.iter().enumerate() {
        let student = w.student(&format!("Ana {n}"));
        let days = [first.to_string(), first.plus(1).to_string()];
        let visit = comes(w, &student, facility, [&days[0], &days[1]]);
        for _ in 0..dice.below(4) {
            let (place, day) = (dice.below(2) as usize, first.plus(dice.below(2) as i64));
            let (there, shown) = &facilities[place];
            let courts = shown["courts"].as_array().unwrap().len() as u64;
            let court = (dice.below(3) > 0).then(|| dice.below(courts) as usize);
            let (starts, minutes) = (dice.time(8, 21), 30 + 15 * dice.below(4) as i64);
            let lesson = json!({
                "visits": [visit], "facility": there, "day": day.to_string(), "starts": starts,
                "minutes": minutes, "court": court.map(|court| shown["courts"][court]["id"].clone()),
            });
            w.act("lessons.plan", lesson);
            let from = minute_of(day, &starts, &d.places[place].zone);
            d.lessons.push(DrawnLesson { place, court, day, from, to: from + minutes });
        }
    }
    d
}

#[test]
fn free_hours_are_those_that_a_count_of_every_minute_finds() {
    let mut stretches = 0;
    // An ordinary day, and for New York those on which the clocks change (as in `kinds::zones`).
    for (seed, first) in (0..24).zip(["2026-05-11", "2026-03-08", "2026-11-01"].iter().cycle()) {
        let mut w = World::new();
        let first = Day::parse(first).unwrap();
        // In one world of four the first day is today: the clock stands at noon in Greenwich.
        let now = if seed % 4 == 3 { first } else { first.plus(-3) };
        w.on(&now.to_string());
        let mut d = drawn(&mut w, seed, first);
        d.now = now.date().and_hms_opt(12, 0, 0).unwrap().and_utc().timestamp() / 60;
        let last = first.plus(1);
        let trip = w.act("timetable.trip", json!({ "first": first, "last": last }));
        for (n, day) in [first, last].into_iter().enumerate() {
            let order: Vec<usize> = list(&trip["on"][n]["places"])
                .iter()
                .map(|p| d.places.iter().position(|place| place.name == p["place"]).unwrap())
                .collect();
            assert_eq!(order.len(), 2, "someone is at both places");
            let mut one = trip.clone();
            one["on"] = json!([trip["on"][n]]);
            one["on"][0]["nothing"] = Value::Null;
            let said = free(&one).remove(0);
            stretches += said.matches('-').count();
            assert_eq!(said, d.said(day, &order), "seed {seed}");
        }
    }
    assert!(stretches > 40, "there was something to find: {stretches}");
}

/// The figures of a year, a line for each row: the months that have any.
fn figures(of: &Value) -> String {
    let names = ["held", "agreed", "expected", "given", "to_come", "missed"];
    let month = |m: &Value| {
        let counts = names.iter().filter(|name| m["figures"][**name] != 0);
        let counts: Vec<String> =
            counts.map(|name| format!("{} {name}", m["figures"][*name])).collect();
        format!("{}: {}", m["month"], counts.join(", "))
    };
    list(&of["months"]).iter().map(month).collect::<Vec<_>>().join(" | ")
}

#[test]
fn a_year_counts_visits_where_they_begin_and_lessons_where_they_are() {
    let mut w = World::new();
    let hall = w.hall.clone();
    w.on("2027-12-01");
    let (ana, ben) = (w.student("Ana"), w.student("Ben"));
    // Over the year's end, over the end of a February with 29 days, and one that is still to come.
    let over = comes(&mut w, &ana, &hall, ["2027-12-30", "2028-01-02"]);
    let leap = comes(&mut w, &ana, &hall, ["2028-02-29", "2028-03-01"]);
    let with = comes(&mut w, &ben, &hall, ["2028-02-28", "2028-02-29"]);
    let gone = comes(&mut w, &ben, &hall, ["2028-07-01", "2028-07-02"]);
    let given = |w: &mut World, lesson: &str| w.act("lessons.give", json!({ "lesson": lesson }));
    w.on("2027-12-30");
    w.act("visits.open", json!({ "visit": over }));
    for day in ["2027-12-30", "2027-12-31", "2028-01-01"] {
        let l = lesson(&mut w, &[&over], &hall, day, "09:00");
        w.on(day);
        given(&mut w, &l);
    }
    w.on("2028-02-29");
    w.act("visits.open", json!({ "visit": leap }));
    let shared = lesson(&mut w, &[&leap, &with], &hall, "2028-02-29", "09:00");
    given(&mut w, &shared);
    let short = lesson(&mut w, &[&leap], &hall, "2028-02-29", "11:00");
    w.act("lessons.cut_short", json!({ "lesson": short, "given": 30, "reason": "a cramp" }));
    let missed = lesson(&mut w, &[&leap], &hall, "2028-02-29", "13:00");
    w.act("lessons.miss", json!({ "lesson": missed, "reason": "overslept" }));
    let off = lesson(&mut w, &[&leap], &hall, "2028-03-01", "07:00");
    w.act("lessons.call_off", json!({ "lesson": off, "reason": "storm" }));
    lesson(&mut w, &[&leap], &hall, "2028-03-01", "09:00");
    w.act("visits.call_off", json!({ "visit": gone, "reason": "work" }));
    w.act("visits.expect", json!({ "student": ben, "from": "2028-12-15", "to": "2029-01-31" }));

    let year = w.act("timetable.year", json!({}));
    let rows: Vec<String> = list(&year["people"])
        .iter()
        .map(|row| format!("{} | {}", id(row, "/name"), figures(row)))
        .collect();
    assert_eq!(
        rows,
        [
            "Ana | 1: 1 given | 2: 1 held, 2 given, 1 missed | 3: 1 to_come",
            "Ben | 2: 1 agreed, 1 given | 12: 1 expected",
        ]
    );
    assert_eq!(
        figures(&year),
        "1: 1 given | 2: 1 held, 1 agreed, 2 given, 1 missed | 3: 1 to_come | 12: 1 expected",
        "a shared lesson is one"
    );
    assert_eq!((&year["before"], &year["after"]), (&json!(2027), &Value::Null));
    let before = w.act("timetable.year", json!({ "year": 2027 }));
    assert_eq!(figures(&before), "12: 1 held, 2 given");
    assert_eq!((&before["before"], &before["after"]), (&Value::Null, &json!(2028)));
    let empty = w.act("timetable.year", json!({ "year": 2040 }));
    assert_eq!((&empty["people"], &empty["before"]), (&json!([]), &json!(2039)));

    // Each figure has behind it as many visits or lessons as it says.
    let mut looked = 0;
    for whose in list(&year["people"]).iter().chain([&year]) {
        let total = json!({ "month": null, "figures": whose["total"] });
        for month in list(&whose["months"]).iter().chain([&total]) {
            for (what, many) in month["figures"].as_object().unwrap() {
                let ask = json!({
                    "year": 2028, "month": month["month"], "student": whose["student"], "what": what,
                });
                let counted = w.act("timetable.counted", ask);
                let found = list(&counted["visits"]).len() + list(&counted["lessons"]).len();
                assert_eq!(json!(found), *many, "{} {what} in {}", whose["name"], month["month"]);
                assert_eq!(id(&counted, "/name"), whose["name"].as_str().unwrap_or_default());
                looked += found;
            }
        }
    }
    assert_eq!(looked, 2 * (6 + 3 + 8), "by month and as a whole");
}
