//! Limits, as a class, the club or a boat sets them.

use super::place::{Place, Placed};

/// What a limit's figures are figures of.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum LimitQuantity {
    /// Degrees.
    Angle,
    /// Millimetres.
    Length,
    /// No unit.
    Ratio,
    /// Parts of a hundred.
    Percent,
    /// How many times.
    Times,
    /// Days.
    Days,
}

impl LimitQuantity {
    /// Returns the unit as it is shown.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        match self {
            Self::Angle => "deg",
            Self::Length => "mm",
            Self::Ratio => "",
            Self::Percent => "%",
            Self::Times => "times",
            Self::Days => "days",
        }
    }
}

/// One figure of a limit.
#[derive(Clone, Copy, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
pub enum Part {
    /// The least allowed.
    Least,
    /// The most allowed.
    Most,
    /// The value aimed at.
    Aim,
    /// The stature the aim is for.
    AtStature,
    /// What the aim gains with each 100 mm of stature.
    Per100,
    /// How far from the aim is allowed, either way.
    Within,
    /// The most in all, over the years.
    InAll,
}

impl Part {
    /// Returns the key of the part.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Least => "least",
            Self::Most => "most",
            Self::Aim => "aim",
            Self::AtStature => "at-stature",
            Self::Per100 => "per-100",
            Self::Within => "within",
            Self::InAll => "in-all",
        }
    }
}

/// What is limited.
#[derive(Clone, Copy, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
pub enum LimitKey {
    /// Trim and roll on the rigging day.
    Level,
    /// Lean of a pin to the stern.
    PinAft,
    /// Lean of a pin away from the centreline.
    PinOut,
    /// Pitch of one blade from catch to finish.
    Arc,
    /// Pitch square off.
    Pitch,
    /// Pitch from blade to blade.
    PitchMatch,
    /// Mean pitch from side to side.
    Sides,
    /// Gap less the widest section.
    Clearance,
    /// Gap less the narrowest section.
    Loose,
    /// The roll in which a straight lift is looked at.
    Roll,
    /// Depth of a round shaft in its bed, as a part of its diameter.
    Bed,
    /// Handle past the seat mark.
    Handle,
    /// Back chock to pin.
    Chock,
    /// Back chock to pin from seat to seat.
    Chocks,
    /// Length of the oars of a set.
    OarLength,
    /// Inboard of the oars of a set.
    OarInboard,
    /// Own pitch of the oars of a set.
    OarPitch,
    /// Widest section of the oars of a set.
    OarShaft,
    /// Flex of the oars of a set.
    OarFlex,
    /// Gearing from seat to seat.
    Gearing,
    /// Bends of one part.
    Bends,
    /// Age of the readings.
    Age,
}

/// The figures a limit has, each with what it is a figure of.
pub(super) type Parts = &'static [(Part, LimitQuantity)];

impl LimitKey {
    /// Every limit with its key and its parts, in the order they are shown.
    pub const ALL: [(Self, &'static str, Parts); 22] = {
        use LimitQuantity::{Angle, Days, Length, Percent, Ratio, Times};
        const fn range(q: LimitQuantity) -> [(Part, LimitQuantity); 2] {
            [(Part::Least, q), (Part::Most, q)]
        }
        const fn most(q: LimitQuantity) -> [(Part, LimitQuantity); 1] {
            [(Part::Most, q)]
        }
        [
            (Self::Level, "level", &range(Angle)),
            (Self::PinAft, "pin-aft", &range(Angle)),
            (Self::PinOut, "pin-out", &range(Angle)),
            (Self::Arc, "arc", &most(Angle)),
            (Self::Pitch, "pitch", &range(Angle)),
            (Self::PitchMatch, "pitch-match", &most(Angle)),
            (Self::Sides, "sides", &most(Angle)),
            (Self::Clearance, "clearance", &[(Part::Least, Length)]),
            (Self::Loose, "loose", &most(Length)),
            (Self::Roll, "roll", &most(Angle)),
            (Self::Bed, "bed", &range(Ratio)),
            (Self::Handle, "handle", &range(Length)),
            (
                Self::Chock,
                "chock",
                &[
                    (Part::Aim, Length),
                    (Part::AtStature, Length),
                    (Part::Per100, Length),
                    (Part::Within, Length),
                ],
            ),
            (Self::Chocks, "chocks", &most(Length)),
            (Self::OarLength, "oar-length", &most(Length)),
            (Self::OarInboard, "oar-inboard", &most(Length)),
            (Self::OarPitch, "oar-pitch", &most(Angle)),
            (Self::OarShaft, "oar-shaft", &most(Length)),
            (Self::OarFlex, "oar-flex", &most(Percent)),
            (Self::Gearing, "gearing", &most(Percent)),
            (Self::Bends, "bends", &[(Part::Most, Times), (Part::InAll, Angle)]),
            (Self::Age, "age", &most(Days)),
        ]
    };

    /// Returns the key as it is written.
    #[must_use]
    pub fn key(self) -> &'static str {
        Self::ALL.iter().find(|(key, ..)| *key == self).map_or("", |(_, word, _)| word)
    }

    /// Returns the parts of this limit.
    #[must_use]
    pub fn parts(self) -> &'static [(Part, LimitQuantity)] {
        Self::ALL.iter().find(|(key, ..)| *key == self).map_or(&[], |(_, _, parts)| parts)
    }

    /// Returns what one part of this limit is a figure of.
    #[must_use]
    pub fn quantity(self, part: Part) -> Option<LimitQuantity> {
        self.parts().iter().find(|(own, _)| *own == part).map(|(_, quantity)| *quantity)
    }

    /// Returns whether going beyond it can hurt someone; such a limit can't be switched off.
    #[must_use]
    pub const fn guards_life(self) -> bool {
        matches!(self, Self::Clearance)
    }
}

/// One figure of a limit as set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bound {
    /// Which figure.
    pub part: Part,
    /// The figure, in the unit of its quantity.
    pub value: Placed<f64>,
}

/// One limit as set somewhere.
#[derive(Clone, Debug)]
pub struct SetLimit {
    /// What is limited.
    pub key: LimitKey,
    /// The place of the whole.
    pub place: Place,
    /// The figures.
    pub bounds: Vec<Bound>,
    /// Where the figures come from.
    pub source: Option<Placed<String>>,
    /// Whether it is switched off here.
    pub off: bool,
}

/// The limits set in one place.
#[derive(Clone, Debug, Default)]
pub struct Limits(pub Vec<SetLimit>);

impl Limits {
    /// Returns the same limits as set in places of another reading of the book.
    #[must_use]
    pub fn moved(mut self, mut to: impl FnMut(Place) -> Place) -> Self {
        for limit in &mut self.0 {
            limit.place = to(limit.place);
            for bound in &mut limit.bounds {
                bound.value.place = to(bound.value.place);
            }
            if let Some(source) = &mut limit.source {
                source.place = to(source.place);
            }
        }
        self
    }

    /// Returns what is set for one limit.
    #[must_use]
    pub fn of(&self, key: LimitKey) -> Option<&SetLimit> {
        self.0.iter().find(|limit| limit.key == key)
    }
}
