//! Several values that should be alike: the two that lie furthest apart.

use super::finding::Finding;
use super::finding::Outcome;
use super::judging::Judged;
use super::judging::Range;
use super::judging::not_checked;
use super::rule::Rule;
use crate::metrology::decision::GRAIN;
use crate::metrology::decision::PICKED;
use crate::model::Name;
use crate::model::Place;
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
        // Of equal values the first is the highest and the last the lowest: two, never one twice.
        let high = all.iter().rev().max_by(by_value)?;
        let low = all.iter().rev().min_by(by_value)?;
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

    /// Returns the highest less the lowest.
    fn difference(&self) -> Worked {
        Ok(self.high.1.minus(&self.low.1))
    }

    /// Returns the highest less the lowest in parts of a hundred of the mean of all.
    fn percent(&self) -> Worked {
        let none = Lack::Impossible("values of nothing can't be compared");
        let mean = Budget::mean(self.all.iter().map(|(_, value)| value)).ok_or(none.clone())?;
        let part = |[by, mean]: [f64; 2]| (mean > 0.0).then(|| 100.0 * by / mean);
        Budget::through([&self.high.1.minus(&self.low.1), &mean], part).ok_or(none)
    }

    fn mean(&self) -> f64 {
        self.all.iter().map(|(_, value)| value.value()).sum::<f64>() / self.all.len() as f64
    }
}

/// How far apart values are is said in their own unit, or in parts of a hundred of their mean.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub(super) enum Measure {
    /// In their own unit.
    Own,
    /// In parts of a hundred.
    Percent,
}

impl Measure {
    fn of<T>(self, apart: &Apart<T>) -> Worked {
        match self {
            Self::Own => apart.difference(),
            Self::Percent => apart.percent(),
        }
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
    judge_as(Measure::Own, range, rule, name, values, say)
}

/// As [`judge`], with what the difference is measured in.
pub(super) fn judge_as<T>(
    measure: Measure,
    range: Option<&Range>,
    rule: &'static Rule,
    name: &Name,
    values: impl Iterator<Item = (T, Worked)>,
    say: impl FnOnce(&Apart<T>, &Budget, &Judged, &Range) -> Finding,
) -> Vec<Outcome> {
    let (there, lack) = sorted_out(values);
    let found = Apart::new(&there).map_or_else(Vec::new, |apart| {
        let say =
            |value: &Budget, judged: &Judged, range: &Range| say(&apart, value, judged, range);
        // Of two values both are meant; of more, the furthest two were picked.
        let wider = if there.len() > 2 { PICKED } else { 1.0 };
        Range::finding_beyond(range, rule, name, &measure.of(&apart), wider, say)
    });
    match lack {
        Some(lack) if range.is_some() && !found.iter().any(Outcome::is_finding) => {
            found.into_iter().chain([not_checked(rule, name, &lack)]).collect()
        }
        _ => found,
    }
}

/// Returns whose value is the odd one, and how far the furthest two of those that are there are
/// apart.
pub(super) fn odd_one_and_difference<T: Copy>(
    measure: Measure,
    values: impl Iterator<Item = (T, Worked)>,
) -> Option<(T, Budget)> {
    let (there, _) = sorted_out(values);
    let apart = Apart::new(&there)?;
    Some((apart.odd_one().0, measure.of(&apart).ok()?))
}

/// Begins a finding at the odd one out, the others labelled after it.
pub(super) fn labelled<T>(
    rule: &'static Rule,
    name: Name,
    apart: &Apart<T>,
    label: impl Fn(&(T, Budget)) -> (Place, String),
) -> Finding {
    let odd = apart.odd_one();
    let (place, text) = label(odd);
    let others = apart.all.iter().filter(|one| !std::ptr::eq(*one, odd)).map(&label);
    let first = Finding::new(rule, name, place, text);
    others.fold(first, |finding, (place, text)| finding.also(place, text))
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
