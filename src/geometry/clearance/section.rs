//! How wide a shaft's section is across the gap, turned any way; knows no rowlock.

use super::super::finite;
use crate::units::Angle;
use crate::units::Length;

/// Returns the width of an ellipse across the gap.
///
/// `across` is its width when not turned, `upright` the other one.
///
/// # Formula
///
/// `sqrt(across^2 cos^2(turned) + upright^2 sin^2(turned))`
#[must_use]
pub fn ellipse_width(across: Length, upright: Length, turned: Angle) -> Length {
    finite::millimetres((across.as_mm() * turned.cos()).hypot(upright.as_mm() * turned.sin()))
}

/// Returns the width of a rectangle with round corners across the gap: a boxy leather.
///
/// Turned, it is wider than either of its sides.
///
/// # Formula
///
/// With a corner radius `r`: `(across - 2r)|cos| + (upright - 2r)|sin| + 2r`. A corner is never
/// rounder than half the shorter side, nor less than sharp.
#[must_use]
pub fn rounded_rectangle_width(
    across: Length,
    upright: Length,
    corner: Length,
    turned: Angle,
) -> Length {
    let shorter = across.as_mm().min(upright.as_mm());
    let round = (2.0 * corner.as_mm()).min(shorter).max(0.0);
    let level = (across.as_mm() - round) * turned.cos().abs();
    let raised = (upright.as_mm() - round) * turned.sin().abs();
    finite::millimetres(level + raised + round)
}

/// Returns the width across the gap of a round shaft with two flats opposite each other.
///
/// Not turned, the flats face the horns. An oar whose flats just pass jams when it comes up turned.
///
/// ```text
///       _______                    not turned: the width is that across the flats
///      /       \  flat
///     |         |
///     |<------->|  across flats
///      \_______/
/// ```
///
/// # Formula
///
/// With `b = acos(across_flats / diameter)`: `diameter cos(b - turned)` up to `turned = b`, beyond
/// it the diameter. Flats wider apart than the diameter take nothing off.
#[must_use]
pub fn two_flats_width(diameter: Length, across_flats: Length, turned: Angle) -> Length {
    let edge = edge_of_flat(across_flats.as_mm(), diameter.as_mm());
    let short = (edge - folded(turned)).max(0.0);
    finite::millimetres(diameter.as_mm() * short.cos())
}

/// Returns the width across the gap of a round shaft with one flat.
///
/// Not turned, the flat faces a horn. `flat_from_centre` is from the shaft's centre to the flat;
/// one past the centre counts as at the centre.
///
/// # Formula
///
/// With `b = acos(2 flat_from_centre / diameter)`: `diameter/2 + diameter/2 cos(b - turned)` up to
/// `turned = b`, beyond it the diameter.
#[must_use]
pub fn one_flat_width(diameter: Length, flat_from_centre: Length, turned: Angle) -> Length {
    let edge = edge_of_flat(2.0 * flat_from_centre.as_mm(), diameter.as_mm());
    let short = (edge - folded(turned)).max(0.0);
    finite::millimetres(diameter.as_mm() / 2.0 * (1.0 + short.cos()))
}

/// Returns the angle, in radians, from the middle of a flat to its edge.
fn edge_of_flat(width: f64, diameter: f64) -> f64 {
    let part = if diameter > 0.0 { width / diameter } else { 1.0 };
    part.clamp(0.0, 1.0).acos()
}

