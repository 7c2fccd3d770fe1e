//! Which column seems to be what, by its name and by what stands in it.

use super::names::fold;
use super::{Columns, Role, Table, dates, results};

/// The names a column of each role goes by, the likeliest first.
fn words(role: Role) -> &'static [&'static str] {
    match role {
        Role::Student => &["student", "name", "player", "pupil", "student name", "full name"],
        Role::Email => &["email", "e mail", "mail", "mail address", "email address"],
        Role::Arrive => &[
            "arrive",
            "arrived",
            "arrival",
            "from",
            "date",
            "start date",
            "visit",
            "visit date",
            "first day",
            "begin",
        ],
        Role::Depart => &[
            "depart",
            "departed",
            "departure",
            "left",
            "to",
            "until",
            "end date",
            "last day",
            "leaves",
        ],
        Role::Place => &["place", "where", "town", "city", "facility", "club", "venue", "location"],
        Role::Goal => &["goal", "skill", "focus goal", "shot", "focus", "worked on"],
        Role::Cue => &["cue", "cue word", "cue words"],
        Role::Condition => &["condition", "setting", "how", "under"],
        Role::Criterion => &["criterion", "target", "aim", "standard", "needed"],
        Role::Kind => &["kind", "test", "when", "type", "block", "stage"],
        Role::Result => &["result", "score", "made", "count", "hits", "outcome"],
        Role::Tries => &["tries", "attempts", "of", "out of", "total", "n"],
        Role::Note => &["note", "notes", "comment", "comments", "remark", "remarks"],
    }
}

/// Proposes which column is what. Each column plays one role at most; a role no column seems to
/// play is left out.
pub fn propose(table: &Table) -> Columns {
    let mut merits: Vec<(u32, Role, usize)> = Vec::new();
    for (at, head) in table.head.iter().enumerate() {
        let cells: Vec<&str> = table
            .rows
            .iter()
            .filter_map(|row| row.cells.get(at))
            .map(String::as_str)
            .filter(|cell| !cell.is_empty())
            .take(200)
            .collect();
        for role in Role::ALL {
            let merit = merit(role, head, &cells);
            if merit > 0 {
                merits.push((merit, role, at));
            }
        }
    }
    // The best first; between equals the earlier column.
    merits.sort_by_key(|&(merit, role, at)| (std::cmp::Reverse(merit), at, role));
    let mut columns = Columns::default();
    for (_, role, at) in merits {
        if !columns.0.contains_key(&role) && !columns.0.values().any(|taken| *taken == at) {
            columns.0.insert(role, at);
        }
    }
    columns
}

fn by_name(role: Role, head: &str) -> u32 {
    let head = fold(head);
    let words = words(role);
    if let Some(at) = words.iter().position(|word| *word == head) {
        // At most 20 words a role, so an earlier word always weighs more.
        return 100 - u32::try_from(at).unwrap_or(20).min(20);
    }
    let parts: Vec<&str> = head.split(' ').collect();
    if words.iter().any(|word| parts.contains(word)) { 50 } else { 0 }
}

/// A name counts most. What stands in the cells adds to it, and where it speaks against the name the
/// name counts little: a column “When” that holds dates is no kind of test.
fn merit(role: Role, head: &str, cells: &[&str]) -> u32 {
    let name = by_name(role, head);
    match share_that_fits(role, cells) {
        None => name,
        Some(0) => name.min(10),
        // A birth date is a date too, so a last day has to be named.
        Some(share) if share >= 80 && (role != Role::Depart || name > 0) => name + 30,
        Some(_) => name,
    }
}

/// How many in a hundred of the cells can be what the role wants; nothing for a role that takes any
/// text.
fn share_that_fits(role: Role, cells: &[&str]) -> Option<usize> {
    let fits: fn(&str) -> bool = match role {
        Role::Email => |cell| cell.contains('@'),
        Role::Arrive | Role::Depart => dates::is_full_date,
        Role::Result => results::holds_tries,
        Role::Kind => |cell| super::take::kind(cell).is_some(),
        Role::Condition => |cell| super::take::condition(cell).is_some(),
        _ => return None,
    };
    let fitting = cells.iter().filter(|cell| fits(cell)).count();
    (fitting * 100).checked_div(cells.len())
}
