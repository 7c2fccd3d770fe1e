//! The door of the outside check to calendar objects: one JSON line in, one out, named as the command
//! line's calculations are: `ical_door calc --lines ical_write`.
use std::io::BufRead;

use carryover_core::ical::{self, Event, Method, Person};
use carryover_core::kinds::zones::Zone;
use serde_json::{Value, json};

fn text(v: &Value, k: &str) -> String {
    v[k].as_str().unwrap_or_default().to_owned()
}

fn person(v: &Value) -> Option<Person> {
    v.is_object().then(|| Person { name: text(v, "name"), email: text(v, "email") })
}

fn answer(ask: &Value) -> Result<Value, String> {
    let say = |e: &dyn std::fmt::Display| e.to_string();
    let zone = |k: &str| Zone::parse(&text(ask, k)).map_err(|e| say(&e));
    let day = |k: &str| text(ask, k).parse::<chrono::NaiveDate>().map_err(|e| say(&e));
    match ask["kind"].as_str().unwrap_or_default() {
        "ical_write" => {
            let method = match ask["method"].as_str() {
                Some("request") => Some(Method::Request),
                Some("cancel") => Some(Method::Cancel),
                Some("publish") => Some(Method::Publish),
                _ => None,
            };
            let mut events = Vec::new();
            for one in ask["events"].as_array().into_iter().flatten() {
                events.push(Event {
                    uid: text(one, "uid"),
                    sequence: u32::try_from(one["sequence"].as_u64().unwrap_or(0)).unwrap_or(0),
                    stamp: text(one, "stamp").parse().map_err(|e: chrono::ParseError| say(&e))?,
                    zone: Zone::parse(&text(one, "zone")).map_err(|e| say(&e))?,
                    starts: text(one, "starts").parse().map_err(|e: chrono::ParseError| say(&e))?,
                    ends: text(one, "ends").parse().map_err(|e: chrono::ParseError| say(&e))?,
                    second: one["second"].as_bool().unwrap_or(false),
                    summary: text(one, "summary"),
                    place: text(one, "place"),
                    words: text(one, "words"),
                    organizer: person(&one["organizer"]),
                    attendees: one["attendees"]
                        .as_array()
                        .into_iter()
                        .flatten()
                        .filter_map(person)
                        .collect(),
                    cancelled: one["cancelled"].as_bool().unwrap_or(false),
                });
            }
            Ok(json!({"text": ical::write(method, &events).map_err(|e| say(&e))?}))
        }
        "ical_busy" => {
            let home = zone("home")?;
            match ical::busy(text(ask, "text").as_bytes(), day("first")?, day("last")?, &home) {
                Ok(read) => Ok(json!({
                    "busy": read.busy.iter().map(|b| json!({
                        "starts": b.starts.to_rfc3339_opts(chrono::SecondsFormat::Secs, true),
                        "ends": b.ends.to_rfc3339_opts(chrono::SecondsFormat::Secs, true),
                        "all_day": b.all_day.map(|(a, z)| [a.to_string(), z.to_string()]),
                        "summary": b.summary})).collect::<Vec<_>>(),
                    "events": read.events, "skipped": read.skipped})),
                Err(broken) => Ok(json!({"broken": {"line": broken.line, "words": broken.words}})),
            }
        }
        "ical_recur" => {
            let except: Vec<chrono::NaiveDate> = ask["except"]
                .as_array()
                .into_iter()
                .flatten()
                .filter_map(|d| d.as_str()?.parse().ok())
                .collect();
            let starts = text(ask, "starts").parse().map_err(|e: chrono::ParseError| say(&e))?;
            let found = ical::recur::occurrences(
                &text(ask, "rule"),
                starts,
                &except,
                day("first")?,
                day("last")?,
            )?;
            Ok(
                json!({"times": found.iter().map(|t| t.format("%Y-%m-%dT%H:%M:%S").to_string()).collect::<Vec<_>>()}),
            )
        }
        other => Err(format!("no kind {other}")),
    }
}

fn main() {
    for line in std::io::stdin().lock().lines() {
        let Ok(line) = line else { break };
        let mut ask: Value = serde_json::from_str(&line).unwrap_or(Value::Null);
        // `calc --lines KIND`, as the command line has it.
        if let (Some(kind), Some(ask)) = (std::env::args().nth(3), ask.as_object_mut()) {
            ask.insert("kind".into(), kind.into());
        }
        println!("{}", answer(&ask).unwrap_or_else(|words| json!({"error": words})));
    }
}
