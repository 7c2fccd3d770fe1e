//! The typefaces: two shipped families (SIL Open Font License 1.1, texts in `core/fonts/`) and,
//! if asked for, what the machine has for scripts the shipped ones lack.

use std::borrow::Cow;
use std::path::PathBuf;
use std::sync::OnceLock;

use rustybuzz::ttf_parser;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

use super::sheet::Weight;

/// Families worth asking a machine for, best first. Those drawn with PostScript (CFF) curves
/// are passed over when read, for the file writer takes TrueType curves only.
const WANTED: [&str; 22] = [
    "Noto Sans CJK JP",
    "IPAexGothic",
    "IPAPGothic",
    "IPAGothic",
    "TakaoPGothic",
    "VL PGothic",
    "WenQuanYi Micro Hei",
    "WenQuanYi Zen Hei",
    "Yu Gothic",
    "Meiryo",
    "MS PGothic",
    "Microsoft YaHei",
    "Microsoft JhengHei",
    "Malgun Gothic",
    "NanumGothic",
    "Noto Sans Hebrew",
    "Noto Sans Arabic",
    "Noto Sans Thai",
    "Noto Sans Devanagari",
    "Segoe UI",
    "DejaVu Sans",
    "Arial Unicode MS",
];

/// A font that pages were laid out with: enough to find it again and to know it is the same.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct FontUsed {
    /// The family's name.
    pub family: String,
    /// Plain or strong.
    pub weight: Weight,
    /// SHA-256 of the font file, in lower-case hex.
    pub sha256: String,
    /// Which face of a collection file; 0 for a plain font file.
    pub index: u32,
    /// Whether the program brings the font with it.
    pub shipped: bool,
}

/// The fonts a sheet may be set in, in the order they are tried.
pub struct Fonts {
    faces: Vec<Face>,
}

struct Face {
    family: String,
    weight: Weight,
    index: u32,
    source: Source,
    read: OnceLock<Option<Read>>,
}

enum Source {
    Shipped(&'static [u8]),
    File(PathBuf),
}

struct Read {
    bytes: Cow<'static, [u8]>,
    sha256: String,
}

impl Fonts {
    /// Atkinson Hyperlegible Next with Noto Sans behind it (Latin, Greek, Cyrillic), and the arrows of
    /// Noto Sans Symbols (U+2190 to U+2199 cut out of it).
    pub fn shipped() -> Self {
        let face = |family: &str, weight, bytes| Face {
            family: family.into(),
            weight,
            index: 0,
            source: Source::Shipped(bytes),
            read: OnceLock::new(),
        };
        let (next, noto) = ("Atkinson Hyperlegible Next", "Noto Sans");
        let arrows = "Noto Sans Symbols";
        let (plain, strong) = (Weight::Plain, Weight::Strong);
        Self {
            faces: vec![
                face(
                    next,
                    plain,
                    include_bytes!("../../fonts/AtkinsonHyperlegibleNext-Regular.ttf"),
                ),
                face(
                    next,
                    strong,
                    include_bytes!("../../fonts/AtkinsonHyperlegibleNext-SemiBold.ttf"),
                ),
                face(noto, plain, include_bytes!("../../fonts/NotoSans-Regular.ttf")),
                face(noto, strong, include_bytes!("../../fonts/NotoSans-Bold.ttf")),
                face(
                    arrows,
                    plain,
                    include_bytes!("../../fonts/NotoSansSymbols-Arrows-Regular.ttf"),
                ),
                face(arrows, strong, include_bytes!("../../fonts/NotoSansSymbols-Arrows-Bold.ttf")),
            ],
        }
    }

    /// The shipped fonts and behind them those found in `dirs` for other scripts. A found font is
    /// read only when a letter needs it; one that cannot be read or embedded is passed over.
    pub fn with_found(dirs: &[PathBuf]) -> Self {
        let mut machine = fontdb::Database::new();
        for dir in dirs {
            machine.load_fonts_dir(dir);
        }
        let mut fonts = Self::shipped();
        for family in WANTED {
            let query =
                fontdb::Query { families: &[fontdb::Family::Name(family)], ..Default::default() };
            let Some((fontdb::Source::File(path), index)) =
                machine.query(&query).and_then(|id| machine.face_source(id))
            else {
                continue;
            };
            fonts.faces.push(Face {
                family: family.into(),
                weight: Weight::Plain,
                index,
                source: Source::File(path),
                read: OnceLock::new(),
            });
        }
        fonts
    }

    /// The bytes of a font and the face's place in them, if this very font is at hand.
    pub fn bytes_of(&self, used: &FontUsed) -> Option<(&[u8], u32)> {
        let at = self.find(used)?;
        Some((self.bytes(at)?, used.index))
    }

    pub(super) fn find(&self, used: &FontUsed) -> Option<usize> {
        (0..self.faces.len()).find(|&at| {
            let face = &self.faces[at];
            face.family == used.family
                && face.weight == used.weight
                && self.used(at).as_ref() == Some(used)
        })
    }

    pub(super) fn len(&self) -> usize {
        self.faces.len()
    }

    pub(super) fn bytes(&self, at: usize) -> Option<&[u8]> {
        Some(&self.faces.get(at)?.read()?.bytes)
    }

    pub(super) fn index(&self, at: usize) -> u32 {
        self.faces.get(at).map_or(0, |face| face.index)
    }

    pub(super) fn used(&self, at: usize) -> Option<FontUsed> {
        let face = self.faces.get(at)?;
        Some(FontUsed {
            family: face.family.clone(),
            weight: face.weight,
            sha256: face.read()?.sha256.clone(),
            index: face.index,
            shipped: matches!(face.source, Source::Shipped(_)),
        })
    }

    /// The fonts to try for a weight, best first: shipped ones of that weight, then found ones.
    pub(super) fn order(&self, weight: Weight) -> impl Iterator<Item = usize> + '_ {
        (0..self.faces.len()).filter(move |&at| {
            let face = &self.faces[at];
            face.weight == weight || matches!(face.source, Source::File(_))
        })
    }
}

impl Face {
    fn read(&self) -> Option<&Read> {
        self.read
            .get_or_init(|| {
                let bytes: Cow<'static, [u8]> = match &self.source {
                    Source::Shipped(bytes) => Cow::Borrowed(bytes),
                    Source::File(path) => Cow::Owned(std::fs::read(path).ok()?),
                };
                may_embed(&bytes, self.index).then(|| Read {
                    sha256: Sha256::digest(&bytes).iter().map(|b| format!("{b:02x}")).collect(),
                    bytes,
                })
            })
            .as_ref()
    }
}

/// TrueType curves, and a licence field (OS/2 `fsType`) that allows a subset in a document.
fn may_embed(bytes: &[u8], index: u32) -> bool {
    let Ok(face) = ttf_parser::Face::parse(bytes, index) else { return false };
    let restricted = matches!(face.permissions(), Some(ttf_parser::Permissions::Restricted) | None);
    face.tables().glyf.is_some()
        && !restricted
        && face.is_subsetting_allowed()
        && face.is_outline_embedding_allowed()
}

/// Where this kind of machine keeps its fonts.
pub fn machine_font_dirs() -> Vec<PathBuf> {
    let dirs: &[&str] = if cfg!(windows) {
        &["C:\\Windows\\Fonts"]
    } else if cfg!(target_os = "macos") {
        &["/System/Library/Fonts", "/Library/Fonts"]
    } else {
        &["/usr/share/fonts", "/usr/local/share/fonts"]
    };
    dirs.iter().map(PathBuf::from).collect()
}
