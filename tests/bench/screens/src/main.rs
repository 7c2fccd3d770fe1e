//! Times what every screen asks of the core on a file of ten years: 300 students, some 2,000 visits,
//! 400,000 tries counted one by one, all made through the program's own commands. Prints one JSON
//! value: for each reading its median and its 99th percentile in milliseconds.
//!
//! Takes the folder to work in (a folder in memory makes the making fast; reading is from memory
//! anyway) and, if given, how many times larger the file is to be; or a coach file that was made so
//! before. `chart FILE` instead makes a file with one student of 40 visits and 60 goals, for the page
//! to draw; `year FOLDER` times the week, the trip and the year on a year of 400 lessons; `money FOLDER`
//! times what money asks for after ten years, 4,000 invoices and some 30,000 postings, and issuing;
//! `mail FOLDER` times what the out-tray asks for with 50,000 messages in it.

use std::collections::BTreeMap;
use std::error::Error;
use std::path::Path;
use std::sync::Arc;
use std::time::Instant;

use carryover_core::app::CoachFile;
use carryover_core::commands::{call, catch_up};
use carryover_core::kinds::{CountedIds, Day, FixedClock};
use carryover_core::outtray::carry::{self, Came, Next};
use serde_json::{Value, json};

type Result<T> = std::result::Result<T, Box<dyn Error>>;

const STUDENTS: usize = 300;
const VISITS: usize = 7;
/// Tries a visit: in all 300 × 7 × 190 = 399,000.
const TRIES: usize = 190;
const GOALS: usize = 3;
const SOUGHT: [&str; 4] = ["an", "lob", "47", "nobody"];
const SEEN: [&str; 3] = ["Stands too far back", "Late", "Feet"];
/// Calls of each reading, each for another student, visit, goal or lesson.
const ROUNDS: usize = 400;

