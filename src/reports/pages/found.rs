//! What was found, by the record it is found of: a fleet has many records and many findings.

use std::collections::HashMap;

use crate::model::Boat;
use crate::model::Book;
use crate::model::Name;
use crate::reports::Report;
use crate::reports::concerning::concerns;
use crate::rules::Finding;
use crate::rules::NotChecked;

/// Findings, and checks not made, by record.
pub(super) struct Found<'p> {
    book: &'p Book,
    findings: HashMap<&'p str, Vec<(usize, &'p Finding)>>,
    not_checked: HashMap<&'p str, Vec<&'p NotChecked>>,
    elsewhere: Vec<&'p Finding>,
}

impl<'p> Found<'p> {
    pub(super) fn of(report: &Report<'p>) -> Self {
        let book = report.book;
        let mut findings: HashMap<&str, Vec<(usize, &Finding)>> = HashMap::new();
        for (at, finding) in report.checked.findings.iter().enumerate() {
            findings.entry(record(&finding.name)).or_default().push((at, finding));
        }
        let mut not_checked: HashMap<&str, Vec<&NotChecked>> = HashMap::new();
        for missing in &report.checked.not_checked {
            not_checked.entry(record(&missing.name)).or_default().push(missing);
        }
        let known = |id: &str| {
            let boat = book.boat(id).is_some() || book.oar_set(id).is_some();
            boat || book.crews.iter().any(|crew| crew.id.value == id)
        };
        let ids = findings.keys().copied().filter(|id| !known(id));
        let ids: Vec<&str> = ids.collect();
        let elsewhere = report.checked.findings.iter();
        let elsewhere = elsewhere.filter(|own| ids.contains(&record(&own.name))).collect();
        Self { book, findings, not_checked, elsewhere }
    }

    /// Returns what was found of a record, the worst first.
    pub(super) fn of_record(&self, id: &str) -> Vec<&'p Finding> {
        let own = self.findings.get(id).into_iter().flatten();
        own.map(|(_, finding)| *finding).collect()
    }

    /// Returns what was found of a boat and of the oars she carries, the worst first.
    pub(super) fn of_boat(&self, boat: &Boat) -> Vec<&'p Finding> {
        let ids = ids(boat).into_iter();
        let all = ids.filter_map(|id| self.findings.get(id)).flatten();
        let mut own: Vec<(usize, &Finding)> =
            all.filter(|(_, one)| concerns(self.book, boat, &one.name)).copied().collect();
        own.sort_by_key(|(at, _)| *at);
        own.dedup_by_key(|(at, _)| *at);
        own.into_iter().map(|(_, finding)| finding).collect()
    }

    /// Returns the checks that could not be made of a boat and of the oars she carries.
    pub(super) fn not_checked(&self, boat: &Boat) -> Vec<&'p NotChecked> {
        let ids = ids(boat).into_iter();
        let all = ids.filter_map(|id| self.not_checked.get(id)).flatten().copied();
        let mut own: Vec<&NotChecked> =
            all.filter(|one| concerns(self.book, boat, &one.name)).collect();
        own.sort();
        own.dedup();
        own
    }

    /// Returns the checks that could not be made of a record.
    pub(super) fn not_checked_of(&self, id: &str) -> Vec<&'p NotChecked> {
        self.not_checked.get(id).cloned().unwrap_or_default()
    }

    /// Returns what was found of no record that has a page.
    pub(super) fn elsewhere(&self) -> &[&'p Finding] {
        &self.elsewhere
    }
}

fn ids(boat: &Boat) -> Vec<&str> {
    let mut ids = vec![boat.id.value.as_str()];
    ids.extend(boat.oars.as_ref().map(|oars| oars.value.as_str()).filter(|id| *id != ids[0]));
    ids
}

fn record(name: &Name) -> &str {
    name.as_str().split('/').next().unwrap_or_default()
}
