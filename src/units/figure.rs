//! A number with its unit, as written.

use thiserror::Error;

use super::number::{NumberFault, decimal};

/// A unit that a figure may be written in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unit {
    /// How it is written.
    pub word: &'static str,
    /// The power of ten that takes it to the unit of a bare number.
    shift: i8,
    /// What is left to multiply by, and then to divide by: 25.4 has no exact binary form, 254 and
    /// 10 have.
    ratio: (f64, f64),
}

impl Unit {
    /// A unit that is a power of ten of the bare one.
    pub(super) const fn ten(word: &'static str, shift: i8) -> Self {
        Self { word, shift, ratio: (1.0, 1.0) }
    }

    /// A unit that is any fraction of the bare one.
    pub(super) const fn ratio(word: &'static str, times: f64, over: f64) -> Self {
        Self { word, shift: 0, ratio: (times, over) }
    }

    /// Returns how much of the bare unit one of this is.
    #[must_use]
    pub fn size(self) -> f64 {
        self.ratio.0 * 10_f64.powi(i32::from(self.shift)) / self.ratio.1
    }
}

/// A number in the unit of a bare one, and how it was written.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Figure {
    /// The value, in the unit of a bare number.
    pub value: f64,
    /// How many digits stand after the point, as written.
    pub places: usize,
    /// The unit it was written in; of a bare number, the first of the list.
    pub unit: Unit,
}

/// Why a text is no figure.
#[derive(Clone, Debug, Eq, PartialEq, Error)]
pub enum FigureFault {
    /// The number is at fault.
    #[error(transparent)]
    Number(#[from] NumberFault),
    /// The unit is not one that is read here.
    #[error("`{found}` is no unit that is read here")]
    Unit {
        /// What was written.
        found: String,
        /// What may be written.
        known: Vec<&'static str>,
    },
}

impl FigureFault {
    /// Returns what to write instead.
    #[must_use]
    pub fn help(&self) -> String {
        match self {
            Self::Number(fault) => fault.help().to_owned(),
            Self::Unit { known, .. } if known.is_empty() => "write the number alone".to_owned(),
            Self::Unit { known, .. } => format!("write it in {}", known.join(", ")),
        }
    }
}

/// Reads a number, alone or with one of `units`. The first unit is that of a bare number.
///
/// # Errors
///
/// [`FigureFault`]: the number, or a unit that is not in the list.
pub(super) fn figure(text: &str, units: &[Unit]) -> Result<Figure, FigureFault> {
    let text = text.trim();
    let end = text.find(|c: char| c.is_alphabetic() || "°\"'%".contains(c)).unwrap_or(text.len());
    let (number, word) = (text[..end].trim_end(), text[end..].trim());
    let bare = units.first().copied().unwrap_or(Unit::ten("", 0));
    if word.is_empty() {
        return measured(number, bare);
    }
    match units.iter().find(|unit| unit.word == word) {
        Some(unit) => measured(number, *unit),
        None => Err(unknown_unit(text, number, word, units)),
    }
}

fn measured(number: &str, unit: Unit) -> Result<Figure, FigureFault> {
    let (value, places) = match mixed_fraction(number) {
        Some(value) if unit.word == "in" => (value, 0),
        _ => decimal(number, unit.shift).map(|decimal| (decimal.value, decimal.places))?,
    };
    let value = value * unit.ratio.0 / unit.ratio.1;
    if value.is_finite() {
        Ok(Figure { value, places, unit })
    } else {
        Err(NumberFault::TooLarge.into())
    }
}

/// Reads `23 5/8` or `5/8`, as a rule marked in inches shows it.
fn mixed_fraction(text: &str) -> Option<f64> {
    let (whole, fraction) = text.rsplit_once(' ').unwrap_or(("0", text));
    let (over, under) = fraction.split_once('/')?;
    let number = |text: &str| {
        let short = text.len() <= 6 && text.bytes().all(|byte| byte.is_ascii_digit());
        if short { text.parse::<u32>().ok() } else { None }
    };
    let negative = whole.starts_with('-') || (whole == "0" && over.starts_with('-'));
    let sign = if negative { -1.0 } else { 1.0 };
    let plain = |text: &str| number(text.trim_start_matches(['+', '-']).trim());
    if under.starts_with('0') {
        return None;
    }
    let (whole, over, under) = (plain(whole)?, plain(over)?, number(under)?);
    Some(sign * (f64::from(whole) + f64::from(over) / f64::from(under)))
}

/// A text that is no number at all is told as such, not as a number with an odd unit.
fn unknown_unit(text: &str, number: &str, word: &str, units: &[Unit]) -> FigureFault {
    match decimal(text, 0) {
        Err(fault) if is_number_like(fault) => FigureFault::Number(fault),
        Err(fault) if number.is_empty() || decimal(number, 0).is_err() => {
            FigureFault::Number(if number.is_empty() { fault } else { fault_of(number, fault) })
        }
        _ => FigureFault::Unit {
            found: word.to_owned(),
            known: units.iter().map(|unit| unit.word).filter(|word| !word.is_empty()).collect(),
        },
    }
}

fn is_number_like(fault: NumberFault) -> bool {
    matches!(fault, NumberFault::OtherBase | NumberFault::Exponent | NumberFault::NotFinite)
}

fn fault_of(number: &str, whole: NumberFault) -> NumberFault {
    decimal(number, 0).err().unwrap_or(whole)
}
