//! The rows of a table, read with the columns that were chosen.

use std::collections::{BTreeMap, BTreeSet};

use chrono::NaiveDate;

use super::names::{fold, given_name_first};
use super::{
    ColumnProblem, Columns, DateEvidence, DateOrder, Flag, Kind, NotTaken, Preview, Role, Row,
    SeasonRow, StudentSeen, Table, dates, results,
};
use crate::sports::pack::Condition;

/// The longest name, goal, place, cue or address that is taken, in characters.
const LONGEST_NAME: usize = 200;
/// The longest note that is taken, in characters.
const LONGEST_NOTE: usize = 2000;

/// Reads every row. A row is among `rows`, or has its reasons among `not_taken`; never both.
///
/// The columns themselves are refused first: a needed one missing, one that is not there, or one
/// that plays two roles.
pub fn take(
    table: &Table,
    columns: &Columns,
    order: DateOrder,
) -> Result<Preview, Vec<ColumnProblem>> {
    let problems = column_problems(table, columns);
    if !problems.is_empty() {
        return Err(problems);
    }
    let date_cells = [Role::Arrive, Role::Depart];
    let evidence = dates::evidence(table.rows.iter().flat_map(|row| {
        date_cells.iter().filter_map(|role| {
            columns.0.get(role).and_then(|at| row.cells.get(*at)).map(String::as_str)
        })
    }));
    let mut preview = Preview {
        dates: evidence,
        rows: Vec::new(),
        not_taken: Vec::new(),
        flags: Vec::new(),
        students: Vec::new(),
        visits: 0,
        blocks: 0,
        rows_not_taken: 0,
    };
    for row in &table.rows {
        let mut reader = Reader { table, columns, row, order, evidence, reasons: Vec::new() };
        match reader.season_row() {
            Some(taken) if reader.reasons.is_empty() => preview.rows.push(taken),
            _ => {
                preview.rows_not_taken = preview.rows_not_taken.saturating_add(1);
                preview.not_taken.append(&mut reader.reasons);
            }
        }
    }
    gather_students(&mut preview);
    look_at_visits(&mut preview);
    look_for_doubles(&mut preview);
    Ok(preview)
}

fn column_problems(table: &Table, columns: &Columns) -> Vec<ColumnProblem> {
    let problem = |role: Role, code: &str, words: &str| ColumnProblem {
        role,
        code: code.to_owned(),
        words: words.to_owned(),
    };
    let mut problems = Vec::new();
    for role in Role::NEEDED {
        if !columns.0.contains_key(&role) {
            problems.push(problem(role, "column_missing", "say which column this is"));
        }
    }
    let mut used = BTreeSet::new();
    for (role, at) in &columns.0 {
        if *at >= table.head.len() {
            problems.push(problem(*role, "no_such_column", "the file has no such column"));
        } else if !used.insert(at) {
            problems.push(problem(*role, "column_used_twice", "this column plays another role"));
        }
    }
    problems
}

/// Reads one row and gathers the reasons against it.
struct Reader<'a> {
    table: &'a Table,
    columns: &'a Columns,
    row: &'a Row,
    order: DateOrder,
    evidence: DateEvidence,
    reasons: Vec<NotTaken>,
}

