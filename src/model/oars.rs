//! Oar sets.

use super::Name;
use super::boat::hands_set;
use super::place::{FileId, Place, Placed};
use super::reading::Reading;
use super::upkeep::Defect;
use super::words::{Bears, Leather, OarState};
use crate::units::{Date, Length, Slope, Weight};

/// An oar set.
#[derive(Clone, Debug)]
pub struct OarSet {
    /// The file it is written in.
    pub file: FileId,
    /// Its id.
    pub id: Placed<String>,
    /// Where pitch is read: in from the blade's tip.
    pub pitch_mark: Option<Reading<Length>>,
    /// The oars, as written.
    pub oars: Vec<Oar>,
    /// When the oars were measured, and by whom.
    pub measured: Measured,
}

impl OarSet {
    /// Returns the name of an oar of the set.
    #[must_use]
    pub fn name_of(&self, oar: &Oar) -> Name {
        let record = Name::record(&self.id.value);
        oar.id.as_ref().map_or_else(|| record.at("oars"), |id| record.at(&id.value))
    }
}

/// When a record was measured, and by whom.
#[derive(Clone, Debug, Default)]
pub struct Measured {
    /// The day.
    pub date: Option<Placed<Date>>,
    /// Who measured.
    pub by: Option<Placed<String>>,
    /// Who checked.
    pub checked_by: Option<Placed<String>>,
}

/// An oar.
#[derive(Clone, Debug)]
pub struct Oar {
    /// The place that stands for the oar where a value is missing.
    pub place: Place,
    /// Its id.
    pub id: Option<Placed<String>>,
    /// Handle end to the blade's tip.
    pub length: Option<Reading<Length>>,
    /// Handle end to the collar's bearing face.
    pub inboard: Option<Reading<Length>>,
    /// Handle end to the middle of the hands.
    pub grip: Option<Reading<Length>>,
    /// The blade.
    pub blade: Blade,
    /// The shaft where the rowlock holds it.
    pub shaft: Shaft,
    /// The oar's own pitch, blade against its flat.
    pub pitch: Option<Reading<Slope>>,
    /// How it bends.
    pub flex: Flex,
    /// Its state.
    pub state: Option<Placed<OarState>>,
    /// Defects found.
    pub defects: Vec<Defect>,
}

/// A blade.
#[derive(Clone, Debug, Default)]
pub struct Blade {
    /// Its length.
    pub length: Option<Reading<Length>>,
    /// Its greatest width.
    pub width: Option<Reading<Length>>,
    /// Its width edge to edge at the pitch mark.
    pub at_mark: Option<Reading<Length>>,
}

/// A shaft where the rowlock holds it, leather included.
#[derive(Clone, Debug, Default)]
pub struct Shaft {
    /// The place of the whole, where it is written.
    pub place: Option<Place>,
    /// Largest reading of the callipers turned once round.
    pub widest: Option<Reading<Length>>,
    /// Smallest reading.
    pub narrowest: Option<Reading<Length>>,
    /// The diameter of a round shaft.
    pub round: Option<Reading<Length>>,
    /// How it bears in the rowlock.
    pub bears: Option<Placed<Bears>>,
    /// How the leather was.
    pub leather: Option<Placed<Leather>>,
}

impl Shaft {
    /// Returns the widest section, whichever way it was written; none where it can't be trusted.
    #[must_use]
    pub fn widest(&self) -> Option<&Reading<Length>> {
        self.widest.as_ref().or(self.round.as_ref()).filter(|_| self.can_be_trusted())
    }

    /// Returns the narrowest section, whichever way it was written; none where it can't be trusted.
    #[must_use]
    pub fn narrowest(&self) -> Option<&Reading<Length>> {
        self.narrowest.as_ref().or(self.round.as_ref()).filter(|_| self.can_be_trusted())
    }

    /// Returns whether the leather was dry: wet, as in use, it is thicker.
    #[must_use]
    pub fn is_dry(&self) -> bool {
        self.leather.is_some_and(|leather| leather.value == Leather::Dry)
    }

    /// Returns what the readings say against each other, if they do.
    #[must_use]
    pub fn contradiction(&self) -> Option<(Place, &'static str)> {
        let round =
            self.round.as_ref().filter(|_| self.widest.is_some() || self.narrowest.is_some());
        if let Some(round) = round {
            return Some((round.place, "`round` stands beside `widest` or `narrowest`"));
        }
        let (widest, narrowest) = (self.widest.as_ref()?, self.narrowest.as_ref()?);
        let crossed = narrowest.mean() > widest.mean();
        crossed.then_some((narrowest.place, "the narrowest section is wider than the widest"))
    }

    /// A section measured dry, or one that is contradicted, must not clear an oar.
    fn can_be_trusted(&self) -> bool {
        !self.is_dry() && self.contradiction().is_none()
    }

    /// Returns whether the shaft is round, with or without a flat on its leather.
    #[must_use]
    pub fn is_round(&self) -> bool {
        self.round.is_some() || hands_set(self.bears)
    }

    /// Returns whether the hands, not the rowlock, set the blade.
    #[must_use]
    pub fn hands_set_pitch(&self) -> bool {
        hands_set(self.bears) || (self.round.is_some() && self.bears.is_none())
    }
}

/// How an oar bends: the collar held, a weight hung.
#[derive(Clone, Debug, Default)]
pub struct Flex {
    /// The drop where the weight hangs.
    pub drop: Option<Reading<Length>>,
    /// The weight.
    pub load: Option<Reading<Weight>>,
    /// From the collar's face to the weight.
    pub at: Option<Reading<Length>>,
}
