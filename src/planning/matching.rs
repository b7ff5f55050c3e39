//! Every oar against every rowlock: whether it comes out, whether it is held, and what handle and
//! gearing it would have there. Tells the figure that decides; knows no rule.

mod deciding;
mod not_found;

pub use deciding::Decided;
pub use deciding::Figure;
pub use deciding::Lying;
pub use deciding::Why;
pub use not_found::NotFound;
pub use not_found::Wanted;
pub use not_found::not_found;

use crate::metrology::decision;
use crate::metrology::decision::Bounds;
use crate::metrology::decision::Verdict;
use crate::model::DefectState;
use crate::model::LimitKey;
use crate::model::Oar;
use crate::model::OarSet;
use crate::model::OarState;
use crate::model::Part;
use crate::model::PutRight;
use crate::working::BoatSight;
use crate::working::SeatSight;
use crate::working::Worked;

/// Whether an oar suits a rowlock; the later, the worse.
#[derive(Clone, Copy, Debug, Eq, Ord, PartialEq, PartialOrd)]
pub enum Suits {
    /// It comes out at any turn, surely, and is not held too loosely.
    Clears,
    /// It is held too loosely, or may be.
    Loose,
    /// Something was not measured, or the sums do not hold.
    Unknown,
    /// It does not come out, or is not shown to.
    Tight,
}

impl Suits {
    /// Every verdict, the best first.
    pub const ALL: [Self; 4] = [Self::Clears, Self::Loose, Self::Unknown, Self::Tight];

    /// Returns the word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Clears => "clears",
            Self::Loose => "loose",
            Self::Unknown => "unknown",
            Self::Tight => "tight",
        }
    }
}

/// Whose oar it is at a seat.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Whose {
    /// The seat's own.
    Own,
    /// A spare of the boat.
    Spare,
    /// Of another seat, or of another boat.
    Other,
}

/// How far a handle would pass the seat mark.
#[derive(Clone, Debug)]
pub struct Handle {
    /// The figure, in millimetres.
    pub past_mark: Worked,
    /// What is allowed, in millimetres.
    pub allowed: Bounds,
    /// Whether it is within what is allowed; nothing without a figure.
    pub verdict: Option<Verdict>,
}

/// One oar in one rowlock.
#[derive(Clone, Debug)]
pub struct Tried<'b> {
    /// The oar.
    pub oar: &'b Oar,
    /// Whose it is.
    pub whose: Whose,
    /// The gap less the widest section, in millimetres: what is left at any turn of the shaft.
    pub clearance: Worked,
    /// What is left in a straight lift in the roll of the limit, the oar along the boat, in
    /// millimetres.
    pub in_roll: Worked,
    /// The gap less the narrowest section, in millimetres.
    pub looseness: Worked,
    /// Depth in the bed as a part of the diameter, of a round shaft only: on the edges that the
    /// seat's own oar marked.
    pub bed: Option<Worked>,
    /// How far the handle would pass the seat mark.
    pub handle: Handle,
    /// Outboard over inboard.
    pub gearing: Worked,
    /// The verdict.
    pub decided: Decided,
}

impl Tried<'_> {
    /// Returns whether the oar is not to be used, whatever it clears: marked unfit, or with an
    /// unfit defect that nobody put right and passed.
    #[must_use]
    pub fn is_unfit(&self) -> bool {
        is_unfit(self.oar)
    }
}

/// Returns whether an oar is not to be used, whatever it clears.
#[must_use]
pub fn is_unfit(oar: &Oar) -> bool {
    let marked = oar.state.is_some_and(|state| state.value == OarState::Unfit);
    let put_right = |put_right: &PutRight| put_right.missing().is_empty();
    let defect = oar.defects.iter().any(|defect| {
        let unfit = defect.state.is_some_and(|state| state.value == DefectState::Unfit);
        unfit && !defect.put_right.as_ref().is_some_and(put_right)
    });
    marked || defect
}