impl Reader<'_> {
    fn cell(&self, role: Role) -> Option<&str> {
        let cell = self.row.cells.get(*self.columns.0.get(&role)?)?.trim();
        (!cell.is_empty()).then_some(cell)
    }

    fn refuse(&mut self, role: Option<Role>, code: &str, words: String) {
        let column = role
            .and_then(|role| self.columns.0.get(&role))
            .and_then(|at| self.table.head.get(*at))
            .cloned();
        self.reasons.push(NotTaken { line: self.row.line, column, code: code.to_owned(), words });
    }

    fn needed(&mut self, role: Role, code: &str, words: &str) -> Option<String> {
        let text = self.text(role, LONGEST_NAME);
        if text.is_none() && self.cell(role).is_none() {
            self.refuse(Some(role), code, words.to_owned());
        }
        text
    }

    fn text(&mut self, role: Role, longest: usize) -> Option<String> {
        let text = self.cell(role)?.to_owned();
        if text.chars().count() > longest {
            self.refuse(Some(role), "too_long", format!("longer than {longest} characters"));
            return None;
        }
        Some(text)
    }

    fn date(&mut self, role: Role) -> Option<NaiveDate> {
        let text = self.cell(role)?.to_owned();
        match dates::date(&text, self.order, self.evidence) {
            Ok(date) => Some(date),
            Err((code, words)) => {
                self.refuse(Some(role), code, words);
                None
            }
        }
    }

    fn season_row(&mut self) -> Option<SeasonRow> {
        let wide = self.table.head.len();
        if self.row.cells.iter().skip(wide).any(|cell| !cell.is_empty()) {
            self.refuse(
                None,
                "too_many_cells",
                "the row has more cells than the head; perhaps a quotation mark or a separator is missing"
                    .to_owned(),
            );
        }
        let student = self.needed(
            Role::Student,
            "student_missing",
            "no name; if the one above is meant, fill it down in the spreadsheet",
        );
        let key = student.as_deref().map(|name| fold(&given_name_first(name)));
        if key.as_deref() == Some("") {
            self.refuse(Some(Role::Student), "student_missing", "this is no name".to_owned());
        }
        if self.cell(Role::Arrive).is_none() {
            self.refuse(Some(Role::Arrive), "date_missing", "no first day".to_owned());
        }
        let arrive = self.date(Role::Arrive);
        let depart = self.date(Role::Depart).or(arrive);
        if let (Some(arrive), Some(depart)) = (arrive, depart)
            && depart < arrive
        {
            self.refuse(
                Some(Role::Depart),
                "depart_before_arrive",
                format!("the last day {depart} lies before the first day {arrive}"),
            );
        }
        let goal = self.needed(Role::Goal, "goal_missing", "no goal or skill");
        let count = self.count();
        let criterion = self.criterion();
        let condition = self.word(
            Role::Condition,
            condition,
            "condition_unknown",
            "fed, live, set game or match",
        );
        let kind = self.word(Role::Kind, kind, "kind_unknown", "retest, end test or practice");
        let row = SeasonRow {
            line: self.row.line,
            student: given_name_first(&student?),
            student_key: key?,
            email: self.text(Role::Email, LONGEST_NAME),
            arrive: arrive?,
            depart: depart?,
            place: self.text(Role::Place, LONGEST_NAME),
            goal: goal?,
            cue: self.text(Role::Cue, LONGEST_NAME),
            condition,
            criterion,
            kind: kind.unwrap_or(Kind::Practice),
            count: count?,
            note: self.text(Role::Note, LONGEST_NOTE),
        };
        Some(row)
    }

    fn count(&mut self) -> Option<crate::goals::numbers::Count> {
        let Some(result) = self.cell(Role::Result).map(str::to_owned) else {
            self.refuse(Some(Role::Result), "result_missing", "no result".to_owned());
            return None;
        };
        match results::count(&result, self.cell(Role::Tries)) {
            Ok(count) => Some(count),
            Err((code, words)) => {
                let at = if code == "tries_unreadable" { Role::Tries } else { Role::Result };
                self.refuse(Some(at), code, words);
                None
            }
        }
    }

    fn criterion(&mut self) -> Option<crate::goals::numbers::Count> {
        let text = self.cell(Role::Criterion)?.to_owned();
        match results::count(&text, None) {
            Ok(count) => Some(count),
            Err((code, words)) => {
                let code = if code == "result_is_a_date" { code } else { "criterion_unreadable" };
                self.refuse(Some(Role::Criterion), code, words);
                None
            }
        }
    }

    fn word<T>(
        &mut self,
        role: Role,
        read: fn(&str) -> Option<T>,
        code: &str,
        known: &str,
    ) -> Option<T> {
        let text = self.cell(role)?.to_owned();
        let word = read(&text);
        if word.is_none() {
            self.refuse(Some(role), code, format!("“{text}” is none of {known}"));
        }
        word
    }
}

/// The kind of block a word means. “Test” alone does not say whether before or after the coaching.
pub fn kind(text: &str) -> Option<Kind> {
    match fold(text).as_str() {
        "retest" | "re test" | "start" | "first" | "before" | "beginning" | "start test" => {
            Some(Kind::Retest)
        }
        "end test" | "end" | "last" | "after" | "final" | "final test" | "last test" => {
            Some(Kind::EndTest)
        }
        "practice" | "practise" | "drill" | "block" | "during" => Some(Kind::Practice),
        _ => None,
    }
}

