//! The document engine as it is called: whatever the words, nothing leaves the page, nothing is
//! lost, and the same sheet gives the same bytes.

use proptest::prelude::*;

use super::lay_out::MARGIN;
use super::shape::Shaper;
use super::*;

fn sheet(pieces: Vec<Piece>) -> Sheet {
    Sheet {
        title: "A sheet".into(),
        language: "en-GB".into(),
        author: "Marta Vell".into(),
        issued: "2026-06-19T17:30:00Z".parse().unwrap(),
        paper: Paper::A4,
        letterhead: vec![],
        pieces,
        footer: "Kept by hand".into(),
        page_words: "Page {n} of {m}".into(),
    }
}

fn laid(pieces: Vec<Piece>) -> Pages {
    lay_out(&sheet(pieces), &Fonts::shipped()).unwrap()
}

fn words_of(pages: &Pages, element: usize) -> String {
    let all = pages.pages.iter().flat_map(|page| &page.items);
    let own = all.filter(|item| item.element() == Some(element));
    own.filter_map(|item| match item {
        PageItem::Text { words, .. } => Some(words.as_str()),
        _ => None,
    })
    .collect()
}

/// Everything inside the margins; the foot alone stands below, and still on the paper.
fn assert_inside(pages: &Pages) {
    let slack = 0.06;
    let (left, right) = (MARGIN - slack, pages.width - MARGIN + slack);
    for item in pages.pages.iter().flat_map(|page| &page.items) {
        let bottom = pages.height - if item.element().is_some() { MARGIN } else { 30.0 } + slack;
        let top = MARGIN - slack;
        let (xs, ys): (Vec<f32>, Vec<f32>) = match item {
            PageItem::Text { x, y, width, .. } => (vec![*x, x + width], vec![*y]),
            PageItem::Line { points, .. } => points.iter().copied().unzip(),
            PageItem::Circle { centre: (x, y), radius: r, .. } => {
                (vec![x - r, x + r], vec![y - r, y + r])
            }
            PageItem::Rect { x, y, width, height, .. } => {
                (vec![*x, x + width], vec![*y, y + height])
            }
        };
        assert!(xs.iter().all(|x| (left..=right).contains(x)), "beside the margin: {item:?}");
        assert!(ys.iter().all(|y| (top..=bottom).contains(y)), "above or below: {item:?}");
    }
}

fn assert_every_glyph_exists(pages: &Pages, fonts: &Fonts) {
    let shaper = Shaper::new(fonts);
    for item in pages.pages.iter().flat_map(|page| &page.items) {
        let PageItem::Text { font, words, .. } = item else { continue };
        let at = fonts.find(&pages.fonts[*font]).unwrap();
        let drawn = shaper.glyphs(at, words);
        assert!(drawn.iter().all(|glyph| glyph.id != 0), "a box instead of a letter in {words:?}");
    }
}

fn any_mark() -> impl Strategy<Value = Mark> {
    let n = prop_oneof![
        12 => -90.0f32..900.0,
        1 => Just(f32::NAN),
        1 => Just(f32::INFINITY),
    ];
    prop_oneof![
        (prop::collection::vec((n.clone(), n.clone()), 0..5), n.clone()).prop_map(|(points, w)| {
            Mark::Line { points, width: w, ink: Ink::Line, dash: Some((w, w)) }
        }),
        (n.clone(), n.clone(), n.clone()).prop_map(|(x, y, radius)| Mark::Circle {
            centre: (x, y),
            radius,
            fill: Some(Ink::Ball),
            stroke: None
        }),
        (n.clone(), n.clone(), n.clone()).prop_map(|(x, y, w)| Mark::Rect {
            at: (x, y),
            width: w,
            height: w,
            fill: None,
            stroke: Some(Stroke { ink: Ink::Rule, width: w })
        }),
        (n.clone(), n, 0.0f32..40.0, ".{0,40}").prop_map(|(x, y, size, words)| Mark::Text {
            at: (x, y),
            size,
            weight: Weight::Strong,
            anchor: Anchor::Middle,
            ink: Ink::Soft,
            words
        }),
    ]
}