/// One seat with every oar of a set.
pub struct SeatMatch<'b> {
    /// The seat.
    pub seat: SeatSight<'b>,
    /// The oars, as written.
    pub oars: Vec<Tried<'b>>,
}

/// One oar set in one boat.
pub struct Match<'b> {
    /// The boat.
    pub boat: BoatSight<'b>,
    /// The set.
    pub set: &'b OarSet,
    /// Her seats, as written.
    pub seats: Vec<SeatMatch<'b>>,
}

impl<'b> Match<'b> {
    /// Tries every oar of a set in every rowlock of a boat.
    #[must_use]
    pub fn of(boat: BoatSight<'b>, set: &'b OarSet) -> Self {
        let seats = boat.seats().map(|seat| SeatMatch {
            seat,
            oars: set.oars.iter().map(|oar| tried(&seat, set, oar)).collect(),
        });
        Self { boat, set, seats: seats.collect() }
    }

    /// Returns whether the boat carries this set.
    #[must_use]
    pub fn is_carried(&self) -> bool {
        carries(&self.boat, self.set)
    }

    /// Returns every oar in every seat, as written.
    pub fn all(&self) -> impl DoubleEndedIterator<Item = (&SeatMatch<'b>, &Tried<'b>)> {
        self.seats.iter().flat_map(|seat| seat.oars.iter().map(move |oar| (seat, oar)))
    }

    /// Returns the verdict on the whole set in the boat; without an oar or a seat it is unknown.
    #[must_use]
    pub fn suits(&self) -> Suits {
        worst(self.all()).map_or(Suits::Unknown, |(_, tried)| tried.decided.suits)
    }
}

/// Returns the worst of some tries: a tight one before an unknown, the one farthest beyond its
/// limit first.
#[must_use]
pub fn worst<'t, 'b: 't>(
    tries: impl DoubleEndedIterator<Item = (&'t SeatMatch<'b>, &'t Tried<'b>)>,
) -> Option<(&'t SeatMatch<'b>, &'t Tried<'b>)> {
    // Of alike ones the first: the last of a reversed row.
    tries.rev().max_by(|(_, one), (_, other)| {
        let rank = |tried: &Tried| (tried.decided.suits, tried.decided.proven);
        let beyond = one.decided.beyond.total_cmp(&other.decided.beyond);
        rank(one).cmp(&rank(other)).then(beyond)
    })
}

fn carries(boat: &BoatSight, set: &OarSet) -> bool {
    boat.oars.is_some_and(|carried| carried.id.place == set.id.place)
}

fn tried<'b>(seat: &SeatSight<'b>, set: &'b OarSet, oar: &'b Oar) -> Tried<'b> {
    let own = seat.oar.is_some_and(|own| own.place == oar.place);
    let spare = carries(&seat.at, set)
        && seat.at.boat.spares.iter().any(|spare| oar.is_called(&spare.value));
    let whose = match (own, spare) {
        (true, _) => Whose::Own,
        (false, true) => Whose::Spare,
        (false, false) => Whose::Other,
    };
    let here = SeatSight { oar: Some(oar), ..*seat };
    let (clearance, looseness) = (here.clearance(), here.looseness());
    Tried {
        oar,
        whose,
        in_roll: here.clearance_in_roll(),
        bed: oar.shaft.is_round().then(|| here.bed_fraction()),
        handle: handle(&here),
        gearing: here.gearing(),
        decided: deciding::decided(&here, own, &clearance, &looseness),
        clearance,
        looseness,
    }
}

fn handle(seat: &SeatSight) -> Handle {
    let limit = |part| seat.at.in_force.limit(LimitKey::Handle, part).map(|limit| limit.value);
    let allowed = Bounds { least: limit(Part::Least), most: limit(Part::Most) };
    let past_mark = seat.handle_computed();
    let judged = past_mark.as_ref().ok();
    let verdict = judged.map(|past| decision::ordinary(past.value(), past.expanded(), allowed));
    Handle { verdict, allowed, past_mark }
}
