//! Runs every rule over a book and puts what comes of it in order.

use std::collections::HashSet;

use rayon::prelude::*;

use super::changed_but_not_remeasured;
use super::changed_but_not_remeasured::ChangedReading;
use super::finding::Finding;
use super::finding::NotChecked;
use super::finding::Outcome;
use super::level::Level;
use super::list::RULES;
use super::list::find;
use super::rule::Looks;
use super::rule::Rule;
use super::since::Comparison;
use super::since::compared;
use super::sum::Sum;
use super::waiving;
use crate::model::Boat;
use crate::model::Book;
use crate::model::FileId;
use crate::reading::Fault;
use crate::units::Date;
use crate::working::BoatSight;

/// What a check is made with.
#[derive(Clone, Copy, Debug)]
pub struct Check {
    /// The day that "today" is.
    pub as_of: Date,
}

/// What came of checking a book.
#[derive(Clone, Debug, Default)]
pub struct Checked {
    /// Everything found: the worst first, then by file and place.
    pub findings: Vec<Finding>,
    /// Every check that could not be made, by name and rule.
    pub not_checked: Vec<NotChecked>,
}

impl Checked {
    /// Returns how many findings of a level there are, the waived ones left out.
    #[must_use]
    pub fn count(&self, level: Level) -> usize {
        let counted = |finding: &&Finding| finding.level == level && finding.waived.is_none();
        self.findings.iter().filter(counted).count()
    }

    /// Returns the worst level that stands against the book.
    #[must_use]
    pub fn worst(&self) -> Option<Level> {
        let standing = self.findings.iter().filter(|finding| finding.stands());
        standing.map(|finding| finding.level).max()
    }

    /// Holds the book's waivers against the findings, as of a day: marks those that are waived and
    /// adds what is wrong with the waivers themselves.
    pub fn waive(&mut self, book: &Book, as_of: Date) {
        let undone = waiving::waive(book, &mut self.findings, &self.not_checked, as_of);
        self.not_checked.extend(undone);
        in_order(self);
    }

    /// Holds the readings that changed against the days they were read on. To be done before
    /// waiving: these findings can be waived.
    pub fn hold_beside(&mut self, book: &Book, changed: &[ChangedReading], as_of: Date) {
        let mut findings = changed_but_not_remeasured::findings(changed, as_of);
        set_aside(&mut findings, book, as_of);
        self.also(findings);
    }

    /// Adds findings that no look at this book alone can give.
    pub fn also(&mut self, findings: Vec<Finding>) {
        self.findings.extend(findings);
        in_order(self);
    }

    /// Marks how each finding stands to an earlier check; returns what is gone since.
    pub fn mark_since(&mut self, before: &Self) -> Vec<Finding> {
        let Comparison { standing, cured } = compared(before, self);
        let cured = cured.into_iter().cloned().collect();
        for (finding, standing) in self.findings.iter_mut().zip(standing) {
            finding.standing = Some(standing);
        }
        cured
    }
}

/// Checks a book with every rule; `faults` is what was told while it was read.
#[must_use]
pub fn check(book: &Book, faults: &[Fault], with: Check) -> Checked {
    let outcomes = outcomes(book, with, |outcome| !matches!(outcome, Outcome::Judged(_)));
    came_of(book, faults, with, outcomes)
}

/// Checks a book as [`check`] does and returns its [`sums`] too: each rule looks once for both.
#[must_use]
pub fn check_with_sums(book: &Book, faults: &[Fault], with: Check) -> (Checked, Vec<Sum>) {
    let (mut sums, mut others) = (Vec::new(), Vec::new());
    for outcome in outcomes(book, with, |_| true) {
        match outcome {
            Outcome::Judged(sum) => sums.push(*sum),
            other => others.push(other),
        }
    }
    (came_of(book, faults, with, others), sums)
}

