//! Printed letters judged by programs that are not ours.
//!
//! Needs `pdftotext` and `pdftoppm` (Debian poppler-utils), `qpdf`, `compare` (imagemagick), the
//! font package `fonts-ipafont-gothic`, and `outloud` (PyPI 0.2.1, a PDF/UA-1 checker after the
//! Matterhorn Protocol). A missing tool fails the test; nothing is skipped.

// Helpers of a test file count as tests: a failure in them is a failed check.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

#[path = "print/sample.rs"]
mod sample;

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use carryover_core::print::{Fonts, Pages, lay_out, to_pdf};
use serde_json::Value;

/// Where Debian's fonts-ipafont-gothic puts IPAPGothic.
const IPA: &str = "/usr/share/fonts/opentype/ipafont-gothic";

/// The checker's own command, called through the Python it is installed in.
const OUTLOUD: &str = "import sys; from outloud.cli import main; sys.exit(main())";

fn letter() -> (Pages, Vec<u8>) {
    let fonts = Fonts::with_found(&[IPA.into()]);
    let pages = lay_out(&sample::letter(), &fonts).unwrap();
    assert_eq!(pages.missing, [], "every name can be written; is fonts-ipafont-gothic installed?");
    let pdf = to_pdf(&pages, &fonts).unwrap();
    (pages, pdf)
}

/// The letter in a file of its own, named by the test so that tests can run side by side.
fn written(test: &str) -> PathBuf {
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("letter-{test}.pdf"));
    std::fs::write(&path, letter().1).unwrap();
    path
}

fn run(tool: &mut Command) -> Output {
    let named = format!("{tool:?}");
    tool.output().unwrap_or_else(|error| panic!("cannot run {named}: {error}; is it installed?"))
}

#[test]
fn the_text_comes_out_in_order_with_every_name() {
    let pdf = written("text");
    let out = run(Command::new("pdftotext").args(["-enc", "UTF-8"]).arg(&pdf).arg("-"));
    assert!(out.status.success(), "pdftotext refused the file");
    let text = String::from_utf8(out.stdout).unwrap();
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for name in sample::NAMES {
        assert!(text.contains(name), "{name} is not in the text");
    }
    let order = [
        "Marta Vell",
        "four days in Ellmouth",
        "the best thing of this visit was your patience at the back. In the last game",
        "What moved",
        "5 of 20",
        "What is kept, and what is carried",
        "Page 1 of 2",
        "second bounce behind the service box",
        "Ghosting to the backhand corner: 2 times a week",
        "live, shared lesson with 渡辺 はるか",
        "I expect to be in Ellmouth again",
        "Page 2 of 2",
    ];
    let mut from = 0;
    for words in order {
        let at = text[from..].find(words);
        from += at.unwrap_or_else(|| panic!("{words:?} is missing or out of order"));
    }
}

#[test]
fn qpdf_finds_no_fault_and_the_whole_tree() {
    let pdf = written("tree");
    let out = run(Command::new("qpdf").arg("--check").arg(&pdf));
    assert!(out.status.success(), "qpdf --check: {}", String::from_utf8_lossy(&out.stdout));
    let out = run(Command::new("qpdf").arg("--json=2").arg(&pdf));
    let json: Value = serde_json::from_slice(&out.stdout).unwrap();
    let objects = json["qpdf"][1].as_object().unwrap();
    let dicts: Vec<&Value> = objects.values().map(|object| &object["value"]).collect();
    let catalog = dicts.iter().find(|d| d["/Type"] == "/Catalog").unwrap();
    assert_eq!(catalog["/Lang"], "u:en-GB");
    assert_eq!(catalog["/MarkInfo"]["/Marked"], true);
    assert_eq!(catalog["/ViewerPreferences"]["/DisplayDocTitle"], true);
    assert_eq!(catalog["/PageMode"], "/UseOutlines");
    let elements: Vec<&&Value> = dicts.iter().filter(|d| d["/Type"] == "/StructElem").collect();
    let count = |tag: &str| elements.iter().filter(|e| e["/S"] == tag).count();
    // The sample has one title, four headings, two figures, a 7-row table with 5 columns, 3 points.
    assert_eq!((count("/H1"), count("/H2"), count("/Figure"), count("/Table")), (1, 4, 2, 1));
    assert_eq!((count("/TR"), count("/TH"), count("/TD")), (8, 5, 35));
    assert_eq!((count("/L"), count("/LI"), count("/Lbl"), count("/LBody")), (1, 3, 3, 3));
    for figure in elements.iter().filter(|e| e["/S"] == "/Figure") {
        assert!(figure["/Alt"].as_str().is_some_and(|alt| alt.len() > 40), "a figure has words");
        assert_eq!(figure["/A"]["/BBox"].as_array().map(Vec::len), Some(4));
    }
    let root = &objects[&format!("obj:{}", catalog["/StructTreeRoot"].as_str().unwrap())]["value"];
    assert_eq!(root["/ParentTree"]["/Nums"].as_array().map(Vec::len), Some(4), "two pages");
    let info = &objects
        [&format!("obj:{}", json["qpdf"][1]["trailer"]["value"]["/Info"].as_str().unwrap())];
    assert_eq!(info["value"]["/Title"], "u:Progress letter for Zoë Łukasiewicz <May & June>");
}

