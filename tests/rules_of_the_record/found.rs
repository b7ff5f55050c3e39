//! What rules find in the sound book with edits.

use tholebook::rules::Checked;
use tholebook::rules::Edit;
use tholebook::rules::Finding;
use tholebook::rules::Level;

use crate::sound_book::SoundBook;

pub(crate) const BOAT: &str = "boats/kittiwake.yaml";
pub(crate) const OARS: &str = "oars/long-ash.yaml";
pub(crate) const CREW: &str = "crews/masters-a.yaml";

pub(crate) fn checked(edits: &[Edit]) -> Checked {
    SoundBook::with(edits).check().1
}

pub(crate) fn of<'c>(checked: &'c Checked, rule: &str) -> Vec<&'c Finding> {
    checked.findings.iter().filter(|finding| finding.rule.id == rule).collect()
}

/// Names and levels of what one rule finds in the book with edits.
pub(crate) fn found(edits: &[Edit], rule: &str) -> Vec<(String, Level)> {
    let checked = checked(edits);
    let name = |finding: &&Finding| (finding.name.to_string(), finding.level);
    of(&checked, rule).iter().map(name).collect()
}

/// The one finding of a rule.
pub(crate) fn only(edits: &[Edit], rule: &str) -> Finding {
    let checked = checked(edits);
    let found = of(&checked, rule);
    assert_eq!(found.len(), 1, "{found:#?}");
    found[0].clone()
}

pub(crate) fn not_checked(edits: &[Edit], rule: &str) -> Vec<String> {
    let checked = checked(edits);
    let of_rule = checked.not_checked.iter().filter(|missing| missing.rule == rule);
    of_rule.map(|missing| format!("{}: {}", missing.name, missing.missing.join(", "))).collect()
}

/// An edit that puts lines of the boat before her seats, in the place of her foot holes.
pub(crate) fn before_seats(lines: &'static str) -> Edit {
    (BOAT, "", "foot-holes: {first: 820, apart: 30, count: 8}\n", lines)
}

pub(crate) fn uncertainty(finding: &Finding) -> f64 {
    finding.value.and_then(|value| value.uncertainty).expect("a measured value")
}
