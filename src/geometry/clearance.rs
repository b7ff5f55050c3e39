//! Whether a shaft comes out between the horns, level and in a roll; knows no limits.

mod section;

pub use section::ellipse_width;
pub use section::one_flat_width;
pub use section::rounded_rectangle_width;
pub use section::two_flats_width;

use super::arc;
use super::arc::Lean;
use super::finite;
use crate::units::Angle;
use crate::units::Length;

/// Returns how much wider the gap is than the widest the shaft can turn to it.
///
/// A rowlock that turns freely keeps its horns square to the shaft, so neither dip nor roll
/// widens the shaft across the gap: this is the hard limit for every lift.
///
/// ```text
///     horn |<----- gap ----->| horn
///          |     .-' '-.     |
///          |    (widest )    |
///          |     '-. .-'     |
///           '---------------'
/// ```
///
/// # Formula
///
/// `gap - widest`; negative, it can't come out.
#[must_use]
pub fn clearance(gap: Length, widest: Length) -> Length {
    finite::millimetres(gap.as_mm() - widest.as_mm())
}

/// Returns the gap that a shaft needs to go straight between walls at a tilt without rubbing.
///
/// The same formula serves a lift tilted to the mouth, with the wall's height, and a stuck rowlock
/// not square to the shaft, with the horn's length along the shaft.
///
/// ```text
///        |  /     / |
///        | / shaft  |   wall height
///        |/     /tilt
///        /-----/----+
///        |<-- gap ->|
/// ```
///
/// # Formula
///
/// `shaft / cos(tilt) + wall tan(tilt)`, the tilt taken without sign. From 90 deg on no gap is
/// enough: the largest length there is.
///
/// # Accuracy
///
/// Exact for a round shaft and square horn tips; on the safe side for rounded ones.
///
/// # Example
///
/// ```
/// use tholebook::geometry::clearance::gap_for_tilt;
/// use tholebook::units::{Angle, Length};
///
/// let gap = gap_for_tilt(Length::mm(50.0), Length::mm(10.0), Angle::deg(15.0));
/// assert_eq!(gap.to_string(), "54.4 mm");
/// ```
#[must_use]
pub fn gap_for_tilt(shaft: Length, wall: Length, tilt: Angle) -> Length {
    if tilt.abs() >= RIGHT_ANGLE {
        return finite::millimetres(f64::INFINITY);
    }
    let tilt = tilt.abs();
    finite::millimetres(shaft.as_mm() / tilt.cos() + wall.as_mm() * tilt.tan())
}

/// Returns the gap that a shaft needs at a tilt between round tips of the given radius.
///
/// Two round thole pins are such tips: the shaft jams between them where the gap is no more.
///
/// # Formula
///
/// `(shaft + 2 tip) / cos(tilt) - 2 tip`; from 90 deg on no gap is enough.
#[must_use]
pub fn gap_for_tilt_round_tips(shaft: Length, tip_radius: Length, tilt: Angle) -> Length {
    if tilt.abs() >= RIGHT_ANGLE {
        return finite::millimetres(f64::INFINITY);
    }
    let both = 2.0 * tip_radius.as_mm();
    finite::millimetres((shaft.as_mm() + both) / tilt.cos() - both)
}

const RIGHT_ANGLE: Angle = Angle::deg(90.0);

/// Returns how far the mouth of a free rowlock is tilted, seen along the shaft, by a roll.
///
/// The roll is positive with the outboard side down. Square off the mouth isn't tilted at all, with
/// the oar along the boat by the whole roll.
///
/// # Formula
///
/// `tan(tilt) = tan(roll) sin(theta) / (cos(dip) + sin(dip) tan(roll) cos(theta))`, which is
/// [`arc::lean_along_shaft`] of a pin leaning out by the roll.
#[must_use]
pub fn mouth_tilt(roll: Angle, theta: Angle, dip: Angle) -> Angle {
    arc::lean_along_shaft(Lean { aft: Angle::deg(0.0), out: roll }, theta, dip)
}

