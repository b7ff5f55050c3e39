//! Seats a crew: a foot hole for each rower so that all finish together, with the arcs that follow
//! and what then remains. Tells how good each is; judges no boat.
//!
//! What a body does is worked out from the stature (`geometry::crew`). Where an arc was measured it
//! stands in place of what is worked out, and moves that of the others by as much. What is assumed
//! of all rowers alike cancels in the difference of two: differences are good to less than the
//! angles themselves.

mod assumed;
mod calibrating;
mod choosing;
mod doubt;
mod remaining;
mod seating;
mod smallest_range;
mod swapping;

pub use crate::geometry::crew::StoppedBy;
pub use assumed::Assumed;
pub use calibrating::Calibration;
pub use choosing::WORTH_MOVING;
pub use choosing::Worth;
pub use doubt::Cause;
pub use doubt::Doubt;
pub use remaining::ChocksAlike;
pub use remaining::Remains;
pub use seating::NotSeated;
pub use smallest_range::Candidate;
pub use smallest_range::smallest_range;
pub use swapping::Swap;

use self::calibrating::Own;
use self::choosing::Choice;
use self::choosing::Placed;
use self::seating::RowerFigures;
use self::seating::SeatFigures;
use self::seating::Seating;
use crate::model::Book;
use crate::model::Crew;
use crate::model::Rower;
use crate::working::BoatSight;
use crate::working::Lack;
use crate::working::RowerSight;
use crate::working::SeatSight;
use crate::working::Tools;

/// A crew in her boat.
pub struct Fit<'b> {
    /// The crew.
    pub crew: &'b Crew,
    /// The boat.
    pub boat: BoatSight<'b>,
    /// The rowers, as written.
    pub rowers: Vec<Seated<'b>>,
    /// How many foot holes there are; or why no hole can be chosen, and the chock is taken to stop
    /// everyone.
    pub holes: Result<usize, Lack>,
    /// What the measured finishes say of the others.
    pub finishes: Calibration,
    /// What the measured catches say of the others.
    pub catches: Calibration,
    /// Highest less lowest finish as the crew sits now, in degrees; nothing where a foot hole or a
    /// second rower is not known.
    pub spread_now: Option<Doubt>,
    /// The least it can be with these holes, in degrees.
    pub spread: Option<Doubt>,
    /// What the best holes gain, in degrees, where it is known how the crew sits now.
    pub gain: Option<Doubt>,
    /// Whether the best holes are worth moving feet for; where that is not sure, those used now
    /// are the ones chosen. Nothing where it is not known how the crew sits now.
    pub worth: Option<Worth>,
    /// What remains with the holes chosen, and why.
    pub remains: Option<Remains>,
    /// A swap of two seats that helps.
    pub swap: Option<Swap>,
    /// What of all that is assumed takes part.
    pub assumed: Vec<Assumed>,
}

/// A rower of the crew.
pub struct Seated<'b> {
    /// The rower.
    pub rower: &'b Rower,
    /// The seat, where the boat has it.
    pub seat: Option<SeatSight<'b>>,
    /// What follows, or why nothing does.
    pub arc: Result<Arc, NotSeated>,
}

/// Where a rower sits and rows.
#[derive(Clone, Debug)]
pub struct Arc {
    /// The foot hole chosen; nothing where none can be.
    pub hole: Option<u32>,
    /// The foot hole of the choice that brings all nearest together, sure or not.
    pub best_hole: Option<u32>,
    /// The foot hole used now, as written.
    pub now: Option<u32>,
    /// Whether an arc was measured and is used for nothing, for the hole it was rowed from is not
    /// known.
    pub arc_unused: bool,
    /// What stops the rower there.
    pub stopped_by: StoppedBy,
    /// How much farther the brace could be before the legs stop the rower, in millimetres; below
    /// nought they do. Nothing without foot holes.
    pub leg_room: Option<Doubt>,
    /// Whether the finish rests on this rower's own measured one.
    pub finish_measured: bool,
    /// Whether the catch rests on this rower's own measured one.
    pub catch_measured: bool,
    /// Oar angle at the finish, abaft square below nought, in degrees.
    pub finish: Doubt,
    /// The finish less the mean of the crew's, in degrees.
    pub finish_off_mean: Doubt,
    /// Oar angle at the catch, in degrees.
    pub catch: Result<Doubt, NotSeated>,
}

/// A rower of whom enough is known.
pub(crate) struct Known<'b> {
    at: usize,
    sight: RowerSight<'b>,
    body: RowerFigures,
    seat: SeatFigures,
    seating: Seating,
}

impl Known<'_> {
    fn now(&self) -> Option<u32> {
        self.sight.rower.foot_hole.map(|hole| hole.value)
    }

    fn has_arc(&self) -> bool {
        self.sight.finish().is_ok() || self.sight.catch().is_ok()
    }
}

