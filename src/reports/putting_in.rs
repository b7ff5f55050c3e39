//! The numbers of a sum put into its formula, as far as the readings alone allow it.

use super::sums::number;
use crate::metrology::Part;
use crate::rules::Sum;
use crate::working::Input;

/// Readings added up come to the result to within this part of it, or it is no plain adding up.
const CLOSE: f64 = 1e-6;

/// Returns the sum with its numbers and what it comes to.
///
/// Where the readings are plainly added and taken away, each by its name; else the formula's own
/// words with the numbers in place of the readings it names.
pub(super) fn numbers_put_in(sum: &Sum) -> String {
    let result = sum.figure(sum.value.value());
    let put_in = added_up(sum).or_else(|| in_the_formula(sum));
    match put_in {
        Some(put_in) => format!("With the numbers put in: {put_in} = {result}."),
        None => format!("With these readings it comes to {result}."),
    }
}

/// "gap between the horns 60.0 mm - widest part of the shaft 52.0 mm".
fn added_up(sum: &Sum) -> Option<String> {
    let parts = sum.value.parts();
    let whole = |part: &Part<Input>| (part.sensitivity.abs() - 1.0).abs() < CLOSE;
    let plain =
        parts.len() > 1 && parts.iter().all(|part| whole(part) && part.input.unit == sum.unit);
    let comes_to: f64 = parts.iter().map(|part| part.sensitivity * part.input.value).sum();
    if !plain || (comes_to - sum.value.value()).abs() > CLOSE * comes_to.abs().max(1.0) {
        return None;
    }
    let mut told = String::new();
    for (place, part) in parts.iter().enumerate() {
        let sign = match (place, part.sensitivity > 0.0) {
            (0, true) => "",
            (0, false) => "-",
            (_, true) => " + ",
            (_, false) => " - ",
        };
        let value = number(part.input.value, part.input.unit.word());
        told.push_str(&format!("{sign}{} {value}", part.input.what));
    }
    Some(told)
}

/// The part of the formula that names the most readings, with the numbers in their place.
fn in_the_formula(sum: &Sum) -> Option<String> {
    let parts = sum.value.parts();
    let once = |part: &&Part<Input>| {
        parts.iter().filter(|other| other.input.what == part.input.what).count() == 1
    };
    let put_into = |clause: &str| {
        let mut text = clause.trim().to_owned();
        let mut named = 0;
        for Part { input, .. } in parts.iter().filter(once) {
            if text.contains(input.what) {
                named += 1;
                text = text.replace(input.what, &number(input.value, input.unit.word()));
            }
        }
        (named, text)
    };
    let says_what = |clause: &&str| clause.contains(" = ");
    let clauses = sum.rule.formula.split("; ").filter(says_what).map(put_into);
    let (named, text) = clauses.reduce(|best, one| if one.0 > best.0 { one } else { best })?;
    (named > 0).then_some(text)
}
