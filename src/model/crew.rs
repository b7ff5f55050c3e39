//! Crews.

use super::Measured;
use super::Name;
use super::place::{FileId, Place, Placed};
use super::reading::Reading;
use crate::units::{Angle, Length, Weight};

/// A crew.
#[derive(Clone, Debug)]
pub struct Crew {
    /// The file it is written in.
    pub file: FileId,
    /// Its id.
    pub id: Placed<String>,
    /// The boat it rows.
    pub boat: Option<Placed<String>>,
    /// The person who steers.
    pub sweep: Sweep,
    /// The rowers, as written.
    pub rowers: Vec<Rower>,
    /// When it was measured, and by whom.
    pub measured: Measured,
}

impl Crew {
    /// Returns the name of a rower of the crew.
    #[must_use]
    pub fn name_of(&self, rower: &Rower) -> Name {
        let record = Name::record(&self.id.value);
        rower.seat.map_or_else(|| record.at("rowers"), |seat| record.seat(seat.value))
    }
}

/// The person who steers.
#[derive(Clone, Debug, Default)]
pub struct Sweep {
    /// Who.
    pub who: Option<Placed<String>>,
    /// The weight.
    pub weight: Option<Reading<Weight>>,
}

/// A rower.
#[derive(Clone, Debug)]
pub struct Rower {
    /// The place that stands for the rower where a value is missing.
    pub place: Place,
    /// The seat.
    pub seat: Option<Placed<u32>>,
    /// Who.
    pub who: Option<Placed<String>>,
    /// Standing height.
    pub stature: Option<Reading<Length>>,
    /// Inside leg, floor to crotch, standing barefoot.
    pub leg: Option<Reading<Length>>,
    /// The weight.
    pub weight: Option<Reading<Weight>>,
    /// The foot hole used.
    pub foot_hole: Option<Placed<u32>>,
    /// The arc rowed, as measured.
    pub arc: Arc,
}

/// An arc as measured, both angles written positive.
#[derive(Clone, Debug, Default)]
pub struct Arc {
    /// Forward of square.
    pub catch: Option<Reading<Angle>>,
    /// Abaft square.
    pub finish: Option<Reading<Angle>>,
}
