//! One value as it stands in one state of a book. Knows no other state.

use super::grouping::Group;
use super::measured::LastMeasured;
use crate::model::Name;
use crate::model::Place;
use crate::model::Quantity;
use crate::model::Said;
use crate::model::Written;
use crate::units::Slope;

/// One value. A list of readings or of words is one value that says several things.
#[derive(Clone, Debug)]
pub struct Value<'b> {
    /// Its name.
    pub name: Name,
    /// What it says, in the order of the list.
    pub said: Vec<Said>,
    /// Where each stands.
    pub places: Vec<Place>,
    /// Each as it is written, without quotes where it is a text.
    pub texts: Vec<&'b str>,
    /// The seat, oar or part of a list that it belongs to.
    pub group: Group,
    /// When it was last measured, and by whom; none where it is nothing measured.
    pub measured: Option<LastMeasured>,
}

impl<'b> Value<'b> {
    /// Begins a value with what is written first.
    pub(super) fn new(written: &Written, text: &'b str, group: Group) -> Self {
        Self {
            name: written.name.clone(),
            said: vec![written.said.clone()],
            places: vec![written.place],
            texts: vec![text],
            group,
            measured: None,
        }
    }

    /// Adds the next of the list.
    pub(super) fn add(&mut self, written: &Written, text: &'b str) {
        self.said.push(written.said.clone());
        self.places.push(written.place);
        self.texts.push(text);
    }

    /// Returns the place to jump to: that of the first.
    ///
    /// # Panics
    ///
    /// Never: a value stands at least once.
    #[must_use]
    pub fn place(&self) -> Place {
        self.places[0]
    }

    /// Returns it as it is written; a list with commas between.
    #[must_use]
    pub fn text(&self) -> String {
        self.texts.iter().map(|text| bare(text)).collect::<Vec<_>>().join(", ")
    }

    /// Returns whether any of it could not be read.
    #[must_use]
    pub fn is_unread(&self) -> bool {
        self.said.contains(&Said::Unread)
    }

    /// Returns whether it is a text, a word, an id or a day.
    #[must_use]
    pub fn is_text(&self) -> bool {
        self.said.iter().all(|said| matches!(said, Said::Text(_)))
    }

    /// Returns the mean of its figures with their unit; none of texts, of what can't be read, and
    /// of slopes that are written in different ways.
    #[must_use]
    pub fn figure(&self) -> Option<(f64, &'static str)> {
        let each: Vec<(f64, Measure)> = self.said.iter().map(figure_of).collect::<Option<_>>()?;
        let (_, measure) = *each.first()?;
        let alike = each.iter().all(|(_, own)| *own == measure);
        let mean = each.iter().map(|(value, _)| value).sum::<f64>() / each.len() as f64;
        alike.then(|| (decimal(mean), measure.unit()))
    }

    /// Returns whether the mean of another value may be taken from that of this one.
    #[must_use]
    pub fn is_comparable(&self, other: &Self) -> bool {
        let measure = |value: &Self| value.said.first().and_then(figure_of).map(|(_, own)| own);
        let own = measure(self);
        own.is_some() && own == measure(other)
    }
}

/// Returns a figure without what binary adds to sums of decimals, which is no measurement.
pub(super) fn decimal(figure: f64) -> f64 {
    (figure * 1e9).round() / 1e9
}

/// Returns whether the number of a value tells which one and not how much, as that of a seat does.
#[must_use]
pub fn tells_which(name: &Name) -> bool {
    let last = name.as_str().rsplit('/').next().unwrap_or_default();
    ["seat", "foot-hole"].contains(&last)
}

/// What a figure is a figure of, and what it was taken over.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Measure {
    Of(Quantity),
    Offset,
    OffsetOver(f64),
    Slope,
}

impl Measure {
    const fn unit(self) -> &'static str {
        match self {
            Self::Of(quantity) => quantity.unit(),
            Self::Offset | Self::OffsetOver(_) => "mm",
            Self::Slope => "deg",
        }
    }
}

fn figure_of(said: &Said) -> Option<(f64, Measure)> {
    match said {
        Said::Figure { value, of } => Some((*value, Measure::Of(*of))),
        Said::Slope(Slope::Offset(offset)) => Some((offset.as_mm(), Measure::Offset)),
        Said::Slope(Slope::Over { offset, down }) => {
            Some((offset.as_mm(), Measure::OffsetOver(down.as_mm())))
        }
        Said::Slope(Slope::Angle(angle)) => Some((angle.as_deg(), Measure::Slope)),
        Said::Unread | Said::Text(_) => None,
    }
}

/// Returns a written text without the quotes around it.
pub(super) fn bare(text: &str) -> &str {
    let text = text.trim();
    let quoted = |mark: char| text.strip_prefix(mark)?.strip_suffix(mark);
    quoted('"').or_else(|| quoted('\'')).unwrap_or(text).trim()
}
