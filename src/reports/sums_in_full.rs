//! The words of the metrologist for a sum: each reading's half-width, standard uncertainty,
//! sensitivity and contribution, what they come to, and the chance of being beyond the limit.

use super::sums::Sheet;
use crate::metrology::chance;
use crate::metrology::half_width::standard_uncertainty;
use crate::rules::Against;
use crate::rules::Sum;

/// Adds what `--full` tells of a value and of each judgement of it.
pub(super) fn add(sheet: &mut Sheet, alike: &[&Sum]) {
    let Some(sum) = alike.first() else { return };
    let mut lines = Vec::new();
    for part in sum.value.parts() {
        let u = standard_uncertainty(part.half_width);
        let unit = part.input.unit.word();
        lines.push(format!(
            "{}: half-width a = {} {unit}, rectangular, standard uncertainty u = a/sqrt 3 = {} {unit}.",
            part.input.what,
            digits(part.half_width),
            digits(u)
        ));
        lines.push(format!(
            " sensitivity c = {}, contribution |c| u = {} {}.",
            digits(part.sensitivity),
            digits((part.sensitivity * u).abs()),
            sum.unit.word()
        ));
    }
    lines.push(format!(
        "Combined standard uncertainty u = {} {unit}: the root of the sum of the squares. Expanded uncertainty U = 2u = {} {unit}.",
        digits(sum.value.standard_uncertainty()),
        digits(sum.value.expanded()),
        unit = sum.unit.word()
    ));
    lines.extend(alike.iter().filter_map(|sum| beyond(sum)));
    lines.push("JCGM 100:2008 (GUM): rectangular 4.3.7; sensitivity 5.1.3; combined 5.1.2, equation (10); shared readings 5.2; expanded 6.3.3.".to_owned());
    lines.push(decided_by(alike).to_owned());
    sheet.section("In the metrologist's words", &lines);
}

fn beyond(sum: &Sum) -> Option<String> {
    if !matches!(sum.against, Against::Limit { .. }) {
        return None;
    }
    let u = sum.value.standard_uncertainty();
    let chance = 100.0 * chance::beyond(sum.value.value(), u, sum.against.bounds());
    let shown = match chance {
        chance if chance > 0.0 && chance < 0.01 => "less than 0.01 %".to_owned(),
        chance if chance > 99.99 => "more than 99.99 %".to_owned(),
        chance => format!("{chance:.2} %"),
    };
    Some(format!(
        "{}: the chance that the true value lies beyond the limit is {shown}, its error taken as normally distributed (JCGM 106:2012, 7.2 to 7.4).",
        sum.rule.id
    ))
}

fn decided_by(alike: &[&Sum]) -> &'static str {
    if alike.iter().any(|sum| matches!(sum.against, Against::Limit { danger: true, .. })) {
        "Decided by ISO 14253-1, the burden of proof reversed: conformity must be proven, by at least U."
    } else {
        "Decided by ISO 14253-1: non-conformity must be proven, by more than U."
    }
}

/// Four digits that count.
fn digits(value: f64) -> String {
    if value.abs() < 1e-12 {
        return "0".to_owned();
    }
    let before = value.abs().log10().floor() as i32 + 1;
    let places = usize::try_from(4 - before).unwrap_or(0);
    format!("{value:.places$}")
}
