//! Folds what is new in plenty: a first measuring is read at a glance. JSON and Markdown fold
//! nothing.

use std::collections::HashSet;

use super::called;
use super::consequences::Consequence;
use super::spoken;
use super::text::of_change;
use crate::history::Change;
use crate::history::ChangeKind;
use crate::model::Name;

/// So many new values of one seat, oar or record are told one by one; more are counted.
const A_FEW: usize = 8;

/// Returns a line for each change.
pub(super) fn changed(changes: &[&Change]) -> Vec<String> {
    let is_new = |own: &Change| own.kind == ChangeKind::Added && !called::field(own).is_empty();
    let told = |own: &&Change| of_change(own);
    let counted = |whole: &str, count: usize| format!("{whole}: {count} values are new");
    folded(changes, |own| (&own.whole, is_new(own)), told, counted)
}

/// Returns a line for each worked-out value that is not what it was.
pub(super) fn followed(all: &[Consequence]) -> Vec<String> {
    let told = |own: &Consequence| {
        format!("{}: {} {}", called::whole(own.name.as_str()), own.called, spoken::followed(own))
    };
    let counted =
        |whole: &str, count: usize| format!("{whole}: {count} values can be worked out now");
    folded(all, |own| (&own.name, own.old.is_none()), told, counted)
}

/// Returns the lines; of what is new of one whole, one where there are more than a few.
fn folded<T>(
    all: &[T],
    of: impl Fn(&T) -> (&Name, bool),
    told: impl Fn(&T) -> String,
    counted: impl Fn(&str, usize) -> String,
) -> Vec<String> {
    let new_of = |name: &Name| all.iter().filter(|own| of(own) == (name, true)).count();
    let mut seen = HashSet::new();
    let line = |own: &T| {
        let (name, is_new) = of(own);
        let count = if is_new { new_of(name) } else { 0 };
        if count <= A_FEW {
            return Some(told(own));
        }
        seen.insert(name.clone()).then(|| counted(&called::whole(name.as_str()), count))
    };
    all.iter().filter_map(line).collect()
}
