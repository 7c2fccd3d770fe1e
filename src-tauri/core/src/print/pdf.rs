//! Pages into a PDF 1.7 file, tagged to PDF/UA-1 (ISO 14289-1) and marked as PDF/A-3 (ISO 19005-3):
//! the drawing through printpdf, the rest of the file's tree through lopdf. Same pages and fonts, same
//! bytes.

use std::collections::BTreeMap;

use lopdf::{Dictionary, Document, Object, ObjectId, Stream, StringFormat, dictionary};
use printpdf::{ParsedFont, PdfDocument, PdfFont, PdfPage, PdfSaveOptions, Pt};
use sha2::{Digest, Sha256};
use subsetter::GlyphRemapper;

use super::error::PrintError;
use super::fonts::Fonts;
use super::pages::Pages;
use super::paint::{Face, Painter, font_id, gather};
use super::shape::Shaper;
use super::sheet::Weight;
use super::{tags, xmp};

/// What the numbers of colours mean: sRGB (IEC 61966-2-1), as a version 2 profile in the public domain
/// (CC0).
const SRGB: &[u8] = include_bytes!("srgb.icc");

/// Writes the pages as a PDF.
///
/// # Errors
/// If `fonts` lacks a font the pages were laid out with (the very same file, by its hash), or a
/// font cannot be cut down to the glyphs in use.
pub fn to_pdf(pages: &Pages, fonts: &Fonts) -> Result<Vec<u8>, PrintError> {
    let shaper = Shaper::new(fonts);
    let mut faces = Vec::new();
    for used in &pages.fonts {
        let at = fonts.find(used).ok_or_else(|| PrintError::FontGone(used.family.clone()))?;
        faces.push(Face { at, kept: GlyphRemapper::new(), says: BTreeMap::new() });
    }
    gather(&pages.pages, &shaper, &mut faces);
    let mut document = PdfDocument::new(&pages.title);
    for (number, face) in faces.iter().enumerate() {
        let font = cut_down(fonts, face, number, &pages.fonts[number])?;
        document.resources.fonts.map.insert(font_id(number), PdfFont::new(font));
    }
    let mut painter = Painter {
        shaper: &shaper,
        faces: &faces,
        elements: &pages.elements,
        height: pages.height,
        marked: BTreeMap::new(),
    };
    let (width, height) = (Pt(pages.width), Pt(pages.height));
    let drawn = pages.pages.iter().enumerate();
    let drawn = drawn
        .map(|(number, page)| PdfPage::new(width.into(), height.into(), painter.page(number, page)))
        .collect();
    document.with_pages(drawn);
    let options = PdfSaveOptions { subset_fonts: false, ..PdfSaveOptions::default() };
    let file = document.to_lopdf_document(&options, &mut Vec::new());
    finish(file, pages, &painter)
}

/// The font with only the glyphs in use, named as ISO 32000-1 §9.6.4 asks.
fn cut_down(
    fonts: &Fonts,
    face: &Face,
    number: usize,
    used: &super::FontUsed,
) -> Result<ParsedFont, PrintError> {
    let unreadable = || PrintError::FontUnreadable(used.family.clone());
    let bytes = fonts.bytes(face.at).ok_or_else(unreadable)?;
    let cut = subsetter::subset(bytes, used.index, &face.kept).map_err(|_| unreadable())?;
    let mut font = ParsedFont::from_bytes(&cut, 0, &mut Vec::new()).ok_or_else(unreadable)?;
    let letter = char::from(b'A' + (number % 26) as u8);
    let family: String = used.family.chars().filter(char::is_ascii_alphanumeric).collect();
    let weight = if used.weight == Weight::Strong { "Strong" } else { "Regular" };
    font.font_name = Some(format!("CARRY{letter}+{family}-{weight}"));
    Ok(font)
}

