//! Tests of the calendar module: rules that repeat, writing, reading, and files that are broken.

mod broken;
mod reading;
mod repeating;
mod writing;

use crate::kinds::zones::Zone;

fn zone(name: &str) -> Zone {
    Zone::parse(name).expect("a zone")
}

/// A calendar around these lines.
fn calendar(lines: &[&str]) -> String {
    let mut text = "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Example//EN\r\n".to_owned();
    for line in lines {
        text.push_str(line);
        text.push_str("\r\n");
    }
    text + "END:VCALENDAR\r\n"
}
