//! Whether two values say the same. Knows nothing but the two.

use super::value::Value;
use super::value::bare;
use crate::model::Said;
use crate::units::Slope;

/// How two values of one name are alike.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Likeness {
    /// They say the same; quotes, blanks and the order of a list say nothing.
    Same,
    /// The same number, written to other digits: `11` and `11.0`.
    PrecisionOnly,
    /// The same number in another unit: `600` and `60 cm`.
    UnitOnly,
    /// The same mean of another number of readings, all alike: `58` and `[58, 58]`.
    ReadOften,
    /// They say something else.
    Changed,
    /// One of them can't be read, so nobody knows.
    Unread,
}

/// How far two figures may differ and still be one: what is lost where a unit is turned into
/// another.
const LOST: f64 = 8.0 * f64::EPSILON;

/// Compares what two values say and, where that is the same, how they are written.
#[must_use]
pub fn same(old: &Value, new: &Value) -> Likeness {
    if old.is_unread() || new.is_unread() {
        return Likeness::Unread;
    }
    let (old_parts, new_parts) = (parts(old), parts(new));
    if old_parts.len() != new_parts.len() {
        return if all_one(&old_parts, &new_parts) {
            Likeness::ReadOften
        } else {
            Likeness::Changed
        };
    }
    let pairs = || old_parts.iter().zip(&new_parts);
    if !pairs().all(|(old, new)| says_same(old.said, new.said)) {
        return Likeness::Changed;
    }
    let written = pairs().filter(|(old, _)| !matches!(old.said, Said::Text(_)));
    let written: Vec<Likeness> = written.map(|(old, new)| wording(old.text, new.text)).collect();
    let any = |likeness| written.contains(&likeness).then_some(likeness);
    any(Likeness::UnitOnly).or(any(Likeness::PrecisionOnly)).unwrap_or(Likeness::Same)
}

struct Part<'v> {
    said: &'v Said,
    text: &'v str,
}

/// Returns the parts of a value in an order of their own: that of the list says nothing.
fn parts<'v>(value: &'v Value) -> Vec<Part<'v>> {
    let together = value.said.iter().zip(&value.texts);
    let mut parts: Vec<Part> =
        together.map(|(said, text)| Part { said, text: bare(text) }).collect();
    parts.sort_by(|one, other| {
        let (one_key, other_key) = (key(one.said), key(other.said));
        one_key.0.total_cmp(&other_key.0).then_with(|| one_key.1.cmp(&other_key.1))
    });
    parts
}

fn key(said: &Said) -> (f64, String) {
    match said {
        Said::Figure { value, .. } => (*value, String::new()),
        Said::Slope(Slope::Offset(offset) | Slope::Over { offset, .. }) => {
            (offset.as_mm(), String::new())
        }
        Said::Slope(Slope::Angle(angle)) => (angle.as_deg(), String::new()),
        Said::Text(text) => (0.0, words(text)),
        Said::Unread => (0.0, String::new()),
    }
}

/// Returns whether readings, however many, are all one and the same. Texts are no readings.
fn all_one(old: &[Part], new: &[Part]) -> bool {
    let Some(first) = old.first() else { return false };
    !matches!(first.said, Said::Text(_))
        && old.iter().chain(new).all(|part| says_same(first.said, part.said))
}

/// Returns whether two parts say the same.
pub(super) fn says_same(old: &Said, new: &Said) -> bool {
    match (old, new) {
        (Said::Figure { value: old, of: own }, Said::Figure { value: new, of }) => {
            own == of && is_one(*old, *new)
        }
        (Said::Slope(old), Said::Slope(new)) => one_slope(old, new),
        (Said::Text(old), Said::Text(new)) => old == new || words(old) == words(new),
        _ => false,
    }
}

fn one_slope(old: &Slope, new: &Slope) -> bool {
    match (old, new) {
        (Slope::Offset(old), Slope::Offset(new)) => is_one(old.as_mm(), new.as_mm()),
        (Slope::Angle(old), Slope::Angle(new)) => is_one(old.as_deg(), new.as_deg()),
        (Slope::Over { offset, down }, Slope::Over { offset: new, down: over }) => {
            is_one(offset.as_mm(), new.as_mm()) && is_one(down.as_mm(), over.as_mm())
        }
        _ => false,
    }
}

fn is_one(old: f64, new: f64) -> bool {
    (old - new).abs() <= LOST * old.abs().max(new.abs())
}

/// Returns a text with every gap one blank wide: how it was wrapped says nothing.
fn words(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Compares how one and the same figure is written.
fn wording(old: &str, new: &str) -> Likeness {
    let units = |text: &str| text.chars().filter(|c| is_of_unit(*c)).collect::<String>();
    let numbers = |text: &str| {
        let plain = |c: &char| !is_of_unit(*c) && *c != '+' && !c.is_whitespace();
        text.chars().filter(plain).collect::<String>()
    };
    if units(old) != units(new) {
        Likeness::UnitOnly
    } else if numbers(old) != numbers(new) {
        Likeness::PrecisionOnly
    } else {
        Likeness::Same
    }
}

fn is_of_unit(c: char) -> bool {
    c.is_alphabetic() || "°%".contains(c)
}