/// Seats a crew in the boat.
#[must_use]
pub fn fit<'b>(book: &'b Book, crew: &'b Crew, boat: BoatSight<'b>) -> Fit<'b> {
    let tools = Tools::of_club(book);
    let sights: Vec<RowerSight> =
        crew.rowers.iter().map(|rower| RowerSight { tools, rower }).collect();
    let mut known = Vec::new();
    let mut lacking = Vec::new();
    for (at, sight) in sights.into_iter().enumerate() {
        match seat_of(&boat, sight.rower).and_then(|seat| seated(at, sight, &seat)) {
            Ok(one) => known.push(one),
            Err(why) => lacking.push((at, why)),
        }
    }
    let holes = seating::holes(&boat);
    let work = Work::new(known, holes.as_deref().unwrap_or_default());
    let chosen = holes.as_ref().map(Vec::len).map_err(Clone::clone);
    let none = Lack::Impossible("no foot hole lets every rower row");
    let rowers = rowers(crew, &boat, &work, lacking);
    Fit {
        crew,
        boat,
        rowers,
        holes: if work.nobody_fits() { Err(none) } else { chosen },
        finishes: work.finishes.calibration(),
        catches: work.catches.calibration(),
        spread_now: work.now.as_ref().and_then(|now| work.spread(now)),
        spread: work.spread(&work.best),
        gain: work.gain(),
        worth: work.gain().map(|gain| Worth::of(&gain)),
        remains: remaining::remains(&work),
        swap: swapping::best_swap(&work),
        assumed: work.assumed(),
    }
}

fn seat_of<'b>(boat: &BoatSight<'b>, rower: &Rower) -> Result<SeatSight<'b>, NotSeated> {
    let number = rower.seat.ok_or_else(|| Lack::NotMeasured(vec!["seat".to_owned()]))?;
    let found = boat.seats().find(|seat| seat.seat.number.is_some_and(|n| n.value == number.value));
    Ok(found.ok_or(Lack::Impossible("the boat has no such seat"))?)
}

fn seated<'b>(at: usize, sight: RowerSight<'b>, seat: &SeatSight) -> Result<Known<'b>, NotSeated> {
    let body = RowerFigures::of(&sight);
    let figures = SeatFigures::of(seat);
    let (body, figures) = match (body, figures) {
        (Ok(body), Ok(figures)) => (body, figures),
        (Err(one), Err(other)) => {
            return Err(Lack::NotMeasured([one.missing(), other.missing()].concat()).into());
        }
        (Err(lack), _) | (_, Err(lack)) => return Err(lack.into()),
    };
    let seating = Seating::new(&body, &figures)?;
    seating.finish(None)?;
    Ok(Known { at, sight, body, seat: figures, seating })
}

/// The rowers known, the holes, how far measured arcs move them, and the holes chosen.
pub(crate) struct Work<'b, 'h> {
    known: Vec<Known<'b>>,
    holes: &'h [(u32, Doubt)],
    finishes: Own,
    catches: Own,
    moved: Vec<Doubt>,
    now: Option<Choice>,
    /// The holes that bring all nearest together.
    best: Choice,
    /// The holes to use: those used now, where others are not surely worth moving feet for.
    chosen: Choice,
}

impl<'b, 'h> Work<'b, 'h> {
    fn new(known: Vec<Known<'b>>, holes: &'h [(u32, Doubt)]) -> Self {
        let brace = |one: &Known| brace_now(holes, one);
        let finishes = known.iter().map(|one| {
            let measured = one.sight.finish().ok();
            calibrating::off(measured.as_ref(), Seating::finish, &one.seating, brace(one)?)
        });
        let catches = known.iter().map(|one| {
            let measured = one.sight.catch().ok();
            calibrating::off(measured.as_ref(), Seating::catch, &one.seating, brace(one)?)
        });
        let finishes = Own::of(finishes.collect());
        let catches = Own::of(catches.collect());
        let moved = finishes.moves();
        let placed = placed(&known, &moved);
        let now = choosing::as_it_is(&placed, holes);
        let best = choosing::choose(&placed, holes).unwrap_or_else(|| against_the_chock(&placed));
        let sure = |now: &Choice| {
            let spread = |choice| choosing::spread(&placed, holes, choice);
            let gain = spread(now).zip(spread(&best)).map(|(now, best)| now.minus(&best));
            gain.is_some_and(|gain| Worth::of(&gain) == Worth::Sure)
        };
        let stay = now.clone().filter(|now| !sure(now));
        let chosen = stay.unwrap_or_else(|| best.clone());
        let chosen = choosing::legs_straightened(&placed, holes, &chosen);
        Self { known, holes, finishes, catches, moved, now, best, chosen }
    }

