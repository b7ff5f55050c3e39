//! Classes of boat: what holds for all boats of one kind.

use super::Limits;
use super::place::{FileId, Placed};
use crate::units::{Angle, Length};

/// A class of boat.
#[derive(Clone, Debug)]
pub struct Class {
    /// The file it is written in.
    pub file: FileId,
    /// Its id.
    pub id: Placed<String>,
    /// How many rowers.
    pub seats: Option<Placed<u32>>,
    /// Whether the sides alternate from seat to seat.
    pub alternating: Option<Placed<bool>>,
    /// Collar's bearing face to the pin's axis.
    pub collar_to_pin: Option<Placed<Length>>,
    /// Oar angles.
    pub oar_angle: OarAngle,
    /// What is looked at on the walk round.
    pub walk_round: Vec<Placed<String>>,
    /// Fields of a seat that must be measured, as names below the seat's own.
    pub must_measure: Vec<Placed<String>>,
    /// What is plausible for a length: of a seat by its name below the seat's own, of an oar after
    /// [`OF_AN_OAR`](super::OF_AN_OAR), of a rower after [`OF_A_ROWER`](super::OF_A_ROWER).
    pub plausible: Vec<Plausible>,
    /// The limits.
    pub limits: Limits,
}

/// Oar angles of a class, all written positive.
#[derive(Clone, Debug, Default)]
pub struct OarAngle {
    /// Forward of square at the catch.
    pub catch: Option<Placed<Angle>>,
    /// Abaft square at the finish.
    pub finish: Option<Placed<Angle>>,
    /// Blade below the rowlock.
    pub dip: Option<Placed<Angle>>,
}

/// The range in which a length is plausible.
#[derive(Clone, Debug)]
pub struct Plausible {
    /// The field.
    pub field: Placed<String>,
    /// The least that was ever seen.
    pub least: Option<Placed<Length>>,
    /// The most that was ever seen.
    pub most: Option<Placed<Length>>,
}
