//! What is assumed of rowers, how far it may be out of all and of one, and where it comes from.

use super::doubt::Cause;
use super::doubt::Doubt;
use crate::geometry::crew::ARM;
use crate::geometry::crew::Posture;
use crate::geometry::crew::SHANK;
use crate::geometry::crew::THIGH;
use crate::model::Place;

/// One thing that is assumed.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Assumed {
    /// Trunk to the bow of the upright at the finish.
    Layback,
    /// Trunk to the stern of the upright at the catch.
    Swing,
    /// How far one slides on the bench.
    Slide,
    /// How straight the legs are rowed.
    Knee,
    /// Seat above the heels.
    SeatAboveHeels,
    /// Hands above the seat, where it was not measured.
    HandsAboveSeat,
    /// Back to hip joint.
    BackToHip,
    /// Hip joint to belly.
    HipToBelly,
    /// Seat to hip joint.
    HipAboveSeat,
    /// Shoulders to grip.
    Arm,
    /// Hip joint to ankle, where the leg was not measured.
    Leg,
}

/// How far something assumed may be out, either way: of all rowers alike, and of one beside the
/// others.
struct Spread {
    of_all: f64,
    of_one: f64,
}

/// How far the leg of one rower is from what the stature says, as a part of the stature.
///
/// # Source
///
/// ANSUR II, 4082 men (`published.tsv` A01, A03): sitting height stands off its line over stature
/// by 35.70 sqrt(1 - 0.779059^2) = 22.4 mm, one standard deviation; what the trunk has more, the
/// leg has less. Of a mean stature of 1756.21 mm, as a half-width (times sqrt 3).
const LEG_OF_ONE: f64 = 0.0221;

impl Assumed {
    /// Everything that is assumed, in the order it is told.
    pub const ALL: [Self; 11] = [
        Self::Layback,
        Self::Swing,
        Self::Slide,
        Self::Knee,
        Self::SeatAboveHeels,
        Self::HandsAboveSeat,
        Self::BackToHip,
        Self::HipToBelly,
        Self::HipAboveSeat,
        Self::Arm,
        Self::Leg,
    ];

    /// Returns what it is, in a few words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Layback => "layback at the finish",
            Self::Swing => "swing at the catch",
            Self::Slide => "slide on the bench",
            Self::Knee => "knee when the legs are down",
            Self::SeatAboveHeels => "seat above the heels",
            Self::HandsAboveSeat => "hands above the seat",
            Self::BackToHip => "back to hip joint",
            Self::HipToBelly => "hip joint to belly",
            Self::HipAboveSeat => "seat to hip joint",
            Self::Arm => "shoulder to grip",
            Self::Leg => "hip joint to ankle",
        }
    }

    /// Returns the key under which a program is told of it.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Layback => "layback_deg",
            Self::Swing => "swing_deg",
            Self::Slide => "slide_mm",
            Self::Knee => "knee_deg",
            Self::SeatAboveHeels => "seat_above_heels_mm",
            Self::HandsAboveSeat => "hands_above_seat_mm",
            Self::BackToHip => "back_to_hip_of_stature",
            Self::HipToBelly => "hip_to_belly_of_stature",
            Self::HipAboveSeat => "hip_above_seat_of_stature",
            Self::Arm => "arm_of_stature",
            Self::Leg => "leg_of_stature",
        }
    }

    /// Returns the unit; none for a part of the stature.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        match self {
            Self::Layback | Self::Swing | Self::Knee => "deg",
            Self::Slide | Self::SeatAboveHeels | Self::HandsAboveSeat => "mm",
            _ => "",
        }
    }

    /// Returns the figure.
    ///
    /// # Source
    ///
    /// [`Posture::USUAL`] and the parts of the body of `geometry::crew`; the two heights are
    /// assumed, no source.
    #[must_use]
    pub const fn value(self) -> f64 {
        let usual = Posture::USUAL;
        match self {
            Self::Layback => usual.layback.as_deg(),
            Self::Swing => usual.swing.as_deg(),
            Self::Slide => usual.slide.as_mm(),
            Self::Knee => usual.knee.as_deg(),
            Self::SeatAboveHeels => 200.0,
            Self::HandsAboveSeat => 250.0,
            Self::BackToHip => usual.back_to_hip,
            Self::HipToBelly => usual.hip_to_belly,
            Self::HipAboveSeat => usual.hip_above_seat,
            Self::Arm => ARM,
            Self::Leg => THIGH + SHANK,
        }
    }

    /// Returns how far it may be out of all rowers alike, and how far one may stand off the others.
    ///
    /// # Source
    ///
    /// Ours, no source, but for the leg of one rower.
    const fn spread(self) -> Spread {
        let (of_all, of_one) = match self {
            Self::Layback => (5.0, 3.0),
            Self::Swing | Self::Knee => (5.0, 5.0),
            Self::Slide => (30.0, 20.0),
            Self::SeatAboveHeels | Self::HandsAboveSeat => (50.0, 0.0),
            Self::BackToHip | Self::HipAboveSeat => (0.01, 0.005),
            Self::HipToBelly => (0.01, 0.01),
            Self::Arm => (0.02, 0.01),
            Self::Leg => (0.01, LEG_OF_ONE),
        };
        Spread { of_all, of_one }
    }

    /// Returns the figure's half-width of all rowers alike, and of one beside the others.
    #[must_use]
    pub const fn half_widths(self) -> [f64; 2] {
        let Spread { of_all, of_one } = self.spread();
        [of_all, of_one]
    }

    /// Returns the figure as it holds for one rower.
    pub(super) fn of(self, rower: Place) -> Doubt {
        let Spread { of_all, of_one } = self.spread();
        let doubt = Doubt::exact(self.value()).with_input(of_all, 1.0, Cause::OfAll(self));
        if of_one > 0.0 {
            doubt.with_input(of_one, 1.0, Cause::OfOne { rower, what: self })
        } else {
            doubt
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: `published.tsv` A01 and A03, ANSUR II men, recomputed from the public table.
    #[test]
    fn the_leg_of_one_rower_is_as_far_off_as_four_thousand_were() {
        let (sitting_sd, r, stature) = (35.70, 0.779_059_f64, 1756.21);
        let off = sitting_sd * (1.0 - r * r).sqrt() / stature;
        assert!((off * 3_f64.sqrt() - LEG_OF_ONE).abs() < 1e-4, "{off}");
    }
}