fn finish(mut file: Document, pages: &Pages, painter: &Painter<'_>) -> Result<Vec<u8>, PrintError> {
    file.version = "1.7".into();
    let page_ids: Vec<ObjectId> = file.get_pages().into_values().collect();
    let tree = tags::write(&mut file, pages, &page_ids, &painter.marked)?;
    let outline = outline(&mut file, pages, &page_ids);
    let packet = Stream::new(
        dictionary! { "Type" => "Metadata", "Subtype" => "XML" },
        xmp::packet(pages).into_bytes(),
    );
    let packet = file.add_object(packet.with_compression(false));
    let colours = Stream::new(dictionary! { "N" => 3 }, SRGB.to_vec());
    let colours = file.add_object(colours);
    let intent = dictionary! {
        "Type" => "OutputIntent", "S" => "GTS_PDFA1",
        "OutputConditionIdentifier" => xmp::text("sRGB"), "Info" => xmp::text("sRGB"),
        "RegistryName" => xmp::text("IEC 61966-2-1"), "DestOutputProfile" => colours,
    };
    let info = file.add_object(xmp::info(pages));
    let root = file.trailer.get(b"Root")?.as_reference()?;
    let catalog = file.get_object_mut(root)?.as_dict_mut()?;
    catalog.set("Lang", xmp::text(&pages.language));
    catalog.set("MarkInfo", dictionary! { "Marked" => true });
    catalog.set("StructTreeRoot", tree);
    catalog.set("Metadata", packet);
    catalog.set("OutputIntents", vec![Object::Dictionary(intent)]);
    catalog.set("ViewerPreferences", dictionary! { "DisplayDocTitle" => true });
    catalog.remove(b"PageLayout");
    match outline {
        Some(outline) => {
            catalog.set("Outlines", outline);
            catalog.set("PageMode", "UseOutlines");
        }
        None => {
            catalog.remove(b"Outlines");
            catalog.set("PageMode", "UseNone");
        }
    }
    file.trailer.set("Info", info);
    let mark = content_mark(pages)?;
    file.trailer.set("ID", vec![mark.clone(), mark]);
    file.prune_objects();
    file.compress();
    let mut bytes = Vec::new();
    file.save_to(&mut bytes).map_err(|error| PrintError::File(error.to_string()))?;
    Ok(bytes)
}

/// The file's ID comes from what it says, so that the same document has the same ID.
fn content_mark(pages: &Pages) -> Result<Object, PrintError> {
    let said = serde_json::to_vec(pages).map_err(|error| PrintError::File(error.to_string()))?;
    Ok(Object::String(Sha256::digest(said)[..16].to_vec(), StringFormat::Hexadecimal))
}

/// Title and headings as bookmarks, by position.
fn outline(file: &mut Document, pages: &Pages, page_ids: &[ObjectId]) -> Option<ObjectId> {
    let root = file.new_object_id();
    let marks: Vec<_> = pages.bookmarks.iter().map(|mark| (file.new_object_id(), mark)).collect();
    let (first, last) = (marks.first()?.0, marks.last()?.0);
    for (at, (id, mark)) in marks.iter().enumerate() {
        let mut entry = Dictionary::new();
        entry.set("Title", xmp::text(&mark.words));
        entry.set("Parent", root);
        if let Some(page) = page_ids.get(mark.page) {
            let top = Object::Real(pages.height - mark.y);
            let place = vec![(*page).into(), "XYZ".into(), Object::Null, top, Object::Null];
            entry.set("Dest", Object::Array(place));
        }
        if let Some((before, _)) = at.checked_sub(1).and_then(|before| marks.get(before)) {
            entry.set("Prev", *before);
        }
        if let Some((next, _)) = marks.get(at + 1) {
            entry.set("Next", *next);
        }
        file.set_object(*id, entry);
    }
    let count = marks.len() as i64;
    let entry =
        dictionary! { "Type" => "Outlines", "First" => first, "Last" => last, "Count" => count };
    file.set_object(root, entry);
    Some(root)
}
