//! What a single value may be: how its text is read, and what it can't be.

use super::fault::What;
use super::form::Bounds;
use super::nearest::nearest;
use crate::model::Quantity;
use crate::model::Said;
use crate::model::Word;
use crate::units::Angle;
use crate::units::Date;
use crate::units::Figure;
use crate::units::Length;
use crate::units::Ratio;
use crate::units::Slope;
use crate::units::Weight;

/// What a single value is.
#[derive(Clone, Debug, PartialEq)]
pub enum ValueKind {
    /// A length in millimetres, or with its unit.
    Length,
    /// An angle in degrees.
    Angle,
    /// A slope.
    Slope,
    /// A weight in kilograms.
    Weight,
    /// A number without a unit.
    Ratio,
    /// A whole number.
    Count,
    /// A day.
    Date,
    /// An id.
    Id,
    /// A text.
    Text,
    /// `true` or `false`.
    Flag,
    /// One of a few words.
    Word(Vec<&'static str>),
}

/// A value that stands as one text.
pub(super) trait Value: Sized {
    /// The least and the most it can be, in its own unit.
    const BOUNDS: Bounds = Bounds { least: None, most: None };

    /// Returns what it is.
    fn kind() -> ValueKind;

    /// Reads the text.
    fn read(text: &str) -> Result<Self, What>;

    /// Returns the figure that the bounds hold for.
    fn figure(&self) -> Option<f64> {
        None
    }

    /// Returns what it says, however it was written; of a word, that is the word.
    fn said(&self, text: &str) -> Said {
        let of = match Self::kind() {
            ValueKind::Length => Quantity::Length,
            ValueKind::Angle => Quantity::Angle,
            ValueKind::Weight => Quantity::Weight,
            ValueKind::Ratio => Quantity::Ratio,
            ValueKind::Count => Quantity::Count,
            _ => return Said::Text(text.into()),
        };
        self.figure().map_or(Said::Unread, |value| Said::Figure { value, of })
    }
}

const fn within(least: f64, most: f64) -> Bounds {
    Bounds { least: Some(least), most: Some(most) }
}

/// A value that is read at the boat and may be read several times.
pub(super) trait Readable: Value {
    /// Returns whether two readings of one list are written alike.
    fn alike(&self, _other: &Self) -> bool {
        true
    }

    /// Returns whether `to` can say how finely this was read.
    fn is_read_to(&self, _to: &Self) -> bool {
        true
    }

    /// Returns its number, in the unit of a bare one or, of an angle, in degrees.
    fn size(&self) -> f64;
}

impl Value for Length {
    const BOUNDS: Bounds = within(-100_000.0, 100_000.0);

    fn kind() -> ValueKind {
        ValueKind::Length
    }

    fn read(text: &str) -> Result<Self, What> {
        Self::read(text).map_err(|fault| What::figure(text, fault))
    }

    fn figure(&self) -> Option<f64> {
        Some(self.as_mm())
    }
}

impl Readable for Length {
    fn size(&self) -> f64 {
        self.as_mm()
    }
}

impl Value for Angle {
    const BOUNDS: Bounds = within(-90.0, 90.0);

    fn kind() -> ValueKind {
        ValueKind::Angle
    }

    fn read(text: &str) -> Result<Self, What> {
        Self::read(text).map_err(|fault| What::figure(text, fault))
    }

    fn figure(&self) -> Option<f64> {
        Some(self.as_deg())
    }
}

impl Readable for Angle {
    fn size(&self) -> f64 {
        self.as_deg()
    }
}

impl Value for Weight {
    const BOUNDS: Bounds = within(0.0, 1000.0);

    fn kind() -> ValueKind {
        ValueKind::Weight
    }

    fn read(text: &str) -> Result<Self, What> {
        Self::read(text).map_err(|fault| What::figure(text, fault))
    }

    fn figure(&self) -> Option<f64> {
        Some(self.as_kg())
    }
}

impl Readable for Weight {
    fn size(&self) -> f64 {
        self.as_kg()
    }
}

impl Value for Ratio {
    const BOUNDS: Bounds = within(-1_000_000.0, 1_000_000.0);

    fn kind() -> ValueKind {
        ValueKind::Ratio
    }

    fn read(text: &str) -> Result<Self, What> {
        Self::read(text).map_err(|fault| What::figure(text, fault))
    }

    fn figure(&self) -> Option<f64> {
        Some(self.value())
    }
}

impl Value for Slope {
    const BOUNDS: Bounds = within(-1000.0, 1000.0);

    fn kind() -> ValueKind {
        ValueKind::Slope
    }

