//! A coach's season as spreadsheets write it, and what goes wrong with it.

use super::*;
use proptest::prelude::*;

const HEAD: &str = "Name,Arrived,Left,Place,Skill,Condition,Test,Result,Tries,Notes";

fn table(text: &str) -> Table {
    read(text.as_bytes()).expect("a table")
}

/// A file with the usual head, read with the columns proposed for it.
fn season(rows: &str, order: DateOrder) -> Preview {
    let table = table(&format!("{HEAD}\n{rows}\n"));
    take(&table, &propose(&table), order).expect("the columns are all there")
}

/// The one row of a file, as `made/tries`, or the codes that speak against it.
fn one(row: &str) -> String {
    let preview = season(row, DateOrder::Unknown);
    match preview.rows.first() {
        Some(row) => format!("{}/{}", row.count.made, row.count.tries),
        None => preview.not_taken.iter().map(|n| n.code.as_str()).collect::<Vec<_>>().join(" "),
    }
}

#[test]
fn a_season_is_read_as_it_stands() {
    let preview = season(
        "Ana Silva,2026-03-11,2026-03-15,Kestrel Quay,Lob serve,fed,start,8 of 10,,late flight\n\
         \"Silva, Ana\",2026-03-11,,Kestrel Quay,Lob serve,fed,end,9/10,,\n\
         ana  SILVA,2026-05-02,,Kestrel Quay,Lob serve,set game,retest,60%,20,\n\
         Bo Lind,11 March 2026,,,Pinch,,,3,10,",
        DateOrder::Unknown,
    );
    assert_eq!(preview.not_taken, []);
    assert_eq!(preview.dates, DateEvidence::NotNeeded);
    assert_eq!((preview.visits, preview.blocks, preview.rows_not_taken), (3, 4, 0));
    let names: Vec<_> = preview.students.iter().map(|s| (s.name.as_str(), s.rows)).collect();
    assert_eq!(names, [("Ana Silva", 3), ("Bo Lind", 1)]);
    let [first, second, third, fourth] = &preview.rows[..] else { panic!("four rows") };
    assert_eq!(first.line, 2, "the head is line 1");
    assert_eq!(first.depart.to_string(), "2026-03-15");
    assert_eq!(second.depart, second.arrive, "a blank last day reads as the first");
    assert_eq!((first.kind, second.kind), (Kind::Retest, Kind::EndTest));
    assert_eq!(third.condition, Some(Condition::SetGame));
    assert_eq!(third.count, Count { made: 12, tries: 20 }, "60 % of 20");
    assert_eq!(fourth.kind, Kind::Practice, "what is not named a test is none");
    assert_eq!(fourth.arrive.to_string(), "2026-03-11");
    assert_eq!(first.note.as_deref(), Some("late flight"));
    assert!(preview.flags.is_empty(), "{:?}", preview.flags);
}

#[test]
fn results_are_taken_or_told_why_not() {
    for (result, tries, expect) in [
        ("8/10", "", "8/10"),
        ("8 of 10", "", "8/10"),
        ("8 out of 10", "", "8/10"),
        ("8 / 10", "10", "8/10"),
        ("8", "10", "8/10"),
        ("80%", "10", "8/10"),
        ("80 %", "20", "16/20"),
        ("\"87,5%\"", "8", "7/8"),
        ("33.33%", "3", "percentage_not_whole"),
        ("85%", "10", "percentage_not_whole"),
        ("110%", "10", "more_made_than_tried"),
        ("99999999999%", "10", "result_unreadable"),
        ("80%", "", "percentage_without_tries"),
        ("8", "", "total_without_tries"),
        ("11/10", "", "more_made_than_tried"),
        ("11", "10", "more_made_than_tried"),
        ("0/0", "", "no_tries"),
        ("8/10", "12", "tries_differ"),
        ("8", "ten", "tries_unreadable"),
        ("08-Oct", "", "result_is_a_date"),
        ("10-Aug", "", "result_is_a_date"),
        ("Aug-10", "10", "result_is_a_date"),
        ("10. Aug", "", "result_is_a_date"),
        ("2026-10-08", "", "result_is_a_date"),
        ("10/8/2026", "", "result_is_a_date"),
        ("8-10", "", "result_unreadable"),
        ("0.8", "10", "result_unreadable"),
        ("-8", "10", "result_unreadable"),
        ("good", "", "result_unreadable"),
        ("", "10", "result_missing"),
        ("4294967296/4294967297", "", "result_unreadable"),
    ] {
        let row = format!("Ana Silva,2026-03-11,,,Lob serve,fed,end,{result},{tries},");
        assert_eq!(one(&row), expect, "{result} with {tries} tries");
    }
}

