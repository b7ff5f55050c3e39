//! Every value that is worked out for a seat and a boat, in the order it is shown.

use crate::working::ArcLean;
use crate::working::Attitude;
use crate::working::BoatSight;
use crate::working::Budget;
use crate::working::Lack;
use crate::working::SeatSight;
use crate::working::Worked;

/// A worked-out value with its names.
pub(super) struct Figure {
    /// Its key in JSON; ends in its unit, if it has one.
    pub(super) key: &'static str,
    /// What people call it.
    pub(super) called: &'static str,
    /// Its unit.
    pub(super) unit: &'static str,
    /// How many decimals it is shown with.
    pub(super) places: usize,
    pub(super) worked: Worked,
}

impl Figure {
    /// The key without its unit.
    pub(super) fn short_key(&self) -> &'static str {
        self.key.trim_end_matches("_mm").trim_end_matches("_deg").trim_end_matches("_m")
    }
}

/// Returns every value of a seat.
pub(super) fn of_seat(seat: &SeatSight) -> Vec<Figure> {
    let arc = seat.arc_lean();
    let by_arc = |pick: fn(&ArcLean) -> &Budget| -> Worked {
        arc.as_ref().map(|arc| pick(arc).clone()).map_err(Lack::clone)
    };
    let mm = |key, called, worked| Figure { key, called, unit: "mm", places: 1, worked };
    let deg = |key, called, worked| Figure { key, called, unit: "deg", places: 2, worked };
    let plain = |key, called, worked| Figure { key, called, unit: "", places: 3, worked };
    vec![
        deg("pitch_deg", "pitch square off", seat.pitch(Attitude::Square)),
        deg("pitch_catch_deg", "pitch at the catch", seat.pitch(Attitude::Catch)),
        deg("pitch_finish_deg", "pitch at the finish", seat.pitch(Attitude::Finish)),
        deg("lean_aft_deg", "lean aft, plumbed", seat.lean_aft()),
        deg("lean_out_deg", "lean out, plumbed", seat.lean_out()),
        deg("arc_lean_aft_deg", "lean aft, by the arc", by_arc(|arc| &arc.aft)),
        deg("arc_lean_out_deg", "lean out, by the arc", by_arc(|arc| &arc.out)),
        deg("rig_pitch_deg", "rowlock and oar", by_arc(|arc| &arc.rig_pitch)),
        mm("handle_past_mark_mm", "handle past mark", seat.handle_read()),
        mm("handle_past_mark_computed_mm", "the same, by the sum", seat.handle_computed()),
        mm("overlap_mm", "past the centreline", seat.overlap()),
        plain("gearing", "gearing", seat.gearing()),
        plain("gearing_levers", "gearing by levers", seat.gearing_levers()),
        mm("clearance_mm", "clearance", seat.clearance()),
        mm("clearance_in_roll_mm", "clearance in a roll", seat.clearance_in_roll()),
        mm("looseness_mm", "looseness", seat.looseness()),
        plain("bed_fraction", "depth in the bed", seat.bed_fraction()),
    ]
}

/// Returns every value of a boat as a whole.
pub(super) fn of_boat(boat: &BoatSight) -> Vec<Figure> {
    vec![
        Figure {
            key: "side_difference_deg",
            called: "pitch square off, port less starboard",
            unit: "deg",
            places: 2,
            worked: boat.side_difference(),
        },
        Figure {
            key: "tip_index_m",
            called: "roll from unequal blades (moment over handle force; port side up positive)",
            unit: "m",
            places: 3,
            worked: boat.tip_index(),
        },
    ]
}
