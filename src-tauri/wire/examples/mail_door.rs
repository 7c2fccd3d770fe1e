//! The door of the outside check to handing messages over: opens a coach file at a desk, hands over what was
//! released, and prints how that stands once it rests, fails or waits.
//!
//! `mail_door FILE`; the password is in `MAIL_PASSWORD`, the authorities to trust where `SSL_CERT_FILE` says.
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

use carryover_core::app::CoachFile;
use carryover_core::desk::{Back, Beyond, Desk, Host};
use carryover_core::error::Result;
use carryover_wire::caldav::OverHttps;
use carryover_wire::keychain::Keychain;
use carryover_wire::smtp::OverSmtp;
use serde_json::{Value, json};

/// Nobody is asked anything.
struct Nobody;

impl Host for Nobody {
    fn choose_to_open(&self, _: &str, _: &str, _: &str) -> Option<PathBuf> {
        None
    }

    fn choose_to_save(&self, _: &str, _: &str) -> Option<PathBuf> {
        None
    }

    fn open_document(&self, _: &Path) -> Result<()> {
        Ok(())
    }
}

type Place = Arc<Mutex<Option<Desk>>>;

fn ask(place: &Place, name: &str, input: Value) -> Result<Value> {
    match place.lock().unwrap_or_else(PoisonError::into_inner).as_mut() {
        Some(desk) => desk.call(name, input).map(|answer| answer.value),
        None => Ok(Value::Null),
    }
}

fn run() -> std::result::Result<Value, Box<dyn std::error::Error>> {
    let file = PathBuf::from(std::env::args().nth(1).ok_or("mail_door FILE")?);
    let folder = file.parent().ok_or("a file in a folder")?.to_owned();
    let place: Place = Arc::new(Mutex::new(None));
    let way = Arc::clone(&place);
    let back: Back = Arc::new(move |act| {
        if let Some(desk) = way.lock().unwrap_or_else(PoisonError::into_inner).as_mut() {
            act(desk);
        }
    });
    let memory = folder.join("recent.json");
    let desk = Desk::new(&folder, &memory, Box::new(CoachFile::open), |_| Ok(()), Box::new(Nobody));
    let desk = desk.reaching(Beyond {
        calendars: Arc::new(OverHttps::new()?),
        secrets: Arc::new(Keychain::new()),
        carrier: Arc::new(OverSmtp::new()),
        back,
    });
    *place.lock().unwrap_or_else(PoisonError::into_inner) = Some(desk);
    ask(&place, "desk.open", json!({ "path": file }))?;
    let password = std::env::var("MAIL_PASSWORD")?;
    let mut now = ask(&place, "desk.send", json!({ "password": password }))?;
    while now["stage"] == "sending" {
        std::thread::sleep(Duration::from_millis(5));
        now = ask(&place, "desk.sending", json!({}))?;
    }
    Ok(now)
}

fn main() {
    match run() {
        Ok(now) => println!("{now}"),
        Err(error) => {
            eprintln!("{error}");
            std::process::exit(1);
        }
    }
}
