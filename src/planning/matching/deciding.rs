//! What decides whether an oar suits a rowlock: the limit of clearance, then what makes the sums
//! not hold, then the limit of looseness.

use std::fmt;

use super::Suits;
use crate::metrology::decision;
use crate::metrology::decision::Bounds;
use crate::metrology::decision::DangerVerdict;
use crate::metrology::decision::Verdict;
use crate::model::Lift;
use crate::model::LimitKey;
use crate::model::Part;
use crate::model::Turns;
use crate::working::Lack;
use crate::working::LimitInForce;
use crate::working::SeatSight;
use crate::working::Worked;

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
    /// The figure that decided, and its limit; nothing where it is unknown.
    pub by: Option<(Figure, LimitInForce)>,
    /// How far the figure is beyond the limit, in millimetres; inside, below nought.
    pub beyond: f64,
    /// Why it is unknown.
    pub why: Option<Why>,
}

/// Why nothing can be said of an oar in a rowlock.
#[derive(Clone, Debug, Eq, PartialEq)]
pub enum Why {
    /// Something was not measured.
    Lacks(Lack),
    /// The rowlock does not turn freely.
    Turns(Turns),
    /// The after horn hooks over the oar, or is not shown not to.
    Hooks {
        /// Whether it is proven.
        proven: bool,
    },
    /// The seat's own oar was lifted out by hand, and did not come freely.
    ByHand(Lift, Lying),
    /// The boat's record was worked out beforehand.
    Predicted,
}

/// How an oar lay when it was lifted out.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Lying {
    /// Square to the boat.
    Square,
    /// At the catch.
    Catch,
    /// At the finish.
    Finish,
    /// Along the boat.
    Along,
}

impl fmt::Display for Why {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Lacks(lack) => return lack.fmt(f),
            Self::Turns(Turns::Seized) => {
                "the rowlock is seized, and the sums are for one that turns freely"
            }
            Self::Turns(_) => {
                "the rowlock turns only when pushed, and the sums are for one that turns freely"
            }
            Self::Hooks { proven: true } => "the gap is wide enough, but the after horn hooks over",
            Self::Hooks { proven: false } => {
                "the gap is wide enough, but the after horn may hook over: measure its tip again"
            }
            Self::ByHand(how, lying) => return by_hand(*how, *lying, f),
            Self::Predicted => {
                "the boat's record was worked out beforehand, and nobody has measured it"
            }
        })
    }
}

fn by_hand(how: Lift, lying: Lying, f: &mut fmt::Formatter<'_>) -> fmt::Result {
    let how = if how == Lift::Jams { "it jammed" } else { "it came out only with a pull" };
    let lying = match lying {
        Lying::Square => "square off",
        Lying::Catch => "at the catch",
        Lying::Finish => "at the finish",
        Lying::Along => "lying along the boat",
    };
    write!(f, "the gap is wide enough, but by hand {how} {lying}")
}

fn unknown(why: Why) -> Decided {
    Decided { suits: Suits::Unknown, proven: true, by: None, beyond: 0.0, why: Some(why) }
}

/// A tight one first: it is the danger. Where the gap is wide enough, what the sums do not see;
/// then a loose one.
pub(super) fn decided(
    seat: &SeatSight,
    own: bool,
    clearance: &Worked,
    looseness: &Worked,
) -> Decided {
    let limit = |key, part| seat.at.in_force.limit(key, part);
    let Some(least) = limit(LimitKey::Clearance, Part::Least) else {
        let none = "no limit of clearance is in force: look at the boat's class";
        return unknown(Why::Lacks(Lack::Impossible(none)));
    };
    let clearance = match clearance {
        Ok(clearance) => clearance,
        Err(lack) => return unknown(Why::Lacks(lack.clone())),
    };
    let bounds = Bounds { least: Some(least.value), most: None };
    let by = |suits, proven, beyond| {
        let by = Some((Figure::Clearance, least.clone()));
        Decided { suits, proven, by, beyond, why: None }
    };
    let clear = match decision::danger(clearance.value(), clearance.expanded(), bounds) {
        DangerVerdict::Short { by: short, .. } => return by(Suits::Tight, true, short),
        DangerVerdict::NotShown { margin, .. } => return by(Suits::Tight, false, -margin),
        DangerVerdict::Clear { by: margin } => by(Suits::Clears, true, -margin),
    };
    if let Some(why) = not_in_the_sums(seat, own) {
        return unknown(why);
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
        Err(lack) => return Some(unknown(Why::Lacks(lack.clone()))),
    };
    let bounds = Bounds { least: None, most: Some(most.value) };
    let (proven, beyond) = match decision::ordinary(looseness.value(), looseness.expanded(), bounds)
    {
        Verdict::Within => return None,
        Verdict::Undecided { by, .. } => (false, by),
        Verdict::Beyond { by, .. } => (true, by),
    };
    let by = Some((Figure::Looseness, most));
    Some(Decided { suits: Suits::Loose, proven, by, beyond, why: None })
}

/// Returns what keeps an oar in, for all that the gap is wide enough.
fn not_in_the_sums(seat: &SeatSight, own: bool) -> Option<Why> {
    if seat.at.boat.predicted.is_some_and(|predicted| predicted.value) {
        return Some(Why::Predicted);
    }
    let turns = seat.seat.rowlock.turns.map(|turns| turns.value);
    if let Some(turns) = turns.filter(|turns| *turns != Turns::Free) {
        return Some(Why::Turns(turns));
    }
    hooks(seat).or_else(|| tried_by_hand(seat).filter(|_| own))
}

fn hooks(seat: &SeatSight) -> Option<Why> {
    let tip = seat.after_tip().ok()?;
    let abaft = Bounds { least: Some(0.0), most: None };
    match decision::danger(tip.value(), tip.expanded(), abaft) {
        DangerVerdict::Clear { .. } => None,
        DangerVerdict::Short { .. } => Some(Why::Hooks { proven: true }),
        DangerVerdict::NotShown { .. } => Some(Why::Hooks { proven: false }),
    }
}

/// What the hand found worst, of the seat's own oar only.
fn tried_by_hand(seat: &SeatSight) -> Option<Why> {
    let lifts = &seat.seat.lifts_out;
    let each = [
        (Lying::Square, lifts.square),
        (Lying::Catch, lifts.catch),
        (Lying::Finish, lifts.finish),
        (Lying::Along, lifts.along),
    ];
    let found = |how: Lift| {
        let one = |(lying, lift): &(Lying, Option<crate::model::Placed<Lift>>)| {
            lift.is_some_and(|lift| lift.value == how).then_some(Why::ByHand(how, *lying))
        };
        each.iter().find_map(one)
    };
    found(Lift::Jams).or_else(|| found(Lift::Stiffly))
}
