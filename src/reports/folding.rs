//! Many notes of one rule become one with a count. Nothing but notes is ever folded.

use std::collections::BTreeMap;

use crate::rules::Finding;
use crate::rules::Level;

/// As many notes of one rule are drawn one by one.
const FEW: usize = 5;

/// A finding that is shown, and those that it stands for.
pub(super) struct Folded<'f> {
    pub(super) finding: &'f Finding,
    pub(super) alike: Vec<&'f Finding>,
}

/// Returns the findings in their order, more than a few notes of one rule folded into the first.
pub(super) fn folded(findings: &[Finding]) -> Vec<Folded<'_>> {
    let mut notes: BTreeMap<&str, Vec<&Finding>> = BTreeMap::new();
    for finding in findings.iter().filter(|finding| finding.level == Level::Note) {
        notes.entry(finding.rule.id).or_default().push(finding);
    }
    notes.retain(|_, alike| alike.len() > FEW);
    let mut shown = Vec::new();
    for finding in findings {
        let alike = match notes.get(finding.rule.id) {
            Some(alike) if finding.level == Level::Note => {
                if !std::ptr::eq(alike[0], finding) {
                    continue;
                }
                alike[1..].to_vec()
            }
            _ => Vec::new(),
        };
        shown.push(Folded { finding, alike });
    }
    shown
}
