//! A section of a record, its fields and lists, as a schema. Knows no single field by name.

use serde_json::Value as Json;
use serde_json::json;

use super::Definitions;
use super::Need;
use super::Object;
use super::object;
use super::values::Written;
use super::values::not_measured_or;
use crate::reading::Bounds;
use crate::reading::Described;
use crate::reading::FINEST;
use crate::reading::Field;
use crate::reading::Kind;
use crate::reading::READ;
use crate::reading::TO;
use crate::reading::ValueKind;

/// Returns a section: its fields, which of them must be there, and nothing else but `x-` keys.
pub(super) fn section(
    form: &[Described],
    need: Need,
    word: Option<&str>,
    definitions: &mut Definitions,
) -> Object {
    let fields = form.iter().map(|described| {
        (described.field.key.to_owned(), Json::Object(field(described, definitions)))
    });
    let fields: Object = fields.collect();
    let must = form.iter().map(|described| described.field).filter(|field| field.must);
    let must: Vec<&str> = must.map(|field| field.key).collect();
    let mut section = shape("object", need, word);
    section.extend(fields_of(fields, &must));
    section
}

fn field(described: &Described, definitions: &mut Definitions) -> Object {
    let Described { field, kind, bounds } = described;
    let need = if field.must { Need::Must } else { Need::May };
    let mut schema = object(json!({"description": description(field, kind, *bounds)}));
    schema.extend(of_kind(described, kind, need, definitions));
    schema
}

fn of_kind(
    described: &Described,
    kind: &Kind,
    need: Need,
    definitions: &mut Definitions,
) -> Object {
    let Described { field, bounds, .. } = described;
    let written = |kind| Written { kind, bounds: *bounds, many_lines: field.many_lines };
    match kind {
        Kind::Value(kind) => written(kind).schema(need, definitions),
        Kind::Reading(kind) => reading(&written(kind), definitions),
        Kind::Section(form) => section(form, need, field.word, definitions),
        Kind::List(part, _) => {
            let part = of_kind(described, part, Need::Part, definitions);
            let mut list = shape("array", need, None);
            list.insert("items".to_owned(), Json::Object(part));
            list
        }
        Kind::Free(part) => {
            let part = of_kind(described, part, Need::Part, definitions);
            let mut map = shape("object", need, None);
            map.insert("additionalProperties".to_owned(), Json::Object(part));
            map
        }
    }
}

/// Returns a reading: a value, a list of them, or either with how finely it was read.
fn reading(written: &Written, definitions: &mut Definitions) -> Object {
    let name = format!("reading-of-{}", written.name(Need::Part));
    definitions.point_to(name, |definitions| {
        let part = Json::Object(written.schema(Need::Part, definitions));
        let list = json!({"type": "array", "minItems": 1, "items": part});
        let fineness = Bounds { least: Some(FINEST), most: None };
        let to = Written { bounds: fineness, ..*written }.schema(Need::May, definitions);
        let read = json!({"description": READ.about, "anyOf": [part, list]});
        let mut fine = object(json!({"description": TO.about}));
        fine.extend(to);
        let fields = [(READ.key.to_owned(), read), (TO.key.to_owned(), Json::Object(fine))];
        let mut with = object(json!({"type": "object"}));
        with.extend(fields_of(Object::from_iter(fields), &[READ.key]));
        let alone = written.schema(Need::May, definitions);
        object(json!({
            "description": "A reading: alone, as a list, or with how finely it was read.",
            "anyOf": [alone, list, with],
        }))
    })
}

fn fields_of(fields: Object, must: &[&str]) -> Object {
    let mut of = object(json!({"properties": fields}));
    if !must.is_empty() {
        of.insert("required".to_owned(), json!(must));
    }
    of.extend(object(json!({"patternProperties": {"^x-": true}, "additionalProperties": false})));
    of
}

/// Returns what has a shape of its own, or is left empty, called not measured or said in a word.
fn shape(shape: &str, need: Need, word: Option<&str>) -> Object {
    match need {
        Need::May => {
            let words = not_measured_or(word.unwrap_or_default());
            let manner = match shape {
                "array" => "Write a list here, or `not measured`.",
                _ => "Write `key: value` pairs here, or `not measured`.",
            };
            let types = [shape, "string", "null"];
            object(json!({"type": types, "pattern": words, "patternErrorMessage": manner}))
        }
        Need::Must | Need::Part => object(json!({"type": shape})),
    }
}

/// Returns how a field is measured, in what unit, and what it can be.
fn description(field: &Field, kind: &Kind, bounds: Bounds) -> String {
    let Some(unit) = unit(kind) else { return field.about.to_owned() };
    let range = match (bounds.least, bounds.most) {
        (Some(least), Some(most)) if least >= most => format!(", {least}"),
        (Some(least), Some(most)) => format!(", {least} to {most}"),
        (Some(least), None) => format!(", {least} or more"),
        (None, Some(most)) => format!(", {most} or less"),
        (None, None) => String::new(),
    };
    format!("{}; {unit}{range}", field.about)
}

fn unit(kind: &Kind) -> Option<&'static str> {
    match kind {
        Kind::Value(kind) | Kind::Reading(kind) => match kind {
            ValueKind::Length => Some("mm, or with its unit"),
            ValueKind::Angle => Some("deg"),
            ValueKind::Slope => Some("mm, or `11 over 176`, or with deg"),
            ValueKind::Weight => Some("kg"),
            ValueKind::Ratio => Some("a plain number"),
            ValueKind::Count => Some("a whole number"),
            ValueKind::Date => Some("a day, as 2026-10-17"),
            ValueKind::Id | ValueKind::Text | ValueKind::Flag | ValueKind::Word(_) => None,
        },
        Kind::List(..) | Kind::Free(_) | Kind::Section(_) => None,
    }
}