fn main() -> Result<()> {
    let mut given = std::env::args().skip(1);
    let within = given.next().ok_or("name the folder to work in")?;
    if within == "year" {
        return a_year(Path::new(&given.next().ok_or("name the folder to work in")?));
    }
    if within == "money" {
        return ten_years_of_money(Path::new(&given.next().ok_or("name the folder to work in")?));
    }
    if within == "mail" {
        return a_full_tray(Path::new(&given.next().ok_or("name the folder to work in")?));
    }
    if within == "chart" {
        return one_student(Path::new(&given.next().ok_or("name the file to make")?));
    }
    let times: usize = given.next().map_or(Ok(1), |n| n.parse())?;
    let start = Instant::now();
    let folder;
    let path = if Path::new(&within).is_file() {
        Path::new(&within).to_owned()
    } else {
        folder = tempfile::tempdir_in(within)?;
        let path = folder.path().join("career.carryover");
        live(&path, STUDENTS * times)?;
        path
    };
    let made_s = start.elapsed().as_secs_f64();
    let bytes = std::fs::metadata(&path)?.len();
    let today = Arc::new(FixedClock::on(today()?));
    let mut file = CoachFile::open_with(&path, today, Arc::new(CountedIds::new(12)))?;
    catch_up(&mut file)?;
    let Known { students, visits, goals, lessons } = Known::of(&mut file)?;

    let mut dice = Dice(7);
    let mut read = BTreeMap::new();
    type Input<'a> = Box<dyn Fn(&mut Dice) -> Value + 'a>;
    let of = |name: &'static str, ids: &'static str| -> (&'static str, Input<'_>) {
        let (students, visits, goals, lessons) = (&students, &visits, &goals, &lessons);
        (
            name,
            Box::new(move |dice| match ids {
                "student" => json!({ "student": students[dice.below(students.len())] }),
                "visit" => json!({ "visit": visits[dice.below(visits.len())] }),
                "goal" => json!({ "goal": goals[dice.below(goals.len())] }),
                "lesson" => json!({ "lesson": lessons[dice.below(lessons.len())] }),
                "lessons" => json!({ "visit": visits[dice.below(visits.len())] }),
                "history" => {
                    json!({ "thing": "student", "id": students[dice.below(students.len())] })
                }
                "find" => json!({ "text": SOUGHT[dice.below(SOUGHT.len())] }),
                "month" => json!({ "from": "2026-02-10", "to": "2026-03-20" }),
                "screen" => json!({ "most": 100 }),
                "letters" => json!({ "issued": dice.below(2) == 0, "most": 51 }),
                // As the screen asks at first, and once a hundred lines were asked for.
                "year" => json!({
                    "from": "2025-03-13", "to": "2026-03-12",
                    "most_moves": 12 + 88 * (dice.below(2)), "most_waits": 12 + 88 * (dice.below(2)),
                }),
                "court" => json!({ "sport": "racquetball" }),
                "week" => json!({ "day": within_ten_years(dice) }),
                "trip" => {
                    let first = within_ten_years(dice);
                    json!({ "first": first, "last": first.plus(6) })
                }
                "years" => json!({ "year": 2017 + dice.below(10) }),
                _ => json!({}),
            }),
        )
    };
    let readings: Vec<(&'static str, Input<'_>)> = vec![
        of("reports.day_sheet", ""),
        of("reports.find", "find"),
        of("reports.history", "history"),
        of("reports.season", "year"),
        of("reports.load", "visit"),
        of("students.list", "screen"),
        of("students.facts", "student"),
        of("sports.show", "court"),
        of("sports.skills", "court"),
        of("sports.drills", "court"),
        of("students.show", "student"),
        of("facilities.list", ""),
        of("intake.ready", "lesson"),
        of("intake.ready_person", "student"),
        of("intake.show", "student"),
        of("intake.consents", "student"),
        of("intake.notices_needed", "student"),
        of("intake.incidents", ""),
        of("keeping.due", ""),
        of("accounts.overview", ""),
        of("accounts.to_settle", ""),
        of("invoices.list", ""),
        of("costs.list", "trip"),
        of("costs.rates", ""),
        of("goals.chart", "student"),
        of("goals.list", "student"),
        of("goals.show", "goal"),
        of("goals.on_court", "visit"),
        of("goals.proposals", "visit"),
        of("goals.jottings", "visit"),
        of("goals.look_back", "visit"),
        of("goals.reasons", "student"),
        of("observations.list", "student"),
        of("assessments.list", "student"),
        of("assessments.tests", "student"),
        of("visits.show", "visit"),
        of("visits.list", "student"),
        of("lessons.show", "lesson"),
        of("lessons.list", "lessons"),
        of("lessons.plan_lines", "lesson"),
        of("lessons.propose_plan", "lesson"),
        of("lessons.templates", ""),
        of("letters.list", "letters"),
        of("letters.draft", "visit"),
        of("home.show", "visit"),
        of("journal.newest", ""),
        of("settings.show", ""),
        of("bookings.list", ""),
        of("own_time.show", ""),
        of("own_time.list", ""),
        of("planning.wish", "visit"),
        of("offers.list", "visit"),
        of("offers.terms", ""),
        of("calendar.due", "visit"),
        of("timetable.week", "week"),
        of("timetable.trip", "trip"),
        of("trips.result", "trip"),
        of("trips.others", "trip"),
        of("timetable.year", "years"),
    ];
    for (name, input) in &readings {
        read.insert(*name, timed(&mut file, name, || input(&mut dice))?);
    }
    let worst = read.iter().filter_map(|(_, r)| r["p99"].as_f64()).fold(0.0, f64::max);
    println!(
        "{}",
        json!({
            "students": students.len(), "visits": visits.len(), "goals": goals.len(),
            "tries": visits.len() * TRIES, "bytes": bytes, "made_s": made_s,
            "read_ms": read, "worst_p99_ms": worst,
        })
    );
    Ok(())
}

/// Calls a reading again and again: its median, its 99th percentile and the longest in milliseconds,
/// and the most bytes of an answer.
fn timed(file: &mut CoachFile, name: &str, mut input: impl FnMut() -> Value) -> Result<Value> {
    let mut took = Vec::with_capacity(ROUNDS);
    let mut longest = 0;
    for _ in 0..ROUNDS {
        let input = input();
        let start = Instant::now();
        let answer = call(file, name, input).map_err(|e| format!("{name}: {e}"))?;
        // What the window does with an answer before it leaves the core.
        let said = serde_json::to_string(&answer)?;
        took.push(start.elapsed().as_secs_f64() * 1000.0);
        longest = longest.max(said.len());
    }
    took.sort_by(f64::total_cmp);
    Ok(json!({
        "median": took[ROUNDS / 2], "p99": took[ROUNDS * 99 / 100], "most": took[ROUNDS - 1],
        "bytes": longest,
    }))
}

