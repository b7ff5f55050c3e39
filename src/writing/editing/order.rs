//! The order in which the keys of a section are written, by the form of its record.

use super::address::Step;
use crate::reading::Described;
use crate::reading::Kind;
use crate::reading::tree::Entry;

/// Returns the keys of the section at the end of the steps, in the order of the form; none where
/// the form has no order for them.
fn keys(form: &[Described], steps: &[Step]) -> Vec<&'static str> {
    let Some((step, rest)) = steps.split_first() else {
        return form.iter().map(|described| described.field.key).collect();
    };
    let Step::Key(key) = step else { return Vec::new() };
    let field = form.iter().find(|described| described.field.key == key);
    field.map_or_else(Vec::new, |field| of_kind(&field.kind, rest))
}

fn of_kind(kind: &Kind, steps: &[Step]) -> Vec<&'static str> {
    match (kind, steps.split_first()) {
        (Kind::Section(form), _) => keys(form, steps),
        (Kind::Free(below), Some((Step::Key(_), rest))) => of_kind(below, rest),
        (Kind::List(part, _), Some((Step::Part { .. } | Step::Number(_), rest))) => {
            of_kind(part, rest)
        }
        _ => Vec::new(),
    }
}

/// Where a new key comes to stand.
#[derive(Clone, Copy, Debug)]
pub(super) enum Spot<'n> {
    /// Behind this entry.
    Behind(&'n Entry),
    /// Before this one, the first of its section.
    Before(&'n Entry),
    /// In a section that has no entry.
    Alone,
}

/// Returns where a new key stands by the form: behind the last of those that come before it there;
/// a key without a place in the form, behind all.
pub(super) fn spot<'n>(
    entries: &'n [Entry],
    key: &str,
    form: &[Described],
    section: &[Step],
) -> Spot<'n> {
    let (Some(first), Some(last)) = (entries.first(), entries.last()) else { return Spot::Alone };
    let order = keys(form, section);
    let Some(at) = order.iter().position(|own| *own == key) else { return Spot::Behind(last) };
    let earlier = &order[..at];
    let before = entries.iter().rfind(|entry| earlier.contains(&entry.key.as_str()));
    before.map_or(Spot::Before(first), Spot::Behind)
}