fn any_piece() -> impl Strategy<Value = Piece> {
    let cell = prop_oneof![".{0,20}", "[a-z]{60,90}", "([a-z]{1,9} ){0,80}"];
    let row = prop::collection::vec(cell, 0..7);
    prop_oneof![
        ".{0,90}".prop_map(Piece::Title),
        ".{0,90}".prop_map(Piece::Heading),
        ".{0,400}".prop_map(Piece::Text),
        "([\\p{L}\\p{P}]{1,120} ?){0,30}".prop_map(Piece::Text),
        "[a-z<&]{0,2000}".prop_map(Piece::Note),
        prop::collection::vec(".{0,200}", 0..6).prop_map(Piece::Bullets),
        prop::collection::vec(".{0,200}", 0..6).prop_map(Piece::Lines),
        ("[a-z]{0,5}", 0.0f32..2000.0, -5.0f32..900.0, prop::collection::vec(any_mark(), 0..6))
            .prop_map(|(alt, width_pt, height_pt, marks)| Piece::Figure {
                alt,
                width_pt,
                height_pt,
                marks
            }),
        (row.clone(), prop::collection::vec(row, 0..40)).prop_map(|(head, rows)| Piece::Table {
            head,
            rows,
            right_aligned: vec![1, 9]
        }),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, ..ProptestConfig::default() })]

    #[test]
    fn nothing_leaves_the_page_and_every_glyph_exists(
        pieces in prop::collection::vec(any_piece(), 0..9),
        letterhead in prop::collection::vec(".{0,60}", 0..5),
        footer in ".{0,120}",
    ) {
        let fonts = Fonts::shipped();
        let sheet = Sheet { letterhead, footer, ..sheet(pieces) };
        let pages = lay_out(&sheet, &fonts).unwrap();
        assert_inside(&pages);
        assert_every_glyph_exists(&pages, &fonts);
        let pdf = to_pdf(&pages, &fonts).unwrap();
        prop_assert!(pdf == to_pdf(&pages, &fonts).unwrap(), "the same pages give the same bytes");
    }

    #[test]
    fn the_words_of_the_pages_are_the_words_of_the_sheet(
        given in prop::collection::vec("[A-Za-zÀ-žΑ-ωА-я0-9 \n.,&<>()-]{1,1500}", 1..6),
    ) {
        let pages = laid(given.iter().cloned().map(Piece::Text).collect());
        let drawn: Vec<String> = (0..pages.elements.len()).map(|at| words_of(&pages, at)).collect();
        let plain = |words: &String| words.split_whitespace().collect::<Vec<_>>().join(" ");
        let meant: Vec<String> = given.iter().map(plain).filter(|words| !words.is_empty()).collect();
        prop_assume!(pages.missing.is_empty());
        prop_assert_eq!(drawn, meant);
    }
}

#[test]
fn what_lies_outside_a_figure_is_moved_to_its_edge() {
    let words = |anchor, x, size| Mark::Text {
        at: (x, 30.0),
        size,
        weight: Weight::Plain,
        anchor,
        ink: Ink::Ink,
        words: "far outside the drawing".into(),
    };
    let marks = vec![
        words(Anchor::Start, 470.0, 9.0),
        words(Anchor::End, -5.0, 9.0),
        words(Anchor::Middle, 300.0, 60.0),
        Mark::Line {
            points: vec![(-50.0, 0.0), (900.0, 900.0)],
            width: 1.0,
            ink: Ink::Rule,
            dash: None,
        },
        Mark::Circle { centre: (482.0, 0.0), radius: 500.0, fill: None, stroke: None },
        Mark::Rect { at: (400.0, 10.0), width: 900.0, height: 900.0, fill: None, stroke: None },
    ];
    let pages =
        laid(vec![Piece::Figure { alt: "x".into(), width_pt: 482.0, height_pt: 80.0, marks }]);
    assert_inside(&pages);
    assert_eq!(words_of(&pages, 0), "far outside the drawing".repeat(3));
}

#[test]
fn a_word_of_ten_thousand_letters_breaks_and_is_whole() {
    let long = "Overlong".repeat(1250);
    let pages = laid(vec![Piece::Text(long.clone()), Piece::Heading(long.clone())]);
    assert_inside(&pages);
    assert!(pages.pages.len() > 1, "ten thousand letters do not fit one page");
    assert_eq!(words_of(&pages, 0), long);
}

#[test]
fn a_letter_no_font_has_is_named_and_replaced() {
    let pages = laid(vec![Piece::Text("For 渡辺 and שלום".into())]);
    assert_eq!(words_of(&pages, 0), "For ?? and ????");
    let named: String = pages.missing.iter().map(|lack| lack.cluster.as_str()).collect();
    assert_eq!(named, "渡辺שלום");
    assert!(pages.missing.iter().all(|lack| lack.place == Place::Piece(0)));
}

#[test]
fn greek_and_cyrillic_take_the_second_family() {
    let pages = laid(vec![Piece::Text("Zoë in Ελλάδα and Київ".into())]);
    assert!(pages.missing.is_empty());
    let families: Vec<&str> = pages.fonts.iter().map(|font| font.family.as_str()).collect();
    assert_eq!(families, ["Atkinson Hyperlegible Next", "Noto Sans"]);
}

#[test]
fn arrows_are_written_plain_and_strong() {
    let words = "fed \u{2192} live, \u{2190} \u{2191} \u{2193} \u{2194} \u{2195} \u{2196} \u{2197} \u{2198} \u{2199}";
    let pages = laid(vec![Piece::Text(words.into()), Piece::Heading(words.into())]);
    assert_eq!(pages.missing, []);
    assert_eq!((words_of(&pages, 0), words_of(&pages, 1)), (words.to_owned(), words.to_owned()));
    assert!(pages.fonts.iter().all(|font| font.shipped));
}

