//! The structure tree (ISO 32000-1 §14.7): which marks on which page make up each element, and
//! the way back from a mark to its element.

use lopdf::{Dictionary, Document, Object, ObjectId, dictionary};

use super::error::PrintError;
use super::pages::{Element, Pages, Tag};
use super::paint::{Marked, tag_name};
use super::xmp::text;

/// Writes the tree and ties the pages to it; returns its root.
pub(super) fn write(
    file: &mut Document,
    pages: &Pages,
    page_ids: &[ObjectId],
    marked: &Marked,
) -> Result<ObjectId, PrintError> {
    let root = file.new_object_id();
    let document = file.new_object_id();
    let ids: Vec<ObjectId> = pages.elements.iter().map(|_| file.new_object_id()).collect();
    let mut kids: Vec<Vec<Object>> = vec![Vec::new(); ids.len()];
    let mut top = Vec::new();
    let mut back: Vec<Vec<Object>> = vec![Vec::new(); page_ids.len()];
    let mut numbered: Vec<(usize, i64, ObjectId)> = Vec::new();
    for (at, element) in pages.elements.iter().enumerate() {
        for &(page, mark) in marked.get(&at).into_iter().flatten() {
            let Some(&page_id) = page_ids.get(page) else { continue };
            let kid = dictionary! { "Type" => "MCR", "Pg" => page_id, "MCID" => mark };
            kids[at].push(kid.into());
            numbered.push((page, mark, ids[at]));
        }
        match element.inside.and_then(|outer| kids.get_mut(outer)) {
            Some(outer) => outer.push(ids[at].into()),
            None => top.push(ids[at].into()),
        }
    }
    // Marks on a page are numbered from 0 without gaps, so their order is the array's order.
    numbered.sort_unstable();
    for (page, _, id) in numbered {
        back[page].push(id.into());
    }
    for ((at, element), kids) in pages.elements.iter().enumerate().zip(kids) {
        let parent = element.inside.and_then(|outer| ids.get(outer)).unwrap_or(&document);
        let mut written = dictionary! {
            "Type" => "StructElem", "S" => tag_name(element.tag), "P" => *parent, "K" => kids,
        };
        describe(&mut written, element, pages.height, page_ids);
        file.set_object(ids[at], written);
    }
    let mut numbers: Vec<Object> = Vec::new();
    for (page, (marks, id)) in back.into_iter().zip(page_ids).enumerate() {
        numbers.push((page as i64).into());
        numbers.push(file.add_object(marks).into());
        let dict = file.get_object_mut(*id)?.as_dict_mut()?;
        dict.set("StructParents", page as i64);
        dict.set("Tabs", "S");
    }
    file.set_object(
        document,
        dictionary! { "Type" => "StructElem", "S" => "Document", "P" => root, "K" => top },
    );
    file.set_object(
        root,
        dictionary! {
            "Type" => "StructTreeRoot", "K" => document,
            "ParentTree" => dictionary! { "Nums" => numbers },
            "ParentTreeNextKey" => page_ids.len() as i64,
        },
    );
    Ok(root)
}

fn describe(written: &mut Dictionary, element: &Element, height: f32, page_ids: &[ObjectId]) {
    if element.tag == Tag::Th {
        written.set("A", dictionary! { "O" => "Table", "Scope" => "Column" });
    }
    if let Some(alt) = &element.alt {
        written.set("Alt", text(alt));
    }
    if let Some(frame) = &element.frame {
        let bottom = height - frame.y - frame.height;
        let corners = [frame.x, bottom, frame.x + frame.width, bottom + frame.height];
        let corners: Vec<Object> = corners.iter().map(|&at| Object::Real(at)).collect();
        let layout = dictionary! { "O" => "Layout", "Placement" => "Block", "BBox" => corners };
        written.set("A", layout);
        if let Some(&page) = page_ids.get(frame.page) {
            written.set("Pg", page);
        }
    }
}
