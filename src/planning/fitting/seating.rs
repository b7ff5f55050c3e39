//! One rower on one seat of a boat: where the handle goes, with every doubt. Chooses nothing.

use super::assumed::Assumed;
use super::doubt::Doubt;
use super::doubt::of_readings;
use crate::geometry::crew;
use crate::geometry::crew::Bench;
use crate::geometry::crew::Body;
use crate::geometry::crew::CrewError;
use crate::geometry::crew::Posture;
use crate::geometry::crew::StoppedBy;
use crate::model::Place;
use crate::units::Angle;
use crate::units::Length;
use crate::working::BoatSight;
use crate::working::Lack;
use crate::working::RowerSight;
use crate::working::SeatSight;
use crate::working::Worked;

/// Why a rower's arc can't be worked out.
#[derive(Clone, Debug, Eq, PartialEq, thiserror::Error)]
pub enum NotSeated {
    /// Something was not measured, or makes no sense.
    #[error("{0}")]
    Lacking(Lack),
    /// The rower can't row there.
    #[error("{0}: {help}", help = .0.help())]
    DoesNotFit(CrewError),
}

impl From<Lack> for NotSeated {
    fn from(lack: Lack) -> Self {
        Self::Lacking(lack)
    }
}

impl From<CrewError> for NotSeated {
    fn from(error: CrewError) -> Self {
        Self::DoesNotFit(error)
    }
}

/// What a seat brings.
#[derive(Clone, Debug)]
pub(super) struct SeatFigures {
    pub(super) chock: Doubt,
    pub(super) lever: Doubt,
    dip: Doubt,
    across: Result<Doubt, Lack>,
    hands: Option<Doubt>,
    /// Stands for the boat where something is assumed of her.
    place: Place,
}

impl SeatFigures {
    pub(super) fn of(seat: &SeatSight) -> Result<Self, Lack> {
        let [chock, lever, dip] =
            together([seat.chock_to_pin(), seat.hand_lever(), seat.at.dip()])?;
        let across = seat.pin_to_seat_mark().map(|across| of_readings(&across));
        let hands = seat.hands_above_seat().ok().map(|hands| of_readings(&hands));
        Ok(Self { chock, lever, dip, across, hands, place: seat.at.boat.id.place })
    }

    /// Returns the same seat with its chock moved, to where it need not be read.
    pub(super) fn with_chock(&self, chock: f64) -> Self {
        Self { chock: Doubt::exact(chock), ..self.clone() }
    }

    /// Whether how high the hands are was not measured, and is assumed.
    pub(super) fn hands_assumed(&self) -> bool {
        self.hands.is_none()
    }
}

/// What a rower brings.
#[derive(Clone, Debug)]
pub(super) struct RowerFigures {
    stature: Doubt,
    inside_leg: Option<Doubt>,
    place: Place,
}

impl RowerFigures {
    pub(super) fn of(sight: &RowerSight) -> Result<Self, Lack> {
        let stature = of_readings(&sight.stature()?);
        let inside_leg = sight.leg().ok().map(|leg| of_readings(&leg));
        Ok(Self { stature, inside_leg, place: sight.rower.place })
    }

    /// Whether the leg was not measured, and is worked out from the stature.
    pub(super) fn leg_assumed(&self) -> bool {
        self.inside_leg.is_none()
    }

    /// The leg from hip joint to ankle.
    fn leg(&self) -> Option<Doubt> {
        match &self.inside_leg {
            Some(inside) => {
                let hip = Assumed::HipAboveSeat.of(self.place);
                Doubt::through([inside, &self.stature, &hip], |[inside, stature, hip]| {
                    let [inside, stature] = [inside, stature].map(Length::mm);
                    Some(crew::leg_of_inside_leg(inside, stature, hip).as_mm())
                })
            }
            None => {
                let part = Assumed::Leg.of(self.place);
                Doubt::through([&part, &self.stature], |[part, stature]| Some(part * stature))
            }
        }
    }
}

/// Returns all of the readings, or everything that is missing.
fn together<const N: usize>(worked: [Worked; N]) -> Result<[Doubt; N], Lack> {
    let mut missing = Vec::new();
    for lack in worked.iter().filter_map(|worked| worked.as_ref().err()) {
        match lack {
            Lack::Impossible(_) => return Err(lack.clone()),
            Lack::NotMeasured(fields) => missing.extend_from_slice(fields),
        }
    }
    let doubts: Vec<Doubt> = worked.iter().flatten().map(of_readings).collect();
    missing.dedup();
    <[Doubt; N]>::try_from(doubts).map_err(|_| Lack::NotMeasured(missing))
}

/// How many figures decide an arc.
const FIGURES: usize = 17;

/// A rower on a seat.
pub(super) struct Seating {
    figures: [Doubt; FIGURES],
    across: Result<(), Lack>,
}

