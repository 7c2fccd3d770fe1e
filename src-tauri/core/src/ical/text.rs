//! How text goes into a calendar's lines: escaped, quoted, folded, and never able to become a line
//! of its own.

use std::fmt::Write;

/// Appends one line, folded so that none is longer than 75 octets, never inside a character
/// (RFC 5545 §3.1).
pub(crate) fn push_line(out: &mut String, line: &str) {
    let mut octets = 0;
    for c in line.chars() {
        if octets + c.len_utf8() > 75 {
            out.push_str("\r\n ");
            octets = 1;
        }
        out.push(c);
        octets += c.len_utf8();
    }
    out.push_str("\r\n");
}

/// A TEXT value: backslash, semicolon, comma and new line escaped (RFC 5545 §3.3.11), control
/// characters dropped.
pub(crate) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in plain(text) {
        match c {
            '\n' => out.push_str("\\n"),
            '\\' | ';' | ',' => out.extend(['\\', c]),
            _ => out.push(c),
        }
    }
    out
}

/// A parameter's value: RFC 6868 for what cannot stand in one, and quoted where RFC 5545 §3.1 asks
/// for it.
pub(crate) fn param(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in plain(text) {
        match c {
            '\n' => out.push_str("^n"),
            '"' => out.push_str("^'"),
            '^' => out.push_str("^^"),
            _ => out.push(c),
        }
    }
    match out.contains([':', ';', ',']) {
        true => format!("\"{out}\""),
        false => out,
    }
}

/// The text with each kind of line end as one new line, tabs kept, other control characters gone.
fn plain(text: &str) -> impl Iterator<Item = char> + '_ {
    let mut after_return = false;
    text.chars().filter_map(move |c| {
        let pair = after_return && c == '\n';
        after_return = c == '\r';
        match c {
            '\n' if pair => None,
            '\r' | '\n' | '\u{85}' | '\u{2028}' | '\u{2029}' => Some('\n'),
            '\t' => Some(c),
            _ => (!c.is_control()).then_some(c),
        }
    })
}

/// The `mailto` URI of an address (RFC 6068 §2): what cannot stand in one is percent-encoded.
pub(crate) fn mailto(email: &str) -> String {
    let mut out = "mailto:".to_owned();
    for byte in email.trim().bytes() {
        match byte {
            b'-' | b'.' | b'_' | b'~' | b'@' | b'!' | b'$' | b'\'' | b'*' | b'+' => {
                out.push(char::from(byte));
            }
            _ if byte.is_ascii_alphanumeric() => out.push(char::from(byte)),
            // Writing to a String cannot fail.
            _ => write!(out, "%{byte:02X}").unwrap_or_default(),
        }
    }
    out
}
