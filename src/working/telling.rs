//! What the readings at a seat tell of its pin: by the blade from catch to finish, and by the plumb
//! bob. Judges no lean, only how well it is known.

use super::Budget;
use super::lack::Lack;
use super::lack::Worked;
use super::pitch::ArcLean;
use super::pitch::Attitude;
use super::sight::SeatSight;
use crate::geometry::arc_inverse::separation;
use crate::model::LimitKey;
use crate::model::Part;
use crate::units::Angle;

/// One of the two ways a pin can lean.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum LeanWay {
    /// Fore and aft.
    Aft,
    /// In and out.
    Out,
}

/// A lean by both ways of finding it, in degrees, and the limit it is to be told against.
#[derive(Clone, Debug)]
pub struct LeanTold {
    /// By the blade, from catch to finish.
    pub by_blade: Worked,
    /// By the plumb bob.
    pub plumbed: Worked,
    /// The most the pin may lean, where a limit is in force.
    pub limit: Option<f64>,
}

/// How well a pin and its rowlock are known, by the better of the ways: the expanded uncertainty in
/// degrees, none where nothing is known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Doubt {
    /// Of the lean fore and aft.
    pub aft: Option<f64>,
    /// Of the lean in and out.
    pub out: Option<f64>,
    /// Of rowlock and oar together.
    pub rig_pitch: Option<f64>,
}

/// Returns whether a lean is told: it is known better than it is large, or than its limit is.
#[must_use]
pub fn is_told(lean: &Budget, limit: Option<f64>) -> bool {
    lean.expanded() <= lean.value().abs().max(limit.unwrap_or(0.0))
}

impl LeanWay {
    /// Both ways.
    pub const ALL: [Self; 2] = [Self::Aft, Self::Out];

    /// Returns the way in words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Aft => "fore and aft",
            Self::Out => "in and out",
        }
    }

    const fn limit(self) -> LimitKey {
        match self {
            Self::Aft => LimitKey::PinAft,
            Self::Out => LimitKey::PinOut,
        }
    }
}

impl Doubt {
    /// Returns all three, fore and aft, in and out, rowlock and oar.
    #[must_use]
    pub const fn each(&self) -> [Option<f64>; 3] {
        [self.aft, self.out, self.rig_pitch]
    }

    /// Returns how many of the three are not known at all.
    #[must_use]
    pub fn unknown(&self) -> usize {
        self.each().iter().filter(|doubt| doubt.is_none()).count()
    }

    /// Returns all that is known in one figure, in degrees: the root of the sum of the squares.
    #[must_use]
    pub fn total(&self) -> f64 {
        self.each().iter().flatten().map(|doubt| doubt * doubt).sum::<f64>().sqrt()
    }
}

impl SeatSight<'_> {
    /// Returns what is known of a lean, by the blade and by the plumb bob.
    #[must_use]
    pub fn lean_told(&self, way: LeanWay) -> LeanTold {
        let arc = self.blade_tells();
        let (by_blade, plumbed) = match way {
            LeanWay::Aft => (arc.map(|arc| arc.aft), self.lean_aft()),
            LeanWay::Out => (arc.map(|arc| arc.out), self.lean_out()),
        };
        let limit = self.at.in_force.limit(way.limit(), Part::Most).map(|limit| limit.value);
        LeanTold { by_blade, plumbed, limit }
    }

    /// Returns how well the pin and its rowlock are known.
    ///
    /// Square off the blade shows rowlock, oar and lean aft together: less the lean as plumbed, it
    /// shows rowlock and oar. What both readings share, such as the trim, cancels.
    #[must_use]
    pub fn doubt(&self) -> Doubt {
        let better = |one: Option<Budget>, other: Option<Budget>| {
            let both = [one, other].into_iter().flatten().map(|budget| budget.expanded());
            both.min_by(f64::total_cmp)
        };
        let arc = self.blade_tells().ok();
        let (aft, out) = (self.lean_aft().ok(), self.lean_out().ok());
        let square = self.pitch(Attitude::Square).ok().filter(|_| !self.hands_set_pitch());
        let rig = square.zip(aft.as_ref()).map(|(square, aft)| square.minus(aft));
        Doubt {
            aft: better(arc.as_ref().map(|arc| arc.aft.clone()), aft),
            out: better(arc.as_ref().map(|arc| arc.out.clone()), out),
            rig_pitch: better(arc.map(|arc| arc.rig_pitch), rig),
        }
    }

    /// Returns the part of a lean fore and aft that shows in the blade between the oar angles of
    /// this seat's readings; the rest looks like pitch of the rowlock. None where the angles tell
    /// nothing.
    #[must_use]
    pub fn aft_shown(&self) -> Option<f64> {
        let angle = |attitude| self.oar_angle(attitude).ok().map(|own| Angle::deg(own.value()));
        let (catch, finish) = (angle(Attitude::Catch)?, angle(Attitude::Finish)?);
        separation(catch, finish).ok().map(|separation| separation.kappa)
    }

    /// A blade that the hands set tells nothing of its pin.
    fn blade_tells(&self) -> Result<ArcLean, Lack> {
        if self.hands_set_pitch() {
            return Err(Lack::Impossible("the hands set this blade, not the rowlock"));
        }
        self.arc_lean()
    }
}
