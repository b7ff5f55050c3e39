//! A boat as rigged on one day, and what was done to her since.

use super::place::{FileId, Place, Placed};
use super::reading::Reading;
use super::upkeep::{Bend, Defect, Knock, OutOfUse, ReadAgain};
use super::words::{Bears, Condition, Lift, Turns, Where};
use super::{HalfWidths, Limits, Name};
use crate::geometry::Side;
use crate::units::{Angle, Date, Length, Slope};

/// A boat.
#[derive(Clone, Debug)]
pub struct Boat {
    /// The file she is written in.
    pub file: FileId,
    /// Her id.
    pub id: Placed<String>,
    /// The name on the bow.
    pub name: Option<Placed<String>>,
    /// The class she belongs to.
    pub class: Option<Placed<String>>,
    /// The oar set she carries.
    pub oars: Option<Placed<String>>,
    /// Oars of the set carried as spares.
    pub spares: Vec<Placed<String>>,
    /// Where the level is laid.
    pub level_mark: LevelMark,
    /// The foot holes.
    pub foot_holes: FootHoles,
    /// The rigging day.
    pub rigged: Rigged,
    /// The seats, as written.
    pub seats: Vec<Seat>,
    /// Values read again since the rigging day.
    pub read_again: Vec<ReadAgain>,
    /// What she was knocked by.
    pub knocks: Vec<Knock>,
    /// Cold bends made.
    pub bends: Vec<Bend>,
    /// Defects found.
    pub defects: Vec<Defect>,
    /// Why she is not to be used, if she isn't.
    pub out_of_use: Option<OutOfUse>,
    /// Whether the record was worked out, not measured.
    pub predicted: Option<Placed<bool>>,
    /// Limits of her own.
    pub limits: Limits,
}

impl Boat {
    /// Returns the name of the record.
    #[must_use]
    pub fn record(&self) -> Name {
        Name::record(&self.id.value)
    }

    /// Returns whether she is out of use: since when, by whom and why must all be said.
    #[must_use]
    pub fn is_out_of_use(&self) -> bool {
        let said = |text: &Option<Placed<String>>| {
            text.as_ref().is_some_and(|text| !text.value.trim().is_empty())
        };
        let whole = |out: &OutOfUse| out.since.is_some() && said(&out.by) && said(&out.because);
        self.out_of_use.as_ref().is_some_and(whole)
    }

    /// Returns what people call her: the name on the bow, else the id.
    #[must_use]
    pub fn called(&self) -> &str {
        self.name.as_ref().map_or(&self.id.value, |name| &name.value)
    }
}

/// Where the level is laid.
#[derive(Clone, Debug, Default)]
pub struct LevelMark {
    /// The place in the boat.
    pub whereabouts: Option<Placed<String>>,
    /// When it was found to read true afloat.
    pub found_afloat: Option<Placed<Date>>,
}

/// The row of foot holes.
#[derive(Clone, Debug, Default)]
pub struct FootHoles {
    /// After face of the back chock to the foot-brace face in hole 1.
    pub first: Option<Reading<Length>>,
    /// From hole to hole.
    pub apart: Option<Reading<Length>>,
    /// How many holes.
    pub count: Option<Placed<u32>>,
}

/// The rigging day: what holds for all seats.
#[derive(Clone, Debug)]
pub struct Rigged {
    /// The place of the whole, or of the record where it is missing.
    pub place: Place,
    /// The day.
    pub date: Option<Placed<Date>>,
    /// Who measured.
    pub by: Option<Placed<String>>,
    /// Who checked.
    pub checked_by: Option<Placed<String>>,
    /// Where she lay.
    pub whereabouts: Option<Placed<Where>>,
    /// The wind.
    pub wind: Option<Placed<String>>,
    /// Bow up is positive.
    pub trim: Option<Reading<Angle>>,
    /// Port side down is positive.
    pub roll: Option<Reading<Angle>>,
    /// Why she was measured out of level all the same.
    pub level_accepted: Option<Placed<String>>,
    /// What a bare lean offset was taken over.
    pub pin_gauge: Option<Placed<Length>>,
    /// Oar angles at which the pitch was read.
    pub pitch_angles: PitchAngles,
    /// The place of the walk round, where it is written.
    pub walk_round_at: Option<Place>,
    /// Items looked at, and how each was found.
    pub walk_round: Vec<WalkRound>,
    /// How finely the tools of the day read.
    pub half_widths: HalfWidths,
}

/// Oar angles at which the pitch was read, both written positive.
#[derive(Clone, Debug, Default)]
pub struct PitchAngles {
    /// At the catch, the blade forward of square.
    pub catch: Option<Placed<Angle>>,
    /// At the finish, the blade abaft square.
    pub finish: Option<Placed<Angle>>,
}

/// One item of the walk round the boat.
#[derive(Clone, Debug)]
pub struct WalkRound {
    /// The item.
    pub item: Placed<String>,
    /// How it was found.
    pub condition: Placed<Condition>,
}