    fn placed(&self) -> Vec<Placed<'_>> {
        placed(&self.known, &self.moved)
    }

    /// Whether there are holes, but none for one of the rowers.
    fn nobody_fits(&self) -> bool {
        !self.known.is_empty() && !self.holes.is_empty() && self.chosen.holes.is_empty()
    }

    /// The brace of a rower in a choice; none without foot holes.
    fn brace(&self, choice: &Choice, rower: usize) -> Option<&'h Doubt> {
        choice.holes.get(rower).map(|hole| &self.holes[*hole].1)
    }

    fn finishes(&self, choice: &Choice) -> Option<Vec<Doubt>> {
        let placed = self.placed();
        let one = |(at, rower): (usize, &Placed)| rower.finish(self.brace(choice, at));
        placed.iter().enumerate().map(one).collect()
    }

    fn spread(&self, choice: &Choice) -> Option<Doubt> {
        choosing::spread(&self.placed(), self.holes, choice)
    }

    fn gain(&self) -> Option<Doubt> {
        Some(self.spread(self.now.as_ref()?)?.minus(&self.spread(&self.best)?))
    }

    /// Returns the spread of the crew seated in another way, everyone against the chock, and what
    /// that gains on everyone against the chock as they sit.
    fn seated_as(&self, seatings: &[Seating]) -> Option<(Doubt, Doubt)> {
        let both = seatings.iter().zip(&self.moved);
        let others: Vec<Placed> =
            both.map(|(seating, moved)| Placed { seating, moved, now: None }).collect();
        let spread = |placed: &[Placed]| {
            let choice = against_the_chock(placed);
            choosing::spread(placed, self.holes, &choice).filter(|_| choice.is_of(placed))
        };
        let then = spread(&others)?;
        let gain = spread(&self.placed())?.minus(&then);
        Some((then, gain))
    }

    fn assumed(&self) -> Vec<Assumed> {
        let takes_part = |what: &Assumed| match what {
            Assumed::Leg => self.known.iter().any(|one| one.body.leg_assumed()),
            Assumed::HandsAboveSeat => self.known.iter().any(|one| one.seat.hands_assumed()),
            _ => true,
        };
        Assumed::ALL.into_iter().filter(takes_part).collect()
    }
}

fn placed<'k>(known: &'k [Known], moved: &'k [Doubt]) -> Vec<Placed<'k>> {
    let both = known.iter().zip(moved);
    both.map(|(one, moved)| Placed { seating: &one.seating, moved, now: one.now() }).collect()
}

/// The brace in the hole used now: nothing where that hole is not known; no brace where there are
/// no holes.
fn brace_now<'h>(holes: &'h [(u32, Doubt)], one: &Known) -> Option<Option<&'h Doubt>> {
    if holes.is_empty() {
        return Some(None);
    }
    let hole = holes.iter().find(|(number, _)| Some(*number) == one.now())?;
    Some(Some(&hole.1))
}

fn against_the_chock(placed: &[Placed]) -> Choice {
    let finishes = placed.iter().filter_map(|rower| rower.finish_value(None)).collect();
    Choice { holes: Vec::new(), finishes }
}

fn rowers<'b>(
    crew: &'b Crew,
    boat: &BoatSight<'b>,
    work: &Work<'b, '_>,
    mut lacking: Vec<(usize, NotSeated)>,
) -> Vec<Seated<'b>> {
    let finishes = work.finishes(&work.chosen).unwrap_or_default();
    let mean = Doubt::mean(&finishes).unwrap_or_else(|| Doubt::exact(0.0));
    let catch_moves = work.catches.moves();
    let arc = |at: usize| -> Result<Arc, NotSeated> {
        if let Some(why) = lacking.iter().position(|(lacks, _)| *lacks == at) {
            return Err(lacking.swap_remove(why).1);
        }
        let place = work.known.iter().position(|one| one.at == at);
        let nothing = Lack::Impossible("no foot hole lets all of the crew row");
        let place = place.filter(|place| *place < finishes.len()).ok_or(nothing)?;
        let seating = &work.known[place].seating;
        let brace = work.brace(&work.chosen, place);
        let own = (work.finishes.is_own(place), work.catches.is_own(place));
        let catch = seating.catch(brace).map(|catch| catch.plus(&catch_moves[place]));
        Ok(Arc {
            hole: work.chosen.holes.get(place).map(|hole| work.holes[*hole].0),
            best_hole: work.best.holes.get(place).map(|hole| work.holes[*hole].0),
            now: work.known[place].now(),
            arc_unused: work.known[place].has_arc() && !(own.0 || own.1),
            stopped_by: seating.stopped_by(brace)?,
            leg_room: brace.map(|brace| seating.leg_room(brace)).transpose()?,
            finish_measured: own.0,
            catch_measured: own.1,
            finish_off_mean: finishes[place].minus(&mean),
            finish: finishes[place].clone(),
            catch,
        })
    };
    let arcs = (0..crew.rowers.len()).map(arc).collect::<Vec<_>>();
    let seated = |(rower, arc)| Seated { rower, seat: seat_of(boat, rower).ok(), arc };
    crew.rowers.iter().zip(arcs).map(seated).collect()
}
