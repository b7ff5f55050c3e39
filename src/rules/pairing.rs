//! Findings of one name and one rule, before and after: which is which, and how each stands. Knows
//! no book.
//!
//! ```text
//! before                            after
//!   "`gapp` is no key here"  ------   "`gapp` is no key here"     says the same: known
//!   "30.0 mm apart"          ------   "32.0 mm apart"             the nearest value: worse
//!   "`horm` is no key here"           "`lenght` is no key here"   one is cured, one is new
//! ```
//!
//! Where two may be meant, the doubt counts against the later one.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use super::finding::Figure;
use super::finding::Finding;
use super::finding::LimitShown;
use super::since::Standing;

/// How far a figure must have gone further out to be further out at all: what is lost in sums.
const LOST: f64 = 1e-9;

/// A position before, one after, and how the later one stands.
pub(super) type Pair = (usize, usize, Standing);

/// As many pairs are weighed one by one; of more, only those that say the same are paired.
const MOST: usize = 10_000;

/// Returns which finding before is which after; what is in no pair is cured, or new.
pub(super) fn pairs(before: &[&Finding], after: &[&Finding]) -> Vec<Pair> {
    if let ([was], [is]) = (before, after) {
        return vec![(0, 0, standing(was, is))];
    }
    let mut open = Open { before: all(before.len()), after: all(after.len()) };
    let mut found = Vec::new();
    for same in saying_the_same(before, after) {
        let apart = |old: usize, new: usize| start(before[old]).abs_diff(start(after[new])) as f64;
        let taken = match same.is_too_much() {
            true => open.take_in_order(&same),
            false => open.take(&same, |old, new| Some(apart(old, new))),
        };
        for (old, new) in taken {
            found.push((old, new, standing(before[old], after[new])));
        }
    }
    let marked_alike = |old, new| {
        changed(before[old], after[new]).filter(|_| labels(before[old]) == labels(after[new]))
    };
    let alike = |old, new| changed(before[old], after[new]);
    let ways: [&dyn Fn(usize, usize) -> Option<f64>; 2] = [&marked_alike, &alike];
    for apart in ways {
        let left = open.clone();
        for (old, new) in open.take(&left, apart) {
            let each = left.before.iter().filter(|old| apart(**old, new).is_some());
            let worst = each.map(|old| standing(before[*old], after[new])).max();
            found.push((old, new, worst.unwrap_or(Standing::Worse)));
        }
    }
    found
}

fn all(count: usize) -> BTreeSet<usize> {
    (0..count).collect()
}

/// Positions that are in no pair yet.
#[derive(Clone, Default)]
struct Open {
    before: BTreeSet<usize>,
    after: BTreeSet<usize>,
}

impl Open {
    fn is_too_much(&self) -> bool {
        self.before.len().saturating_mul(self.after.len()) > MOST
    }

    /// Takes pairs in their order: for those between which there is no difference to weigh.
    fn take_in_order(&mut self, among: &Self) -> Vec<(usize, usize)> {
        let both = among.before.iter().copied().zip(among.after.iter().copied());
        let taken: Vec<_> = both.collect();
        taken.iter().for_each(|pair| self.remove(*pair));
        taken
    }

    /// Takes pairs from among some, the nearest first. How far two lie apart is none where they
    /// can't be the same.
    fn take(
        &mut self,
        among: &Self,
        apart: impl Fn(usize, usize) -> Option<f64>,
    ) -> Vec<(usize, usize)> {
        if among.is_too_much() {
            return Vec::new();
        }
        let each = among.before.iter().flat_map(|old| among.after.iter().map(|new| (*old, *new)));
        let far = |(old, new)| Some((apart(old, new)?, (old, new)));
        let mut near: Vec<(f64, (usize, usize))> = each.filter_map(far).collect();
        near.sort_by(|one, other| one.0.total_cmp(&other.0).then_with(|| one.1.cmp(&other.1)));
        let mut taken = Vec::new();
        for (_, (old, new)) in near {
            if self.before.contains(&old) && self.after.contains(&new) {
                self.remove((old, new));
                taken.push((old, new));
            }
        }
        taken
    }

    fn remove(&mut self, (old, new): (usize, usize)) {
        self.before.remove(&old);
        self.after.remove(&new);
    }
}

/// Returns the positions of those that say the same of the same things.
fn saying_the_same(before: &[&Finding], after: &[&Finding]) -> Vec<Open> {
    let mut same: BTreeMap<(&str, Vec<&str>), Open> = BTreeMap::new();
    for (at, finding) in before.iter().enumerate() {
        same.entry((&finding.message, labels(finding))).or_default().before.insert(at);
    }
    for (at, finding) in after.iter().enumerate() {
        same.entry((&finding.message, labels(finding))).or_default().after.insert(at);
    }
    same.into_values().collect()
}

fn start(finding: &Finding) -> usize {
    finding.labels[0].place.span.start
}

fn labels(finding: &Finding) -> Vec<&str> {
    finding.labels.iter().map(|label| label.text.as_str()).collect()
}

/// How far apart two findings are that may be one thing which changed: one value by one limit, or
/// what says nothing that was not said.
fn changed(before: &Finding, after: &Finding) -> Option<f64> {
    let limit = |finding: &Finding| finding.limit.as_ref().map(|limit| (limit.least, limit.most));
    match (before.value, after.value) {
        (Some(was), Some(is)) if was.unit == is.unit => {
            (limit(before) == limit(after)).then(|| (was.number - is.number).abs())
        }
        (None, None) => says_no_more(before, after).then_some(0.0),
        _ => None,
    }
}

fn standing(before: &Finding, after: &Finding) -> Standing {
    if is_worse(before, after) { Standing::Worse } else { Standing::Known }
}

