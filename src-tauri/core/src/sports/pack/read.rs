//! Reads a pack from its text and says everything that is wrong with it, each with its field.

use std::fmt;

use serde_json::Value as Schema;
use toml::Value;

use super::{Pack, check};

/// One thing wrong with a pack.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// Where, such as `skills[3].group`.
    pub field: String,
    /// What is wrong with it.
    pub words: String,
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.field, self.words)
    }
}

/// Why a pack cannot be used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PackError {
    /// The text is no TOML: where and why.
    Unreadable(String),
    /// It reads, and says things that cannot be.
    Unsound(Vec<Fault>),
}

impl fmt::Display for PackError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            PackError::Unreadable(why) => write!(f, "this sport pack cannot be read: {why}"),
            PackError::Unsound(faults) => {
                f.write_str("this sport pack cannot be used:")?;
                faults.iter().try_for_each(|fault| write!(f, "\n{fault}"))
            }
        }
    }
}

impl std::error::Error for PackError {}

/// Reads a pack from the text of its TOML file and checks it.
///
/// ```
/// use carryover_core::sports::pack::{PackError, read};
/// assert!(matches!(read("name = "), Err(PackError::Unreadable(_))));
/// ```
///
/// # Errors
/// `Unreadable` for a text that is no TOML; else `Unsound` with everything wrong. A field that is
/// missing or of the wrong type hides what the checks would have said, as they need a whole pack.
pub fn read(text: &str) -> Result<Pack, PackError> {
    let table: toml::Table =
        toml::from_str(text).map_err(|error| PackError::Unreadable(error.to_string()))?;
    let mut value = Value::Table(table);
    let mut faults = Vec::new();
    let pack = match take(value.clone()) {
        Ok(pack) => Some(pack),
        // The first unknown field ends a reading. They are taken out, so that the rest is read too.
        Err(fault) => {
            let schema = schemars::schema_for!(Pack).to_value();
            leave_out_unknown(&mut value, &schema, &schema, "", &mut faults);
            if faults.is_empty() {
                faults.push(fault);
                None
            } else {
                take(value).map_err(|fault| faults.push(fault)).ok()
            }
        }
    };
    faults.extend(pack.iter().flat_map(check::faults));
    match pack {
        Some(pack) if faults.is_empty() => Ok(pack),
        _ => Err(PackError::Unsound(faults)),
    }
}

fn take(value: Value) -> Result<Pack, Fault> {
    serde_path_to_error::deserialize(value).map_err(|error| Fault {
        field: error.path().to_string(),
        words: error.inner().to_string().trim_end().to_owned(),
    })
}

/// Takes out every field that the schema does not know, and says where it was.
fn leave_out_unknown(
    value: &mut Value,
    schema: &Schema,
    whole: &Schema,
    path: &str,
    faults: &mut Vec<Fault>,
) {
    let Some(schema) = meant(schema, whole) else { return };
    match value {
        Value::Table(table) => {
            let Some(known) = schema.get("properties").and_then(Schema::as_object) else { return };
            let at = |name: &str| {
                if path.is_empty() { name.to_owned() } else { format!("{path}.{name}") }
            };
            table.retain(|name, _| {
                let is_known = known.contains_key(name);
                if !is_known {
                    let words = "there is no such field".to_owned();
                    faults.push(Fault { field: at(name), words });
                }
                is_known
            });
            for (name, inner) in table.iter_mut() {
                if let Some(schema) = known.get(name) {
                    leave_out_unknown(inner, schema, whole, &at(name), faults);
                }
            }
        }
        Value::Array(list) => {
            let Some(schema) = schema.get("items") else { return };
            for (number, inner) in list.iter_mut().enumerate() {
                leave_out_unknown(inner, schema, whole, &format!("{path}[{number}]"), faults);
            }
        }
        _ => {}
    }
}

/// The schema behind a reference, or behind "this or null".
fn meant<'a>(schema: &'a Schema, whole: &'a Schema) -> Option<&'a Schema> {
    if let Some(options) = schema.get("anyOf").and_then(Schema::as_array) {
        let some = options.iter().find(|o| o.get("type").and_then(Schema::as_str) != Some("null"));
        return meant(some?, whole);
    }
    match schema.get("$ref").and_then(Schema::as_str) {
        Some(reference) => whole.pointer(reference.strip_prefix('#')?),
        None => Some(schema),
    }
}
