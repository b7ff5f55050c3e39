//! Blade pitch through the arc of the stroke; knows one oar on one pin, and no readings.

use super::finite;
use crate::units::Angle;

/// How far a pin leans, each way as a plumb line shows it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lean {
    /// Seen square from the side: positive to the stern.
    pub aft: Angle,
    /// Seen square from the end: positive outboard, away from the centreline.
    pub out: Angle,
}

/// What sets the pitch of a blade: rowlock, oar and pin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rig {
    /// The rowlock's working face against the pin, positive with its top to the stern.
    pub rowlock_pitch: Angle,
    /// The blade against the oar's own flat, positive with its top to the stern.
    pub oar_pitch: Angle,
    /// The pin against the vertical.
    pub lean: Lean,
}

/// Returns the pitch of the blade at one oar angle, exactly.
///
/// Holds for a rowlock that turns freely without play and an oar whose flat lies flush on the
/// working face. A round shaft without a flat doesn't register: there the hands set the pitch.
///
/// ```text
///   seen along the shaft, stern to the left       seen from above
///        \   |  vertical plane                        bow
///         \  |  through the shaft                  ____ ^ ____ blade
///    blade \ |                                    .'theta|
///           \| pitch +                     - - - pin ----+---- square off
/// ```
///
/// # Formula
///
/// With `S`, `L` the tangents of the lean aft and out, and the dip `d` of the shaft:
///
/// ```text
/// sin eps = [(L cos theta - S sin theta) cos d - sin d] / sqrt(1 + S^2 + L^2)
/// tan chi = (S cos theta + L sin theta) / [cos d + sin d (L cos theta - S sin theta)]
/// pitch   = oar pitch + asin(sin(rowlock pitch) / cos eps) + chi
/// ```
///
/// `eps` is how far the shaft is from square to the pin, `chi` is [`lean_along_shaft`]. Where the
/// shaft can't lie flush at all (`|rowlock pitch| + |eps|` past 90 deg) the middle term stays at
/// 90 deg.
///
/// # Accuracy
///
/// Exact; 1e-12 deg against rotation matrices in `tests/geometry_by_matrices.rs`.
///
/// # Example
///
/// ```
/// use tholebook::geometry::arc::{Lean, Rig, pitch};
/// use tholebook::units::Angle;
///
/// let lean = Lean { aft: Angle::deg(2.0), out: Angle::deg(1.0) };
/// let rig = Rig { rowlock_pitch: Angle::deg(4.0), oar_pitch: Angle::deg(0.0), lean };
/// let catch = pitch(rig, Angle::deg(50.0), Angle::deg(6.0));
/// assert_eq!(format!("{catch:.3}"), "6.095 deg");
/// ```
#[must_use]
pub fn pitch(rig: Rig, theta: Angle, dip: Angle) -> Angle {
    let sin_eps = off_square(rig.lean, theta, dip);
    // Not zero, so that a shaft along the pin gives a clamped number and not a NaN.
    let cos_eps = (1.0 - sin_eps * sin_eps).sqrt().max(f64::MIN_POSITIVE);
    let against_pin = (rig.rowlock_pitch.sin() / cos_eps).clamp(-1.0, 1.0).asin();
    let seen_lean = lean_along_shaft(rig.lean, theta, dip);
    finite::degrees(rig.oar_pitch.as_deg() + against_pin.to_degrees() + seen_lean.as_deg())
}

/// Returns the sine of the angle between the shaft and the plane square to the pin.
fn off_square(lean: Lean, theta: Angle, dip: Angle) -> f64 {
    let (aft, out) = (lean.aft.tan(), lean.out.tan());
    let along = (out * theta.cos() - aft * theta.sin()) * dip.cos() - dip.sin();
    (along / (1.0 + aft * aft + out * out).sqrt()).clamp(-1.0, 1.0)
}

