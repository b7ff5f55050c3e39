//! How far measured arcs move what the bodies say. Chooses nothing.

use super::doubt::Doubt;
use super::doubt::of_readings;
use super::seating::NotSeated;
use super::seating::Seating;
use crate::working::Budget;

/// How far the arcs that were measured stand off those worked out, of one angle.
#[derive(Clone, Debug)]
pub struct Calibration {
    /// How many rowers' arcs were measured.
    pub measured: usize,
    /// The mean of what was measured less what was worked out, in degrees: all others are moved by
    /// it. Nothing where nobody's was.
    pub moved: Option<Doubt>,
}

/// What was measured of each rower less what is worked out at the same brace, in degrees.
pub(super) struct Own(Vec<Option<Doubt>>);

impl Own {
    pub(super) fn of(moved: Vec<Option<Doubt>>) -> Self {
        Self(moved)
    }

    /// Returns whether a rower's own was measured.
    pub(super) fn is_own(&self, rower: usize) -> bool {
        self.0.get(rower).is_some_and(Option::is_some)
    }

    /// Returns the mean of all that were measured.
    pub(super) fn calibration(&self) -> Calibration {
        let measured = self.0.iter().flatten().count();
        Calibration { measured, moved: Doubt::mean(self.0.iter().flatten()) }
    }

    /// Returns how far each rower is moved: the own where it was measured, else the mean.
    pub(super) fn moves(&self) -> Vec<Doubt> {
        let mean = self.calibration().moved.unwrap_or_else(|| Doubt::exact(0.0));
        self.0.iter().map(|own| own.clone().unwrap_or_else(|| mean.clone())).collect()
    }
}

/// Returns what was measured less what is worked out at the brace it was rowed from.
pub(super) fn off(
    measured: Option<&Budget>,
    worked: impl Fn(&Seating, Option<&Doubt>) -> Result<Doubt, NotSeated>,
    seating: &Seating,
    brace: Option<&Doubt>,
) -> Option<Doubt> {
    Some(of_readings(measured?).minus(&worked(seating, brace).ok()?))
}