/// The numbers of a seating, as the formulas want them.
fn seated(figures: [f64; FIGURES]) -> (Bench, Body, Posture) {
    let [stature, leg, arm, chock, lever, dip, across, hands, drop, brace, rest @ ..] = figures;
    let [layback, swing, slide, knee, back_to_hip, hip_to_belly, hip_above_seat] = rest;
    let [chock, lever, across, hands, drop, brace, slide] =
        [chock, lever, across, hands, drop, brace, slide].map(Length::mm);
    let [dip, layback, swing, knee] = [dip, layback, swing, knee].map(Angle::deg);
    let bench = Bench {
        chock_to_pin: chock,
        brace: Some(brace),
        hand_lever: lever,
        dip,
        across,
        hands_above_seat: hands,
        seat_above_heels: drop,
    };
    let body =
        Body { stature: Length::mm(stature), leg: Length::mm(leg), arm: Length::mm(arm * stature) };
    let posture =
        Posture { layback, swing, slide, knee, back_to_hip, hip_to_belly, hip_above_seat };
    (bench, body, posture)
}

/// Where the brace is so near that the chock stops everyone.
const AGAINST_THE_CHOCK: f64 = 0.0;
const BRACE: usize = 9;

impl Seating {
    /// Puts a rower on a seat, the brace against the chock.
    pub(super) fn new(rower: &RowerFigures, seat: &SeatFigures) -> Result<Self, NotSeated> {
        let one = |what: Assumed| what.of(rower.place);
        let across = seat.across.clone().map(|_| ());
        let figures = [
            rower.stature.clone(),
            rower.leg().ok_or(CrewError::LegsTooShort)?,
            one(Assumed::Arm),
            seat.chock.clone(),
            seat.lever.clone(),
            seat.dip.clone(),
            // Only the catch rests on it, and is not asked for without it.
            seat.across.clone().unwrap_or_else(|_| Doubt::exact(1.0)),
            seat.hands.clone().unwrap_or_else(|| Assumed::HandsAboveSeat.of(seat.place)),
            Assumed::SeatAboveHeels.of(seat.place),
            Doubt::exact(AGAINST_THE_CHOCK),
            one(Assumed::Layback),
            one(Assumed::Swing),
            one(Assumed::Slide),
            one(Assumed::Knee),
            one(Assumed::BackToHip),
            one(Assumed::HipToBelly),
            one(Assumed::HipAboveSeat),
        ];
        Ok(Self { figures, across })
    }

    fn values(&self, brace: Option<&Doubt>) -> [f64; FIGURES] {
        let mut values = self.figures.each_ref().map(Doubt::value);
        values[BRACE] = brace.map_or(AGAINST_THE_CHOCK, Doubt::value);
        values
    }

    fn through(
        &self,
        brace: Option<&Doubt>,
        formula: impl Fn([f64; FIGURES]) -> Result<f64, CrewError>,
    ) -> Result<Doubt, NotSeated> {
        formula(self.values(brace))?;
        let mut figures = self.figures.each_ref();
        if let Some(brace) = brace {
            figures[BRACE] = brace;
        }
        let edge = Lack::Impossible("too near the edge of what a rower can reach");
        Doubt::through(figures, |values| formula(values).ok()).ok_or(edge.into())
    }

    /// Returns the oar angle at the finish with a brace there, without its doubt, in degrees.
    pub(super) fn finish_value(&self, brace: Option<&Doubt>) -> Result<f64, CrewError> {
        finish(self.values(brace))
    }

    /// Returns the oar angle at the finish with a brace there, in degrees.
    pub(super) fn finish(&self, brace: Option<&Doubt>) -> Result<Doubt, NotSeated> {
        self.through(brace, finish)
    }

    /// Returns the oar angle at the catch with a brace there, in degrees.
    pub(super) fn catch(&self, brace: Option<&Doubt>) -> Result<Doubt, NotSeated> {
        self.across.clone()?;
        self.through(brace, |values| {
            let (bench, body, posture) = seated(values);
            crew::catch(bench, body, posture).map(Angle::as_deg)
        })
    }

    /// Returns how much farther the brace could be before the legs stop the rower, in millimetres;
    /// below nought, they do.
    pub(super) fn leg_room(&self, brace: &Doubt) -> Result<Doubt, NotSeated> {
        self.through(Some(brace), |values| {
            let (bench, body, posture) = seated(values);
            let needed = crew::brace_needed(body, posture, bench.seat_above_heels)?;
            Ok(needed.as_mm() - values[BRACE])
        })
    }

    /// Returns what stops the rower with a brace there.
    pub(super) fn stopped_by(&self, brace: Option<&Doubt>) -> Result<StoppedBy, CrewError> {
        let (bench, body, posture) = seated(self.values(brace));
        crew::stopped_by(bench, body, posture)
    }

    /// Returns the finish with another chock and another hand lever, in degrees, without its doubt.
    pub(super) fn finish_with(
        &self,
        brace: Option<&Doubt>,
        chock: f64,
        lever: f64,
    ) -> Result<f64, CrewError> {
        let mut values = self.values(brace);
        [values[CHOCK], values[LEVER]] = [chock, lever];
        finish(values)
    }
}

const CHOCK: usize = 3;
const LEVER: usize = 4;

fn finish(values: [f64; FIGURES]) -> Result<f64, CrewError> {
    let (bench, body, posture) = seated(values);
    crew::finish(bench, body, posture).map(Angle::as_deg)
}

/// Returns back chock to foot brace, hole by hole.
pub(super) fn holes(boat: &BoatSight) -> Result<Vec<(u32, Doubt)>, Lack> {
    let numbers = boat.foot_holes()?;
    numbers.into_iter().map(|number| Ok((number, of_readings(&boat.foot_hole(number)?)))).collect()
}
