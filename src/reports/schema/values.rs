//! A single value as a schema: what YAML makes of it, and how it is written where it is a text.

use serde_json::Value as Json;
use serde_json::json;

use super::Definitions;
use super::Need;
use super::Object;
use super::object;
use crate::reading::Bounds;
use crate::reading::LONGEST_ID;
use crate::reading::NOT_MEASURED;
use crate::reading::TAKEN_FOR_OTHERS;
use crate::reading::ValueKind;
use crate::units::Angle;
use crate::units::Length;
use crate::units::Ratio;
use crate::units::Unit;
use crate::units::Weight;

/// Days of the Gregorian calendar (ISO 8601): months of 31 and of 30 days, February, leap days.
const DAY: &str = "[0-9]{4}-(0[13578]|1[02])-(0[1-9]|[12][0-9]|3[01])\
    |[0-9]{4}-(0[469]|11)-(0[1-9]|[12][0-9]|30)\
    |[0-9]{4}-02-(0[1-9]|1[0-9]|2[0-8])\
    |([0-9]{2}(0[48]|[2468][048]|[13579][26])|([02468][048]|[13579][26])00)-02-29";

const ABOVE_ZERO: &str = "\\+?([0-9]*[1-9][0-9]*(\\.[0-9]+)?|0+\\.[0-9]*[1-9][0-9]*)";

/// A value as it is written.
#[derive(Clone, Copy)]
pub(super) struct Written<'f> {
    pub(super) kind: &'f ValueKind,
    pub(super) bounds: Bounds,
    pub(super) many_lines: bool,
}

impl Written<'_> {
    /// Returns the value's schema: fixed words in full, anything else as a pointer.
    pub(super) fn schema(&self, need: Need, definitions: &mut Definitions) -> Object {
        match self.kind {
            ValueKind::Word(words) => one_of(words, need),
            _ => definitions.point_to(self.name(need), |_| self.definition(need)),
        }
    }

    /// Returns a name that no other value has.
    pub(super) fn name(&self, need: Need) -> String {
        let kind = self.kind_name();
        let Bounds { least, most } = self.bounds;
        let bounds = match (least, most) {
            (Some(least), Some(most)) if least < 0.0 => format!("-within-{most}"),
            (Some(least), Some(most)) => format!("-{least}-to-{most}"),
            (Some(least), None) => format!("-from-{least}"),
            (None, _) => String::new(),
        };
        let need = match need {
            Need::May => "-or-not-measured",
            Need::Part if *self.kind == ValueKind::Text => "-in-list",
            Need::Must | Need::Part => "",
        };
        format!("{kind}{bounds}{need}")
    }

    fn kind_name(&self) -> &'static str {
        match self.kind {
            ValueKind::Length => "length",
            ValueKind::Angle => "angle",
            ValueKind::Slope => "slope",
            ValueKind::Weight => "weight",
            ValueKind::Ratio => "ratio",
            ValueKind::Count => "count",
            ValueKind::Date => "date",
            ValueKind::Id => "id",
            ValueKind::Text if self.many_lines => "text",
            ValueKind::Text => "line",
            ValueKind::Flag => "flag",
            ValueKind::Word(_) => "word",
        }
    }

    fn definition(&self, need: Need) -> Object {
        let may = need == Need::May;
        let mut types = self.types().to_vec();
        types.extend(may.then_some("null"));
        // Not a description: an editor would show that in place of how the field is measured.
        let mut schema = object(json!({"type": types, "errorMessage": self.manner()}));
        if let Some(pattern) = self.pattern() {
            let text = *self.kind == ValueKind::Text;
            let pattern = if may && !text { not_measured_or(&pattern) } else { whole(&pattern) };
            schema.insert("pattern".to_owned(), json!(pattern));
        }
        let bounds = [("minimum", self.bounds.least), ("maximum", self.bounds.most)];
        for (key, bound) in bounds {
            schema.extend(bound.map(|bound| (key.to_owned(), figure(bound))));
        }
        schema.extend(self.but(need));
        schema
    }

    /// Returns the types that YAML 1.2 makes of the value. A text may look like a number.
    fn types(&self) -> &'static [&'static str] {
        match self.kind {
            ValueKind::Count => &["integer", "string"],
            ValueKind::Date | ValueKind::Id | ValueKind::Word(_) => &["string"],
            ValueKind::Text => &["string", "number", "boolean"],
            ValueKind::Flag => &["boolean", "string"],
            _ => &["number", "string"],
        }
    }

    fn pattern(&self) -> Option<String> {
        let number = self.number();
        let pattern = match self.kind {
            ValueKind::Length => length(&number),
            ValueKind::Angle => with_unit(&number, Angle::UNITS, "?"),
            ValueKind::Slope => {
                let (offset, down) = (length(&number), length(ABOVE_ZERO));
                let angle = with_unit(&number, Angle::UNITS, "");
                format!("{angle}|({offset})( +over +({down}))?")
            }
            ValueKind::Weight => with_unit(&number, Weight::UNITS, "?"),
            ValueKind::Ratio => with_unit(&number, Ratio::UNITS, "?"),
            ValueKind::Count => "\\+?[0-9]+".to_owned(),
            ValueKind::Date => DAY.to_owned(),
            ValueKind::Id => format!("[A-Za-z][A-Za-z0-9-]{{0,{}}}", LONGEST_ID - 1),
            ValueKind::Text if self.many_lines => return None,
            ValueKind::Text => "[^\\n]*(\\n\\s*)?".to_owned(),
            ValueKind::Flag => "true|false".to_owned(),
            ValueKind::Word(_) => return None,
        };
        Some(pattern)
    }

    fn number(&self) -> String {
        let positive = self.bounds.least.is_some_and(|least| least >= 0.0);
        let sign = if positive { "\\+?" } else { "[+-]?" };
        format!("{sign}[0-9]+(\\.[0-9]+)?")
    }

    /// Returns what a text may not be, though it is well formed.
    fn but(&self, need: Need) -> Object {
        match (self.kind, need) {
            (ValueKind::Date, Need::Must | Need::Part) => object(json!({"format": "date"})),
            (ValueKind::Text, Need::Must) => object(json!({"not": {"const": NOT_MEASURED}})),
            (ValueKind::Id, _) => {
                let words = TAKEN_FOR_OTHERS.map(in_any_case).join("|");
                object(json!({"not": {"type": "string", "pattern": whole(&words)}}))
            }
            _ => Object::new(),
        }
    }

    fn manner(&self) -> &'static str {
        match self.kind {
            ValueKind::Length => {
                "A length: a plain number of mm, or with its unit, as 60 cm, 0.6 m, 23 5/8 in."
            }
            ValueKind::Angle => {
                "An angle: a plain number of degrees, or with its unit, as 5.7 deg."
            }
            ValueKind::Slope => {
                "A slope: mm sideways over mm down, as 11 over 176, an angle, as 3.6 deg, or mm \
                 alone."
            }
            ValueKind::Weight => "A weight: a plain number of kilograms, or with kg.",
            ValueKind::Ratio => "A number without a unit, or with %.",
            ValueKind::Count => "A whole number.",
            ValueKind::Date => "A day: year, month, day, as 2026-10-17.",
            ValueKind::Id => {
                "An id: begins with a letter, then letters, digits, hyphens; not yes, no, on or \
                 their like."
            }
            ValueKind::Text if self.many_lines => "A text, of several lines if need be.",
            ValueKind::Text => "A text of one line.",
            ValueKind::Flag => "true or false.",
            ValueKind::Word(_) => "One of a few words.",
        }
    }
}

