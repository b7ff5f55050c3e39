//! Settings of one state of a book that hold for another: its limits, its classes, its waivers.

use super::book;
use super::book::OpenBook;
use super::output::Done;
use super::states;
use super::subject::Subject;
use crate::model::Book;
use crate::model::Name;
use crate::model::Place;
use crate::reading;
use crate::reading::Fault;
use crate::reports::shown;
use crate::rules;
use crate::rules::Checked;
use crate::rules::Finding;
use crate::rules::NotChecked;
use crate::store::CLUB_FILE;
use crate::store::Named;
use crate::store::Store;
use crate::store::WAIVERS_FILE;

/// Limits taken from another state, and what the book's own loosen.
pub(super) struct Guarded {
    own: Book,
    guarding: Book,
    /// What the book's own settings loosen, and what can't be read in them.
    of_settings: Vec<Finding>,
    /// What of its own settings can't be had here.
    not_seen: Option<NotChecked>,
    /// Whether its own settings can't be used as they stand.
    pub(super) settings_are_bad: bool,
    told: String,
}

impl Guarded {
    /// Gives every boat the limits of her own that she has there; one that is not there has none.
    pub(super) fn hold(&self, book: &mut Book) {
        let mut boats = std::mem::take(&mut book.boats);
        for boat in &mut boats {
            let there = self.guarding.boat(&boat.id.value).map(|there| there.limits.clone());
            let limits = there.unwrap_or_default();
            let file = |place: Place| self.guarding.file(place.file);
            boat.limits = limits.moved(|place| book.adopt(file(place), place.span));
        }
        book.boats = boats;
    }

    /// Tells what the book's own settings loosen, and whose are in force.
    pub(super) fn tell(self, open: &mut OpenBook, checked: &mut Checked) {
        checked.also(adopted(&mut open.book, &self.own, self.of_settings));
        checked.not_checked.extend(self.not_seen);
        open.told.push(self.told);
    }
}

/// Returns the subject with the settings of a commit, and what became of its own.
///
/// # Errors
///
/// What the command comes to instead: that commit can't be had.
pub(super) fn guarded(subject: &Subject, rev: &str) -> Result<(Store, Guarded), Done> {
    let repository = &subject.origin()?.repository;
    let had = || {
        let id = repository.commit(rev)?;
        let day = repository.details(id)?.committer.when.and_then(states::day_of);
        Ok((id, day, repository.at(id)?))
    };
    let (id, day, there) = had().map_err(|error| book::could_not(&error))?;
    let store = with_settings_of(subject.store.clone(), &there, &[]);
    let (own, faults) = reading::read(&subject.store.name, subject.store.files.clone());
    let (guarding, _) = reading::read(&there.name, there.files);
    let path = |fault: &Fault| own.file(fault.place.file).path.as_str();
    let unread: Vec<&Fault> = faults
        .iter()
        .filter(|fault| is_setting(path(fault)))
        .filter(|fault| !is_same(path(fault), &subject.store, &store))
        .collect();
    let settings_are_bad = unread.iter().any(|fault| path(fault) == CLUB_FILE);
    let not_seen = not_seen(subject);
    // What can't be had here has not been loosened.
    let mut of_settings =
        if not_seen.is_none() { rules::loosened(&own, &guarding) } else { Vec::new() };
    of_settings.extend(rules::of_reading(unread));
    let of = day.map_or(String::new(), |day| format!(" of {day}"));
    let told = format!("Limits and waivers are those of {rev} (commit {}{of}).", id.short());
    let told = shown::line(&told);
    Ok((store, Guarded { own, guarding, of_settings, not_seen, settings_are_bad, told }))
}

fn is_same(path: &str, one: &Store, other: &Store) -> bool {
    let own = one.files.iter().find(|named| named.path == path);
    own.is_some_and(|own| other.files.contains(own))
}

/// Makes findings of another reading of the book point into this one.
fn adopted(book: &mut Book, own: &Book, mut findings: Vec<Finding>) -> Vec<Finding> {
    for label in findings.iter_mut().flat_map(|finding| &mut finding.labels) {
        label.place = book.adopt(own.file(label.place.file), label.place.span);
    }
    findings
}

/// Returns what can't be told of the limits, because some of the settings can't be had here.
fn not_seen(subject: &Subject) -> Option<NotChecked> {
    let unread = subject.conflicts.iter().chain(&subject.store.absent);
    let missing: Vec<String> = unread
        .filter(|path| is_setting(path))
        .map(|path| format!("the text of {}", shown::line(path)))
        .collect();
    let name = Name::record("club");
    (!missing.is_empty()).then_some(NotChecked { rule: "limit-loosened", name, missing })
}

/// Returns a state with the settings of another: its club, its classes and its waivers, but for
/// those that are `kept`.
pub(super) fn with_settings_of(mut store: Store, other: &Store, kept: &[&str]) -> Store {
    let setting = |named: &Named| is_setting(&named.path) && !kept.contains(&named.path.as_str());
    store.files.retain(|named| !setting(named));
    store.files.extend(other.files.iter().filter(|named| setting(named)).cloned());
    store.files.sort_by(|one, other| one.path.cmp(&other.path));
    store
}

/// Returns whether a text is one of the book's settings.
pub(super) fn is_setting(path: &str) -> bool {
    let in_classes = path.split('/').next().is_some_and(|top| top.eq_ignore_ascii_case("classes"));
    path == CLUB_FILE || path == WAIVERS_FILE || in_classes
}
