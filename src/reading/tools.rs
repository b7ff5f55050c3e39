//! How finely tools read: format 1, field by field.

use super::field::field;
use super::section::Section;
use crate::model::HalfWidths;
use crate::model::Placed;
use crate::model::Tool;
use crate::units::Angle;
use crate::units::Length;

/// Reads how finely each tool reads.
pub(super) fn half_widths(at: &mut Section) -> HalfWidths {
    let one = |(tool, key): (Tool, &'static str)| {
        let field = field(key, "half-width: a reading is good to this, either way").from(0.001);
        let half_width = match tool {
            Tool::Level | Tool::OarAngle | Tool::Dip => at
                .get::<Angle>(field)
                .map(|angle| Placed { value: angle.value.as_deg(), place: angle.place }),
            _ => at
                .get::<Length>(field)
                .map(|length| Placed { value: length.value.as_mm(), place: length.place }),
        };
        Some((tool, half_width?))
    };
    HalfWidths(Tool::STATED.into_iter().filter_map(one).collect())
}
