//! One blade on one pin: what its pitch becomes when the pin is brought upright or the horn is
//! bent. Knows no record and no limit.

use crate::geometry::arc;
use crate::geometry::arc::Lean;
use crate::geometry::arc::Rig;
use crate::rules::Leaning;
use crate::units::Angle;
use crate::working::Attitude;
use crate::working::SeatSight;

/// A blade whose pitch square off is known.
#[derive(Clone, Copy, Debug)]
pub(super) struct Blade {
    rig: Rig,
    dip: Angle,
}

impl Blade {
    /// Returns the blade of a seat; none where its pitch square off is not known. A pin that
    /// nobody plumbed is taken to stand upright.
    pub(super) fn of(seat: &SeatSight) -> Option<Self> {
        let square = seat.pitch(Attitude::Square).ok()?.value();
        let degrees = |worked: crate::working::Worked| {
            Angle::deg(worked.map_or(0.0, |budget| budget.value()))
        };
        let own = seat.oar_sight().ok().map(|oar| oar.own_pitch());
        let rig = Rig {
            rowlock_pitch: Angle::deg(0.0),
            oar_pitch: own.map_or(Angle::deg(0.0), degrees),
            lean: Lean { aft: degrees(seat.lean_aft()), out: degrees(seat.lean_out()) },
        };
        Some(Self { rig, dip: degrees(seat.at.dip()) }.with_square(square))
    }

    /// Returns the pitch at an oar angle, in degrees.
    pub(super) fn pitch(&self, theta: f64) -> f64 {
        arc::pitch(self.rig, Angle::deg(theta), self.dip).as_deg()
    }

    /// Returns the blade with its pin brought upright one way.
    pub(super) fn upright(mut self, way: Leaning) -> Self {
        match way {
            Leaning::Aft => self.rig.lean.aft = Angle::deg(0.0),
            Leaning::Out => self.rig.lean.out = Angle::deg(0.0),
        }
        self
    }

    /// Returns the blade with its rowlock bent until the pitch square off is so many degrees.
    pub(super) fn with_square(mut self, pitch: f64) -> Self {
        // The rowlock's pitch and the blade's differ at third order only: this settles at once.
        for _ in 0..6 {
            let short = pitch - self.pitch(0.0);
            self.rig.rowlock_pitch = Angle::deg(self.rig.rowlock_pitch.as_deg() + short);
        }
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn blade(aft: f64, out: f64, pitch: f64) -> Blade {
        let [rowlock_pitch, oar_pitch, dip] = [0.0, 0.0, 6.0].map(Angle::deg);
        let lean = Lean { aft: Angle::deg(aft), out: Angle::deg(out) };
        Blade { rig: Rig { rowlock_pitch, oar_pitch, lean }, dip }.with_square(pitch)
    }

    #[test]
    fn taking_out_stern_lean_lowers_the_pitch_by_as_much_and_flattens_the_arc() {
        let leaning = blade(2.0, 0.0, 6.0);
        let upright = leaning.upright(Leaning::Aft);
        assert!((upright.pitch(0.0) - 4.0).abs() < 0.03, "{}", upright.pitch(0.0));
        let bow = |blade: &Blade| blade.pitch(0.0) - blade.pitch(50.0);
        assert!(bow(&leaning) > 0.6 && bow(&upright).abs() < 0.03);
    }

    #[test]
    fn taking_out_outboard_lean_lowers_the_catch_and_raises_the_finish() {
        let (leaning, upright) = (blade(0.0, 2.0, 4.0), blade(0.0, 2.0, 4.0).upright(Leaning::Out));
        assert!((leaning.pitch(50.0) - upright.pitch(50.0) - 1.53).abs() < 0.1);
        assert!((upright.pitch(-35.0) - leaning.pitch(-35.0) - 1.15).abs() < 0.1);
        assert!((upright.pitch(0.0) - leaning.pitch(0.0)).abs() < 0.03);
    }

    #[test]
    fn a_bent_horn_gives_the_pitch_that_was_asked_for() {
        assert!((blade(1.0, -1.0, 3.0).with_square(5.5).pitch(0.0) - 5.5).abs() < 1e-9);
    }
}