/// The condition a word means.
pub fn condition(text: &str) -> Option<Condition> {
    match fold(text).as_str() {
        "fed" | "feed" | "hand fed" | "fed ball" => Some(Condition::Fed),
        "live" | "rally" | "live ball" => Some(Condition::Live),
        "set game" | "game" | "practice game" => Some(Condition::SetGame),
        "match" | "tournament" | "league" => Some(Condition::Match),
        _ => None,
    }
}

/// Names spelt alike become one student.
fn gather_students(preview: &mut Preview) {
    let mut at: BTreeMap<String, usize> = BTreeMap::new();
    for row in &mut preview.rows {
        let place = *at.entry(row.student_key.clone()).or_insert_with(|| {
            preview.students.push(StudentSeen {
                key: row.student_key.clone(),
                name: row.student.clone(),
                spellings: Vec::new(),
                email: None,
                rows: 0,
                line: row.line,
            });
            preview.students.len() - 1
        });
        let Some(seen) = preview.students.get_mut(place) else { continue };
        seen.rows = seen.rows.saturating_add(1);
        if !seen.spellings.contains(&row.student) {
            seen.spellings.push(row.student.clone());
        }
        match (&seen.email, &row.email) {
            (None, Some(email)) => seen.email = Some(email.clone()),
            (Some(first), Some(email)) if !first.eq_ignore_ascii_case(email) => {
                preview.flags.push(Flag {
                    code: "emails_differ".to_owned(),
                    lines: vec![row.line],
                    words: format!(
                        "{} has the address {email} here and {first} before; perhaps two people",
                        seen.name
                    ),
                });
            }
            _ => {}
        }
        row.student.clone_from(&seen.name);
    }
}

/// Rows of one student and one first day are one visit.
fn look_at_visits(preview: &mut Preview) {
    let mut visits: BTreeMap<(&str, NaiveDate), Vec<&SeasonRow>> = BTreeMap::new();
    for row in &preview.rows {
        visits.entry((&row.student_key, row.arrive)).or_default().push(row);
    }
    let mut flags = Vec::new();
    let mut before: Option<(&str, NaiveDate, u32)> = None;
    for ((student, arrive), rows) in &visits {
        // A blank last day reads as the first; it is no second opinion.
        let told: BTreeSet<NaiveDate> =
            rows.iter().map(|row| row.depart).filter(|depart| depart != arrive).collect();
        let Some(first) = rows.first() else { continue };
        if told.len() > 1 {
            let days: Vec<String> = told.iter().map(NaiveDate::to_string).collect();
            flags.push(Flag {
                code: "depart_differs".to_owned(),
                lines: rows.iter().map(|row| row.line).collect(),
                words: format!(
                    "{}'s visit from {arrive} ends on different days: {}",
                    first.student,
                    days.join(", ")
                ),
            });
        }
        let last = told.last().copied().unwrap_or(*arrive);
        if let Some((earlier, until, line)) = before
            && earlier == *student
            && *arrive <= until
        {
            flags.push(Flag {
                code: "visits_overlap".to_owned(),
                lines: vec![line, first.line],
                words: format!(
                    "{} arrives on {arrive} while an earlier visit lasts until {until}",
                    first.student
                ),
            });
        }
        before = Some(match before {
            Some((earlier, until, line)) if earlier == *student && until > last => {
                (earlier, until, line)
            }
            _ => (student, last, first.line),
        });
    }
    preview.visits = u32::try_from(visits.len()).unwrap_or(u32::MAX);
    preview.blocks = u32::try_from(preview.rows.len()).unwrap_or(u32::MAX);
    preview.flags.append(&mut flags);
}

/// The same row twice may be two blocks or one slip of the hand.
fn look_for_doubles(preview: &mut Preview) {
    let mut seen: BTreeMap<String, u32> = BTreeMap::new();
    for row in &preview.rows {
        let alike = SeasonRow { line: 0, ..row.clone() };
        let Ok(text) = serde_json::to_string(&alike) else { continue };
        if let Some(line) = seen.get(&text) {
            preview.flags.push(Flag {
                code: "row_twice".to_owned(),
                lines: vec![*line, row.line],
                words: "these two rows say the same; two blocks, or one written twice?".to_owned(),
            });
        } else {
            seen.insert(text, row.line);
        }
    }
}