fn came_of(book: &Book, faults: &[Fault], with: Check, outcomes: Vec<Outcome>) -> Checked {
    let mut checked = Checked::default();
    checked.findings.extend(of_reading(faults));
    for outcome in outcomes {
        match outcome {
            Outcome::Found(finding) => checked.findings.push(*finding),
            Outcome::NotChecked(missing) => checked.not_checked.push(missing),
            Outcome::Judged(_) => {}
        }
    }
    set_aside(&mut checked.findings, book, with.as_of);
    in_order(&mut checked);
    checked
}

/// Returns every worked-out value that a rule judges, whatever came of it: boat by boat, in the
/// order of the rules.
#[must_use]
pub fn sums(book: &Book, with: Check) -> Vec<Sum> {
    let judged = |outcome| match outcome {
        Outcome::Judged(sum) => Some(*sum),
        Outcome::Found(_) | Outcome::NotChecked(_) => None,
    };
    outcomes(book, with, |outcome| matches!(outcome, Outcome::Judged(_)))
        .into_iter()
        .filter_map(judged)
        .collect()
}

/// Returns what every rule has to say, of which only what is `kept` is ever collected.
fn outcomes(book: &Book, with: Check, kept: fn(&Outcome) -> bool) -> Vec<Outcome> {
    let boats = book.boats.par_iter().flat_map_iter(|boat| of_boat(book, boat));
    let of_the_book = RULES.par_iter().flat_map_iter(|rule| match rule.looks {
        Looks::AtTheBook(look) => look(book, with.as_of),
        _ => Vec::new(),
    });
    boats.chain(of_the_book).filter(kept).collect()
}

fn of_boat(book: &Book, boat: &Boat) -> Vec<Outcome> {
    let sight = BoatSight::new(book, boat);
    let look = |rule: &&'static Rule| match rule.looks {
        Looks::AtEachBoat(look) => look(&sight),
        Looks::AtEachSeat(look) => sight.seats().flat_map(|seat| look(&seat)).collect(),
        _ => Vec::new(),
    };
    RULES.iter().flat_map(look).collect()
}

/// Returns what was told while reading, as findings.
pub fn of_reading<'f>(faults: impl IntoIterator<Item = &'f Fault>) -> Vec<Finding> {
    faults.into_iter().filter_map(told).collect()
}

/// What was told while reading, as a finding of the rule it breaks.
fn told(fault: &Fault) -> Option<Finding> {
    let rule = find(fault.what.rule())?;
    let (here, also_here) = fault.what.labels();
    let finding = Finding::new(rule, fault.name.clone(), fault.place, here);
    let finding = match fault.also {
        Some(also) => finding.also(also, also_here),
        None => finding,
    };
    Some(finding.saying(fault.what.to_string()).remedy(fault.what.help()))
}

/// Marks what is found on boats that are not used: it is shown and stops nothing, but for what is
/// wrong with taking them out of use.
fn set_aside(findings: &mut [Finding], book: &Book, as_of: Date) {
    let unused = out_of_use(book, as_of);
    for finding in findings {
        let of_unused = unused.contains(&finding.labels[0].place.file);
        finding.shown_only |= of_unused && !finding.name.is_within("*/out-of-use");
    }
}

/// Returns the files of boats that are not used.
fn out_of_use(book: &Book, as_of: Date) -> HashSet<FileId> {
    let begun = |boat: &&Boat| {
        let since = boat.out_of_use.as_ref().and_then(|out| out.since);
        boat.is_out_of_use() && since.is_some_and(|since| since.value <= as_of)
    };
    let unused = book.boats.iter().filter(begun);
    unused.map(|boat| boat.file).collect()
}

fn in_order(checked: &mut Checked) {
    let key = |finding: &Finding| {
        let place = finding.labels[0].place;
        (std::cmp::Reverse(finding.level), place.file, place.span, finding.rule.id)
    };
    checked
        .findings
        .sort_by(|one, other| key(one).cmp(&key(other)).then_with(|| one.name.cmp(&other.name)));
    checked.not_checked.sort();
}