fn is_worse(before: &Finding, after: &Finding) -> bool {
    let counts_now = before.waived.is_some() && after.waived.is_none();
    let gates_now = before.shown_only && !after.shown_only;
    after.level > before.level || is_further(before, after) || counts_now || gates_now
}

/// Returns whether a value is further out; where that is no question of more or less, whether
/// something is said that was not.
fn is_further(before: &Finding, after: &Finding) -> bool {
    let unit = |finding: &Finding| finding.value.map(|value| value.unit);
    match out_by(before).zip(out_by(after)).filter(|_| unit(before) == unit(after)) {
        Some((was, is)) => is > was + LOST * was.abs().max(1.0),
        None => !says_no_more(before, after),
    }
}

/// Returns whether each word of the later one stands in the earlier one, as often.
fn says_no_more(before: &Finding, after: &Finding) -> bool {
    fn words(finding: &Finding) -> impl Iterator<Item = &str> {
        finding
            .message
            .split(|c: char| c.is_whitespace() || ",;:()".contains(c))
            .filter(|word| !word.is_empty())
    }
    let mut left: Vec<&str> = words(before).collect();
    words(after).all(|word| {
        let known = left.iter().position(|own| *own == word);
        known.map(|at| left.swap_remove(at)).is_some()
    })
}

/// Returns how far the value lies beyond its limit, in its unit, negative while it is within; of a
/// difference that no limit is set for, how large it is.
fn out_by(finding: &Finding) -> Option<f64> {
    let Figure { number, uncertainty, .. } = finding.value?;
    let Some(LimitShown { least, most, .. }) = finding.limit.as_ref() else {
        return uncertainty.map(|_| number.abs());
    };
    let below = least.map(|least| least - number);
    let above = most.map(|most| number - most);
    below.into_iter().chain(above).reduce(f64::max)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::FileId;
    use crate::model::Name;
    use crate::model::Place;
    use crate::model::Span;
    use crate::rules::chocks_unlike::RULE;

    fn told(start: usize, message: &str) -> Finding {
        let place = Place { file: FileId(0), span: Span { start, end: start + 1 } };
        Finding::new(&RULE, Name::record("kittiwake"), place, "here").saying(message)
    }

    fn out_to(start: usize, number: f64) -> Finding {
        let limit = LimitShown {
            least: None,
            most: Some(15.0),
            unit: "mm",
            from: String::new(),
            source: String::new(),
        };
        told(start, &format!("{number} mm"))
            .judged(Figure { number, uncertainty: Some(1.0), unit: "mm" }, Some(limit))
    }

    /// Pairs in the order of the later ones.
    fn paired(before: &[Finding], after: &[Finding]) -> Vec<Pair> {
        let all = |findings: &[Finding]| findings.to_vec();
        let (before, after) = (all(before), all(after));
        let mut found =
            pairs(&before.iter().collect::<Vec<_>>(), &after.iter().collect::<Vec<_>>());
        found.sort_by_key(|(_, new, _)| *new);
        found
    }

    #[test]
    fn of_two_one_that_stays_and_one_that_is_cured_are_told_apart_in_any_order() {
        let both = [out_to(1, 30.0), out_to(9, 20.0)];
        assert_eq!(paired(&both, &[out_to(5, 20.0)]), [(1, 0, Standing::Known)]);
        assert_eq!(paired(&both, &[out_to(5, 30.0)]), [(0, 0, Standing::Known)]);
    }

    #[test]
    fn a_cured_one_hides_no_new_one_that_says_something_else() {
        let before = [told(1, "A8 is not there"), told(9, "A9 is not there")];
        let after = [told(1, "A9 is not there"), told(9, "A7 is not there")];
        assert_eq!(paired(&before, &after), [(1, 0, Standing::Known)]);
    }

    #[test]
    fn the_nearest_value_is_the_one_that_changed() {
        let before = [out_to(1, 30.0), out_to(9, 20.0)];
        let after = [out_to(1, 20.0), out_to(9, 31.0)];
        let expected = [(1, 0, Standing::Known), (0, 1, Standing::Worse)];
        assert_eq!(paired(&before, &after), expected);
        let after = [out_to(1, 29.0), out_to(9, 20.0)];
        let expected = [(0, 0, Standing::Known), (1, 1, Standing::Known)];
        assert_eq!(paired(&before, &after), expected);
    }

    #[test]
    fn what_may_be_the_worse_of_two_is_taken_for_it() {
        let before = [out_to(1, 30.0), out_to(9, 20.0)];
        assert_eq!(paired(&before, &[out_to(1, 29.0)]), [(0, 0, Standing::Worse)]);
    }

    #[test]
    fn of_many_that_say_the_same_only_those_more_than_before_are_new() {
        let many = |count: usize| (0..count).map(|at| told(at, "twice")).collect::<Vec<_>>();
        let found = paired(&many(300), &many(302));
        assert_eq!(found.len(), 300);
        assert!(found.iter().all(|(.., stands)| *stands == Standing::Known));
        let near =
            paired(&[told(50, "twice"), told(90, "once")], &[told(5, "twice"), told(51, "twice")]);
        assert_eq!(near, [(0, 1, Standing::Known)]);
    }

    #[test]
    fn one_that_says_less_is_known_and_one_that_says_more_is_worse() {
        let standing = |was, is| paired(&[told(1, was)], &[told(1, is)])[0].2;
        assert_eq!(standing("not measured: gap, spread", "not measured: spread"), Standing::Known);
        assert_eq!(standing("not measured: gap", "not measured: gap, spread"), Standing::Worse);
        assert_eq!(standing("not measured: gap", "not measured: spread"), Standing::Worse);
    }
}