/// Times what the week, the trip and the year ask for in a year of 400 lessons: 40 students who come
/// for two days five times, two lessons each time.
fn a_year(within: &Path) -> Result<()> {
    let folder = tempfile::tempdir_in(within)?;
    let path = folder.path().join("year.carryover");
    CoachFile::create(&path)?;
    let clock = Arc::new(FixedClock::on(Day::of(2026, 6, 30).ok_or("a day")?));
    let file = CoachFile::open_with(&path, clock, Arc::new(CountedIds::new(17)))?;
    let mut career = Career { file };
    let hall = career.act("facilities.add", json!({ "name": "Hall", "zone": "Europe/Lisbon" }))?;
    let hall = text(&hall["id"])?;
    let new_year = Day::of(2026, 1, 1).ok_or("a day")?;
    let mut lessons = 0;
    for n in 0..40_i64 {
        let student = career.act("students.add", json!({ "name": format!("Ana Banto {n}") }))?;
        for nth in 0..5 {
            let first = new_year.plus(nth * 72 + n);
            let days = json!({
                "student": student["id"], "facility": hall, "first_day": first, "last_day": first.plus(1),
            });
            let visit = text(&career.act("visits.plan", days)?["id"])?;
            for day in 0..2 {
                let starts = format!("{:02}:00", 8 + n % 10);
                let lesson = json!({
                    "visits": [visit], "facility": hall, "day": first.plus(day), "starts": starts,
                    "minutes": 60,
                });
                let lesson = career.act("lessons.plan", lesson)?;
                lessons += 1;
                if nth < 2 {
                    career.act("lessons.give", json!({ "lesson": lesson["id"] }))?;
                }
            }
        }
    }
    let mut dice = Dice(19);
    let mut day = move || new_year.plus(i64::try_from(dice.below(365)).unwrap_or(0));
    let mut read = BTreeMap::new();
    let file = &mut career.file;
    read.insert("timetable.year", timed(file, "timetable.year", || json!({ "year": 2026 }))?);
    let all = || json!({ "year": 2026, "what": "to_come" });
    read.insert("timetable.counted", timed(file, "timetable.counted", all)?);
    read.insert("timetable.week", timed(file, "timetable.week", || json!({ "day": day() }))?);
    let trip = || {
        let first = day();
        json!({ "first": first, "last": first.plus(6) })
    };
    read.insert("timetable.trip", timed(file, "timetable.trip", trip)?);
    println!("{}", json!({ "lessons": lessons, "read_ms": read }));
    Ok(())
}

/// Invoices in ten years.
const INVOICES: usize = 4_000;
/// Who pays them.
const PAYERS: usize = 250;
/// The first day of the ten years of money.
const FIRST: (i32, u32, u32) = (2016, 3, 14);

