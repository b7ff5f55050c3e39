//! How finely each tool reads, and with that the budget of any reading. Knows no boat.

use super::Budget;
use super::input::Input;
use super::input::Unit;
use super::lack::Lack;
use super::lack::Worked;
use crate::metrology::half_width::of_readings;
use crate::model::Boat;
use crate::model::Book;
use crate::model::HalfWidths;
use crate::model::Place;
use crate::model::Placed;
use crate::model::Reading;
use crate::model::Tool;
use crate::units::Angle;
use crate::units::Length;
use crate::units::Slope;
use crate::units::Weight;

/// How finely a tool reads, as one layer says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fineness {
    /// The half-width, in millimetres, degrees or kilograms.
    pub half_width: f64,
    /// Where it is written; nowhere, where it is the usual one.
    pub place: Option<Place>,
}

/// How finely tools read: as a boat's rigging day says, else as the club does, else as a careful
/// hand reads.
#[derive(Clone, Copy, Debug)]
pub struct Tools<'b> {
    day: Option<&'b HalfWidths>,
    club: &'b HalfWidths,
}

impl<'b> Tools<'b> {
    /// Returns the club's tools: what oars and crews are measured with.
    #[must_use]
    pub fn of_club(book: &'b Book) -> Self {
        Self { day: None, club: &book.club.half_widths }
    }

    /// Returns the tools of a boat's rigging day.
    #[must_use]
    pub fn of_day(book: &'b Book, boat: &'b Boat) -> Self {
        Self { day: Some(&boat.rigged.half_widths), ..Self::of_club(book) }
    }

    /// Returns how finely a tool reads, in millimetres, degrees or kilograms.
    #[must_use]
    pub fn half_width(self, tool: Tool) -> f64 {
        self.stated(tool).next().map_or_else(|| usual(tool), |stated| stated.value)
    }

    /// Returns who says how finely a tool reads, in the order of say; what is usual comes last.
    pub fn said(self, tool: Tool) -> impl Iterator<Item = Fineness> {
        let place = |stated: Placed<f64>| (stated.value, Some(stated.place));
        let stated = self.stated(tool).map(place);
        let all = stated.chain(std::iter::once((usual(tool), None)));
        all.map(|(half_width, place)| Fineness { half_width, place })
    }

    /// Where the day or the club states how finely a tool reads; the day comes first.
    fn stated(self, tool: Tool) -> impl Iterator<Item = Placed<f64>> {
        let day = self.day.and_then(|day| day.of(tool));
        day.into_iter().chain(self.club.of(tool))
    }

    /// A length that was read.
    pub(super) fn length(
        self,
        reading: Option<&Reading<Length>>,
        field: &str,
        what: &'static str,
    ) -> Worked {
        let reading = reading.ok_or_else(|| Lack::of(field))?;
        self.taken(reading, |length| Some(length.as_mm()), what, Unit::Mm)
    }

    /// An angle that was read.
    pub(super) fn angle(
        self,
        reading: Option<&Reading<Angle>>,
        field: &str,
        what: &'static str,
    ) -> Worked {
        let reading = reading.ok_or_else(|| Lack::of(field))?;
        self.taken(reading, |angle| Some(angle.as_deg()), what, Unit::Deg)
    }

    /// A weight that was read.
    pub(super) fn weight(
        self,
        reading: Option<&Reading<Weight>>,
        field: &str,
        what: &'static str,
    ) -> Worked {
        let reading = reading.ok_or_else(|| Lack::of(field))?;
        self.taken(reading, |weight| Some(weight.as_kg()), what, Unit::Kg)
    }

    /// A slope read as an offset, in millimetres.
    pub(super) fn offset(self, reading: &Reading<Slope>, what: &'static str) -> Worked {
        let offset = |slope: &Slope| match slope {
            Slope::Offset(offset) | Slope::Over { offset, .. } => Some(offset.as_mm()),
            Slope::Angle(_) => None,
        };
        self.taken(reading, offset, what, Unit::Mm)
    }

    /// A slope read as an angle, in degrees: a level that shows angles was used.
    pub(super) fn slope_angle(self, reading: &Reading<Slope>, what: &'static str) -> Worked {
        let angle = |slope: &Slope| match slope {
            Slope::Angle(angle) => Some(angle.as_deg()),
            _ => None,
        };
        let with_level = Reading { tool: Tool::Level, ..reading.clone() };
        self.taken(&with_level, angle, what, Unit::Deg)
    }

    /// A reading, taken once or several times with one tool.
    fn taken<T>(
        self,
        reading: &Reading<T>,
        figure: impl Fn(&T) -> Option<f64>,
        what: &'static str,
        unit: Unit,
    ) -> Worked {
        let Reading { values, to, tool, place } = reading;
        let finest = to.as_ref().and_then(&figure).unwrap_or_else(|| self.half_width(*tool));
        // Most are taken once: those need no list.
        let found = match values.as_slice() {
            [once] => figure(once).and_then(|value| of_readings(&[value], finest)),
            several => {
                let values: Vec<f64> = several.iter().filter_map(&figure).collect();
                of_readings(&values, finest)
            }
        };
        let (value, half_width) = found.ok_or_else(|| Lack::of(what))?;
        let input = Input { place: *place, what, tool: *tool, value, unit };
        Ok(Budget::reading(value, half_width, input))
    }
}

/// How finely a tool reads where nobody says, in millimetres, degrees or kilograms.
///
/// # Source
///
/// Common practice, no source: what a careful hand reads on a beach.
fn usual(tool: Tool) -> f64 {
    match tool {
        Tool::Callipers | Tool::Level => 0.2,
        Tool::Rule => 0.5,
        Tool::Bob => 1.0,
        Tool::Tape | Tool::Dip => 2.0,
        Tool::OarAngle => 3.0,
        Tool::Scales => 0.5,
    }
}