    fn read(text: &str) -> Result<Self, What> {
        let slope = Self::read(text).map_err(|fault| What::figure(text, fault))?;
        match slope {
            Self::Over { down, .. } if !(1.0..=100_000.0).contains(&down.as_mm()) => {
                Err(What::out_of_bounds("the length down the line", text, "1 mm", "100 m"))
            }
            Self::Angle(angle) if angle.abs().as_deg() >= 90.0 => {
                Err(What::out_of_bounds("a slope", text, "-90 deg", "90 deg"))
            }
            _ => Ok(slope),
        }
    }

    fn figure(&self) -> Option<f64> {
        match self {
            Self::Offset(offset) | Self::Over { offset, .. } => Some(offset.as_mm()),
            Self::Angle(_) => None,
        }
    }

    fn said(&self, _: &str) -> Said {
        Said::Slope(*self)
    }
}

impl Readable for Slope {
    fn alike(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Over { down, .. }, Self::Over { down: other, .. }) => down == other,
            _ => std::mem::discriminant(self) == std::mem::discriminant(other),
        }
    }

    fn is_read_to(&self, to: &Self) -> bool {
        match self {
            Self::Angle(_) => matches!(to, Self::Angle(_)),
            _ => matches!(to, Self::Offset(_)),
        }
    }

    fn size(&self) -> f64 {
        match self {
            Self::Offset(offset) | Self::Over { offset, .. } => offset.as_mm(),
            Self::Angle(angle) => angle.as_deg(),
        }
    }
}

impl Value for u32 {
    const BOUNDS: Bounds = within(0.0, 100_000.0);

    fn kind() -> ValueKind {
        ValueKind::Count
    }

    fn read(text: &str) -> Result<Self, What> {
        let Figure { value, places, .. } =
            Ratio::figure(text).map_err(|fault| What::figure(text, fault))?;
        let whole = value.to_string().parse::<Self>();
        match whole {
            Ok(whole) if places == 0 && !text.contains('%') => Ok(whole),
            _ => Err(What::NotWhole { found: text.to_owned() }),
        }
    }

    fn figure(&self) -> Option<f64> {
        Some(f64::from(*self))
    }
}

impl Value for Date {
    fn kind() -> ValueKind {
        ValueKind::Date
    }

    fn read(text: &str) -> Result<Self, What> {
        Self::read(text).map_err(|_| What::NotADate { found: text.to_owned() })
    }
}

impl Value for bool {
    fn kind() -> ValueKind {
        ValueKind::Flag
    }

    fn read(text: &str) -> Result<Self, What> {
        one_of(text, &[("true", true), ("false", false)])
    }
}

impl<T: Word> Value for T {
    fn kind() -> ValueKind {
        ValueKind::Word(T::WORDS.iter().map(|(word, _)| *word).collect())
    }

    fn read(text: &str) -> Result<Self, What> {
        one_of(text, T::WORDS)
    }
}

fn one_of<T: Copy>(text: &str, words: &[(&'static str, T)]) -> Result<T, What> {
    if let Some((_, value)) = words.iter().find(|(word, _)| *word == text) {
        return Ok(*value);
    }
    let known: Vec<&'static str> = words.iter().map(|(word, _)| *word).collect();
    let nearest = nearest(text, &known);
    Err(What::WrongWord { found: text.to_owned(), known, nearest })
}

/// How many characters an id has at most.
pub const LONGEST_ID: usize = 100;

/// An id as written.
pub(super) struct Id(pub(super) String);

/// Words that an older YAML reader takes for something else than a text, in any case of letters:
/// no id is one of them.
pub const TAKEN_FOR_OTHERS: [&str; 10] =
    ["y", "n", "yes", "no", "on", "off", "true", "false", "null", "~"];

impl Value for Id {
    fn kind() -> ValueKind {
        ValueKind::Id
    }

    fn read(text: &str) -> Result<Self, What> {
        let letters = text.bytes().all(|byte| byte.is_ascii_alphanumeric() || byte == b'-');
        let begins = text.bytes().next().is_some_and(|byte| byte.is_ascii_alphabetic());
        let taken = TAKEN_FOR_OTHERS.contains(&text.to_ascii_lowercase().as_str());
        if letters && begins && !taken && text.len() <= LONGEST_ID {
            Ok(Self(text.to_owned()))
        } else {
            Err(What::WrongId { found: text.to_owned() })
        }
    }
}

/// A text as written.
pub(super) struct Text(pub(super) String);

impl Value for Text {
    fn kind() -> ValueKind {
        ValueKind::Text
    }

    fn read(text: &str) -> Result<Self, What> {
        Ok(Self(text.to_owned()))
    }
}

impl What {
    fn out_of_bounds(
        key: &'static str,
        found: &str,
        least: impl Into<String>,
        most: impl Into<String>,
    ) -> Self {
        let found = found.to_owned();
        Self::OutOfBounds { key, found, least: least.into(), most: most.into() }
    }
}