#[test]
fn no_glyph_is_the_sign_of_absence() {
    let pdf = written("glyphs");
    let plain = pdf.with_extension("qdf");
    let out =
        run(Command::new("qpdf").args(["--qdf", "--object-streams=disable"]).arg(&pdf).arg(&plain));
    assert!(out.status.success());
    let bytes = std::fs::read(&plain).unwrap();
    let text = String::from_utf8_lossy(&bytes);
    let mut codes = 0;
    for line in text.lines().filter(|line| line.trim_end().ends_with("TJ")) {
        for code in line.split('<').skip(1).filter_map(|part| part.split('>').next()) {
            assert_ne!(code, "0000", "glyph 0 is drawn in {line}");
            codes += 1;
        }
    }
    assert!(codes > 1500, "the letter has its letters: {codes}");
}

#[test]
fn the_same_letter_gives_the_same_bytes_and_is_small() {
    let (first, second) = (letter(), letter());
    assert!(first == second, "two runs differ");
    assert_eq!(first.0.pages.len(), 2);
    assert!(first.1.len() <= 100 * 1024, "{} bytes for two pages", first.1.len());
}

#[test]
fn the_pages_look_as_they_did() {
    // Grey at 60 dots per inch. A mean difference over 0.5 % of black against white fails: other
    // smoothing stays well below it, a paragraph moved by a line is well above.
    const TOLERANCE: f64 = 0.005;
    let pdf = written("look");
    let drawn = pdf.with_extension("");
    let out =
        run(Command::new("pdftoppm").args(["-r", "60", "-gray", "-png"]).arg(&pdf).arg(&drawn));
    assert!(out.status.success(), "pdftoppm refused the file");
    for page in 1..=2 {
        let now = PathBuf::from(format!("{}-{page}.png", drawn.display()));
        let kept =
            Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("tests/print/page-{page}.png"));
        let out =
            run(Command::new("compare").args(["-metric", "MAE"]).arg(&kept).arg(&now).arg("null:"));
        let said = String::from_utf8_lossy(&out.stderr);
        let part = said.split(['(', ')']).nth(1).and_then(|part| part.parse::<f64>().ok());
        let part = part.unwrap_or_else(|| panic!("compare said: {said}"));
        assert!(
            part <= TOLERANCE,
            "page {page} differs by {part}: look at {} and, if it is right, keep it as {}",
            now.display(),
            kept.display()
        );
    }
}

#[test]
fn outloud_finds_no_error_against_pdf_ua_1() {
    let python = std::env::var_os("CARRYOVER_PYTHON").expect(
        "set CARRYOVER_PYTHON to a Python with the checker: python3 -m venv tests/.venv && \
         tests/.venv/bin/pip install -r tests/outside/requirements.txt, then \
         CARRYOVER_PYTHON=$PWD/tests/.venv/bin/python cargo test",
    );
    let pdf = written("outloud");
    let said = |pdf: &Path| {
        let out =
            run(Command::new(&python).args(["-c", OUTLOUD, "--layer", "conformance"]).arg(pdf));
        let text = String::from_utf8_lossy(&[out.stdout, out.stderr].concat()).into_owned();
        (out.status.success(), text)
    };
    let (passed, text) = said(&pdf);
    assert!(passed && text.contains("0 error(s)"), "{text}");
    // The checker does bite: the same letter without its language fails.
    let bytes = std::fs::read(&pdf).unwrap();
    let at =
        bytes.windows(6).position(|part| part == b"/Lang(").expect("the catalog has a language");
    let mut spoilt = bytes;
    spoilt[at..at + 5].copy_from_slice(b"/Gnal");
    let other = pdf.with_file_name("letter-without-language.pdf");
    std::fs::write(&other, spoilt).unwrap();
    let (passed, text) = said(&other);
    assert!(!passed, "a letter without a language passed: {text}");
}