#[test]
fn a_row_is_told_all_its_reasons() {
    for (row, expect) in [
        (",2026-03-11,,,Pinch,,,8/10,,", "student_missing"),
        ("---,2026-03-11,,,Pinch,,,8/10,,", "student_missing"),
        ("Ana,,,,,,,,,", "date_missing goal_missing result_missing"),
        ("Ana,2026-03-11,2026-03-10,,Pinch,,,8/10,,", "depart_before_arrive"),
        ("Ana,2026-02-30,,,Pinch,,,8/10,,", "impossible_date"),
        ("Ana,46092,,,Pinch,,,8/10,,", "date_is_a_number"),
        ("Ana,in March,,,Pinch,,,8/10,,", "not_a_date"),
        ("Ana,2026-03-11,,,Pinch,easy,test,8/10,,", "condition_unknown kind_unknown"),
        ("Ana,2026-03-11,,,Pinch,,,8/10,,a,b", "too_many_cells"),
        ("Ana,2026-03-11,,,Pinch,,,8/10", "8/10"),
    ] {
        assert_eq!(one(row), expect, "{row}");
    }
    let long = "x".repeat(201);
    assert_eq!(one(&format!("{long},2026-03-11,,,Pinch,,,8/10,,")), "too_long");
}

#[test]
fn the_day_number_is_read_back_for_the_coach() {
    let preview = season("Ana,46092,,,Pinch,,,8/10,,", DateOrder::Unknown);
    assert!(preview.not_taken[0].words.contains("2026-03-11"), "{:?}", preview.not_taken);
    assert_eq!(preview.not_taken[0].column.as_deref(), Some("Arrived"));
}

/// Rows that differ in their first day alone; the days that were read, `?` where none was.
fn days(written: &[&str], order: DateOrder) -> (DateEvidence, String) {
    let rows: Vec<String> = written
        .iter()
        .enumerate()
        .map(|(at, day)| format!("Student {at},\"{day}\",,,Pinch,,,8/10,,"))
        .collect();
    let preview = season(&rows.join("\n"), order);
    let read = (2..written.len() + 2)
        .map(|line| {
            let row = preview.rows.iter().find(|row| row.line as usize == line);
            row.map_or("?".to_owned(), |row| row.arrive.to_string())
        })
        .collect::<Vec<_>>();
    (preview.dates, read.join(" "))
}

#[test]
fn the_order_of_day_and_month_is_found_or_asked() {
    use DateEvidence as Seen;
    use DateOrder::{DayMonthYear, MonthDayYear, Unknown};
    for (written, order, seen, read) in [
        (&["25/03/2026", "04/03/26"][..], Unknown, Seen::DayMonthYear, "2026-03-25 2026-03-04"),
        (&["3/25/2026", "3/4/2026"], Unknown, Seen::MonthDayYear, "2026-03-25 2026-03-04"),
        (&["04.03.2026", "05.03.2026"], Unknown, Seen::Undecidable, "? ?"),
        (&["04.03.2026", "05.03.2026"], DayMonthYear, Seen::Undecidable, "2026-03-04 2026-03-05"),
        (&["04/03/2026"], MonthDayYear, Seen::Undecidable, "2026-04-03"),
        (
            &["25/03/2026", "03/26/2026", "03/04/2026"],
            Unknown,
            Seen::Mixed,
            "2026-03-25 2026-03-26 ?",
        ),
        (&["25/03/2026", "03/26/2026"], DayMonthYear, Seen::Mixed, "2026-03-25 ?"),
        (&["03/03/2026"], Unknown, Seen::NotNeeded, "2026-03-03"),
        (
            &["2026/03/11", "Mar 11, 2026", "11-Mar-99"],
            Unknown,
            Seen::NotNeeded,
            "2026-03-11 2026-03-11 1999-03-11",
        ),
        (
            &["2026-03-11 00:00:00", "2026-03-11T00:00"],
            Unknown,
            Seen::NotNeeded,
            "2026-03-11 2026-03-11",
        ),
        (&["31/04/2026", "29/02/2026", "25/13/2026"], Unknown, Seen::DayMonthYear, "? ? ?"),
        (
            &["29/02/2028", "0/3/2026", "1/1/1026"],
            DayMonthYear,
            Seen::DayMonthYear,
            "2028-02-29 ? ?",
        ),
    ] {
        assert_eq!(days(written, order), (seen, read.to_owned()), "{written:?} {order:?}");
    }
}

