//! What a boat out of level does to leans, pitches and bobs; knows no level's uncertainty.

use super::Side;
use super::arc::Lean;
use super::finite;
use crate::units::Angle;
use crate::units::Length;

/// Returns the lean of a pin against the level boat, from what the plumb line showed.
///
/// ```text
///    bow up: trim +               port side down: roll +, seen from the stern
///
///      pin |  / pin                   pin \   |
///          | /  of the                     \  |         .-- starboard
///          |/   tilted boat                 \ |   .--'
///   stern -+------ bow                  port -+'
/// ```
///
/// # Formula
///
/// Bow up carries every pin to the stern; port side down carries it to port:
///
/// ```text
/// aft = apparent aft - trim
/// out = apparent out - roll on port, + roll on starboard
/// ```
///
/// # Accuracy
///
/// Against [`apparent_lean`], leans to 6 deg and the boat to 5 deg out of level: 0.15 deg aft,
/// 0.08 deg out. To 1 deg out of level: 0.014 deg.
#[must_use]
pub fn true_lean(apparent: Lean, trim: Angle, roll: Angle, side: Side) -> Lean {
    Lean {
        aft: finite::degrees(apparent.aft.as_deg() - trim.as_deg()),
        out: finite::degrees(apparent.out.as_deg() - side.sign() * roll.as_deg()),
    }
}

/// Returns the pitch of a blade in the level boat, from what the plumb line showed.
///
/// # Formula
///
/// `pitch = apparent - trim cos theta - roll sin theta` on port, `+ roll sin theta` on starboard.
/// Square off, roll has no part.
///
/// # Accuracy
///
/// Against the exact pitch on the pin of [`apparent_lean`], leans to 6 deg, rowlock pitch 0 to 8,
/// dip to 8, oar angles -40 to 60: 0.11 deg with the boat 1 deg out of level, 0.69 deg with 5 deg.
#[must_use]
pub fn true_pitch(apparent: Angle, theta: Angle, trim: Angle, roll: Angle, side: Side) -> Angle {
    let by_trim = trim.as_deg() * theta.cos();
    let by_roll = side.sign() * roll.as_deg() * theta.sin();
    finite::degrees(apparent.as_deg() - by_trim - by_roll)
}

/// Returns what a plumb line shows of a pin in a boat out of level, exactly.
///
/// # Formula
///
/// The pin `(-tan aft, side tan out, 1)` turned bow up by the trim, then about the levelled
/// fore-and-aft line by the roll, and looked at square from the side and from the end.
///
/// # Accuracy
///
/// Exact, for a boat less than 90 deg out of level.
#[must_use]
pub fn apparent_lean(lean: Lean, trim: Angle, roll: Angle, side: Side) -> Lean {
    let (to_bow, to_port) = (-lean.aft.tan(), side.sign() * lean.out.tan());
    let forward = to_bow * trim.cos() - trim.sin();
    let raised = to_bow * trim.sin() + trim.cos();
    let leftward = to_port * roll.cos() + raised * roll.sin();
    let up = raised * roll.cos() - to_port * roll.sin();
    Lean {
        aft: finite::degrees((-forward).atan2(up).to_degrees()),
        out: finite::degrees((side.sign() * leftward).atan2(up).to_degrees()),
    }
}

/// Returns how far a bob swings to the low side of a rolled boat.
///
/// Positive to port: the port side is down. `height` is that of the handle over the string.
///
/// ```text
///      handle o
///             |\
///      square |  \ plumb line        port side down
///      to the |    \
///      string |      \
///     --------+<------>o---- string      port -->
///                bias
/// ```
///
/// # Formula
///
/// `bias = height tan(roll)`
#[must_use]
pub fn bob_bias(height: Length, roll: Angle) -> Length {
    finite::millimetres(height.as_mm() * roll.tan())
}

/// Returns how far the handle is past the seat mark in the level boat, from what the bob showed.
///
/// A port oar's handle is past its mark towards starboard: with the port side down the bob swings
/// back towards the mark and reads short.
///
/// # Formula
///
/// `read + height tan(roll)` on port, `read - height tan(roll)` on starboard.
#[must_use]
pub fn true_past_mark(read: Length, height: Length, roll: Angle, side: Side) -> Length {
    finite::millimetres(read.as_mm() + side.sign() * bob_bias(height, roll).as_mm())
}

#[cfg(test)]
mod tests {
    use super::super::arc;
    use super::super::arc::Rig;
    use super::*;

    const SIDES: [Side; 2] = [Side::Port, Side::Starboard];

    fn lean(aft: f64, out: f64) -> Lean {
        Lean { aft: Angle::deg(aft), out: Angle::deg(out) }
    }

    fn deg(value: f64) -> Angle {
        Angle::deg(value)
    }

    #[test]
    fn a_level_boat_changes_nothing() {
        for side in SIDES {
            let pin = apparent_lean(lean(2.0, -1.0), deg(0.0), deg(0.0), side);
            let back = true_lean(pin, deg(0.0), deg(0.0), side);
            assert!((back.aft.as_deg() - 2.0).abs() < 1e-12);
            assert!((back.out.as_deg() + 1.0).abs() < 1e-12);
        }
    }

