//! The log of faults: one line each, in a file beside the coach's own. It names the command and
//! what the system said, never what was typed.

use std::io::Write;
use std::path::PathBuf;

use carryover_core::kinds::{Clock, SystemClock};

/// Beyond this many bytes a new log is begun; the one before is kept.
const LONG: u64 = 1 << 20;

/// The log.
pub struct Faults(PathBuf);

impl Faults {
    /// A log at this path; it is made with the first fault.
    pub fn at(path: PathBuf) -> Self {
        Self(path)
    }

    /// Writes a line and returns the reference under which it is found. A log that cannot be
    /// written keeps nobody from working: the line is on standard error as well.
    pub fn note(&self, what: &str, details: &str) -> String {
        let reference = SystemClock.now().to_string();
        let line = format!("{reference} {what}: {}\n", details.replace('\n', " | "));
        eprint!("{line}");
        if std::fs::metadata(&self.0).is_ok_and(|log| log.len() > LONG) {
            let _ = std::fs::rename(&self.0, self.0.with_extension("before.log"));
        }
        let log = std::fs::OpenOptions::new().create(true).append(true).open(&self.0);
        let _ = log.and_then(|mut log| log.write_all(line.as_bytes()));
        reference
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fault_is_one_line_under_its_reference() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("faults.log");
        let faults = Faults::at(path.clone());
        let first = faults.note("goals.touch", "the disk\nis full");
        faults.note("goals.touch", "again");
        let log = std::fs::read_to_string(&path).unwrap();
        assert_eq!(log.lines().count(), 2, "one line a fault: {log}");
        assert_eq!(log.lines().next(), Some(&*format!("{first} goals.touch: the disk | is full")));
    }

    #[test]
    fn a_long_log_is_put_aside_and_a_new_one_begun() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("faults.log");
        std::fs::write(&path, vec![b'x'; usize::try_from(LONG).unwrap() + 1]).unwrap();
        Faults::at(path.clone()).note("desk.look", "new");
        assert_eq!(std::fs::read_to_string(&path).unwrap().lines().count(), 1);
        assert!(folder.path().join("faults.before.log").is_file(), "the one before is kept");
    }
}
