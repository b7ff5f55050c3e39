//! Every oar against every rowlock: whether it comes out, whether it is held, and what handle and
//! gearing it would have there. Tells the figure that decides; knows no rule.

use crate::metrology::decision;
use crate::metrology::decision::Bounds;
use crate::metrology::decision::DangerVerdict;
use crate::metrology::decision::Verdict;
use crate::model::LimitKey;
use crate::model::Oar;
use crate::model::OarSet;
use crate::model::OarState;
use crate::model::Part;
use crate::model::Turns;
use crate::working::BoatSight;
use crate::working::Lack;
use crate::working::LimitInForce;
use crate::working::SeatSight;
use crate::working::Worked;

/// Whether an oar suits a rowlock; the later, the worse.
#[derive(Clone, Copy, Debug, Eq, Ord, PartialEq, PartialOrd)]
pub enum Suits {
    /// It comes out at any turn, surely, and is not held too loosely.
    Clears,
    /// It is held too loosely, or may be.
    Loose,
    /// Something was not measured.
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

/// The figure that decided.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Figure {
    /// The gap less the widest section of the shaft.
    Clearance,
    /// The gap less the narrowest section.
    Looseness,
}

/// What was decided of one oar in one rowlock, and by what.
#[derive(Clone, Debug)]
pub struct Decided {
    /// The verdict.
    pub suits: Suits,
    /// Whether it is proven; a tight or a loose one may only not be shown to be in order.
    pub proven: bool,
    /// The figure that decided, and its limit; nothing where something was not measured.
    pub by: Option<(Figure, LimitInForce)>,
    /// How far the figure is beyond the limit, in millimetres; inside, below nought.
    pub beyond: f64,
    /// What was not measured, or why nothing can be said.
    pub lack: Option<Lack>,
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
    /// How far the handle would pass the seat mark, in millimetres.
    pub handle: Worked,
    /// Outboard over inboard.
    pub gearing: Worked,
    /// The verdict.
    pub decided: Decided,
}

impl Tried<'_> {
    /// Returns whether the oar is marked as not to be used, whatever it clears.
    #[must_use]
    pub fn is_unfit(&self) -> bool {
        self.oar.state.is_some_and(|state| state.value == OarState::Unfit)
    }
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

    /// Returns the worst there is, with its seat: a tight one before an unknown, the one farthest
    /// beyond its limit first. Nothing without a seat or without an oar.
    #[must_use]
    pub fn worst(&self) -> Option<(&SeatMatch<'b>, &Tried<'b>)> {
        let all = self.seats.iter().flat_map(|seat| seat.oars.iter().map(move |oar| (seat, oar)));
        // Of alike ones the first: the last of a reversed row.
        all.rev().max_by(|(_, one), (_, other)| {
            let rank = |tried: &Tried| (tried.decided.suits, tried.decided.proven);
            let beyond = one.decided.beyond.total_cmp(&other.decided.beyond);
            rank(one).cmp(&rank(other)).then(beyond)
        })
    }

    /// Returns the verdict on the whole set in the boat; without an oar or a seat it is unknown.
    #[must_use]
    pub fn suits(&self) -> Suits {
        self.worst().map_or(Suits::Unknown, |(_, tried)| tried.decided.suits)
    }
}

fn tried<'b>(seat: &SeatSight<'b>, set: &'b OarSet, oar: &'b Oar) -> Tried<'b> {
    let own = seat.oar.is_some_and(|own| own.place == oar.place);
    let carried = seat.at.oars.is_some_and(|carried| carried.id.place == set.id.place);
    let spare = carried && seat.at.boat.spares.iter().any(|spare| oar.is_called(&spare.value));
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
        handle: here.handle_computed(),
        gearing: here.gearing(),
        decided: decided(&here, &clearance, &looseness),
        clearance,
        looseness,
    }
}

fn unknown(lack: Lack) -> Decided {
    Decided { suits: Suits::Unknown, proven: true, by: None, beyond: 0.0, lack: Some(lack) }
}

/// A tight one first: it is the danger. Where being clear of it is proven, a loose one.
fn decided(seat: &SeatSight, clearance: &Worked, looseness: &Worked) -> Decided {
    let limit = |key, part| seat.at.in_force.limit(key, part);
    let Some(least) = limit(LimitKey::Clearance, Part::Least) else {
        return unknown(Lack::NotMeasured(vec!["limit clearance".to_owned()]));
    };
    let clearance = match clearance {
        Ok(clearance) => clearance,
        Err(lack) => return unknown(lack.clone()),
    };
    let bounds = Bounds { least: Some(least.value), most: None };
    let by = |suits, proven, beyond| Decided {
        suits,
        proven,
        by: Some((Figure::Clearance, least.clone())),
        beyond,
        lack: None,
    };
    let clear = match decision::danger(clearance.value(), clearance.expanded(), bounds) {
        DangerVerdict::Short { by: short, .. } => return by(Suits::Tight, true, short),
        DangerVerdict::NotShown { margin, .. } => return by(Suits::Tight, false, -margin),
        DangerVerdict::Clear { by: margin } => by(Suits::Clears, true, -margin),
    };
    if let Some(why) = does_not_turn(seat) {
        return unknown(Lack::Impossible(why));
    }
    match limit(LimitKey::Loose, Part::Most) {
        None => clear,
        Some(most) => held(looseness, most).unwrap_or(clear),
    }
}

/// Returns that an oar is held too loosely, or that it is not known; nothing where it is held.
fn held(looseness: &Worked, most: LimitInForce) -> Option<Decided> {
    let looseness = match looseness {
        Ok(looseness) => looseness,
        Err(lack) => return Some(unknown(lack.clone())),
    };
    let bounds = Bounds { least: None, most: Some(most.value) };
    let (proven, beyond) = match decision::ordinary(looseness.value(), looseness.expanded(), bounds)
    {
        Verdict::Within => return None,
        Verdict::Undecided { by, .. } => (false, by),
        Verdict::Beyond { by, .. } => (true, by),
    };
    let by = Some((Figure::Looseness, most));
    Some(Decided { suits: Suits::Loose, proven, by, beyond, lack: None })
}

/// The sums hold for a rowlock that turns with the shaft.
fn does_not_turn(seat: &SeatSight) -> Option<&'static str> {
    match seat.seat.rowlock.turns?.value {
        Turns::Free => None,
        Turns::Stiff => Some("the rowlock turns stiffly: the sums are for one that turns freely"),
        Turns::Seized => Some("the rowlock is seized: the sums are for one that turns freely"),
    }
}
