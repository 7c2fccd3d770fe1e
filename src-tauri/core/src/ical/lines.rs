//! The lines of a calendar file and the components they make up (RFC 5545 §3.1, §3.4, §3.6).
//!
//! What may be forgiven is: a byte-order mark, bare line feeds, empty lines, a line folded in the
//! middle of a character. What may not is a file that does not hold together: it is refused with
//! the line where that shows, so that half a calendar is never taken for a whole one.

use std::fmt;

/// A file that is no whole calendar.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Broken {
    /// The line where it shows, counted from 1; 0 when the file was not looked into.
    pub line: usize,
    /// What is wrong, one sentence.
    pub words: String,
}

impl fmt::Display for Broken {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.words)
    }
}

impl std::error::Error for Broken {}

/// `NAME;PARAMETER=value:value`, unfolded. Names are in upper case.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Property {
    pub(crate) name: String,
    pub(crate) params: Vec<(String, String)>,
    pub(crate) value: String,
}

impl Property {
    /// The value of a parameter, without its quotes.
    pub(crate) fn param(&self, name: &str) -> Option<&str> {
        self.params.iter().find(|param| param.0 == name).map(|param| param.1.as_str())
    }
}

/// What stands between BEGIN and END.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Component {
    /// Upper case: `VEVENT`.
    pub(crate) name: String,
    /// Where it begins.
    pub(crate) line: usize,
    pub(crate) properties: Vec<Property>,
    pub(crate) children: Vec<Component>,
}

impl Component {
    /// The first property of that name.
    pub(crate) fn first(&self, name: &str) -> Option<&Property> {
        self.properties.iter().find(|property| property.name == name)
    }

    /// All properties of that name.
    pub(crate) fn all<'a>(&'a self, name: &'a str) -> impl Iterator<Item = &'a Property> {
        self.properties.iter().filter(move |property| property.name == name)
    }
}

/// Components lie at most this deep in one another; real ones three.
const DEEPEST: usize = 8;

/// The properties anything here reads; the others are checked and let go.
const READ: [&str; 22] = [
    "DTEND",
    "DTSTAMP",
    "DTSTART",
    "DURATION",
    "EXDATE",
    "EXRULE",
    "LOCATION",
    "METHOD",
    "RDATE",
    "RECURRENCE-ID",
    "RRULE",
    "SEQUENCE",
    "STATUS",
    "SUMMARY",
    "TRANSP",
    "TZID",
    "TZOFFSETFROM",
    "TZOFFSETTO",
    "UID",
    "VERSION",
    "X-LIC-LOCATION",
    "FREEBUSY",
];

/// The VCALENDARs of a file. An error unless there is at least one and every one is whole.
pub(crate) fn calendars(bytes: &[u8]) -> Result<Vec<Component>, Broken> {
    let bytes = bytes.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(bytes);
    let mut done: Vec<Component> = Vec::new();
    let mut open: Vec<Component> = Vec::new();
    let mut last = 0;
    for (line, text) in Unfolded::of(bytes) {
        last = line;
        let broken = |words: String| Broken { line, words };
        let property = parse(&text);
        let begins = property.as_ref().is_some_and(|one| one.name == "BEGIN");
        if open.is_empty() && !(begins && text.to_ascii_uppercase().ends_with(":VCALENDAR")) {
            return Err(broken(match done.is_empty() {
                true => {
                    "This file holds no calendar: it does not begin with BEGIN:VCALENDAR.".into()
                }
                false => format!("After the end of the calendar, line {line} goes on."),
            }));
        }
        let Some(property) = property else {
            return Err(broken(format!(
                "Line {line} is not a line of a calendar: “{}”.",
                shortened(&text)
            )));
        };
        let name = property.value.trim().to_ascii_uppercase();
        match property.name.as_str() {
            "BEGIN" if open.len() == DEEPEST => {
                return Err(broken(format!("At line {line} too many parts lie in one another.")));
            }
            "BEGIN" => open.push(Component { name, line, ..Component::default() }),
            "END" => {
                let Some(ended) = open.pop() else { continue };
                if ended.name != name {
                    return Err(broken(format!(
                        "Line {line} ends {}, but what is open there is {} from line {}.",
                        shortened(&name),
                        shortened(&ended.name),
                        ended.line
                    )));
                }
                open.last_mut().map_or(&mut done, |parent| &mut parent.children).push(ended);
            }
            kept if READ.contains(&kept) => {
                if let Some(component) = open.last_mut() {
                    component.properties.push(property);
                }
            }
            _ => {}
        }
    }
    match (open.last(), done.is_empty()) {
        (Some(component), _) => Err(Broken {
            line: last,
            words: format!(
                "The file breaks off at line {last}: {} from line {} has no end.",
                shortened(&component.name),
                component.line
            ),
        }),
        (None, true) => Err(Broken { line: 1, words: "The file is empty.".to_owned() }),
        (None, false) => Ok(done),
    }
}