/// Returns how far the pin leans as seen along the shaft, positive to the stern.
///
/// It is the whole pitch of a blade whose rowlock and oar have none of their own.
///
/// # Formula
///
/// `chi` of [`pitch`]; for small angles `aft cos theta + out sin theta`.
#[must_use]
pub fn lean_along_shaft(lean: Lean, theta: Angle, dip: Angle) -> Angle {
    let (aft, out) = (lean.aft.tan(), lean.out.tan());
    let across = aft * theta.cos() + out * theta.sin();
    let up = dip.cos() + dip.sin() * (out * theta.cos() - aft * theta.sin());
    finite::degrees(across.atan2(up).to_degrees())
}

/// Returns the pitch of the blade at one oar angle, by the small-angle form.
///
/// # Formula
///
/// `pitch = rowlock pitch + oar pitch + aft cos theta + out sin theta`
///
/// # Accuracy
///
/// Against [`pitch`], leans to 6 deg, oar angles -40 to 60, dip 0 to 8: at most 0.15 deg with a
/// rowlock pitch of 0, 0.28 deg with 4, 0.43 deg with 8. Leans to 3 deg and dip to 5, rowlock
/// pitch 4: at most 0.07 deg.
#[must_use]
pub fn pitch_linear(rig: Rig, theta: Angle) -> Angle {
    finite::degrees(built_in(rig) + lean_linear(rig.lean, theta))
}

/// Returns the mean pitch over the arc, every oar angle counting alike, by the small-angle form.
///
/// # Formula
///
/// ```text
/// mean = rowlock + oar + aft (sin c - sin f)/(c - f) + out (cos f - cos c)/(c - f)
/// ```
///
/// for a catch at `c` and a finish at `f`, written here through the middle of the arc so that an
/// arc of no length gives the pitch at its one angle.
///
/// # Accuracy
///
/// That of [`pitch_linear`].
#[must_use]
pub fn mean_pitch_linear(rig: Rig, catch_at: Angle, finish_at: Angle) -> Angle {
    let middle = finite::degrees(f64::midpoint(catch_at.as_deg(), finish_at.as_deg()));
    let half_arc = catch_at.as_rad() / 2.0 - finish_at.as_rad() / 2.0;
    let share = if half_arc.abs() < 1e-9 { 1.0 } else { half_arc.sin() / half_arc };
    finite::degrees(built_in(rig) + share * lean_linear(rig.lean, middle))
}

fn built_in(rig: Rig) -> f64 {
    rig.rowlock_pitch.as_deg() + rig.oar_pitch.as_deg()
}

