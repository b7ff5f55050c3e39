//! Several values that should be alike: the two that lie furthest apart.

use super::finding::Finding;
use super::finding::Outcome;
use super::judging::Judged;
use super::judging::Range;
use super::judging::not_checked;
use super::rule::Rule;
use crate::metrology::decision::GRAIN;
use crate::model::Name;
use crate::working::Budget;
use crate::working::Lack;
use crate::working::Worked;

/// Several values, of which two are furthest apart. `T` says whose each value is.
pub(super) struct Apart<'v, T> {
    /// Every value.
    pub(super) all: &'v [(T, Budget)],
    /// The highest.
    pub(super) high: &'v (T, Budget),
    /// The lowest.
    pub(super) low: &'v (T, Budget),
}

impl<'v, T> Apart<'v, T> {
    fn new(all: &'v [(T, Budget)]) -> Option<Self> {
        let by_value =
            |one: &&(T, Budget), other: &&(T, Budget)| one.1.value().total_cmp(&other.1.value());
        let (high, low) = (all.iter().rev().max_by(by_value)?, all.iter().min_by(by_value)?);
        (all.len() > 1).then_some(Self { all, high, low })
    }

    /// Returns the one of the two that lies further from the mean of all; the highest where both
    /// lie as far.
    pub(super) fn odd_one(&self) -> &'v (T, Budget) {
        let above = self.high.1.value() - self.mean();
        let below = self.mean() - self.low.1.value();
        if above >= below - GRAIN { self.high } else { self.low }
    }

    /// Returns how good the worst known of the values is.
    pub(super) fn good_to(&self) -> f64 {
        self.all.iter().map(|(_, value)| value.expanded()).fold(0.0, f64::max)
    }

    fn mean(&self) -> f64 {
        self.all.iter().map(|(_, value)| value.value()).sum::<f64>() / self.all.len() as f64
    }
}

/// Judges how far the furthest two of several values are apart.
///
/// Values that are missing can only make it more, so what is there is judged; a check that finds
/// nothing while a value is missing was not made.
pub(super) fn judge<T>(
    range: Option<&Range>,
    rule: &'static Rule,
    name: &Name,
    values: impl Iterator<Item = (T, Worked)>,
    say: impl FnOnce(&Apart<T>, &Budget, &Judged, &Range) -> Finding,
) -> Vec<Outcome> {
    let (there, lack) = sorted_out(values);
    let found = Apart::new(&there).map_or_else(Vec::new, |apart| {
        let difference = Ok(apart.high.1.minus(&apart.low.1));
        let say =
            |value: &Budget, judged: &Judged, range: &Range| say(&apart, value, judged, range);
        Range::finding(range, rule, name, &difference, say)
    });
    match lack {
        Some(lack) if found.is_empty() && range.is_some() => vec![not_checked(rule, name, &lack)],
        _ => found,
    }
}

/// Parts what could be worked out from what is missing.
fn sorted_out<T>(values: impl Iterator<Item = (T, Worked)>) -> (Vec<(T, Budget)>, Option<Lack>) {
    let (mut there, mut missing, mut impossible) = (Vec::new(), Vec::new(), None);
    for (whose, value) in values {
        match value {
            Ok(value) => there.push((whose, value)),
            Err(Lack::NotMeasured(fields)) => missing.extend(fields),
            Err(lack) => impossible = Some(lack),
        }
    }
    missing.sort();
    missing.dedup();
    let lack = (!missing.is_empty()).then_some(Lack::NotMeasured(missing));
    (there, lack.or(impossible))
}