/// Enough of a line to know it again.
pub(crate) fn shortened(text: &str) -> String {
    let plain: String = text.chars().filter(|c| !c.is_control()).take(41).collect();
    match plain.char_indices().nth(40) {
        Some((cut, _)) => format!("{}…", &plain[..cut]),
        None => plain,
    }
}

/// Reads one unfolded line; `None` if it is none.
fn parse(line: &str) -> Option<Property> {
    let token = |text: &str| {
        !text.is_empty()
            && text.bytes().all(|b| b.is_ascii_alphanumeric() || matches!(b, b'-' | b'_'))
    };
    let mut rest = line;
    let end = rest.find([';', ':'])?;
    let name = rest.get(..end).filter(|name| token(name))?.to_ascii_uppercase();
    rest = &rest[end..];
    let mut params = Vec::new();
    while let Some(param) = rest.strip_prefix(';') {
        let (name, value) = param.split_once('=').filter(|(name, _)| token(name))?;
        let end = unquoted(value, [';', ':'])?;
        params.push((name.to_ascii_uppercase(), value[..end].replace('"', "")));
        rest = &value[end..];
    }
    Some(Property { name, params, value: rest.strip_prefix(':')?.to_owned() })
}

/// Where the first of these characters stands that is not between quotes.
fn unquoted(text: &str, wanted: [char; 2]) -> Option<usize> {
    let mut quoted = false;
    text.char_indices().find_map(|(at, c)| {
        quoted ^= c == '"';
        (!quoted && wanted.contains(&c)).then_some(at)
    })
}

/// The lines of a file with their folds undone (RFC 5545 §3.1), each with its number. Folds are
/// undone before the text is decoded, since some programs fold in the middle of a character.
pub(crate) struct Unfolded<'a> {
    /// What is not read yet; `None` at the end.
    rest: Option<&'a [u8]>,
    /// How many lines are read.
    line: usize,
}

impl<'a> Unfolded<'a> {
    /// The lines of these bytes.
    pub(crate) fn of(bytes: &'a [u8]) -> Self {
        Self { rest: Some(bytes), line: 0 }
    }

    /// One line of the file, without its end.
    fn raw(&mut self) -> Option<&'a [u8]> {
        let rest = self.rest?;
        let end = rest.iter().position(|b| *b == b'\n');
        let line = end.map_or(rest, |end| &rest[..end]);
        self.rest = end.map(|end| &rest[end + 1..]);
        self.line += 1;
        Some(line.strip_suffix(b"\r").unwrap_or(line))
    }
}

impl Iterator for Unfolded<'_> {
    type Item = (usize, String);

    fn next(&mut self) -> Option<(usize, String)> {
        let mut whole = loop {
            let line = self.raw()?;
            if !line.trim_ascii().is_empty() {
                break line.to_vec();
            }
        };
        let number = self.line;
        while matches!(self.rest, Some([b' ' | b'\t', ..])) {
            whole.extend_from_slice(self.raw()?.get(1..).unwrap_or_default());
        }
        Some((number, String::from_utf8_lossy(&whole).into_owned()))
    }
}
