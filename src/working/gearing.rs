//! Gearing of a seat: outboard over inboard, and by the levers.

use super::lack::Lack;
use super::lack::Worked;
use super::lack::work;
use super::sight::SeatSight;
use crate::geometry::gearing;
use crate::model::Place;
use crate::units::Length;

impl SeatSight<'_> {
    /// Returns the length of the seat's oar.
    pub fn oar_length(&self) -> Worked {
        self.oar_sight()?.length()
    }

    /// Returns the inboard of the seat's oar.
    pub fn inboard(&self) -> Worked {
        self.oar_sight()?.inboard()
    }

    /// Returns collar's bearing face to the pin's axis, in millimetres, and where it is written.
    pub(super) fn collar_to_pin(&self) -> Result<(f64, Place), Lack> {
        let own = self.seat.collar_to_pin;
        let class = || self.at.in_force.class.and_then(|class| class.collar_to_pin);
        let collar = own.or_else(class).ok_or_else(|| Lack::of("collar-to-pin"))?;
        Ok((collar.value.as_mm(), collar.place))
    }

    /// Returns outboard over inboard.
    pub fn gearing(&self) -> Worked {
        work([&self.oar_length(), &self.inboard()], |lengths| {
            let [length, inboard] = lengths.map(Length::mm);
            gearing::gearing(length, inboard).ok()
        })
    }

    /// Returns the hand lever, pin to the middle of the hands, in millimetres.
    pub fn hand_lever(&self) -> Worked {
        let (collar, _) = self.collar_to_pin()?;
        let grip = self.of_oar(|oar| oar.grip.as_ref(), "grip", "middle of the hands");
        work([&self.inboard(), &grip], |[inboard, grip]| Some(inboard + collar - grip))
    }

    /// Returns the hand lever and the blade lever, pin to the middle of the hands and pin to the
    /// middle of the blade, in millimetres.
    pub(super) fn levers(&self) -> Result<(Worked, Worked), Lack> {
        let (collar, _) = self.collar_to_pin()?;
        let blade =
            self.of_oar(|oar| oar.blade.length.as_ref(), "blade/length", "length of the blade");
        let hand = self.hand_lever();
        let lengths = [&self.oar_length(), &self.inboard(), &blade];
        let blade =
            work(lengths, |[oar, inboard, blade]| Some(oar - inboard - collar - blade / 2.0));
        Ok((hand, blade))
    }

    /// Returns the blade lever over the hand lever.
    pub fn gearing_levers(&self) -> Worked {
        let (hand, blade) = self.levers()?;
        work([&blade, &hand], |[blade, hand]| (hand > 0.0 && blade > 0.0).then(|| blade / hand))
    }
}
