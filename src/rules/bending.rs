//! How far to bend which horn, which way: degrees, millimetres at the tip, the reading to reach.
//!
//! ```text
//!   to the bow <-                            -> to the stern
//!                 \ forward horn     after horn /
//!      less pitch  \                           /  wider gap
//!                   \____________ bed ________/
//! ```
//!
//! Pitch is set on the forward horn, for the drive bears on it; the gap on the after horn.

use super::words;
use crate::geometry::correction::tip_move;
use crate::units::Angle;
use crate::units::Length;
use crate::units::Slope;
use crate::working::Attitude;
use crate::working::SeatSight;

/// How every horn and every pin is bent.
pub const HOW_TO_BEND: &str = "low at the foot, the bed kept flat, a second bar holding so that the pin carries nothing; bend short, read, go on";

/// Returns how to change the pitch of a blade square off by at least so many degrees.
pub(super) fn set_pitch(seat: &SeatSight, change: f64) -> String {
    let way = if change > 0.0 { "to the stern" } else { "to the bow" };
    let degrees = at_least(change.abs(), "deg");
    let tip = horn(seat).map(|horn| tip_move(horn, Angle::deg(change.abs())).as_mm());
    let tip = tip.map_or(String::new(), |tip| format!(" ({} at its tip)", at_least(tip, "mm")));
    let until = reading_after(seat, change)
        .map_or(String::new(), |until| format!(", until the blade reads {until} square off"));
    format!(
        "Bend the forward horn only, its top {way} by at least {degrees}{tip}{until}: {HOW_TO_BEND}. Then set the gap with the after horn."
    )
}

/// What the blade reads square off once its pitch is changed, written as it was read.
fn reading_after(seat: &SeatSight, change: f64) -> Option<String> {
    let written = seat.pitch_reading(Attitude::Square)?.values.first()?;
    let pitch = Angle::deg(seat.pitch_as_read(Attitude::Square).ok()?.value() + change);
    let reach = |value: f64, unit| {
        if change > 0.0 { at_least(value, unit) } else { at_most(value, unit) }
    };
    Some(match written {
        Slope::Angle(_) => reach(pitch.as_deg(), "deg"),
        Slope::Over { down, .. } => {
            format!("{} over {down}", reach(down.as_mm() * pitch.tan(), "mm"))
        }
        Slope::Offset(_) => reach(seat.at_mark().ok()?.value() * pitch.sin(), "mm"),
    })
}

/// Returns how to change the gap by at least so many millimetres.
pub(super) fn set_gap(seat: &SeatSight, change: f64) -> String {
    let (verb, way) = if change > 0.0 { ("Open", "to the stern") } else { ("Close", "to the bow") };
    let by = at_least(change.abs(), "mm");
    let degrees = horn(seat).map(|horn| (change.abs() / horn.as_mm()).atan().to_degrees());
    let degrees =
        degrees.map_or(String::new(), |degrees| format!(", {}", at_least(degrees, "deg")));
    let until = seat.gap().ok().map(|gap| gap.value() + change).map_or(String::new(), |gap| {
        let gap = if change > 0.0 { at_least(gap, "mm") } else { at_most(gap, "mm") };
        format!(", until it reads {gap}")
    });
    format!(
        "{verb} the gap by at least {by}{until}. Bend the after horn only, its top {way} ({by} at its tip{degrees}): {HOW_TO_BEND}. Then lift the oar out by hand at every angle."
    )
}

/// Returns how to bring the tip of the after horn to the stern by at least so many millimetres.
pub(super) fn unhook(by: f64) -> String {
    format!(
        "Bend the after horn's tip to the stern by at least {}, a second bar holding; bend short, read, go on. Then measure the gap again and lift the oar out by hand at every angle.",
        at_least(by, "mm")
    )
}

/// Height of the lower horn, the mean where it was read several times.
fn horn(seat: &SeatSight) -> Option<Length> {
    let values = &seat.seat.rowlock.horn.as_ref()?.values;
    let sum: f64 = values.iter().map(|value| value.as_mm()).sum();
    Some(Length::mm(sum / values.len() as f64))
}

/// An amount shown with no more decimals than a figure has, and never less than it is.
fn at_least(value: f64, unit: &str) -> String {
    let size = 10_f64.powi(words::places(unit) as i32);
    words::number((value * size - GRAIN).ceil() / size, unit)
}

/// The same, never more than it is.
fn at_most(value: f64, unit: &str) -> String {
    let size = 10_f64.powi(words::places(unit) as i32);
    words::number((value * size + GRAIN).floor() / size, unit)
}

/// Rounding of binary numbers, in the last decimal shown.
const GRAIN: f64 = 1e-6;