/// Times what money asks for after ten years: most invoices are paid, one in forty is still open.
fn ten_years_of_money(within: &Path) -> Result<()> {
    let folder = tempfile::tempdir_in(within)?;
    let path = folder.path().join("money.carryover");
    CoachFile::create(&path)?;
    let clock = Arc::new(FixedClock::on(today()?));
    let file = CoachFile::open_with(&path, clock.clone(), Arc::new(CountedIds::new(23)))?;
    let mut career = Career { file };
    let seller = json!({
        "name": "Robin Hale", "address": "1 Quay Street\nSaltmere", "country": "IE", "vat_id": "IE1234567T",
        "account": "DE33100205000001194700", "prices": "gross",
    });
    career.act("invoices.set_seller", seller)?;
    career.act("prices.set_tax", json!({ "category": "S", "rate": "19" }))?;
    let mut payers = Vec::new();
    for n in 0..PAYERS {
        let payer = json!({ "name": format!("Ana Banto {n}"), "address": "2 Mole Road", "country": "IE" });
        payers.push(text(&career.act("payers.add", json!({ "payer": payer }))?["id"])?);
    }
    let mut dice = Dice(29);
    let mut issued = Vec::with_capacity(INVOICES);
    let mut ids = Vec::new();
    let (year, month, day) = FIRST;
    let first = Day::of(year, month, day).ok_or("a day")?;
    for n in 0..INVOICES {
        let day = first.plus(i64::try_from(n * 3_650 / INVOICES)?);
        clock.set(day);
        let payer = &payers[dice.below(PAYERS)];
        let line = |what: &str, price: usize, rate: &str| {
            json!({ "what": what, "words": format!("{what} at the hall"), "day": day, "quantity": "2",
                    "price": price.to_string(), "tax": { "category": "S", "rate": rate } })
        };
        let lines = json!([
            line("lesson", 40 + dice.below(60), "19"), line("court", 8 + dice.below(20), "7"),
            line("travel", 5 + dice.below(40), "19"),
        ]);
        let draft = json!({ "payer": payer, "currency": "EUR", "lines": lines });
        let draft = career.act("invoices.draft", draft)?;
        let start = Instant::now();
        let invoice = career.act("invoices.issue", json!({ "invoice": draft["id"] }))?;
        issued.push(start.elapsed().as_secs_f64() * 1000.0);
        ids.push(invoice["id"].clone());
        if n % 40 != 0 {
            let paid = json!({
                "payer": payer, "method": "transfer", "currency": "EUR", "amount": invoice["open"],
                "invoices": [{ "invoice": invoice["id"], "amount": invoice["open"] }],
            });
            career.act("payments.receive", paid)?;
        }
    }
    clock.set(today()?);
    issued.sort_by(f64::total_cmp);
    let file = &mut career.file;
    let rows = call(file, "accounts.balanced", json!({}))?.value;
    let mut read = BTreeMap::new();
    read.insert("accounts.overview", timed(file, "accounts.overview", || json!({}))?);
    read.insert("outtray.follow_ups", timed(file, "outtray.follow_ups", || json!({}))?);
    read.insert("invoices.list open", timed(file, "invoices.list", || json!({ "open": true }))?);
    let account = || json!({ "payer": payers[dice.below(PAYERS)] });
    read.insert("payments.account", timed(file, "payments.account", account)?);
    let mut other = Dice(31);
    let year = || json!({ "year": 2017 + other.below(9) });
    read.insert("accounts.year", timed(file, "accounts.year", year)?);
    let mut other = Dice(37);
    let show = || json!({ "invoice": ids[other.below(ids.len())] });
    read.insert("invoices.show", timed(file, "invoices.show", show)?);
    println!(
        "{}",
        json!({
            "invoices": INVOICES, "entries": rows["entries"], "read_ms": read,
            "issue_ms": { "median": issued[INVOICES / 2], "p99": issued[INVOICES * 99 / 100] },
        })
    );
    Ok(())
}

/// How many messages there are.
const MESSAGES: usize = 50_000;
/// How many of them were not read yet, or were released and not handed over.
const TO_READ: usize = 300;
const WAITING: usize = 200;

/// Times what the out-tray asks for: most messages were taken by the mail server, one in a hundred may have
/// been sent, and some are to be read or on their way.
fn a_full_tray(within: &Path) -> Result<()> {
    let folder = tempfile::tempdir_in(within)?;
    let path = folder.path().join("mail.carryover");
    CoachFile::create(&path)?;
    let clock = Arc::new(FixedClock::on(today()?));
    let file = CoachFile::open_with(&path, clock, Arc::new(CountedIds::new(41)))?;
    let mut career = Career { file };
    career.act("settings.change", json!({ "name": "Robin Hale", "email": "robin@hale.example" }))?;
    career.act("outtray.set_account", json!({ "host": "mail.example.org", "port": 465 }))?;
    let text_of_words = json!({ "kind": "words", "language": "en", "subject": "Hello", "words": "Dear {name}" });
    career.act("outtray.set_text", text_of_words)?;
    let mut students = Vec::new();
    for n in 0..STUDENTS {
        let student = json!({ "name": format!("Ana Banto {n}"), "email": format!("ana{n}@example.org") });
        students.push(text(&career.act("students.add", student)?["id"])?);
    }
    let mut dice = Dice(43);
    let mut ids = Vec::with_capacity(MESSAGES);
    for n in 0..MESSAGES {
        let student = &students[dice.below(students.len())];
        let put = json!({ "of": { "kind": "words", "student": student } });
        let message = career.act("outtray.put", put)?["messages"][0].clone();
        ids.push(message.clone());
        if n < TO_READ {
            continue;
        }
        career.act("outtray.release", json!({ "messages": [message] }))?;
        if n >= MESSAGES - WAITING {
            continue;
        }
        if let Next::Parcel(parcel) =
            career.file.write("outtray.next", "Going", carry::next)?.value
        {
            let came = match n % 100 {
                0 => Came::Unsure(String::new()),
                _ => Came::Accepted("2.0.0 queued".to_owned()),
            };
            career.file.write("outtray.came", "Came", |db| carry::came(db, parcel.message, &came))?;
        }
    }
    let file = &mut career.file;
    let mut read = BTreeMap::new();
    read.insert("outtray.list", timed(file, "outtray.list", || json!({}))?);
    let before = || json!({ "before": "2026-03-12T12:00:30.000+00:00" });
    read.insert("outtray.list older", timed(file, "outtray.list", before)?);
    read.insert("outtray.follow_ups", timed(file, "outtray.follow_ups", || json!({}))?);
    let mut other = Dice(47);
    let of = || json!({ "student": students[other.below(students.len())] });
    read.insert("outtray.of_student", timed(file, "outtray.of_student", of)?);
    let mut other = Dice(53);
    let which = || json!({ "message": ids[other.below(ids.len())] });
    read.insert("outtray.show", timed(file, "outtray.show", which)?);
    let mut other = Dice(59);
    let which = || json!({ "message": ids[other.below(ids.len())] });
    read.insert("outtray.look", timed(file, "outtray.look", which)?);
    println!("{}", json!({ "messages": MESSAGES, "read_ms": read }));
    Ok(())
}