#[test]
fn a_decomposed_name_is_composed() {
    let pages = laid(vec![Piece::Text("Zoe\u{308}\u{202e}\u{0}\tVell".into())]);
    assert_eq!(words_of(&pages, 0), "Zoë Vell");
}

#[test]
fn a_table_head_returns_as_ornament_on_each_page() {
    let rows = (0..90).map(|n| vec![n.to_string(), "drive".into()]).collect();
    let head = vec!["Number".to_string(), "Stroke".to_string()];
    let pages = laid(vec![Piece::Table { head, rows, right_aligned: vec![0] }]);
    assert!(pages.pages.len() >= 3, "ninety rows need three pages");
    for (number, page) in pages.pages.iter().enumerate() {
        let heads: Vec<_> = page
            .items
            .iter()
            .filter(|item| matches!(item, PageItem::Text { words, .. } if words == "Stroke"))
            .collect();
        assert_eq!(heads.len(), 1, "one head on page {number}");
        assert_eq!(heads[0].element().is_some(), number == 0, "only the first head is content");
    }
}

#[test]
fn a_heading_stays_with_what_follows() {
    for lines in 1..60 {
        let mut pieces =
            vec![Piece::Text("filling ".repeat(lines * 13)), Piece::Heading("Next".into())];
        pieces.push(Piece::Text("what follows ".repeat(40)));
        let pages = laid(pieces);
        let page_of = |element| {
            let on = |page: &Page| page.items.iter().any(|item| item.element() == Some(element));
            pages.pages.iter().position(on)
        };
        assert_eq!(page_of(1), page_of(2), "heading and first line apart after {lines} lines");
    }
}

#[test]
fn the_foot_counts_the_pages() {
    let pages = laid(vec![Piece::Text("filling ".repeat(900))]);
    let count = pages.pages.len();
    assert!(count > 1);
    for (at, page) in pages.pages.iter().enumerate() {
        let number = format!("Page {} of {count}", at + 1);
        let said =
            |item: &PageItem| matches!(item, PageItem::Text { words, .. } if *words == number);
        assert!(page.items.iter().any(said), "{number} is missing");
    }
}

#[test]
fn pages_survive_being_kept() {
    let pages = laid(vec![Piece::Title("Kept".into()), Piece::Text("as it was".into())]);
    let kept = serde_json::to_string(&pages).unwrap();
    assert_eq!(serde_json::from_str::<Pages>(&kept).unwrap(), pages);
}

#[test]
fn a_sheet_that_cannot_be_printed_says_why() {
    let fonts = Fonts::shipped();
    let why = |change: &dyn Fn(&mut Sheet)| {
        let mut sheet = sheet(vec![]);
        change(&mut sheet);
        lay_out(&sheet, &fonts).unwrap_err()
    };
    assert_eq!(why(&|s| s.title = " \u{200b}".into()), PrintError::TitleMissing);
    assert_eq!(why(&|s| s.language = "en GB".into()), PrintError::LanguageUnclear("en GB".into()));
    assert_eq!(why(&|s| s.footer = "words ".repeat(900)), PrintError::FooterTooTall);
    let tall = |s: &mut Sheet| s.letterhead = vec!["line".into(); 60];
    assert_eq!(why(&tall), PrintError::LetterheadTooTall);
    let wide = Piece::Table { head: vec!["x".into(); 40], rows: vec![], right_aligned: vec![] };
    assert_eq!(why(&|s| s.pieces = vec![wide.clone()]), PrintError::TooManyColumns(40));
}

#[test]
fn pages_are_not_written_with_another_font() {
    let mut pages = laid(vec![Piece::Text("words".into())]);
    pages.fonts[0].sha256 = "0".repeat(64);
    let gone = PrintError::FontGone("Atkinson Hyperlegible Next".into());
    assert_eq!(to_pdf(&pages, &Fonts::shipped()).unwrap_err(), gone);
}

#[test]
fn right_to_left_words_keep_a_sane_order() {
    let fonts = Fonts::with_found(&["/usr/share/fonts/truetype/noto".into()]);
    let words = "For שלום כהן, 12 balls";
    let pages = lay_out(&sheet(vec![Piece::Text(words.into())]), &fonts).unwrap();
    assert_eq!(pages.missing, [], "this test needs the Debian package fonts-noto-core");
    assert_eq!(words_of(&pages, 0), words, "items follow the reading order");
    let left_of = |part: &str| {
        let items = pages.pages[0].items.iter();
        items
            .filter_map(|item| match item {
                PageItem::Text { words, x, .. } if words.contains(part) => Some(*x),
                _ => None,
            })
            .next()
            .unwrap()
    };
    assert!(left_of("כהן") < left_of("שלום"), "the second Hebrew word stands left of the first");
    assert!(left_of("שלום") < left_of("balls"), "English goes on to the right");
    assert_every_glyph_exists(&pages, &fonts);
}
