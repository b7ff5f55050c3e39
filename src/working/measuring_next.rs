//! What to measure next at a seat, by how much doubt of its pin and rowlock each measurement would
//! remove. Each is put into a copy of the record and worked out as any reading is; measures nothing.

use super::pitch::Attitude;
use super::sight::BoatSight;
use super::sight::SeatSight;
use super::telling::Doubt;
use crate::geometry::arc;
use crate::geometry::arc::Lean;
use crate::geometry::arc::Rig;
use crate::geometry::level::true_pitch;
use crate::model::Boat;
use crate::model::Placed;
use crate::model::Reading;
use crate::model::Seat;
use crate::model::Tool;
use crate::units::Angle;
use crate::units::Length;
use crate::units::Slope;

/// How wide the oar is laid, equally to both sides, where the boat allows. The lean belongs to the
/// pin, so that it need not be read at rowing angles.
const WIDE: f64 = 60.0;

/// A straight tube on the pin that nobody says the length of, and a long one, in millimetres.
/// Common practice, no source.
const TUBE: f64 = 150.0;
const LONG_TUBE: f64 = 300.0;

/// How finely a careful hand lays an oar to a chalked angle, and reads a level turned end for end
/// several times, in degrees. Common practice, no source.
const FINE_ANGLE: f64 = 1.0;
const FINE_LEVEL: f64 = 0.1;

/// Less than this part of the doubt removed is nothing won.
const WORTH_IT: f64 = 0.01;

/// One thing to measure.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Measurement {
    /// Lay the level: nothing is known before.
    LayLevel,
    /// Plumb the pin both ways.
    PlumbPin,
    /// Plumb it again over a long tube.
    PlumbLonger,
    /// Plumb it again, the offsets read with callipers.
    PlumbFiner,
    /// Read the blade at the catch, square off and at the finish.
    ReadBlade,
    /// Read the blade at equal wide angles.
    ReadBladeWide,
    /// Read the blade again with callipers.
    ReadBladeFiner,
    /// Lay the oar to its angles more finely.
    LayOarFiner,
    /// Read the level more finely.
    ReadLevelFiner,
}

/// A measurement and what would be known with it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Next {
    /// What to measure.
    pub what: Measurement,
    /// How well all would be known then.
    pub then: Doubt,
}

impl Measurement {
    const ALL: [Self; 9] = [
        Self::LayLevel,
        Self::PlumbPin,
        Self::PlumbLonger,
        Self::PlumbFiner,
        Self::ReadBlade,
        Self::ReadBladeWide,
        Self::ReadBladeFiner,
        Self::LayOarFiner,
        Self::ReadLevelFiner,
    ];

    /// Returns what programs call it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::LayLevel => "lay-level",
            Self::PlumbPin => "plumb-pin",
            Self::PlumbLonger => "plumb-over-longer-tube",
            Self::PlumbFiner => "plumb-with-callipers",
            Self::ReadBlade => "read-blade",
            Self::ReadBladeWide => "read-blade-at-equal-wide-angles",
            Self::ReadBladeFiner => "read-blade-with-callipers",
            Self::LayOarFiner => "lay-oar-finer",
            Self::ReadLevelFiner => "read-level-finer",
        }
    }

    /// Returns what to do, in words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::LayLevel => "lay the level and write trim and roll",
            Self::PlumbPin => "plumb the pin both ways",
            Self::PlumbLonger => "plumb the pin over a straight tube of 300 mm",
            Self::PlumbFiner => "plumb the pin, the offsets read with callipers",
            Self::ReadBlade => "read the blade at the catch, square off and at the finish",
            Self::ReadBladeWide => {
                "read the blade at 60 deg to both sides, or as wide as the boat allows"
            }
            Self::ReadBladeFiner => "read the blade with callipers",
            Self::LayOarFiner => "lay the oar to chalked angles, to ± 1 deg",
            Self::ReadLevelFiner => "read the level to ± 0.1 deg",
        }
    }
}