/// A day of the ten years.
fn within_ten_years(dice: &mut Dice) -> Day {
    let last = today().unwrap_or(Day::EPOCH);
    last.plus(-i64::try_from(dice.below(3_650)).unwrap_or(0))
}

/// Numbers that repeat: a linear congruential generator with the constants of Knuth's MMIX.
struct Dice(u64);

impl Dice {
    fn below(&mut self, n: usize) -> usize {
        self.0 =
            self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(self.0 >> 33).unwrap_or(0) % n.max(1)
    }
}

/// The last day of the ten years.
fn today() -> Result<Day> {
    Ok(Day::of(2026, 3, 12).ok_or("a day")?)
}

/// Whom and what to ask about.
struct Known {
    students: Vec<String>,
    visits: Vec<String>,
    goals: Vec<String>,
    lessons: Vec<String>,
}

impl Known {
    fn of(file: &mut CoachFile) -> Result<Self> {
        let mut ids = |name: &str, input: Value, at: &str| -> Result<Vec<String>> {
            let these = call(file, name, input).map_err(|e| format!("{name}: {e}"))?.value;
            these
                .as_array()
                .ok_or("a list")?
                .iter()
                .map(|one| text(&one.pointer(at).cloned().unwrap_or_default()))
                .collect()
        };
        let students = ids("students.list", json!({}), "/id")?;
        let mut goals = Vec::new();
        for student in &students {
            goals.extend(ids("goals.list", json!({ "student": student }), "/goal/id")?);
        }
        let visits = ids("visits.list", json!({}), "/id")?;
        let lessons = ids("lessons.list", json!({}), "/id")?;
        Ok(Self { students, visits, goals, lessons })
    }
}

/// Lives a coach's ten years in one file.
fn live(path: &Path, students: usize) -> Result<()> {
    CoachFile::create(path)?;
    let today = today()?;
    let clock = Arc::new(FixedClock::on(today));
    let file = CoachFile::open_with(path, clock.clone(), Arc::new(CountedIds::new(11)))?;
    let mut career = Career { file };
    let hall = career.act("facilities.add", json!({ "name": "Hall", "zone": "Europe/Lisbon" }))?;
    let hall = text(&hall["id"])?;
    let mut dice = Dice(3);
    for n in 0..students {
        let student = career.act("students.add", json!({ "name": format!("Ana Banto {n}") }))?;
        let student = text(&student["id"])?;
        let mut goals: Vec<String> = Vec::new();
        let apart = 3_650 / i64::try_from(VISITS)?;
        for visit in 0..VISITS {
            let years_ago = apart * i64::try_from(VISITS - 1 - visit)?;
            let ago = years_ago + 3 + i64::try_from(dice.below(usize::try_from(apart - 10)?))?;
            let first = today.plus(-ago);
            clock.set(first);
            let days = json!({
                "student": student, "facility": hall, "first_day": first,
                "last_day": first.plus(2),
            });
            let id = text(&career.act("visits.plan", days)?["id"])?;
            career.act("visits.open", json!({ "visit": id }))?;
            while goals.len() < GOALS {
                let goal = json!({
                    "student": student, "visit": id, "title": format!("Lob serve {}", goals.len() + 1),
                    "condition": "fed", "counts": "result", "need": 15, "of": 20, "cue": "Lift",
                });
                goals.push(text(&career.act("goals.set", goal)?["goal"]["id"])?);
            }
            career.lesson_on(&hall, &id, first)?;
            career.tries(&goals, &id, visit > 0, &mut dice)?;
            if dice.below(3) == 0 {
                career.act(
                    "observations.see",
                    json!({
                        "student": student, "visit": id, "kind": "fault",
                        "words": SEEN[dice.below(SEEN.len())],
                    }),
                )?;
            }
            career.act("goals.accept", json!({ "visit": id }))?;
            career.act("visits.close", json!({ "visit": id }))?;
            // One goal in four is let go, so that goals change over the years.
            if dice.below(4) == 0 {
                let gone = goals.remove(0);
                let close = json!({ "goal": gone, "kind": "close", "reason": "done with it" });
                // One that was kept is closed already.
                let _ = call(&mut career.file, "goals.decide", close);
            }
        }
    }
    Ok(())
}

