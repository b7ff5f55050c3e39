//! How a figure is spelled in this book, whatever way it was written. Its digits stay.

/// Ways to write a unit that can mean nothing else, beside its own letters in another case.
const UNITS: [(&str, &[&str]); 6] = [
    ("mm", &["mms", "millimetre", "millimetres", "millimeter", "millimeters"]),
    ("cm", &["cms", "centimetre", "centimetres", "centimeter", "centimeters"]),
    ("m", &["metre", "metres", "meter", "meters"]),
    ("in", &["ins", "inch", "inches", "\"", "\u{2033}"]),
    ("deg", &["degs", "degree", "degrees", "\u{ba}", "\u{2da}"]),
    ("kg", &["kgs", "kilo", "kilos", "kilogram", "kilograms", "kilogramme", "kilogrammes"]),
];

const OVER: &str = " over ";

/// Returns a figure as this book spells it; none where it is spelled so already, or where it could
/// mean two things.
pub(super) fn respelled(source: &str) -> Option<String> {
    let (open, inner, close) = unquoted(source)?;
    let parts: Option<Vec<String>> = inner.split(OVER).map(figure).collect();
    let new = format!("{open}{}{close}", parts?.join(OVER));
    (new != source).then_some(new)
}

/// Returns the quotes around a text and what is inside. Text with escapes is left alone.
fn unquoted(source: &str) -> Option<(&str, &str, &str)> {
    if source.contains(['\\', '\n']) {
        return None;
    }
    for quote in ["\"", "'"] {
        let inner = source.strip_prefix(quote).and_then(|rest| rest.strip_suffix(quote));
        if let Some(inner) = inner {
            return (!inner.contains(quote)).then_some((quote, inner, quote));
        }
    }
    Some(("", source, ""))
}

fn figure(part: &str) -> Option<String> {
    let is_unit = |c: char| c.is_alphabetic() || "°\"'%\u{2033}\u{2da}".contains(c);
    let end = part.find(is_unit).unwrap_or(part.len());
    let (number, word) = part.split_at(end);
    Some(format!("{}{}", with_point(&with_minus(number))?, unit(word)))
}

/// Returns a number whose sign is the plain minus.
fn with_minus(number: &str) -> String {
    let is_dash =
        |c: char| matches!(c, '\u{2010}'..='\u{2015}' | '\u{2212}' | '\u{fe63}' | '\u{ff0d}');
    let rest = number.trim_start();
    match rest.strip_prefix(is_dash) {
        Some(digits) => format!("{}-{digits}", &number[..number.len() - rest.len()]),
        None => number.to_owned(),
    }
}

/// Returns a number with a point for its comma; none where the comma may be one between thousands:
/// 3,860 can be 3860 as well as 3.86.
fn with_point(number: &str) -> Option<String> {
    let Some((whole, rest)) = number.split_once(',') else { return Some(number.to_owned()) };
    let is_one = !rest.contains([',', '.']) && !whole.contains('.');
    let digits = whole.trim_start().trim_start_matches(['+', '-']);
    let leads = digits.len() <= 3 && !digits.starts_with('0');
    let may_be_thousands = leads && rest.trim_end().len() == 3;
    (is_one && !may_be_thousands).then(|| format!("{whole}.{rest}"))
}

/// Returns a unit's own word; a word that is none stays as it is.
fn unit(word: &str) -> String {
    let small = word.trim_end().trim_end_matches('.').to_lowercase();
    let is_it = |(own, others): &&(&str, &[&str])| *own == small || others.contains(&&*small);
    UNITS.iter().find(is_it).map_or_else(|| word.to_owned(), |(own, _)| (*own).to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn commas_dashes_and_units_are_spelled_as_in_the_book() {
        let cases = [
            ("60,5", "60.5"),
            ("\u{2212}61", "-61"),
            ("\u{2013}0,5 over 150", "-0.5 over 150"),
            ("11,5 over 176,5", "11.5 over 176.5"),
            ("60 CM", "60 cm"),
            ("3.6 degrees", "3.6 deg"),
            ("5.7\u{ba}", "5.7deg"),
            ("'1,5 Mm.'", "'1.5 mm'"),
            ("\"60 inches\"", "\"60 in\""),
            ("0,125", "0.125"),
            ("3860,125", "3860.125"),
        ];
        for (old, new) in cases {
            assert_eq!(respelled(old).as_deref(), Some(new), "{old}");
        }
    }

    #[test]
    fn what_could_mean_two_things_is_left_to_a_person() {
        for text in ["3,860", "-3,860 mm", "1,234,5", "1.5,2", "\"1,5\\u0020\"", "60", "2 ft"] {
            assert_eq!(respelled(text), None, "{text}");
        }
    }
}
