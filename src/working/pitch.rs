//! The pitch of a blade: as read, corrected for level, and what the arc implies of the pin.

use super::Budget;
use super::input::Unit;
use super::lack::Lack;
use super::lack::Worked;
use super::lack::together;
use super::lack::work;
use super::oar::field_of;
use super::sight::SeatSight;
use super::tools::Tools;
use crate::geometry::arc_inverse::ArcReadings;
use crate::geometry::arc_inverse::Partials;
use crate::geometry::arc_inverse::inverse;
use crate::geometry::level::true_pitch;
use crate::geometry::reading::pitch_from_offset;
use crate::geometry::reading::slope_from_offset;
use crate::model::Placed;
use crate::model::Reading;
use crate::model::Tool;
use crate::units::Angle;
use crate::units::Length;
use crate::units::Slope;

/// How far a pin that nobody plumbed may lean against the plumb line, in degrees: by its own limit,
/// in a boat out of level by hers. Common practice, no source.
const UNPLUMBED: f64 = 2.0;

/// Where in the arc an oar stands.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Attitude {
    /// Blade forward of square.
    Catch,
    /// Square off.
    Square,
    /// Blade abaft square.
    Finish,
}

impl Attitude {
    /// Every attitude, from the catch to the finish.
    pub const ALL: [Self; 3] = [Self::Catch, Self::Square, Self::Finish];

    /// Returns the key of the attitude.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Catch => "catch",
            Self::Square => "square",
            Self::Finish => "finish",
        }
    }

    /// Returns the attitude as one would say it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Catch => "at the catch",
            Self::Square => "square off",
            Self::Finish => "at the finish",
        }
    }

    const fn reading(self) -> &'static str {
        match self {
            Self::Catch => "offset at the catch",
            Self::Square => "offset square off",
            Self::Finish => "offset at the finish",
        }
    }

    const fn laid(self) -> &'static str {
        match self {
            Self::Catch => "oar angle at the catch",
            Self::Square => "oar laid square off",
            Self::Finish => "oar angle at the finish",
        }
    }
}

/// What the pitch of one blade from catch to finish implies.
#[derive(Clone, Debug)]
pub struct ArcLean {
    /// Rowlock and oar together, in degrees.
    pub rig_pitch: Budget,
    /// Lean of the pin to the stern, in degrees.
    pub aft: Budget,
    /// Lean of the pin away from the centreline, in degrees.
    pub out: Budget,
}