/// One student of 40 visits and 60 goals: three goals more at every other visit, all carried on.
fn one_student(path: &Path) -> Result<()> {
    CoachFile::create(path)?;
    let clock = Arc::new(FixedClock::on(today()?));
    let file = CoachFile::open_with(path, clock.clone(), Arc::new(CountedIds::new(13)))?;
    let mut career = Career { file };
    let hall = career.act("facilities.add", json!({ "name": "Hall", "zone": "Europe/Lisbon" }))?;
    let student = career.act("students.add", json!({ "name": "Ana Banto" }))?;
    let (hall, student) = (text(&hall["id"])?, text(&student["id"])?);
    let (mut goals, mut dice) = (Vec::<String>::new(), Dice(5));
    for visit in 0..40 {
        let first = today()?.plus(-60 * (40 - visit));
        clock.set(first);
        let days = json!({
            "student": student, "facility": hall, "first_day": first, "last_day": first.plus(2),
        });
        let id = text(&career.act("visits.plan", days)?["id"])?;
        career.act("visits.open", json!({ "visit": id }))?;
        for n in 0..if visit % 2 == 0 { 3 } else { 0 } {
            let goal = json!({
                "student": student, "visit": id, "condition": "fed", "counts": "result",
                "title": format!("Backhand off the back wall, deep to the corner {}", goals.len() + n),
                "need": 15, "of": 20,
            });
            goals.push(text(&career.act("goals.set", goal)?["goal"]["id"])?);
        }
        for goal in &goals {
            // From 10 to 17 of 20: met and slipped, seldom kept.
            for kind in ["practice", "end_test"] {
                let total = json!({
                    "goal": goal, "visit": id, "kind": kind, "made": 10 + dice.below(8), "tries": 20,
                });
                career.act("goals.enter_total", total)?;
            }
        }
        career.act("visits.close", json!({ "visit": id }))?;
    }
    println!("{}", json!({ "student": student, "goals": goals.len() }));
    Ok(())
}

/// The file while it is lived.
struct Career {
    file: CoachFile,
}

impl Career {
    fn act(&mut self, name: &str, input: Value) -> Result<Value> {
        Ok(call(&mut self.file, name, input).map_err(|e| format!("{name}: {e}"))?.value)
    }

    fn lesson_on(&mut self, hall: &str, visit: &str, day: Day) -> Result<()> {
        let lesson = json!({
            "visits": [visit], "facility": hall, "day": day, "starts": "09:30", "minutes": 60,
        });
        let lesson = text(&self.act("lessons.plan", lesson)?["id"])?;
        self.act("lessons.give", json!({ "lesson": lesson }))?;
        Ok(())
    }

    /// Blocks of about twenty tries, shared among the goals.
    fn tries(
        &mut self,
        goals: &[String],
        visit: &str,
        carried: bool,
        dice: &mut Dice,
    ) -> Result<()> {
        let mut left = TRIES;
        let mut round = 0;
        while left > 0 {
            let goal = &goals[round % goals.len()];
            let kind = match round / goals.len() {
                0 if carried => "retest",
                2 => "end_test",
                _ => "practice",
            };
            let start = json!({ "goal": goal, "visit": visit, "kind": kind });
            let started = call(&mut self.file, "goals.start_block", start);
            round += 1;
            // A goal that is new at this visit has nothing to be retested.
            let Ok(started) = started else { continue };
            let block = text(&started.value["id"])?;
            for _ in 0..left.min(21) {
                let made = dice.below(10) < 7;
                self.act("goals.touch", json!({ "block": block, "made": made }))?;
                left -= 1;
            }
            self.act("goals.end_block", json!({ "block": block }))?;
        }
        Ok(())
    }
}

fn text(value: &Value) -> Result<String> {
    Ok(value.as_str().ok_or_else(|| format!("{value} is no text"))?.to_owned())
}
