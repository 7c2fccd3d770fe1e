//! The door of the outside check to the keychain: one JSON line in, one out.
//!
//! Each line has `act` (ready, get, keep, forget), and `name` and `password` where the act needs them.
use std::io::BufRead;

use carryover_core::calendar::remote::Secrets;
use carryover_wire::keychain::Keychain;
use serde_json::{Value, json};

fn answer(keychain: &Keychain, ask: &Value) -> Result<Value, String> {
    let text = |key: &str| ask[key].as_str().unwrap_or_default();
    Ok(match text("act") {
        "ready" => json!(keychain.ready()?),
        "get" => json!(keychain.get(text("name"))?),
        "keep" => json!(keychain.keep(text("name"), text("password"))?),
        "forget" => json!(keychain.forget(text("name"))?),
        other => return Err(format!("no act {other}")),
    })
}

fn main() {
    let keychain = Keychain::new();
    for line in std::io::stdin().lock().lines().map_while(Result::ok) {
        let ask = serde_json::from_str(&line).unwrap_or(Value::Null);
        let answer = answer(&keychain, &ask);
        println!("{}", answer.map_or_else(|words| json!({"words": words}), |ok| json!({"ok": ok})));
    }
}