fn lean_linear(lean: Lean, theta: Angle) -> f64 {
    lean.aft.as_deg() * theta.cos() + lean.out.as_deg() * theta.sin()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rig(rowlock: f64, aft: f64, out: f64) -> Rig {
        let lean = Lean { aft: Angle::deg(aft), out: Angle::deg(out) };
        Rig { rowlock_pitch: Angle::deg(rowlock), oar_pitch: Angle::deg(0.0), lean }
    }

    fn at(rig: Rig, theta: f64, dip: f64) -> f64 {
        pitch(rig, Angle::deg(theta), Angle::deg(dip)).as_deg()
    }

    fn error_of_linear(rig: Rig, theta: f64, dip: f64) -> f64 {
        pitch_linear(rig, Angle::deg(theta)).as_deg() - at(rig, theta, dip)
    }

    /// The worst error of the small-angle form over a box of leans, oar angles and dips.
    fn worst_of_linear(rowlock: f64, lean: i32, dip: i32) -> f64 {
        let mut worst = 0.0_f64;
        for aft in -lean..=lean {
            for out in -lean..=lean {
                for theta in -40..=60 {
                    let rig = rig(rowlock, f64::from(aft), f64::from(out));
                    for d in [0, dip / 2, dip] {
                        worst = worst.max(error_of_linear(rig, f64::from(theta), d.into()).abs());
                    }
                }
            }
        }
        worst
    }

    #[test]
    fn all_plumb_and_level_gives_the_rowlocks_own_pitch() {
        for theta in [-35.0, 0.0, 50.0] {
            assert!((at(rig(4.0, 0.0, 0.0), theta, 0.0) - 4.0).abs() < 1e-12);
        }
    }

    /// Source: with all plumb, sin(pitch) = sin(rowlock pitch) / cos(dip); 4.022 deg at 4 and 6.
    #[test]
    fn a_dipped_shaft_shows_a_little_more_than_the_rowlock_has() {
        assert!((at(rig(4.0, 0.0, 0.0), 50.0, 6.0) - 4.022).abs() < 5e-4);
    }

    /// Source: common practice, no source: outward lean raises the pitch at the catch, lowers it
    /// at the finish and leaves it alone square off.
    #[test]
    fn outward_lean_raises_the_catch_and_lowers_the_finish() {
        let gain = |theta| at(rig(4.0, 0.0, 1.0), theta, 6.0) - at(rig(4.0, 0.0, 0.0), theta, 6.0);
        assert!((gain(50.0) - 0.765).abs() < 5e-4);
        assert!((gain(0.0) + 0.007).abs() < 5e-4);
        assert!((gain(-35.0) + 0.582).abs() < 1e-3);
    }

    #[test]
    fn lean_to_the_stern_raises_the_pitch_everywhere() {
        for theta in [-40.0, 0.0, 60.0] {
            assert!(at(rig(4.0, 2.0, 0.0), theta, 6.0) > at(rig(4.0, 1.0, 0.0), theta, 6.0));
        }
    }

    #[test]
    fn the_oars_own_pitch_is_simply_added() {
        let mut twisted = rig(4.0, 2.0, -1.0);
        twisted.oar_pitch = Angle::deg(-1.5);
        let plain = at(rig(4.0, 2.0, -1.0), 50.0, 6.0);
        assert!((at(twisted, 50.0, 6.0) - plain + 1.5).abs() < 1e-12);
    }

    /// Source: a global search by an independent program found 0.149, 0.278 and 0.424 deg.
    #[test]
    fn the_small_angle_form_is_as_good_as_it_says() {
        for (rowlock, bound) in [(0.0, 0.149), (4.0, 0.278), (8.0, 0.424)] {
            let worst = worst_of_linear(rowlock, 6, 8);
            assert!(worst < bound + 5e-4 && worst > bound - 0.002, "{rowlock}: {worst}");
        }
        let near = worst_of_linear(4.0, 3, 5);
        assert!(near < 0.0675 && near > 0.064, "{near}");
    }

    #[test]
    fn an_arc_of_no_length_has_the_pitch_of_its_one_angle() {
        let mean = mean_pitch_linear(rig(4.0, 2.0, 1.0), Angle::deg(50.0), Angle::deg(50.0));
        let one = pitch_linear(rig(4.0, 2.0, 1.0), Angle::deg(50.0));
        assert!((mean.as_deg() - one.as_deg()).abs() < 1e-12);
    }

    /// Source: the mean of a thousand angles evenly spread over the arc.
    #[test]
    fn the_mean_is_the_average_over_the_arc() {
        let rig = rig(4.0, -1.0, 2.5);
        let sum: f64 = (0..1000)
            .map(|i| 50.0 - 85.0 * (f64::from(i) + 0.5) / 1000.0)
            .map(|theta| pitch_linear(rig, Angle::deg(theta)).as_deg())
            .sum();
        let mean = mean_pitch_linear(rig, Angle::deg(50.0), Angle::deg(-35.0)).as_deg();
        assert!((sum / 1000.0 - mean).abs() < 1e-6, "{mean}");
    }

    #[test]
    fn numbers_of_no_boat_still_give_a_finite_pitch() {
        for wild in [90.0, -90.0, 1e300, f64::MAX, -f64::MAX] {
            let rig = Rig { oar_pitch: Angle::deg(wild), ..rig(wild, wild, wild) };
            assert!(at(rig, wild, wild).is_finite());
            let arc = mean_pitch_linear(rig, Angle::deg(wild), Angle::deg(-wild));
            assert!(arc.as_deg().is_finite());
        }
        assert!(at(rig(0.0, 0.0, 0.0), 0.0, 90.0).abs() <= 180.0);
        // A shaft that lies along its pin.
        assert!(at(rig(0.0, 90.0, 0.0), -90.0, 0.0).abs() <= 180.0);
    }
}