fn one_of(words: &[&str], need: Need) -> Object {
    let mut words: Vec<Json> = words.iter().map(|word| json!(word)).collect();
    if need == Need::May {
        words.extend([json!(NOT_MEASURED), Json::Null]);
    }
    object(json!({"enum": words}))
}

/// Returns a pattern that matches the whole of a text.
fn whole(pattern: &str) -> String {
    format!("^({pattern})$")
}

/// Returns a pattern that matches the whole of a text, or `not measured`.
pub(super) fn not_measured_or(pattern: &str) -> String {
    let rest = if pattern.is_empty() { String::new() } else { format!("|{pattern}") };
    whole(&format!("{NOT_MEASURED}{rest}"))
}

/// Returns a bound as it is read by people: 1000, not 1000.0.
fn figure(bound: f64) -> Json {
    let whole = format!("{bound}").parse::<i64>();
    whole.map_or_else(|_| json!(bound), |whole| json!(whole))
}

fn length(number: &str) -> String {
    let fraction = "[+-]?([0-9]{1,6} +)?[0-9]{1,6}/[1-9][0-9]{0,5}\\s*in";
    format!("{}|{fraction}", with_unit(number, Length::UNITS, "?"))
}

fn with_unit(number: &str, units: &[Unit], optional: &str) -> String {
    let words: Vec<&str> = units.iter().map(|unit| unit.word).filter(|w| !w.is_empty()).collect();
    format!("{number}(\\s*({})){optional}", words.join("|"))
}

fn in_any_case(word: &str) -> String {
    let letter = |letter: char| match letter.is_ascii_alphabetic() {
        true => format!("[{}{letter}]", letter.to_ascii_uppercase()),
        false => letter.to_string(),
    };
    word.chars().map(letter).collect()
}
