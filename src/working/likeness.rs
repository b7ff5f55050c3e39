//! How far apart values lie that should be alike. Knows no limit.

use super::Budget;
use crate::model::Name;
use crate::model::Place;

/// One of several values that should be alike.
#[derive(Clone, Debug)]
pub struct Member {
    /// The name of the value.
    pub name: Name,
    /// What people call the one it belongs to.
    pub called: String,
    /// Where to look.
    pub place: Place,
    /// The value.
    pub value: Budget,
}

/// The two that differ most, and the odd one out.
///
/// ```text
///   lowest      middle                highest
///     |-----x-----x------------------------|      by = highest - lowest
///                 |<-- farthest from it -->|      odd
/// ```
#[derive(Clone, Debug)]
pub struct Apart<'m> {
    /// The one with the least value.
    pub lowest: &'m Member,
    /// The one with the greatest value.
    pub highest: &'m Member,
    /// The one farthest from the middle of all; of two equally far, the one written first.
    pub odd: &'m Member,
    /// Highest less lowest.
    pub by: Budget,
}

impl<'m> Apart<'m> {
    /// Returns how far apart the members are; with fewer than two there is nothing to compare.
    #[must_use]
    pub fn of(members: &'m [Member]) -> Option<Self> {
        let mut sorted: Vec<&Member> = members.iter().collect();
        sorted.sort_by(|one, other| one.value.value().total_cmp(&other.value.value()));
        let [lowest, .., highest] = sorted[..] else { return None };
        let half = sorted.len() / 2;
        let (below, above) = (sorted[(sorted.len() - 1) / 2], sorted[half]);
        let middle = f64::midpoint(below.value.value(), above.value.value());
        let far = |member: &Member| (member.value.value() - middle).abs();
        let farther = |odd: &'m Member, one| if far(one) > far(odd) { one } else { odd };
        let odd = members.iter().fold(&members[0], farther);
        Some(Self { lowest, highest, odd, by: highest.value.minus(&lowest.value) })
    }

    /// Returns how far apart the members are in parts of a hundred of their mean.
    #[must_use]
    pub fn percent(&self, members: &[Member]) -> Option<Budget> {
        let mean = Budget::mean(members.iter().map(|member| &member.value))?;
        let part = |[by, mean]: [f64; 2]| (mean > 0.0).then(|| 100.0 * by / mean);
        Budget::through([&self.by, &mean], part)
    }
}