    #[test]
    fn bow_up_makes_an_upright_pin_lean_to_the_stern() {
        assert!(apparent_lean(lean(0.0, 0.0), deg(2.0), deg(0.0), Side::Port).aft.as_deg() > 1.9);
    }

    #[test]
    fn port_side_down_leans_a_port_pin_out_and_a_starboard_pin_in() {
        let out = |side| apparent_lean(lean(0.0, 0.0), deg(0.0), deg(2.0), side).out.as_deg();
        assert!((out(Side::Port) - 2.0).abs() < 1e-12);
        assert!((out(Side::Starboard) + 2.0).abs() < 1e-12);
    }

    /// The worst errors of the additive lean, aft and out, for a boat out of level by so much.
    fn worst_lean(level: f64) -> (f64, f64) {
        let (mut aft, mut out) = (0.0_f64, 0.0_f64);
        let steps = [-1.0, -0.4, -0.2, 0.0, 0.2, 0.4, 1.0];
        for (s, l) in steps.iter().flat_map(|s| steps.map(|l| (s * 6.0, l * 6.0))) {
            for (t, r) in steps.iter().flat_map(|t| steps.map(|r| (t * level, r * level))) {
                for side in SIDES {
                    let seen = apparent_lean(lean(s, l), deg(t), deg(r), side);
                    let back = true_lean(seen, deg(t), deg(r), side);
                    aft = aft.max((back.aft.as_deg() - s).abs());
                    out = out.max((back.out.as_deg() - l).abs());
                }
            }
        }
        (aft, out)
    }

    /// Source: the same search by rotation matrices in another program: 0.1422 deg aft and 0.0782
    /// out at 5 deg, 0.0138 and 0.0119 at 1 deg.
    #[test]
    fn adding_angles_is_as_good_as_it_says() {
        let (aft, out) = worst_lean(5.0);
        assert!((aft - 0.1422).abs() < 1e-4 && (out - 0.0782).abs() < 1e-4, "{aft} {out}");
        let (aft, out) = worst_lean(1.0);
        assert!((aft - 0.0138).abs() < 1e-4 && (out - 0.0119).abs() < 1e-4, "{aft} {out}");
    }

    /// The worst error of the corrected pitch for a boat out of level by so much.
    fn worst_pitch(level: f64) -> f64 {
        let mut worst = 0.0_f64;
        let ends = [-1.0, 0.0, 1.0];
        for (s, l) in ends.iter().flat_map(|s| ends.map(|l| (s * 6.0, l * 6.0))) {
            for (t, r) in ends.iter().flat_map(|t| ends.map(|r| (t * level, r * level))) {
                for theta in [-40.0, -20.0, 0.0, 20.0, 40.0, 60.0] {
                    for (rowlock, dip) in [(0.0, 0.0), (0.0, 8.0), (8.0, 0.0), (8.0, 8.0)] {
                        worst = worst.max(pitch_error(lean(s, l), t, r, theta, rowlock, dip));
                    }
                }
            }
        }
        worst
    }

    fn pitch_error(pin: Lean, trim: f64, roll: f64, theta: f64, rowlock: f64, dip: f64) -> f64 {
        let rig = |lean| Rig { rowlock_pitch: deg(rowlock), oar_pitch: deg(0.0), lean };
        let at = |lean| arc::pitch(rig(lean), deg(theta), deg(dip));
        let seen = at(apparent_lean(pin, deg(trim), deg(roll), Side::Starboard));
        let back = true_pitch(seen, deg(theta), deg(trim), deg(roll), Side::Starboard);
        (back.as_deg() - at(pin).as_deg()).abs()
    }

    #[test]
    fn the_corrected_pitch_is_as_good_as_it_says() {
        let (one, five) = (worst_pitch(1.0), worst_pitch(5.0));
        assert!(one < 0.11 && one > 0.09, "{one}");
        assert!(five < 0.69 && five > 0.67, "{five}");
    }

    #[test]
    fn roll_has_no_part_in_the_pitch_square_off() {
        let pitch = true_pitch(deg(4.0), deg(0.0), deg(0.0), deg(3.0), Side::Port);
        assert!((pitch.as_deg() - 4.0).abs() < 1e-15);
    }

    #[test]
    fn roll_takes_from_the_port_catch_and_adds_to_the_starboard_one() {
        let at = |side| true_pitch(deg(4.0), deg(50.0), deg(0.0), deg(1.0), side).as_deg();
        assert!((at(Side::Port) - 4.0 + 50.0_f64.to_radians().sin()).abs() < 1e-12);
        assert!((at(Side::Starboard) - 4.0 - 50.0_f64.to_radians().sin()).abs() < 1e-12);
    }

    /// Source: 300 mm and 2 deg swing a bob by 10.5 mm (300 tan 2 deg).
    #[test]
    fn the_two_sides_read_wrong_by_the_same_amount_the_other_way() {
        let (read, height) = (Length::mm(320.0), Length::mm(300.0));
        let at = |side| true_past_mark(read, height, deg(2.0), side).as_mm();
        assert!((at(Side::Port) - 330.476).abs() < 5e-4);
        assert!((at(Side::Port) + at(Side::Starboard) - 640.0).abs() < 1e-12);
    }
}
