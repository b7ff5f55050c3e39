//! Numbers as the logbook writes them: a sign, digits, a point, digits, and nothing else.

use thiserror::Error;

/// Why a text is no number of the logbook.
#[derive(Clone, Copy, Debug, Eq, PartialEq, Error)]
pub enum NumberFault {
    /// Nothing was written.
    #[error("there is no number here")]
    Missing,
    /// `1,5`
    #[error("that is a decimal comma")]
    DecimalComma,
    /// A dash, or another sign that looks like a minus.
    #[error("that minus is a dash, not a minus sign")]
    DashMinus,
    /// NaN, infinity.
    #[error("that is not a number that can be measured")]
    NotFinite,
    /// `0x1f`, `0o17`, `0b1`
    #[error("that is a number in a computer's counting, not a decimal one")]
    OtherBase,
    /// `1_000`
    #[error("there is an underscore in the number")]
    Underscore,
    /// `1e3`
    #[error("powers of ten are not read")]
    Exponent,
    /// `.5` or `5.`
    #[error("a digit is missing beside the point")]
    BarePoint,
    /// `12:30`
    #[error("that reads as a time, not as a number")]
    Sexagesimal,
    /// `1 000`
    #[error("there is a blank inside the number")]
    Blank,
    /// Digits of another script.
    #[error("those digits are not the plain 0 to 9")]
    OtherDigits,
    /// More digits than any rule has.
    #[error("the number is too large to be measured")]
    TooLarge,
    /// Anything else.
    #[error("that is not a number")]
    NotANumber,
}

impl NumberFault {
    /// Returns what to write instead.
    #[must_use]
    pub const fn help(self) -> &'static str {
        match self {
            Self::Missing => "write the number, or `not measured`",
            Self::DecimalComma => "write a point: 1.5",
            Self::DashMinus => "type the plain minus on the keyboard: -2",
            Self::NotFinite => "write what was read, or `not measured`",
            Self::OtherBase => "write it as a plain decimal number",
            Self::Underscore => "leave the underscore out: 1000",
            Self::Exponent => "write it out: 1000",
            Self::BarePoint => "write a digit on both sides of the point: 0.5",
            Self::Sexagesimal => "write a plain number with a point",
            Self::Blank => "leave the blank out: 1000",
            Self::OtherDigits => "type the digits 0 to 9",
            Self::TooLarge => "write the figure that was read",
            Self::NotANumber => "write a plain number, such as 11 or 3.5",
        }
    }
}

/// A decimal number and how it was written.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Decimal {
    /// The number.
    pub(super) value: f64,
    /// How many digits stand after the point.
    pub(super) places: usize,
}

/// Reads `[+-]?digits[.digits]`, shifted by a power of ten.
///
/// The shift is done before the digits become binary, so that `2.3` shifted by one is 23 and
/// not 22.999999999999996.
///
/// # Errors
///
/// [`NumberFault`], for what the writer would mend.
pub(super) fn decimal(text: &str, shift: i8) -> Result<Decimal, NumberFault> {
    let digits = text.strip_prefix(['+', '-']).unwrap_or(text);
    let (whole, part) = digits.split_once('.').unwrap_or((digits, "0"));
    if !all_digits(whole) || !all_digits(part) {
        return Err(fault(text));
    }
    let read = if shift == 0 { text.parse() } else { format!("{text}e{shift}").parse() };
    let value: f64 = read.map_err(|_| NumberFault::NotANumber)?;
    let places = if digits.contains('.') { part.len() } else { 0 };
    if value.is_finite() { Ok(Decimal { value, places }) } else { Err(NumberFault::TooLarge) }
}

fn all_digits(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit())
}

/// Tells what is wrong with a text that is no decimal.
fn fault(text: &str) -> NumberFault {
    let lower = text.trim_start_matches(['+', '-', '.']).to_ascii_lowercase();
    let has = |test: fn(char) -> bool| text.chars().any(test);
    let digits_with = |mark: char| {
        text.contains(mark)
            && text.chars().all(|c| c.is_ascii_digit() || "+-.".contains(c) || c == mark)
    };
    if text.is_empty() {
        NumberFault::Missing
    } else if text.starts_with(is_dash) {
        NumberFault::DashMinus
    } else if ["nan", "inf", "infinity", "∞"].contains(&lower.as_str()) {
        NumberFault::NotFinite
    } else if ["0x", "0o", "0b"].iter().any(|base| lower.starts_with(base)) {
        NumberFault::OtherBase
    } else if digits_with(',') {
        NumberFault::DecimalComma
    } else if digits_with('_') {
        NumberFault::Underscore
    } else if digits_with(':') {
        NumberFault::Sexagesimal
    } else if digits_with(' ') {
        NumberFault::Blank
    } else if lower.contains('e')
        && lower.bytes().all(|b| b.is_ascii_digit() || b"e.+-".contains(&b))
    {
        NumberFault::Exponent
    } else if has(|c| c.is_numeric() && !c.is_ascii()) {
        NumberFault::OtherDigits
    } else if digits_with('.') && text.matches('.').count() == 1 && has(|c| c.is_ascii_digit()) {
        NumberFault::BarePoint
    } else {
        NumberFault::NotANumber
    }
}

/// Tells dashes and the Unicode minus from the plain minus sign.
pub(super) fn is_dash(sign: char) -> bool {
    matches!(sign, '\u{2010}'..='\u{2015}' | '\u{2212}' | '\u{fe63}' | '\u{ff0d}')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_plain_decimal_is_read_with_its_places() {
        let read = |text| decimal(text, 0).map(|d| (d.value, d.places));
        assert_eq!(read("11"), Ok((11.0, 0)));
        assert_eq!(read("-0.50"), Ok((-0.5, 2)));
        assert_eq!(read("+3.6"), Ok((3.6, 1)));
    }

    #[test]
    fn a_shift_keeps_the_figure_exact() {
        assert_eq!(decimal("2.3", 1).map(|d| d.value), Ok(23.0));
        assert_eq!(decimal("0.6", 3).map(|d| d.value), Ok(600.0));
    }

    #[test]
    fn each_wrong_number_has_its_own_fault() {
        let cases = [
            ("", NumberFault::Missing),
            ("1,5", NumberFault::DecimalComma),
            ("−2", NumberFault::DashMinus),
            ("–2", NumberFault::DashMinus),
            (".nan", NumberFault::NotFinite),
            ("-.inf", NumberFault::NotFinite),
            ("NaN", NumberFault::NotFinite),
            ("0x1f", NumberFault::OtherBase),
            ("1_000", NumberFault::Underscore),
            ("1e3", NumberFault::Exponent),
            ("1.5e-3", NumberFault::Exponent),
            (".5", NumberFault::BarePoint),
            ("5.", NumberFault::BarePoint),
            ("12:30", NumberFault::Sexagesimal),
            ("1 000", NumberFault::Blank),
            ("١٢", NumberFault::OtherDigits),
            ("1.2.3", NumberFault::NotANumber),
            ("nine", NumberFault::NotANumber),
        ];
        for (text, fault) in cases {
            assert_eq!(decimal(text, 0), Err(fault), "{text}");
        }
        assert_eq!(decimal(&"9".repeat(400), 0), Err(NumberFault::TooLarge));
    }
}
