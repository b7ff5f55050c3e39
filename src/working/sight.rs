//! A boat and a seat of hers as the sums see them: the record, the oar, and what is in force.

use super::Budget;
use super::in_force::InForce;
use super::input::Input;
use super::input::Unit;
use super::lack::Lack;
use super::lack::Worked;
use super::tools::Tools;
use crate::geometry::Side;
use crate::model::Boat;
use crate::model::Book;
use crate::model::Name;
use crate::model::Oar;
use crate::model::OarSet;
use crate::model::Place;
use crate::model::Placed;
use crate::model::Reading;
use crate::model::Seat;
use crate::model::Tool;
use crate::units::Length;

/// A boat with what is in force for her.
#[derive(Clone, Copy)]
pub struct BoatSight<'b> {
    /// The book.
    pub book: &'b Book,
    /// The boat.
    pub boat: &'b Boat,
    /// The oar set she carries, where there is one.
    pub oars: Option<&'b OarSet>,
    /// What is in force.
    pub in_force: InForce<'b>,
    /// How finely the tools of her day read.
    pub tools: Tools<'b>,
}

/// A seat with its oar.
#[derive(Clone, Copy)]
pub struct SeatSight<'b> {
    /// The boat.
    pub at: BoatSight<'b>,
    /// The seat.
    pub seat: &'b Seat,
    /// The oar, where there is one.
    pub oar: Option<&'b Oar>,
}

impl<'b> BoatSight<'b> {
    /// Returns what an oar that was not found is missing as: where the boat's whole set may stand in
    /// a text that can't be had here, that text.
    pub(super) fn missing_oar(&self) -> String {
        let unread = self.book.unread.first().filter(|_| self.oars.is_none());
        unread.map_or_else(|| "oar".to_owned(), |path| format!("the text of {path}"))
    }

    /// Looks at a boat.
    #[must_use]
    pub fn new(book: &'b Book, boat: &'b Boat) -> Self {
        let in_force = InForce::new(book, boat);
        let (oars, tools) = (book.oars_of(boat), in_force.tools());
        Self { book, boat, oars, in_force, tools }
    }

    /// Returns her seats, as written.
    pub fn seats(&self) -> impl Iterator<Item = SeatSight<'b>> + use<'b> {
        let at = *self;
        let oar = move |seat: &Seat| at.book.oar(at.boat, seat.oar.as_ref()?);
        at.boat.seats.iter().map(move |seat| SeatSight { at, seat, oar: oar(seat) })
    }

    /// Returns trim as read; bow up is positive.
    pub fn trim(&self) -> Worked {
        let field = "rigged/level/trim";
        self.tools.angle(self.boat.rigged.trim.as_ref(), field, "trim of the boat")
    }

    /// Returns roll as read; port side down is positive.
    pub fn roll(&self) -> Worked {
        let field = "rigged/level/roll";
        self.tools.angle(self.boat.rigged.roll.as_ref(), field, "roll of the boat")
    }

    /// Returns the dip of her oars.
    pub fn dip(&self) -> Worked {
        let dip = self.in_force.dip().ok_or_else(|| Lack::of("oar-angle/dip of the class"))?;
        Ok(self.constant(dip, Tool::Dip, "dip of the oar", Unit::Deg))
    }

    /// A length that was read on the boat's day.
    pub(super) fn length(
        &self,
        reading: Option<&Reading<Length>>,
        field: &str,
        what: &'static str,
    ) -> Worked {
        self.tools.length(reading, field, what)
    }

    /// A length that is taken as it stands: it takes part in a sum and adds no doubt to it.
    pub(super) fn as_it_stands(&self, value: f64, place: Place, what: &'static str) -> Budget {
        Budget::reading(value, 0.0, Input { place, what, tool: Tool::Tape, value, unit: Unit::Mm })
    }

    /// A figure of the class or of the day that is only known as well as its tool reads.
    pub(super) fn constant(
        &self,
        figure: Placed<f64>,
        tool: Tool,
        what: &'static str,
        unit: Unit,
    ) -> Budget {
        let Placed { value, place } = figure;
        let half_width = self.tools.half_width(tool);
        Budget::reading(value, half_width, Input { place, what, tool, value, unit })
    }
}

impl<'b> SeatSight<'b> {
    /// Returns the name of the seat.
    #[must_use]
    pub fn name(&self) -> Name {
        let record = self.at.boat.record();
        match self.seat.number {
            Some(number) => record.seat(number.value),
            None => record.at("seats"),
        }
    }

    /// Returns how a person would call the seat.
    #[must_use]
    pub fn called(&self) -> String {
        let boat = self.at.boat.called();
        match self.seat.number {
            Some(number) => format!("{boat}, seat {}", number.value),
            None => format!("{boat}, a seat without a number"),
        }
    }

    /// Returns how a person aboard would call the seat.
    #[must_use]
    pub fn short(&self) -> String {
        match self.seat.number {
            Some(number) => format!("seat {}", number.value),
            None => "the seat without a number".to_owned(),
        }
    }

    /// Returns the name of one of the seat's fields below the boat's own name.
    #[must_use]
    pub fn below_boat(&self, field: &str) -> String {
        match self.seat.number {
            Some(number) => format!("seat-{}/{field}", number.value),
            None => format!("seats/{field}"),
        }
    }

    /// Returns the side of the oar.
    pub(super) fn side(&self) -> Result<Side, Lack> {
        self.seat.side.map(|side| side.value).ok_or_else(|| Lack::of("side"))
    }

    /// A length of the seat.
    pub(super) fn length(
        &self,
        reading: Option<&Reading<Length>>,
        field: &str,
        what: &'static str,
    ) -> Worked {
        self.at.length(reading, field, what)
    }

    /// A length of the seat's oar.
    pub(super) fn of_oar(
        &self,
        pick: impl Fn(&'b Oar) -> Option<&'b Reading<Length>>,
        field: &str,
        what: &'static str,
    ) -> Worked {
        let sight = self.oar_sight()?;
        sight.read(pick(sight.oar), field, what)
    }
}