/// Returns the turn in radians, brought in between flat across and upright.
fn folded(turned: Angle) -> f64 {
    turned.sin().abs().atan2(turned.cos().abs())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(value: f64) -> Length {
        Length::mm(value)
    }

    fn every_degree() -> impl Iterator<Item = Angle> {
        (-200..=200).map(|turn| Angle::deg(f64::from(turn)))
    }

    /// The width of a section across the gap, from points on its edge: the second opinion.
    fn width_of_points(points: &[(f64, f64)], turned: Angle) -> f64 {
        let across = |(x, y): &(f64, f64)| x * turned.cos() + y * turned.sin();
        let least = points.iter().map(across).fold(f64::INFINITY, f64::min);
        points.iter().map(across).fold(f64::NEG_INFINITY, f64::max) - least
    }

    /// A round of 54 mm cut off at the given distances to each side.
    fn cut_round(left: f64, right: f64) -> Vec<(f64, f64)> {
        (0..36_000)
            .map(|i| f64::from(i).to_radians() / 100.0)
            .map(|turn| ((27.0 * turn.cos()).clamp(-left, right), 27.0 * turn.sin()))
            .collect()
    }

    /// Source: points on the edge of the section, turned and measured; a flat's edge lies where
    /// the points reach the cut, which the clamp keeps.
    #[test]
    fn flats_are_as_wide_as_their_points() {
        let (two, one) = (cut_round(22.0, 22.0), cut_round(27.0, 22.0));
        for turned in every_degree().step_by(7) {
            let width = two_flats_width(mm(54.0), mm(44.0), turned).as_mm();
            assert!((width - width_of_points(&two, turned)).abs() < 1e-2, "two, {turned}");
            let width = one_flat_width(mm(54.0), mm(22.0), turned).as_mm();
            assert!((width - width_of_points(&one, turned)).abs() < 1e-2, "one, {turned}");
        }
    }

    #[test]
    fn not_turned_each_section_has_its_own_width() {
        let flat = Angle::deg(0.0);
        assert!((ellipse_width(mm(44.0), mm(54.0), flat).as_mm() - 44.0).abs() < 1e-12);
        let boxy = rounded_rectangle_width(mm(44.0), mm(54.0), mm(10.0), flat);
        assert!((boxy.as_mm() - 44.0).abs() < 1e-12);
        assert!((two_flats_width(mm(54.0), mm(44.0), flat).as_mm() - 44.0).abs() < 1e-12);
        assert!((one_flat_width(mm(54.0), mm(22.0), flat).as_mm() - 49.0).abs() < 1e-12);
    }

    #[test]
    fn turned_upright_each_section_has_its_other_width() {
        let upright = Angle::deg(90.0);
        assert!((ellipse_width(mm(44.0), mm(54.0), upright).as_mm() - 54.0).abs() < 1e-12);
        let boxy = rounded_rectangle_width(mm(44.0), mm(54.0), mm(10.0), upright);
        assert!((boxy.as_mm() - 54.0).abs() < 1e-12);
        assert!((two_flats_width(mm(54.0), mm(44.0), upright).as_mm() - 54.0).abs() < 1e-12);
        assert!((one_flat_width(mm(54.0), mm(22.0), upright).as_mm() - 54.0).abs() < 1e-12);
    }

    /// Source: an independent program: 44 x 54 with corners of 10 is 61.6 mm at its widest.
    #[test]
    fn a_boxy_leather_turned_is_wider_than_either_side() {
        let widest = every_degree()
            .map(|t| rounded_rectangle_width(mm(44.0), mm(54.0), mm(10.0), t).as_mm())
            .fold(0.0, f64::max);
        assert!((widest - 61.6).abs() < 0.05, "{widest}");
    }

    #[test]
    fn a_circle_is_as_wide_however_it_is_turned() {
        for turned in every_degree() {
            assert!((ellipse_width(mm(50.0), mm(50.0), turned).as_mm() - 50.0).abs() < 1e-12);
            let round = rounded_rectangle_width(mm(50.0), mm(50.0), mm(99.0), turned);
            assert!((round.as_mm() - 50.0).abs() < 1e-12);
            assert!((two_flats_width(mm(50.0), mm(60.0), turned).as_mm() - 50.0).abs() < 1e-12);
            assert!((one_flat_width(mm(50.0), mm(60.0), turned).as_mm() - 50.0).abs() < 1e-12);
        }
    }

    #[test]
    fn a_flat_past_the_centre_counts_as_at_the_centre() {
        for turned in every_degree() {
            let centre = two_flats_width(mm(50.0), mm(0.0), turned).as_mm();
            assert!((two_flats_width(mm(50.0), mm(-9.0), turned).as_mm() - centre).abs() < 1e-12);
            let centre = one_flat_width(mm(50.0), mm(0.0), turned).as_mm();
            assert!((one_flat_width(mm(50.0), mm(-9.0), turned).as_mm() - centre).abs() < 1e-12);
        }
    }

    #[test]
    fn a_shaft_without_width_stays_finite() {
        let turned = Angle::deg(20.0);
        assert!(two_flats_width(mm(0.0), mm(0.0), turned).as_mm().abs() < 1e-12);
        assert!(one_flat_width(mm(0.0), mm(0.0), turned).as_mm().abs() < 1e-12);
        assert!(rounded_rectangle_width(mm(0.0), mm(0.0), mm(5.0), turned).as_mm().abs() < 1e-12);
    }
}