/// Returns what the gap has over its need when the oar is lifted straight up in a roll to either
/// side, the worse of the two.
///
/// Negative, the shaft rubs on a horn; sliding along it, it still comes out while [`clearance`] is
/// positive.
///
/// # Formula
///
/// `gap` less the greater [`gap_for_tilt`] of [`mouth_tilt`] with the roll one way and the other.
#[must_use]
pub fn clearance_in_roll(
    gap: Length,
    widest: Length,
    wall: Length,
    roll: Angle,
    theta: Angle,
    dip: Angle,
) -> Length {
    let need = |roll| gap_for_tilt(widest, wall, mouth_tilt(roll, theta, dip)).as_mm();
    finite::millimetres(gap.as_mm() - need(roll).max(need(-roll)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(value: f64) -> Length {
        Length::mm(value)
    }

    fn deg(value: f64) -> Angle {
        Angle::deg(value)
    }

    #[test]
    fn clearance_is_gap_less_shaft_and_negative_when_it_cannot_come_out() {
        assert!((clearance(mm(58.0), mm(52.0)).as_mm() - 6.0).abs() < 1e-12);
        assert!((clearance(mm(50.0), mm(52.0)).as_mm() + 2.0).abs() < 1e-12);
    }

    #[test]
    fn without_tilt_the_gap_needed_is_the_shaft() {
        assert!((gap_for_tilt(mm(50.0), mm(10.0), deg(0.0)).as_mm() - 50.0).abs() < 1e-12);
        let round = gap_for_tilt_round_tips(mm(50.0), mm(6.0), deg(0.0));
        assert!((round.as_mm() - 50.0).abs() < 1e-12);
    }

    /// Source: by hand at 60 deg: 50/cos 60 = 100, 10 tan 60 = 17.320 508.
    #[test]
    fn a_tilt_of_sixty_doubles_the_shaft_and_adds_the_wall() {
        for tilt in [60.0, -60.0] {
            let gap = gap_for_tilt(mm(50.0), mm(10.0), deg(tilt)).as_mm();
            assert!((gap - 117.320_508).abs() < 1e-6, "{gap}");
            let round = gap_for_tilt_round_tips(mm(50.0), mm(6.0), deg(tilt)).as_mm();
            assert!((round - 112.0).abs() < 1e-9, "{round}");
        }
    }

    #[test]
    fn more_tilt_always_needs_more_gap() {
        let mut before = (0.0, 0.0);
        for tenths in 0..=1200 {
            let tilt = deg(f64::from(tenths) / 10.0);
            let square = gap_for_tilt(mm(50.0), mm(10.0), tilt).as_mm();
            let round = gap_for_tilt_round_tips(mm(50.0), mm(6.0), tilt).as_mm();
            let enough = tilt >= deg(90.0);
            assert!(if enough { square >= f64::MAX } else { square > before.0 }, "{tilt}");
            assert!(if enough { round >= f64::MAX } else { round > before.1 }, "{tilt}");
            before = (square, round);
        }
    }

    #[test]
    fn roll_tilts_the_mouth_not_at_all_square_off_and_wholly_along_the_boat() {
        assert!(mouth_tilt(deg(20.0), deg(0.0), deg(6.0)).as_deg().abs() < 1e-12);
        assert!((mouth_tilt(deg(20.0), deg(90.0), deg(0.0)).as_deg() - 20.0).abs() < 1e-12);
    }

    #[test]
    fn roll_tilts_the_mouth_one_way_at_the_catch_and_the_other_at_the_finish() {
        assert!(mouth_tilt(deg(15.0), deg(50.0), deg(6.0)).as_deg() > 0.0);
        assert!(mouth_tilt(deg(15.0), deg(-35.0), deg(6.0)).as_deg() < 0.0);
        assert!(mouth_tilt(deg(-15.0), deg(50.0), deg(6.0)).as_deg() < 0.0);
    }

    /// Source: an independent program, worse of the two rolls, dip 6, roll 20: a tilt of 12.2,
    /// 16.0, 17.9 and 20.1 deg at 35, 50, 60 and 90 deg; 4.9 mm of extra gap at 50 with a wall of
    /// 10 and a shaft of 50.
    #[test]
    fn the_worse_of_the_two_rolls_counts() {
        for (theta, tilt) in [(35.0, 12.2), (50.0, 16.0), (60.0, 17.9), (90.0, 20.1)] {
            let worse = mouth_tilt(deg(-20.0), deg(theta), deg(6.0)).as_deg();
            assert!((worse + tilt).abs() < 0.05, "{theta}: {worse}");
        }
        for roll in [20.0, -20.0] {
            let left =
                clearance_in_roll(mm(58.0), mm(50.0), mm(10.0), deg(roll), deg(50.0), deg(6.0));
            assert!((left.as_mm() - (8.0 - 4.9)).abs() < 0.05, "{left}");
        }
    }

    #[test]
    fn square_off_a_roll_takes_nothing_of_the_clearance() {
        let left = clearance_in_roll(mm(58.0), mm(52.0), mm(12.0), deg(30.0), deg(0.0), deg(6.0));
        assert!((left.as_mm() - 6.0).abs() < 1e-12);
    }

    #[test]
    fn a_boat_on_her_beam_ends_has_no_clearance_along_the_boat() {
        let left = clearance_in_roll(mm(58.0), mm(52.0), mm(12.0), deg(90.0), deg(90.0), deg(6.0));
        assert!(left.as_mm() < -1e6, "{left}");
    }
}
