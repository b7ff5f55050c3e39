//! JSON Schema (draft 2020-12) of each kind of record, for editors that know YAML.
//!
//! Made from the forms that the readers list: it has no table of fields of its own, and can't say
//! more than one file shows. What YAML turns into a number before a schema sees it (`1e3`), a figure
//! out of bounds in another unit and all that joins two places stay with the reader.

mod fields;
mod values;

use serde_json::Map;
use serde_json::Value as Json;
use serde_json::json;

use crate::reading::RecordKind;
use crate::reading::form;
use fields::section;

/// Returns the schema of a kind of record as JSON.
///
/// # Source
///
/// JSON Schema draft 2020-12: JSON Schema Core and JSON Schema Validation, 2022.
#[must_use]
pub fn schema(kind: RecordKind) -> String {
    let mut definitions = Definitions::default();
    let record = section(&form(kind), Need::Part, None, &mut definitions);
    let record = match kind {
        RecordKind::Waiver => object(json!({"type": "array", "items": record})),
        _ => record,
    };
    let (title, file) = title(kind);
    let mut whole = object(json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "$id": schema_file(kind),
        "title": title,
        "description": format!(
            "{file} The files are YAML 1.2. Keys that begin with x- are the club's own. \
             `tholebook lint` reads the same fields and checks more than a schema can."
        ),
    }));
    whole.extend(record);
    whole.insert("$defs".to_owned(), Json::Object(definitions.0));
    format!("{:#}\n", Json::Object(whole))
}

/// Returns the name of the file that holds the schema of a kind of record.
#[must_use]
pub fn schema_file(kind: RecordKind) -> String {
    format!("{}.schema.json", kind.word())
}

const fn title(kind: RecordKind) -> (&'static str, &'static str) {
    match kind {
        RecordKind::Boat => ("A boat", "A file below boats/: one boat and her rig."),
        RecordKind::OarSet => ("An oar set", "A file below oars/: one set of oars."),
        RecordKind::Crew => ("A crew", "A file below crews/: one crew."),
        RecordKind::Class => ("A class", "A file below classes/: one class of boats."),
        RecordKind::Club => ("The club", "club.yaml: the club's settings."),
        RecordKind::Waiver => ("Waivers", "waivers.yaml: findings the club lives with."),
    }
}

/// Whether a value must be written.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
enum Need {
    /// It must be written, with what was taken.
    Must,
    /// It is a part of a list or of a free map: there only because it was written.
    Part,
    /// It may be left out, left empty, or called not measured.
    May,
}

/// What is said once and pointed to from the fields.
#[derive(Default)]
struct Definitions(Map<String, Json>);

impl Definitions {
    /// Returns what points to a definition, and makes it where it isn't there yet.
    fn point_to(&mut self, name: String, make: impl FnOnce(&mut Self) -> Object) -> Object {
        let pointer = format!("#/$defs/{name}");
        if !self.0.contains_key(&name) {
            let made = make(self);
            self.0.insert(name, Json::Object(made));
        }
        object(json!({"$ref": pointer}))
    }
}

type Object = Map<String, Json>;

/// Returns the keys and values of JSON that is known to be an object.
fn object(json: Json) -> Object {
    match json {
        Json::Object(object) => object,
        _ => Object::new(),
    }
}