impl SeatSight<'_> {
    /// Returns every measurement that would remove doubt, each by itself: the one that removes most
    /// comes first.
    #[must_use]
    pub fn measure_next(&self) -> Vec<Next> {
        let now = self.doubt();
        let tried = Measurement::ALL.into_iter().filter_map(|what| {
            let then = self.with(what)?;
            Some(Next { what, then })
        });
        let wins = |next: &Next| {
            let (before, after) = (now.unknown(), next.then.unknown());
            after < before
                || (after == before && next.then.total() < now.total() * (1.0 - WORTH_IT))
        };
        let mut all: Vec<Next> = tried.filter(wins).collect();
        let key = |next: &Next| (next.then.unknown(), next.then.total());
        all.sort_by(|one, other| {
            let ((one_unknown, one), (other_unknown, other)) = (key(one), key(other));
            one_unknown.cmp(&other_unknown).then(one.total_cmp(&other))
        });
        all
    }

    /// Returns how well all would be known with one more measurement; none where it is taken
    /// already, or makes no sense here.
    fn with(&self, what: Measurement) -> Option<Doubt> {
        let at = self.at.boat.seats.iter().position(|seat| std::ptr::eq(seat, self.seat))?;
        let mut boat = self.at.boat.clone();
        self.put(what, &mut boat, at)?;
        let mut seats = BoatSight::new(self.at.book, &boat).seats();
        seats.nth(at).map(|seat| seat.doubt())
    }

    fn put(&self, what: Measurement, boat: &mut Boat, at: usize) -> Option<()> {
        let lean = &self.seat.pin.lean;
        let plumbed = lean.aft.is_some() && lean.out.is_some();
        let rowlock_sets = !self.hands_set_pitch();
        let read = Attitude::ALL.iter().all(|attitude| self.pitch_reading(*attitude).is_some());
        let asked = match what {
            Measurement::LayLevel => {
                self.at.boat.rigged.trim.is_none() || self.at.boat.rigged.roll.is_none()
            }
            Measurement::PlumbPin => !plumbed,
            Measurement::PlumbLonger => plumbed && self.tube()? < LONG_TUBE,
            Measurement::PlumbFiner => plumbed,
            Measurement::ReadBlade => rowlock_sets && !read,
            Measurement::ReadBladeWide => rowlock_sets && read && !self.reads_wide(),
            Measurement::ReadBladeFiner | Measurement::LayOarFiner => rowlock_sets && read,
            Measurement::ReadLevelFiner => true,
        };
        if !asked {
            return None;
        }
        let seat = boat.seats.get_mut(at)?;
        match what {
            Measurement::LayLevel => {
                let level = self.reading(Angle::deg(0.0), Tool::Level);
                boat.rigged.trim.get_or_insert_with(|| level.clone());
                boat.rigged.roll.get_or_insert(level);
            }
            Measurement::PlumbPin => self.plumb(seat, self.tube().unwrap_or(TUBE), None),
            Measurement::PlumbLonger => self.plumb(seat, LONG_TUBE, None),
            Measurement::PlumbFiner => {
                let to = self.finer(Tool::Callipers, Tool::Rule)?;
                self.plumb(seat, self.tube()?, Some(to));
            }
            Measurement::ReadBlade | Measurement::ReadBladeWide => {
                self.read_blade(boat, at, what == Measurement::ReadBladeWide)?;
            }
            Measurement::ReadBladeFiner => {
                let to = self.finer(Tool::Callipers, Tool::Rule)?;
                let pitch = &mut seat.pitch;
                for reading in [&mut pitch.catch, &mut pitch.square, &mut pitch.finish] {
                    read_to(reading.as_mut()?, to)?;
                }
            }
            Measurement::LayOarFiner => self.fine(boat, Tool::OarAngle, FINE_ANGLE)?,
            Measurement::ReadLevelFiner => self.fine(boat, Tool::Level, FINE_LEVEL)?,
        }
        Some(())
    }

    fn reading<T>(&self, value: T, tool: Tool) -> Reading<T> {
        Reading { values: vec![value], to: None, tool, place: self.seat.place }
    }

    /// Over what length the pin is plumbed; none where it was read as an angle, or nobody says.
    fn tube(&self) -> Option<f64> {
        let read = self.seat.pin.lean.aft.as_ref().or(self.seat.pin.lean.out.as_ref());
        match read.and_then(|read| read.values.first()) {
            Some(Slope::Over { down, .. }) => Some(down.as_mm()),
            Some(Slope::Angle(_)) => None,
            _ => self.at.boat.rigged.pin_gauge.map(|gauge| gauge.value.as_mm()),
        }
    }

    /// Puts the pin plumbed anew over a tube. What was read stays what it is.
    fn plumb(&self, seat: &mut Seat, tube: f64, to: Option<f64>) {
        let anew = |lean: &Option<Reading<Slope>>| {
            let offset = lean.as_ref().map_or(0.0, |read| self.leans(read) * tube);
            let down = Length::mm(tube);
            let slope = Slope::Over { offset: Length::mm(offset), down };
            let read = self.reading(slope, Tool::Rule);
            Reading { to: to.map(|to| Slope::Offset(Length::mm(to))), ..read }
        };
        seat.pin.lean.aft = Some(anew(&seat.pin.lean.aft));
        seat.pin.lean.out = Some(anew(&seat.pin.lean.out));
    }

    /// How much a pin leans for each millimetre up, as read.
    fn leans(&self, read: &Reading<Slope>) -> f64 {
        let of = |slope: &Slope| match slope {
            Slope::Over { offset, down } => offset.as_mm() / down.as_mm(),
            Slope::Angle(angle) => angle.tan(),
            Slope::Offset(offset) => offset.as_mm() / self.tube().unwrap_or(TUBE),
        };
        let sum: f64 = read.values.iter().map(of).sum();
        sum / read.values.len().max(1) as f64
    }

    fn reads_wide(&self) -> bool {
        let wide = |attitude| {
            self.oar_angle(attitude).is_ok_and(|angle| angle.value().abs() >= WIDE - 1.0)
        };
        wide(Attitude::Catch) && wide(Attitude::Finish)
    }

    /// Puts the blade read at the oar angles of the day, or at wide ones: what it would show on the
    /// rig as it is known now.
    fn read_blade(&self, boat: &mut Boat, at: usize, wide: bool) -> Option<()> {
        if wide {
            let angle = Placed { value: Angle::deg(WIDE), place: self.seat.place };
            boat.rigged.pitch_angles.catch = Some(angle);
            boat.rigged.pitch_angles.finish = Some(angle);
        }
        let angles = |attitude: Attitude| match (attitude, wide) {
            (Attitude::Square, _) => Some(0.0),
            (Attitude::Catch, true) => Some(WIDE),
            (Attitude::Finish, true) => Some(-WIDE),
            (_, false) => self.oar_angle(attitude).ok().map(|angle| angle.value()),
        };
        let shown = |attitude| self.shown(Angle::deg(angles(attitude)?));
        let [catch, square, finish] = Attitude::ALL.map(shown);
        let pitch = &mut boat.seats.get_mut(at)?.pitch;
        let put = |reading: &mut Option<Reading<Slope>>, slope: Option<Slope>| {
            if wide || reading.is_none() {
                *reading = Some(self.reading(slope?, Tool::Rule));
            }
            Some(())
        };
        put(&mut pitch.catch, catch)?;
        put(&mut pitch.square, square)?;
        put(&mut pitch.finish, finish)
    }

    /// What the bob would show of the blade at an oar angle.
    fn shown(&self, theta: Angle) -> Option<Slope> {
        let angle = |worked: super::Worked| worked.map_or(0.0, |budget| budget.value());
        let rig = match self.arc_lean() {
            Ok(arc) => [arc.rig_pitch.value(), arc.aft.value(), arc.out.value()],
            Err(_) => [angle(self.pitch(Attitude::Square)), 0.0, 0.0],
        };
        let [rowlock_pitch, aft, out] = rig.map(Angle::deg);
        let rig = Rig { rowlock_pitch, oar_pitch: Angle::deg(0.0), lean: Lean { aft, out } };
        let pitch = arc::pitch(rig, theta, Angle::deg(angle(self.at.dip())));
        let (trim, roll) = (angle(self.at.trim()), angle(self.at.roll()));
        let (side, level) = (self.side().ok()?, Angle::deg(0.0));
        // What the correction takes away is what the bob shows besides.
        let [trim, roll] = [trim, roll].map(Angle::deg);
        let besides = true_pitch(level, theta, trim, roll, side).as_deg();
        let shown = Angle::deg(pitch.as_deg() - besides);
        let read = self.pitch_reading(Attitude::Square).and_then(|read| read.values.first());
        if let Some(Slope::Over { down, .. }) = read {
            return Some(Slope::Over {
                offset: Length::mm(down.as_mm() * shown.tan()),
                down: *down,
            });
        }
        let width = self.at_mark().ok()?.value();
        Some(Slope::Offset(Length::mm(width * shown.sin())))
    }

    /// Returns how finely one tool reads, where that is finer than the other.
    fn finer(&self, tool: Tool, than: Tool) -> Option<f64> {
        let half_width = |tool| self.at.tools.half_width(tool);
        (half_width(tool) < half_width(than)).then(|| half_width(tool))
    }

    /// Puts a tool that reads finer than the day's.
    fn fine(&self, boat: &mut Boat, tool: Tool, to: f64) -> Option<()> {
        let finer = to < self.at.tools.half_width(tool);
        let stated = Placed { value: to, place: self.seat.place };
        finer.then(|| boat.rigged.half_widths.0.insert(0, (tool, stated)))
    }
}

/// Has an offset read more finely; an angle, by a level, is not.
fn read_to(reading: &mut Reading<Slope>, to: f64) -> Option<()> {
    let is_offset = !matches!(reading.values.first(), Some(Slope::Angle(_)) | None);
    is_offset.then(|| reading.to = Some(Slope::Offset(Length::mm(to))))
}
