//! Starting: where files are kept on this machine, what was asked for on the command line, and a
//! second start, which comes to the window that is there.

use std::error::Error as StdError;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, mpsc};

use carryover_core::app::CoachFile;
use carryover_core::desk::{Back, Beyond, Desk};
use carryover_core::error::Failure;
use carryover_wire::caldav::OverHttps;
use carryover_wire::keychain::Keychain;
use carryover_wire::smtp::OverSmtp;
use serde_json::{Value, json};
use tauri::{AppHandle, Manager};
use tauri_plugin_dialog::{DialogExt, MessageDialogKind};

use crate::calls::Ground;
use crate::faults::Faults;
use crate::host::ThisMachine;
use crate::window;

/// Names another folder for all the program keeps.
const FOLDER: &str = "CARRYOVER_FOLDER";

/// What the command line asks for.
#[derive(Debug, PartialEq, Eq)]
enum Asked {
    /// The file that was open last.
    Last,
    /// The sample season.
    Sample,
    /// This file.
    File(PathBuf),
}

/// Puts the desk in its place, begins to open what was asked for, and opens the window.
pub fn set_up(app: &AppHandle) -> Result<(), Box<dyn StdError>> {
    let asked = asked(std::env::args().skip(1), &std::env::current_dir().unwrap_or_default());
    // A courtesy: the lock beside the coach file is what guards it. Without a session bus, or with
    // one that does not answer, the program starts all the same.
    let second = tauri_plugin_single_instance::init(|app, arguments, folder| {
        come_again(app, asked_again(arguments, &folder));
    });
    if let Err(error) = app.plugin(second) {
        eprintln!("Carryover: a second start will not be noticed: {error}");
    }
    let folder = match std::env::var_os(FOLDER) {
        Some(folder) => PathBuf::from(folder),
        None => app.path().app_data_dir()?,
    };
    std::fs::create_dir_all(&folder)?;
    let desk = Desk::new(
        &folder,
        &folder.join("recent.json"),
        Box::new(CoachFile::open),
        carryover_demo::make_for_window,
        Box::new(ThisMachine { app: app.clone(), folder: folder.clone() }),
    );
    let desk = match OverHttps::new() {
        Ok(calendars) => desk.reaching(Beyond {
            calendars: Arc::new(calendars),
            secrets: Arc::new(Keychain::new()),
            carrier: Arc::new(OverSmtp::new()),
            back: back_to_desk(app),
        }),
        // Everything but calendars on a server goes on without a network.
        Err(words) => {
            eprintln!("Carryover: calendars on a server cannot be reached: {words}");
            desk
        }
    };
    app.manage(Ground {
        desk: Mutex::new(Some(desk)),
        faults: Faults::at(folder.join("faults.log")),
    });
    open_first(app, asked);
    Ok(window::open(app, &folder)?)
}

/// The way back to the desk for a thread that hands messages over.
fn back_to_desk(app: &AppHandle) -> Back {
    let app = app.clone();
    Arc::new(move |act| {
        if let Some(ground) = app.try_state::<Ground>()
            && let Some(desk) = ground.desk().as_mut()
        {
            act(desk);
        }
    })
}

/// Opens what was asked for off the window's thread; the page's first call waits for it.
fn open_first(app: &AppHandle, asked: Asked) {
    let app = app.clone();
    let (held, hold) = mpsc::channel();
    std::thread::spawn(move || {
        let ground = app.state::<Ground>();
        let mut desk = ground.desk();
        let _ = held.send(());
        let opened = match call_for(&asked) {
            Some((name, input)) => ground.run(&mut desk, name, input).map(drop),
            None => {
                if let Some(desk) = desk.as_mut() {
                    desk.open_last();
                }
                Ok(())
            }
        };
        drop(desk);
        if let Err(failure) = opened {
            tell(&app, &failure);
        }
    });
    // An error means that the thread is gone; the window then opens on an empty desk.
    let _ = hold.recv();
}

fn call_for(asked: &Asked) -> Option<(&'static str, Value)> {
    match asked {
        Asked::Last => None,
        Asked::Sample => Some(("desk.sample", json!({}))),
        Asked::File(path) => Some(("desk.open", json!({ "path": path }))),
    }
}

/// A second start: the window comes to the front, and opens what was asked for if its desk is
/// empty. A file in hand is never put away for another.
fn come_again(app: &AppHandle, asked: Asked) {
    window::raise(app);
    let Some((name, input)) = call_for(&asked) else { return };
    let app = app.clone();
    std::thread::spawn(move || {
        let ground = app.state::<Ground>();
        let mut desk = ground.desk();
        let in_hand = desk.as_mut().is_some_and(|desk| desk.file().is_ok());
        if in_hand {
            return;
        }
        let opened = ground.run(&mut desk, name, input);
        drop(desk);
        match (opened, app.get_webview_window(window::LABEL)) {
            (Ok(_), Some(window)) => drop(window.reload()),
            (Ok(_), None) => {}
            (Err(failure), _) => tell(&app, &failure),
        }
    });
}

/// Says what kept a file named at the start from being opened; the page knows nothing of it.
fn tell(app: &AppHandle, failure: &Failure) {
    eprintln!("{}", failure.words);
    let dialog =
        app.dialog().message(&failure.words).title("Carryover").kind(MessageDialogKind::Error);
    dialog.show(|_| {});
}

fn asked_again(arguments: Vec<String>, folder: &str) -> Asked {
    asked(arguments.into_iter().skip(1), Path::new(folder))
}

fn asked(mut arguments: impl Iterator<Item = String>, folder: &Path) -> Asked {
    while let Some(argument) = arguments.next() {
        if argument == "--sample" {
            return Asked::Sample;
        }
        let named = argument.strip_prefix("--file=").map(str::to_owned);
        let path = if argument == "--file" { arguments.next() } else { named };
        if let Some(path) = path {
            return Asked::File(folder.join(path));
        }
    }
    Asked::Last
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_command_line_names_a_file_the_sample_or_nothing() {
        let said = |line: &[&str]| asked(line.iter().map(ToString::to_string), Path::new("/here"));
        assert_eq!(said(&[]), Asked::Last);
        assert_eq!(said(&["--sample"]), Asked::Sample);
        assert_eq!(said(&["--file", "a.carryover"]), Asked::File("/here/a.carryover".into()));
        assert_eq!(said(&["--file=/there/b.carryover"]), Asked::File("/there/b.carryover".into()));
        assert_eq!(said(&["--file"]), Asked::Last, "no path, no file");
        assert_eq!(said(&["something", "else"]), Asked::Last);
    }
}
