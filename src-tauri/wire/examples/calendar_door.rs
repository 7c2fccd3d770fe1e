//! The door of the outside check to calendars on a server: one JSON line in, one out.
//!
//! Each line has `act` (calendars, make, changes, get, put, remove), `address`, `user` and `password`,
//! and what the act needs; the answer has `ok`, or `trouble` with `words` where the trouble has some.
use std::io::BufRead;

use carryover_core::calendar::remote::{Account, Calendars, Expect, Found, Stored, Trouble};
use carryover_core::kinds::{Day, Span};
use carryover_wire::caldav::OverHttps;
use serde_json::{Value, json};

fn text(ask: &Value, key: &str) -> String {
    ask[key].as_str().unwrap_or_default().to_owned()
}

fn day(ask: &Value, key: &str) -> Result<Day, Trouble> {
    let date = text(ask, key).parse().map_err(|_| Trouble::Answer(format!("no day {key}")))?;
    Day::from_date(date).ok_or_else(|| Trouble::Answer(format!("no day {key}")))
}

fn found(one: &Found) -> Value {
    json!({"href": one.href, "name": one.name, "writable": one.writable})
}

fn stored(one: &Stored) -> Value {
    json!({"href": one.href, "etag": one.etag, "text": one.text})
}

fn answer(over: &OverHttps, ask: &Value) -> Result<Value, Trouble> {
    let account = Account {
        address: text(ask, "address"),
        user: text(ask, "user"),
        password: text(ask, "password"),
    };
    let href = text(ask, "href");
    Ok(match ask["act"].as_str().unwrap_or_default() {
        "calendars" => over.calendars(&account)?.iter().map(found).collect(),
        "make" => found(&over.make(&account, &text(ask, "name"))?),
        "changes" => {
            let within = Span { first: day(ask, "first")?, last: day(ask, "last")? };
            let changes = over.changes(&account, &href, ask["token"].as_str(), within)?;
            json!({
                "token": changes.token,
                "whole": changes.whole,
                "changed": changes.changed.iter().map(stored).collect::<Value>(),
                "gone": changes.gone,
            })
        }
        "get" => over.get(&account, &href)?.as_ref().map_or(Value::Null, stored),
        "put" => {
            let expect = match ask["version"].as_str() {
                Some(version) => Expect::Version(version.to_owned()),
                None => Expect::Nothing,
            };
            json!(over.put(&account, &href, &text(ask, "text"), &expect)?)
        }
        "remove" => json!(over.remove(&account, &href, &text(ask, "version"))?),
        other => return Err(Trouble::Answer(format!("no act {other}"))),
    })
}

fn trouble(trouble: &Trouble) -> Value {
    let words = match trouble {
        Trouble::Address(words)
        | Trouble::Away(words)
        | Trouble::Certificate(words)
        | Trouble::Answer(words) => Some(words),
        _ => None,
    };
    let name: String = format!("{trouble:?}").chars().take_while(|c| c.is_alphabetic()).collect();
    json!({"trouble": name, "words": words})
}

fn main() -> Result<(), String> {
    let over = OverHttps::new()?;
    for line in std::io::stdin().lock().lines().map_while(Result::ok) {
        let ask = serde_json::from_str(&line).unwrap_or(Value::Null);
        let answer = answer(&over, &ask);
        println!("{}", answer.map_or_else(|e| trouble(&e), |ok| json!({"ok": ok})));
    }
    Ok(())
}