#[test]
fn near_names_stay_two_until_the_coach_says_otherwise() {
    let preview = season(
        "Ana Silva,2026-03-11,,,Pinch,,,8/10,,\n\
         Anna Silva,2026-03-12,,,Pinch,,,8/10,,\n\
         Na Silvan,2026-03-13,,,Pinch,,,8/10,,\n\
         José Prado,2026-03-11,,,Pinch,,,8/10,,\n\
         Jose Prado,2026-03-12,,,Pinch,,,8/10,,\n\
         Jsoe Prado,2026-03-13,,,Pinch,,,8/10,,\n\
         Bo Lind,2026-03-13,,,Pinch,,,8/10,,",
        DateOrder::Unknown,
    );
    let names: Vec<_> = preview.students.iter().map(|s| s.name.as_str()).collect();
    assert_eq!(names.len(), 6, "only an accent makes no second person: {names:?}");
    assert_eq!(
        near_keys(preview.students.iter().map(|s| s.key.as_str())),
        [("ana silva", "anna silva"), ("jose prado", "jsoe prado")]
    );
}

#[test]
fn visits_that_contradict_themselves_are_shown() {
    let preview = season(
        "Ana,2026-03-11,2026-03-15,,Pinch,,,8/10,,\n\
         Ana,2026-03-11,2026-03-16,,Lob serve,,,8/10,,\n\
         Ana,2026-03-14,,,Pinch,,,8/10,,\n\
         Bo,2026-03-14,,,Pinch,,,8/10,,\n\
         Bo,2026-03-14,,,Pinch,,,8/10,,",
        DateOrder::Unknown,
    );
    let flags: Vec<_> = preview.flags.iter().map(|f| (f.code.as_str(), &f.lines[..])).collect();
    assert_eq!(
        flags,
        [
            ("depart_differs", &[2, 3][..]),
            ("visits_overlap", &[2, 4][..]),
            ("row_twice", &[5, 6][..])
        ]
    );
    assert_eq!((preview.visits, preview.blocks), (3, 5));
}

#[test]
fn columns_are_proposed_by_name_and_by_what_stands_in_them() {
    for (text, expect) in [
        (
            "Player;Email;From;To;Town;Shot;Cue;How;Target;Test;Score;Comment\n",
            "student=0 email=1 arrive=2 depart=3 place=4 goal=5 cue=6 condition=7 criterion=8 kind=9 result=10 note=11",
        ),
        ("Who,When,What,Outcome of test\nAna,2026-03-11,Pinch,8/10\n", "arrive=1 result=3"),
        (
            "Student,Born,Visit date,Skill,Made,Attempts\nAna,1961-03-11,2026-03-11,Pinch,8,10\n",
            "student=0 arrive=2 goal=3 result=4 tries=5",
        ),
        ("a,b,c\nana@example.org,retest,8/10\n", "email=0 kind=1 result=2"),
    ] {
        let columns = propose(&table(text));
        let said: Vec<String> = columns
            .0
            .iter()
            .map(|(role, at)| {
                format!(
                    "{}={at}",
                    serde_json::to_value(role).expect("role").as_str().expect("text")
                )
            })
            .collect();
        assert_eq!(said.join(" "), expect, "{text}");
    }
}

#[test]
fn wrong_columns_are_refused_all_at_once() {
    let table = table("Name,Date\nAna,2026-03-11\n");
    let columns = Columns(BTreeMap::from([(Role::Student, 0), (Role::Arrive, 0), (Role::Note, 9)]));
    let refused = take(&table, &columns, DateOrder::Unknown).expect_err("refused");
    let codes: Vec<_> = refused.iter().map(|p| (p.role, p.code.as_str())).collect();
    assert_eq!(
        codes,
        [
            (Role::Goal, "column_missing"),
            (Role::Result, "column_missing"),
            (Role::Arrive, "column_used_twice"),
            (Role::Note, "no_such_column")
        ]
    );
}

