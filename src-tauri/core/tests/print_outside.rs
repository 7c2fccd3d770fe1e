//! Printed letters judged by programs that are not ours.
//!
//! Needs `pdftotext` and `pdftoppm` (poppler-utils), `qpdf`, the font package
//! `fonts-ipafont-gothic`, and the PDF/UA checker `outloud` (PyPI 0.2.1). A missing tool fails.

#[path = "print/sample.rs"]
mod sample;

#[test]
fn look() {
    let fonts = carryover_core::print::Fonts::with_found(&["/usr/share/fonts/opentype/ipafont-gothic".into()]);
    let t = std::time::Instant::now();
    let pages = carryover_core::print::lay_out(&sample::letter(), &fonts).unwrap();
    println!("{:?} {:?}", t.elapsed(), pages.missing);
    let pdf = carryover_core::print::to_pdf(&pages, &fonts).unwrap();
    println!("{:?} {}", t.elapsed(), pdf.len());
    std::fs::write("/tmp/w/look.pdf", pdf).unwrap();
}
