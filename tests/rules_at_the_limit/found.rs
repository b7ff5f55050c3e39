//! What one rule finds in the sound book with edits.

use tholebook::rules::Checked;
use tholebook::rules::Edit;
use tholebook::rules::Finding;

use crate::sound_book::SoundBook;

pub(crate) const BOAT: &str = "boats/kittiwake.yaml";
pub(crate) const OARS: &str = "oars/long-ash.yaml";
pub(crate) const PITCH: &str = "pitch: {catch: 11, square: 11, finish: 11}";
pub(crate) const LEVEL: &str = "  level: {trim: 0.0, roll: 0.1}\n";
pub(crate) const A2_BEARS: Edit = (OARS, "oar: A2", "bears: flat", "bears: round");

pub(crate) fn checked(edits: &[Edit]) -> Checked {
    SoundBook::with(edits).check().1
}

/// What one rule finds in the sound book with edits.
pub(crate) fn found(rule: &str, edits: &[Edit]) -> Vec<Finding> {
    checked(edits).findings.into_iter().filter(|finding| finding.rule.id == rule).collect()
}

/// The only thing that one rule finds.
pub(crate) fn only(rule: &str, edits: &[Edit]) -> Finding {
    let mut found = found(rule, edits);
    assert_eq!(found.len(), 1, "{rule}: {found:#?}");
    found.remove(0)
}

/// What one rule finds at the first seat's own oar when its gap is written so.
pub(crate) fn with_gap(rule: &str, gap: &str) -> Option<Finding> {
    let own = |finding: &Finding| finding.name.as_str() == "kittiwake/seat-1/rowlock/gap";
    let gap: &str = format!("gap: {gap}").leak();
    found(rule, &[(BOAT, "seat: 1", "gap: 60", gap)]).into_iter().find(own)
}

pub(crate) fn says(finding: &Finding, part: &str) {
    let said = format!("{} {}", finding.message, finding.remedy);
    assert!(said.contains(part), "{part:?} is not in: {said}");
}

pub(crate) fn never_says_bend(finding: &Finding) {
    let said = format!("{} {}", finding.message, finding.remedy);
    assert!(!said.to_lowercase().contains("bend"), "{said}");
}

pub(crate) fn not_checked(checked: &Checked, rule: &str) -> usize {
    checked.not_checked.iter().filter(|missing| missing.rule == rule).count()
}
