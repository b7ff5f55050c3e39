//! An oar as the sums see it: each of its readings with its budget, in no boat's hands.

use super::Budget;
use super::lack::Lack;
use super::lack::Worked;
use super::lack::work;
use super::pitch::blade_pitch;
use super::sight::SeatSight;
use super::tools::Tools;
use crate::model::Oar;
use crate::model::Reading;
use crate::units::Length;

/// An oar with the tools it was measured with.
#[derive(Clone, Copy)]
pub struct OarSight<'b> {
    /// The tools.
    pub tools: Tools<'b>,
    /// The oar.
    pub oar: &'b Oar,
}

impl<'b> OarSight<'b> {
    /// Returns the length of the oar.
    pub fn length(&self) -> Worked {
        self.read(self.oar.length.as_ref(), "length", "length of the oar")
    }

    /// Returns the inboard of the oar.
    pub fn inboard(&self) -> Worked {
        self.read(self.oar.inboard.as_ref(), "inboard", "inboard of the oar")
    }

    /// Returns the widest section of the shaft.
    pub fn widest(&self) -> Worked {
        self.read(self.oar.shaft.widest(), "shaft/widest", "widest part of the shaft")
    }

    /// Returns the narrowest section of the shaft.
    pub fn narrowest(&self) -> Worked {
        self.read(self.oar.shaft.narrowest(), "shaft/narrowest", "narrowest part of the shaft")
    }

    /// Returns how far the oar dropped under its weight.
    pub fn drop(&self) -> Worked {
        self.read(self.oar.flex.drop.as_ref(), "flex/drop", "drop of the oar")
    }

    /// Returns the blade's width edge to edge at the pitch mark.
    pub fn at_mark(&self) -> Worked {
        self.read(self.oar.blade.at_mark.as_ref(), "blade/at-mark", "width at the pitch mark")
    }

    /// Returns the oar's own pitch, blade against its flat, in degrees.
    pub fn own_pitch(&self) -> Worked {
        let pitch = self.oar.pitch.as_ref();
        let reading = pitch.ok_or_else(|| Lack::of(field_of(self.oar, "pitch")))?;
        blade_pitch(self.tools, reading, "the oar's own pitch", &self.at_mark())
    }

    /// Returns how far the oar would drop under another load at another reach, in millimetres.
    ///
    /// ```text
    ///  collar held
    ///  ====#-------------------------.
    ///      |<---------- at --------->|`.  drop
    ///                               load
    /// ```
    ///
    /// # Formula
    ///
    /// `drop (load0 / load) (at0 / at)^3`: a beam held at one end, its stiffness taken as the same
    /// all along.
    ///
    /// # Source
    ///
    /// Euler-Bernoulli beam: the end of a cantilever drops by `W l^3 / (3 E I)`; textbook, from
    /// memory.
    pub fn drop_under(&self, load0: f64, at0: f64) -> Worked {
        let flex = &self.oar.flex;
        let drop = self.drop();
        let at = self.read(flex.at.as_ref(), "flex/at", "reach of the weight");
        let field = field_of(self.oar, "flex/load-kg");
        let load = self.tools.weight(flex.load.as_ref(), &field, "weight hung on the oar");
        work([&drop, &load, &at], |[drop, load, at]| {
            (load > 0.0 && at > 0.0).then(|| drop * load0 / load * (at0 / at).powi(3))
        })
    }

    /// A length of the oar.
    pub(super) fn read(
        &self,
        reading: Option<&Reading<Length>>,
        field: &str,
        what: &'static str,
    ) -> Worked {
        let reading = reading.ok_or_else(|| Lack::of(field_of(self.oar, field)))?;
        self.tools.length(Some(reading), field, what)
    }
}

impl<'b> SeatSight<'b> {
    /// Returns the seat's oar, measured with the tools of the boat's day.
    ///
    /// # Errors
    ///
    /// [`Lack`]: there is no such oar.
    pub fn oar_sight(&self) -> Result<OarSight<'b>, Lack> {
        let oar = self.oar.ok_or_else(|| Lack::of(self.at.missing_oar()))?;
        Ok(OarSight { tools: self.at.tools, oar })
    }

    /// Returns the oar's own pitch; an oar that was not measured is taken to have none, for
    /// rowlock and oar differ only at third order.
    pub(super) fn own_pitch(&self) -> Result<Worked, Lack> {
        let sight = self.oar_sight()?;
        let read = sight.oar.pitch.as_ref().map(|_| sight.own_pitch());
        Ok(read.unwrap_or_else(|| Ok(Budget::exact(0.0))))
    }
}

/// Returns the name of a field of an oar, below its set.
pub(super) fn field_of(oar: &Oar, field: &str) -> String {
    let id = oar.id.as_ref().map_or("oar", |id| &id.value);
    format!("{id}/{field}")
}
