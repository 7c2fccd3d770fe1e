//! What the file says of itself, twice and in step: the XMP packet (ISO 16684-1) with the identifiers
//! of PDF/UA (ISO 14289-1 §5) and PDF/A (ISO 19005-3 §6.6.4), and the older Info dictionary.

use lopdf::{Dictionary, Object, StringFormat, dictionary};

use super::pages::Pages;

const PRODUCER: &str = "Carryover";

/// What PDF/A does not know by itself has to be described (ISO 19005-3 §6.6.2.3.3): the identifier of
/// PDF/UA.
const DESCRIBED: &str = r#"<rdf:Description rdf:about="" xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/" xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#" xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
<pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
<pdfaSchema:schema>PDF/UA identification schema</pdfaSchema:schema>
<pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
<pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
<pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
<pdfaProperty:name>part</pdfaProperty:name>
<pdfaProperty:valueType>Integer</pdfaProperty:valueType>
<pdfaProperty:category>internal</pdfaProperty:category>
<pdfaProperty:description>Part of ISO 14289</pdfaProperty:description>
</rdf:li></rdf:Seq></pdfaSchema:property>
</rdf:li></rdf:Bag></pdfaExtension:schemas>
</rdf:Description>"#;

/// A PDF text string: plain if ASCII, else UTF-16 with its mark.
pub(super) fn text(words: &str) -> Object {
    if words.is_ascii() {
        return Object::String(words.as_bytes().to_vec(), StringFormat::Literal);
    }
    let mut bytes = vec![0xFE, 0xFF];
    bytes.extend(words.encode_utf16().flat_map(u16::to_be_bytes));
    Object::String(bytes, StringFormat::Hexadecimal)
}

/// The Info dictionary.
pub(super) fn info(pages: &Pages) -> Dictionary {
    let date = text(&pages.issued.format("D:%Y%m%d%H%M%S+00'00'").to_string());
    let mut info = dictionary! {
        "Title" => text(&pages.title), "Creator" => text(PRODUCER), "Producer" => text(PRODUCER),
        "CreationDate" => date.clone(), "ModDate" => date,
    };
    if !pages.author.is_empty() {
        info.set("Author", text(&pages.author));
    }
    info
}

/// The XMP packet.
pub(super) fn packet(pages: &Pages) -> String {
    let date = pages.issued.format("%Y-%m-%dT%H:%M:%S+00:00");
    let title = escaped(&pages.title);
    let language = escaped(&pages.language);
    let creator = if pages.author.is_empty() {
        String::new()
    } else {
        let author = escaped(&pages.author);
        format!("<dc:creator><rdf:Seq><rdf:li>{author}</rdf:li></rdf:Seq></dc:creator>")
    };
    format!(
        r#"<?xpacket begin="{mark}" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/" xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/">
<dc:format>application/pdf</dc:format>
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">{title}</rdf:li></rdf:Alt></dc:title>
{creator}<dc:language><rdf:Bag><rdf:li>{language}</rdf:li></rdf:Bag></dc:language>
<xmp:CreateDate>{date}</xmp:CreateDate>
<xmp:ModifyDate>{date}</xmp:ModifyDate>
<xmp:CreatorTool>{PRODUCER}</xmp:CreatorTool>
<pdf:Producer>{PRODUCER}</pdf:Producer>
<pdfuaid:part>1</pdfuaid:part>
<pdfaid:part>3</pdfaid:part>
<pdfaid:conformance>U</pdfaid:conformance>
</rdf:Description>
{DESCRIBED}
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="w"?>"#,
        mark = '\u{feff}',
    )
}

fn escaped(words: &str) -> String {
    let mut out = String::with_capacity(words.len());
    for c in words.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\u{fffe}' | '\u{ffff}' => {}
            c => out.push(c),
        }
    }
    out
}