/// One rower's place with its pin, rowlock and oar.
#[derive(Clone, Debug)]
pub struct Seat {
    /// The place that stands for the seat where a value is missing.
    pub place: Place,
    /// The seat's number, 1 nearest the bow.
    pub number: Option<Placed<u32>>,
    /// The side the oar is on.
    pub side: Option<Placed<Side>>,
    /// The oar.
    pub oar: Option<Placed<String>>,
    /// The pin.
    pub pin: Pin,
    /// The rowlock.
    pub rowlock: Rowlock,
    /// How the oar lifted out.
    pub lifts_out: LiftsOut,
    /// Centreline to the seat mark; on the far side from the rowlock positive.
    pub seat_mark: Option<Reading<Length>>,
    /// How far the handle passes the seat mark.
    pub handle_past_mark: Option<Reading<Length>>,
    /// Back chock to pin.
    pub chock_to_pin: Option<Reading<Length>>,
    /// The blade's pitch.
    pub pitch: Pitch,
    /// Width of a round shaft's mark in the bed.
    pub oar_bed: Option<Reading<Length>>,
    /// Collar's bearing face to the pin's axis, where it differs from the class.
    pub collar_to_pin: Option<Placed<Length>>,
    /// Values that the record says follow from the readings.
    pub worked_out: WorkedOut,
    /// Anything else.
    pub note: Option<Placed<String>>,
}

/// A pin.
#[derive(Clone, Debug, Default)]
pub struct Pin {
    /// Pin to the centreline.
    pub spread: Option<Reading<Length>>,
    /// Stern mark to the pin, along the string.
    pub along: Option<Reading<Length>>,
    /// How far it leans.
    pub lean: Lean,
    /// Its diameter.
    pub thick: Option<Reading<Length>>,
    /// The plate it stands on.
    pub plate: Plate,
}

/// How far a pin leans, by the plumb bob.
#[derive(Clone, Debug, Default)]
pub struct Lean {
    /// To the stern positive.
    pub aft: Option<Reading<Slope>>,
    /// Away from the centreline positive.
    pub out: Option<Reading<Slope>>,
}

/// The plate under a pin, bolt to bolt.
#[derive(Clone, Debug, Default)]
pub struct Plate {
    /// Along the boat.
    pub along: Option<Reading<Length>>,
    /// Across the boat.
    pub across: Option<Reading<Length>>,
}

/// A rowlock.
#[derive(Clone, Debug, Default)]
pub struct Rowlock {
    /// The place of the whole, where it is written.
    pub place: Option<Place>,
    /// Smallest clear width between the horns.
    pub gap: Option<Reading<Length>>,
    /// How far the after horn's tip stands to the stern of its shank.
    pub after_tip: Option<Reading<Length>>,
    /// Bed to the tip of the lower horn.
    pub horn: Option<Reading<Length>>,
    /// Length of a horn along the shaft.
    pub long: Option<Reading<Length>>,
    /// How it turns.
    pub turns: Option<Placed<Turns>>,
    /// Bed above the seat.
    pub above_seat: Option<Reading<Length>>,
}

/// How the oar lifted out by hand.
#[derive(Clone, Debug, Default)]
pub struct LiftsOut {
    /// The place of the whole, where it is written.
    pub place: Option<Place>,
    /// Square off.
    pub square: Option<Placed<Lift>>,
    /// At the catch.
    pub catch: Option<Placed<Lift>>,
    /// At the finish.
    pub finish: Option<Placed<Lift>>,
    /// Lying along the boat.
    pub along: Option<Placed<Lift>>,
}

impl LiftsOut {
    /// Returns every attitude with its key.
    #[must_use]
    pub fn each(&self) -> [(&'static str, Option<Placed<Lift>>); 4] {
        [
            ("square", self.square),
            ("catch", self.catch),
            ("finish", self.finish),
            ("along", self.along),
        ]
    }
}

/// A blade's pitch as read; the blade's top to the stern positive.
#[derive(Clone, Debug, Default)]
pub struct Pitch {
    /// The place of the whole, where it is written.
    pub place: Option<Place>,
    /// At the catch.
    pub catch: Option<Reading<Slope>>,
    /// Square off.
    pub square: Option<Reading<Slope>>,
    /// At the finish.
    pub finish: Option<Reading<Slope>>,
}

/// Values that a record says follow from its readings.
#[derive(Clone, Debug, Default)]
pub struct WorkedOut {
    /// Pitch square off.
    pub pitch: Option<Placed<Stated>>,
    /// Handle past the seat mark.
    pub handle_past_mark: Option<Placed<Stated>>,
    /// Outboard to inboard.
    pub gearing: Option<Placed<Stated>>,
    /// Gap less the widest section of the oar.
    pub clearance: Option<Placed<Stated>>,
    /// Lean of the pin to the stern.
    pub lean_aft: Option<Placed<Stated>>,
    /// Lean of the pin away from the centreline.
    pub lean_out: Option<Placed<Stated>>,
}

/// A worked-out value as written, with as many decimals as it was written with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stated {
    /// The value, in millimetres, degrees or none.
    pub value: f64,
    /// Half of its last digit, in the same unit.
    pub half_digit: f64,
}

/// Whether a round shaft has no flat to set the blade.
#[must_use]
pub(super) fn hands_set(bears: Option<Placed<Bears>>) -> bool {
    bears.is_some_and(|bears| bears.value == Bears::Round)
}