#[test]
fn files_come_in_many_dresses() {
    let utf16 = |text: &str, little: bool, mark: bool| {
        let mark = if mark { "\u{feff}" } else { "" };
        format!("{mark}{text}")
            .encode_utf16()
            .flat_map(|u| if little { u.to_le_bytes() } else { u.to_be_bytes() })
            .collect::<Vec<u8>>()
    };
    let plain = "Name;Skill\r\n\"Zoë; \"\"Z\"\"\";Pinch\r\n";
    for (bytes, encoding) in [
        (plain.as_bytes().to_vec(), Encoding::Utf8),
        (format!("\u{feff}{plain}").into_bytes(), Encoding::Utf8),
        (format!("\u{feff}sep=;\r\n{plain}").into_bytes(), Encoding::Utf8),
        (utf16(plain, true, true), Encoding::Utf16),
        (utf16(plain, false, true), Encoding::Utf16),
        (utf16(plain, true, false), Encoding::Utf16),
        (
            plain
                .replace('ë', "\u{1}")
                .into_bytes()
                .into_iter()
                .map(|b| if b == 1 { 0xEB } else { b })
                .collect(),
            Encoding::Windows1252,
        ),
        (plain.replace("\r\n", "\r").into_bytes(), Encoding::Utf8),
    ] {
        let table = read(&bytes).expect("a table");
        assert_eq!(table.encoding, encoding);
        assert_eq!(
            (table.delimiter, &table.head[..]),
            (';', &["Name".to_owned(), "Skill".to_owned()][..])
        );
        assert_eq!(table.rows[0].cells, ["Zoë; \"Z\"", "Pinch"]);
    }
    for (text, delimiter) in
        [("a,b;c\n1,2\n3,4\n", ','), ("a\tb\n1,5\t2,5\n", '\t'), ("alone\nx\n", ',')]
    {
        assert_eq!(table(text).delimiter, delimiter, "{text}");
    }
}

#[test]
fn lines_are_counted_as_an_editor_counts_them() {
    let table = table("\n\nName,Note\nAna,\"two\nlines\"\n,\n\nBo,x\n");
    let lines: Vec<_> = table.rows.iter().map(|row| (row.line, row.cells[0].as_str())).collect();
    assert_eq!(lines, [(4, "Ana"), (8, "Bo")]);
}

#[test]
fn a_file_that_is_no_table_is_refused_with_its_reason() {
    let many = format!("a,b\n{}", "x,y\n".repeat(MOST_ROWS + 1));
    for (bytes, error) in [
        (b"".to_vec(), ReadError::Empty),
        (b"\xEF\xBB\xBF\r\n \n,,\n".to_vec(), ReadError::Empty),
        (b"PK\x03\x04rest".to_vec(), ReadError::Workbook),
        (b"a,b\n\0\x01\x02,c\n".to_vec(), ReadError::NotText),
        (b"\xFF\xFEa\0\x00\xD8".to_vec(), ReadError::NotText),
        (b"a,b\nx,\"never closed\ny,z\n".to_vec(), ReadError::OpenQuote { line: 2 }),
        (vec![b'a'; MOST_BYTES + 1], ReadError::TooLarge),
        (many.into_bytes(), ReadError::TooManyRows),
        (
            ",".repeat(MOST_COLUMNS + 5).replacen(',', "a,", 1).into_bytes(),
            ReadError::TooManyColumns { line: 1 },
        ),
    ] {
        assert_eq!(read(&bytes).expect_err("refused"), error);
        assert!(!error.to_string().is_empty());
    }
    let most = format!("a,b\n{}", "x,y\n".repeat(MOST_ROWS));
    assert_eq!(table(&most).rows.len(), MOST_ROWS, "the limit itself is allowed");
}

#[test]
fn a_head_alone_is_an_empty_season() {
    let preview = season("", DateOrder::Unknown);
    assert!(preview.rows.is_empty() && preview.not_taken.is_empty());
    assert_eq!((preview.visits, preview.blocks, preview.students.len()), (0, 0, 0));
}

