//! What was read, as it stands in a cell of the rig card.

use super::figures_text::rounded;
use crate::model::Placed;
use crate::model::Reading;
use crate::model::Word;
use crate::reading::NOT_MEASURED;
use crate::units::Length;
use crate::units::Slope;
use crate::working::Worked;

/// The most decimals of a reading that a cell shows, as of one converted from inches.
const PLACES: usize = 2;

/// Returns a length as read, in millimetres; several readings with a stroke between them.
pub(super) fn read(reading: Option<&Reading<Length>>) -> Option<String> {
    let values = &reading?.values;
    Some(joined(values.iter().map(|length| short(length.as_mm()))))
}

/// Returns a slope as read: an offset in millimetres, an angle with its unit.
pub(super) fn offset(reading: Option<&Reading<Slope>>) -> Option<String> {
    let values = &reading?.values;
    Some(joined(values.iter().map(|slope| match slope {
        Slope::Offset(offset) | Slope::Over { offset, .. } => short(offset.as_mm()),
        Slope::Angle(angle) => format!("{} deg", short(angle.as_deg())),
    })))
}

/// Returns what was read with how good it is, in the same unit; "not measured" where it was not.
pub(super) fn good_to(read: Option<String>, worked: &Worked, places: usize) -> String {
    let Some(read) = read else { return NOT_MEASURED.to_owned() };
    match worked {
        Ok(budget) => format!("{read} ± {:.places$}", budget.expanded()),
        Err(_) => read,
    }
}

/// Returns a word of the format.
pub(super) fn word<W: Word + PartialEq>(placed: Option<Placed<W>>) -> Option<String> {
    placed.map(|placed| placed.value.word().to_owned())
}

fn joined(values: impl Iterator<Item = String>) -> String {
    values.collect::<Vec<_>>().join("/")
}

/// A number with as many decimals as it needs, and no more than can mean anything.
fn short(number: f64) -> String {
    let text = rounded(number, PLACES);
    match text.contains('.') {
        true => text.trim_end_matches('0').trim_end_matches('.').to_owned(),
        false => text,
    }
}
