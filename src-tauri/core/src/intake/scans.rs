//! Signed papers, and receipts, as pictures or PDFs, kept in the coach file.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use rusqlite::params;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::app::{Reading, Writing};
use crate::db::digest;
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::ScanId;
use crate::kinds::text;

/// The most bytes a scan has.
pub const MOST: usize = 8 * 1024 * 1024;

/// A scan that is handed in.
#[derive(Clone, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ScanGiven {
    /// The file's name.
    pub name: String,
    /// Its bytes in base64 (RFC 4648).
    pub base64: String,
}

/// A scan that was read and not kept yet.
pub(crate) struct Scanned {
    name: String,
    media: &'static str,
    bytes: Vec<u8>,
}

/// A scan as it is named.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct ScanNamed {
    /// Which one.
    pub id: ScanId,
    /// The file's name.
    pub name: String,
}

/// Which scan.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichScan {
    /// The scan.
    pub scan: ScanId,
}

/// What the first bytes of a file say it is (ISO 32000: `%PDF-`; PNG and JPEG: their signatures).
fn media_of(bytes: &[u8]) -> Option<&'static str> {
    if bytes.starts_with(b"%PDF-") {
        Some("application/pdf")
    } else if bytes.starts_with(b"\x89PNG\r\n\x1a\n") {
        Some("image/png")
    } else if bytes.starts_with(b"\xff\xd8\xff") {
        Some("image/jpeg")
    } else {
        None
    }
}

impl ScanGiven {
    pub(crate) fn read(self, p: &mut Problems, field: &str) -> Option<Scanned> {
        let name = text::line(&self.name);
        let name: String =
            name.chars().filter(|c| !matches!(c, '/' | '\\' | ':')).take(120).collect();
        let name = if name.trim_matches(['.', ' ']).is_empty() { "scan".to_owned() } else { name };
        // Four letters stand for three bytes: what is far too long is never decoded.
        if self.base64.len() / 4 * 3 > MOST + 3 {
            p.add(field, "too_large", too_large(&name));
            return None;
        }
        let Ok(bytes) = STANDARD.decode(self.base64.as_bytes()) else {
            p.add(
                field,
                "unreadable",
                format!("\u{201c}{name}\u{201d} did not arrive whole. Choose it again."),
            );
            return None;
        };
        if bytes.len() > MOST {
            p.add(field, "too_large", too_large(&name));
            return None;
        }
        let Some(media) = media_of(&bytes) else {
            p.add(
                field,
                "no_scan",
                format!("\u{201c}{name}\u{201d} is not a PDF, a PNG or a JPEG picture. Scan or photograph the paper as one of these."),
            );
            return None;
        };
        Some(Scanned { name, media, bytes })
    }
}

fn too_large(name: &str) -> String {
    format!(
        "\u{201c}{name}\u{201d} is larger than {} MB. Scan it in black and white or with fewer dots; nothing else was lost.",
        MOST / 1024 / 1024
    )
}

/// Keeps a scan.
pub(crate) fn keep(db: &Writing<'_>, scan: Option<Scanned>) -> Result<Option<ScanId>> {
    let Some(scan) = scan else { return Ok(None) };
    let id: ScanId = db.id();
    db.execute(
        "INSERT INTO scan (id, name, media, sha256, bytes) VALUES (?, ?, ?, ?, ?)",
        params![id, scan.name, scan.media, digest::sha256(&scan.bytes), scan.bytes],
    )?;
    Ok(Some(id))
}

/// A scan by its name.
pub(crate) fn named(db: &Reading<'_>, id: Option<ScanId>) -> Result<Option<ScanNamed>> {
    let Some(id) = id else { return Ok(None) };
    let name =
        db.found("scan", &id, "SELECT name FROM scan WHERE id = ?", [id], |r| r.get("name"))?;
    Ok(Some(ScanNamed { id, name }))
}

/// A scan's file name, with the ending of what it is, and its bytes.
///
/// # Errors
/// `NotFound`; `Fault` when the bytes are not those that were kept.
pub fn document(db: &Reading<'_>, which: WhichScan) -> Result<(String, Vec<u8>)> {
    let (name, media, sha256, bytes): (String, String, String, Vec<u8>) =
        db.found("scan", &which.scan, "SELECT * FROM scan WHERE id = ?", [which.scan], |r| {
            Ok((r.get("name")?, r.get("media")?, r.get("sha256")?, r.get("bytes")?))
        })?;
    if digest::sha256(&bytes) != sha256 {
        return Err(Error::Fault(format!("scan {} is not what was kept", which.scan)));
    }
    let ending = match media.as_str() {
        "application/pdf" => "pdf",
        "image/png" => "png",
        _ => "jpg",
    };
    // The name came from elsewhere: its own ending is not trusted.
    let stem = name.rsplit_once('.').map_or(name.as_str(), |(stem, _)| stem);
    Ok((format!("{}.{ending}", crate::print::file_words(stem)), bytes))
}