#[test]
fn a_stray_quote_is_text() {
    let table = table("Name,Note\nAna,5\" grip\nBo, \"quoted\" \n");
    assert_eq!(table.rows[0].cells[1], "5\" grip");
    assert_eq!(table.rows[1].cells[1], "quoted");
}

/// A cell that could stand in a season, or anything at all.
fn cell() -> impl Strategy<Value = String> {
    prop_oneof![
        prop::sample::select(vec![
            "",
            "Ana Silva",
            "Silva, Ana",
            "2026-03-11",
            "11/03/2026",
            "03/25/2026",
            "8/10",
            "80%",
            "08-Oct",
            "8",
            "10",
            "retest",
            "fed",
            "test",
            "46092",
            "11 of 10",
            "\u{301}",
        ])
        .prop_map(str::to_owned),
        "[ -~]{0,12}",
        any::<String>(),
    ]
}

/// The cell as a CSV file writes it.
fn quoted(cell: &str) -> String {
    format!("\"{}\"", cell.replace('"', "\"\"").replace('\0', ""))
}

proptest! {
    #[test]
    fn every_row_is_taken_or_told_why_not(
        rows in prop::collection::vec(prop::collection::vec(cell(), 1..12), 0..12),
        order in prop::sample::select(
            vec![DateOrder::Unknown, DateOrder::DayMonthYear, DateOrder::MonthDayYear]),
    ) {
        let text = rows
            .iter()
            .map(|row| row.iter().map(|c| quoted(c)).collect::<Vec<_>>().join(","))
            .collect::<Vec<_>>()
            .join("\n");
        let table = table(&format!("{HEAD}\n{text}\n"));
        let full = rows.iter().filter(|r| r.iter().any(|c| !c.replace('\0', "").trim().is_empty()));
        prop_assert_eq!(table.rows.len(), full.count(), "a row with content is never lost");
        let names = HEAD.split(',').collect::<Vec<_>>();
        let at = |name: &str| names.iter().position(|n| *n == name).expect("a column");
        let columns = Columns(BTreeMap::from([
            (Role::Student, at("Name")), (Role::Arrive, at("Arrived")), (Role::Depart, at("Left")),
            (Role::Place, at("Place")), (Role::Goal, at("Skill")), (Role::Kind, at("Test")),
            (Role::Condition, at("Condition")), (Role::Result, at("Result")),
            (Role::Tries, at("Tries")), (Role::Note, at("Notes")),
        ]));
        let preview = take(&table, &columns, order).expect("sound columns");
        for row in &table.rows {
            let taken = preview.rows.iter().filter(|r| r.line == row.line).count();
            let told = preview.not_taken.iter().any(|n| n.line == row.line);
            prop_assert_eq!(taken, usize::from(!told), "line {} of {}", row.line, text);
        }
        prop_assert_eq!(
            preview.rows.len() + preview.rows_not_taken as usize, table.rows.len());
        for row in &preview.rows {
            prop_assert!(row.count.made <= row.count.tries && row.count.tries > 0);
            prop_assert!(row.arrive <= row.depart && !row.student_key.is_empty());
        }
    }

    #[test]
    fn no_bytes_are_a_crash(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
        if let Ok(table) = read(&bytes) {
            let columns = propose(&table);
            let _ = take(&table, &columns, DateOrder::Unknown);
            prop_assert!(!table.head.is_empty());
        }
    }

    #[test]
    fn a_table_is_read_back_cell_by_cell(
        rows in prop::collection::vec(prop::collection::vec("[a-z\"',;\t\n]{0,6}", 3), 1..6),
    ) {
        let head = "one,two,three";
        let text: String = rows
            .iter()
            .map(|row| row.iter().map(|c| quoted(c)).collect::<Vec<_>>().join(",") + "\n")
            .collect();
        let table = table(&format!("sep=,\n{head}\n{text}"));
        let want: Vec<Vec<String>> = rows
            .iter()
            .map(|row| row.iter().map(|c| c.trim().to_owned()).collect::<Vec<_>>())
            .filter(|row: &Vec<String>| row.iter().any(|c| !c.is_empty()))
            .collect();
        let got: Vec<Vec<String>> = table.rows.iter().map(|row| row.cells.clone()).collect();
        prop_assert_eq!(got, want);
    }
}