impl<'b> SeatSight<'b> {
    /// Returns the reading of the pitch in one attitude.
    #[must_use]
    pub fn pitch_reading(&self, attitude: Attitude) -> Option<&'b Reading<Slope>> {
        let pitch = &self.seat.pitch;
        match attitude {
            Attitude::Catch => pitch.catch.as_ref(),
            Attitude::Square => pitch.square.as_ref(),
            Attitude::Finish => pitch.finish.as_ref(),
        }
    }

    /// Returns the pitch as read, against the plumb line, in degrees.
    pub fn pitch_as_read(&self, attitude: Attitude) -> Worked {
        let lack = || Lack::of(format!("pitch/{}", attitude.key()));
        let reading = self.pitch_reading(attitude).ok_or_else(lack)?;
        blade_pitch(self.at.tools, reading, attitude.reading(), &self.at_mark())
    }

    /// Returns the pitch square off as read, to come beside other blades, in degrees.
    ///
    /// Trim stands in every blade alike. An oar that is not laid quite square shows some of its
    /// pin's lean out as plumbed, so how square it was laid takes part, by that lean.
    pub fn pitch_beside_others(&self) -> Worked {
        let (read, laid) = (self.pitch_as_read(Attitude::Square)?, self.square_off()?);
        let out = self.plumbed(self.seat.pin.lean.out.as_ref(), "pin/lean/out", "lean out");
        let lean = out.map_or(UNPLUMBED, |lean| lean.value());
        let by = |budget: Budget, part: &crate::metrology::Part<super::Input>| {
            budget.with_input(part.half_width, lean.to_radians(), part.input)
        };
        Ok(laid.parts().iter().fold(read, by))
    }

    /// Returns the pitch corrected for the boat's level, in degrees.
    pub fn pitch(&self, attitude: Attitude) -> Worked {
        let side = self.side()?;
        let (read, laid) = (self.pitch_as_read(attitude), self.oar_angle(attitude));
        let inputs = [&read, &laid, &self.at.trim(), &self.at.roll()];
        work(inputs, |angles| {
            let [read, laid, trim, roll] = angles.map(Angle::deg);
            Some(true_pitch(read, laid, trim, roll, side).as_deg())
        })
    }

    /// Returns the oar angle at which the pitch was read: to the catch positive, in degrees.
    pub fn oar_angle(&self, attitude: Attitude) -> Worked {
        let constant = |angle: Option<Placed<Angle>>, class: Option<Placed<Angle>>| {
            let field = || Lack::of(format!("rigged/pitch-angles/{}", attitude.key()));
            let angle = angle.or(class).ok_or_else(field)?;
            let figure = Placed { value: angle.value.as_deg(), place: angle.place };
            Ok(self.at.constant(figure, Tool::OarAngle, attitude.laid(), Unit::Deg))
        };
        let day = &self.at.boat.rigged.pitch_angles;
        let class = self.at.in_force.class.map(|class| &class.oar_angle);
        match attitude {
            Attitude::Catch => constant(day.catch, class.and_then(|class| class.catch)),
            Attitude::Square => self.square_off(),
            Attitude::Finish => constant(day.finish, class.and_then(|class| class.finish))
                .map(|angle| angle.scaled(-1.0)),
        }
    }

    /// An oar is laid square off by eye: to nought, as well as oar angles are laid.
    fn square_off(&self) -> Worked {
        let reading = self.pitch_reading(Attitude::Square);
        let place = reading.ok_or_else(|| Lack::of("pitch/square"))?.place;
        let figure = Placed { value: 0.0, place };
        Ok(self.at.constant(figure, Tool::OarAngle, Attitude::Square.laid(), Unit::Deg))
    }

    /// Returns what the three readings imply of rowlock and pin, corrected for level.
    ///
    /// # Errors
    ///
    /// [`Lack`]: readings that are missing, or that no pin and rowlock could give.
    pub fn arc_lean(&self) -> Result<ArcLean, Lack> {
        let pitches = Attitude::ALL.map(|attitude| self.pitch(attitude));
        let angles = Attitude::ALL.map(|attitude| self.oar_angle(attitude));
        let (dip, own) = (self.at.dip(), self.own_pitch()?);
        let [catch, square, finish, catch_at, square_at, finish_at, dip, own] = together([
            &pitches[0],
            &pitches[1],
            &pitches[2],
            &angles[0],
            &angles[1],
            &angles[2],
            &dip,
            &own,
        ])?;
        let angle = |budget: &Budget| Angle::deg(budget.value());
        let implied = inverse(ArcReadings {
            catch: angle(catch),
            square: angle(square),
            finish: angle(finish),
            catch_at: angle(catch_at),
            finish_at: angle(finish_at),
            dip: angle(dip),
            oar_pitch: angle(own),
        })
        .map_err(|_| Lack::Impossible("no pin and rowlock give these three readings"))?;
        let budget = |value: Angle, by: Partials| {
            let inputs = [
                (catch, by.catch),
                (square, by.square),
                (finish, by.finish),
                (catch_at, by.catch_at),
                (square_at, by.square_at),
                (finish_at, by.finish_at),
                (dip, by.dip),
                (own, by.oar_pitch),
            ];
            Budget::linear(value.as_deg(), inputs)
        };
        let by = implied.sensitivities;
        Ok(ArcLean {
            rig_pitch: budget(implied.rig_pitch, by.rig_pitch),
            aft: budget(implied.lean.aft, by.aft),
            out: budget(implied.lean.out, by.out),
        })
    }

    /// Returns the blade's width edge to edge at the pitch mark.
    pub fn at_mark(&self) -> Worked {
        self.oar_sight()?.at_mark()
    }

    /// Returns whether the hands, not the rowlock, set this blade.
    #[must_use]
    pub fn hands_set_pitch(&self) -> bool {
        self.oar.is_some_and(|oar| oar.shaft.hands_set_pitch())
    }

    /// Returns the name of a field of the seat's oar, below its set.
    #[must_use]
    pub fn oar_field(&self, field: &str) -> Option<String> {
        self.oar.map(|oar| field_of(oar, field))
    }
}

/// Returns the pitch of a blade as it was read, in degrees; a bare offset is over its width at the
/// pitch mark.
pub(super) fn blade_pitch(
    tools: Tools,
    reading: &Reading<Slope>,
    what: &'static str,
    at_mark: &Worked,
) -> Worked {
    match reading.values.first() {
        Some(Slope::Angle(_)) => tools.slope_angle(reading, what),
        Some(Slope::Over { down, .. }) => work([&tools.offset(reading, what)], |[offset]| {
            slope_from_offset(Length::mm(offset), *down).ok().map(Angle::as_deg)
        }),
        _ => work([&tools.offset(reading, what), at_mark], |lengths| {
            let [offset, at_mark] = lengths.map(Length::mm);
            pitch_from_offset(offset, at_mark).ok().map(Angle::as_deg)
        }),
    }
}
