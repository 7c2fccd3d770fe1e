//! The page's one command. Each call runs off the window's thread, is guarded against a fault in
//! the program, and comes back as the value with its changes, or as a failure with its words.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::{Mutex, MutexGuard, PoisonError};

use carryover_core::commands::Answer;
use carryover_core::desk::Desk;
use carryover_core::error::{Code, Error, Failure};
use serde_json::Value;
use tauri::{AppHandle, Manager};

use crate::faults::Faults;

/// How often, and how long each time, a message that is being handed over is waited for at the end.
const MOMENTS: u32 = 50;
const MOMENT: std::time::Duration = std::time::Duration::from_millis(100);

/// What the window stands on; no desk any more once the program is being left.
pub struct Ground {
    /// The desk with the open file.
    pub desk: Mutex<Option<Desk>>,
    /// The log of faults.
    pub faults: Faults,
}

impl Ground {
    /// The desk, for one caller at a time.
    pub fn desk(&self) -> MutexGuard<'_, Option<Desk>> {
        // A guarded call never leaves the desk half-way: its act was rolled back.
        self.desk.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Runs a command; a panic is an answer too.
    pub fn run(
        &self,
        desk: &mut Option<Desk>,
        name: &str,
        input: Value,
    ) -> Result<Answer, Failure> {
        let asked = catch_unwind(AssertUnwindSafe(|| match desk {
            Some(desk) => desk.call(name, input),
            None => Err(Error::NoFile),
        }));
        let answer = asked.unwrap_or_else(|panic| Err(Error::Fault(words_of(panic.as_ref()))));
        answer.map_err(|error| {
            let mut failure = error.failure();
            if matches!(failure.code, Code::Fault | Code::Storage) {
                let details = failure.details.take().unwrap_or_default();
                let reference = self.faults.note(name, &details);
                failure.details = Some(format!("{reference} {name}: {details}"));
            }
            failure
        })
    }
}

/// Runs one command of the table.
#[tauri::command]
pub async fn call(app: AppHandle, name: String, input: Value) -> Result<Answer, Failure> {
    let ran = tauri::async_runtime::spawn_blocking(move || {
        let ground = app.state::<Ground>();
        let mut desk = ground.desk();
        ground.run(&mut desk, &name, input)
    });
    ran.await.unwrap_or_else(|error| Err(Error::Fault(error.to_string()).failure()))
}

/// Puts the open file away as the program is left, so that all of it lies in the one file. Where a
/// call is still going on it is not waited for: what it has not committed it takes back. A message that is
/// being handed over is waited for a little, so that what came of it is known.
pub fn put_away(app: &AppHandle) {
    for _ in 0..MOMENTS {
        let sending = match app.state::<Ground>().desk.try_lock() {
            Ok(mut desk) => desk.as_mut().is_some_and(Desk::is_sending),
            Err(_) => false,
        };
        if !sending {
            break;
        }
        std::thread::sleep(MOMENT);
    }
    if let Ok(mut desk) = app.state::<Ground>().desk.try_lock() {
        drop(desk.take());
    }
}

fn words_of(panic: &(dyn std::any::Any + Send)) -> String {
    let text = panic.downcast_ref::<&str>().map(ToString::to_string);
    text.or_else(|| panic.downcast_ref::<String>().cloned())
        .unwrap_or_else(|| "a panic without words".to_owned())
}

#[cfg(test)]
mod tests {
    use std::path::{Path, PathBuf};

    use carryover_core::app::CoachFile;
    use carryover_core::desk::Host;
    use serde_json::json;

    use super::*;

    /// A machine whose dialog breaks.
    struct Broken;

    impl Host for Broken {
        fn choose_to_open(&self, _: &str, _: &str, _: &str) -> Option<PathBuf> {
            panic!("the dialog broke")
        }

        fn choose_to_save(&self, _: &str, _: &str) -> Option<PathBuf> {
            None
        }

        fn open_document(&self, _: &Path) -> carryover_core::error::Result<()> {
            Ok(())
        }
    }

    #[test]
    fn a_panic_is_an_answer_with_a_reference_and_the_desk_goes_on() {
        let folder = tempfile::tempdir().unwrap();
        let here = folder.path();
        let memory = here.join("recent.json");
        let desk =
            Desk::new(here, &memory, Box::new(CoachFile::open), |_| Ok(()), Box::new(Broken));
        let log = here.join("faults.log");
        let ground = Ground { desk: Mutex::new(Some(desk)), faults: Faults::at(log.clone()) };

        let failure = ground.run(&mut ground.desk(), "desk.choose", json!({})).unwrap_err();
        assert_eq!(failure.code, Code::Fault);
        let details = failure.details.unwrap();
        assert!(details.ends_with("desk.choose: the dialog broke"), "{details}");
        let log = std::fs::read_to_string(log).unwrap();
        assert_eq!(log.trim(), details, "the reference leads to the line in the log");

        let look = ground.run(&mut ground.desk(), "desk.look", json!({})).unwrap();
        assert_eq!(look.value["open"], json!(null), "the next call is answered");
    }

    #[test]
    fn a_refusal_is_no_fault() {
        let folder = tempfile::tempdir().unwrap();
        let here = folder.path();
        let memory = here.join("recent.json");
        let desk =
            Desk::new(here, &memory, Box::new(CoachFile::open), |_| Ok(()), Box::new(Broken));
        let log = here.join("faults.log");
        let ground = Ground { desk: Mutex::new(Some(desk)), faults: Faults::at(log.clone()) };
        let failure =
            ground.run(&mut ground.desk(), "desk.create", json!({ "name": "" })).unwrap_err();
        assert_eq!(failure.code, Code::Refused);
        assert!(!log.exists(), "what a person can put right is not logged");
    }
}
