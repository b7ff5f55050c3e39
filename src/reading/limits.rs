//! Limits: format 1, field by field.

use super::field::field;
use super::section::Section;
use crate::model::Bound;
use crate::model::LimitKey;
use crate::model::LimitQuantity;
use crate::model::Limits;
use crate::model::Part;
use crate::model::Placed;
use crate::model::SetLimit;
use crate::units::Angle;
use crate::units::Length;
use crate::units::Ratio;

/// Reads the limits set in one place.
pub(super) fn limits(at: &mut Section) -> Limits {
    Limits(LimitKey::ALL.into_iter().filter_map(|(key, ..)| limit(at, key)).collect())
}

fn limit(at: &mut Section, key: LimitKey) -> Option<SetLimit> {
    let about = "a limit, with where its figures come from; `none` switches it off";
    let whole = field(key.key(), about).or_word("none");
    if let Some(place) = at.is_word(whole) {
        return Some(SetLimit { key, place, bounds: Vec::new(), source: None, off: true });
    }
    at.if_written(whole, |at| SetLimit {
        key,
        place: at.place(),
        bounds: key.parts().iter().filter_map(|part| bound(at, key, part.0, part.1)).collect(),
        source: at.text(field("source", "where the figures come from")),
        off: false,
    })
}

fn bound(at: &mut Section, key: LimitKey, part: Part, quantity: LimitQuantity) -> Option<Bound> {
    let field = field(part.key(), "a figure of the limit");
    // A limit that guards life can't be made to allow what is out of the question.
    let field = if key.guards_life() { field.from(0.0) } else { field };
    let value = match quantity {
        LimitQuantity::Angle => at.get::<Angle>(field).map(|angle| plain(angle, Angle::as_deg)),
        LimitQuantity::Length => at.get::<Length>(field).map(|length| plain(length, Length::as_mm)),
        LimitQuantity::Ratio | LimitQuantity::Percent => {
            at.get::<Ratio>(field.from(0.0)).map(|ratio| plain(ratio, Ratio::value))
        }
        LimitQuantity::Times | LimitQuantity::Days => {
            at.get::<u32>(field).map(|count| plain(count, f64::from))
        }
    };
    Some(Bound { part, value: value? })
}

fn plain<T>(placed: Placed<T>, figure: impl Fn(T) -> f64) -> Placed<f64> {
    Placed { value: figure(placed.value), place: placed.place }
}
