//! Checks what `lint` was asked to check: by which limits, beside which earlier state.

use std::collections::HashMap;

use super::arguments::Lint;
use super::book;
use super::book::OpenBook;
use super::earlier;
use super::earlier::EarlierBook;
use super::output::Done;
use super::states;
use super::subject::Side;
use super::subject::Subject;
use crate::model::Book;
use crate::model::Name;
use crate::model::Said;
use crate::reading;
use crate::reading::Fault;
use crate::reports::Earlier;
use crate::reports::shown;
use crate::rules;
use crate::rules::ChangedReading;
use crate::rules::Check;
use crate::rules::Checked;
use crate::rules::Finding;
use crate::rules::NotChecked;
use crate::store::Store;
use crate::units::Date;

/// A book that was checked.
pub(super) struct CheckedBook {
    pub(super) open: OpenBook,
    pub(super) checked: Checked,
    pub(super) earlier: Option<Compared>,
    pub(super) conflicts: Vec<String>,
    /// Whether the book's own settings can't be used as they stand, even where others were.
    pub(super) settings_are_bad: bool,
}

/// The earlier state, and what was found there and is gone.
pub(super) struct Compared {
    pub(super) state: EarlierBook,
    pub(super) cured: Vec<Finding>,
}

impl Compared {
    /// Returns it for a report.
    pub(super) fn shown(&self) -> Earlier<'_> {
        Earlier { called: &self.state.called, book: &self.state.book, cured: &self.cured }
    }
}

/// Limits taken from another state, and what the book's own loosen.
struct Guarded {
    own: Book,
    guarding: Book,
    /// What the book's own settings loosen, and what can't be read in them.
    of_settings: Vec<Finding>,
    settings_are_bad: bool,
    told: String,
}

/// Checks a subject as of a day.
///
/// # Errors
///
/// What the command comes to instead: a state that is needed can't be had.
pub(super) fn check(
    mut subject: Subject,
    arguments: &Lint,
    as_of: Date,
) -> Result<CheckedBook, Done> {
    let (changed, unseen) = changed(&mut subject, arguments);
    let guarded = match &arguments.rules_from {
        Some(rev) => Some(guarded(&subject, rev)?),
        None => None,
    };
    let unread_settings = unread_settings(&subject);
    let (store, guarded) = match guarded {
        Some((store, guarded)) => (store, Some(guarded)),
        None => (std::mem::take(&mut subject.store), None),
    };
    let state = match &arguments.since {
        Some(rev) => Some(earlier::since(subject.origin()?, rev, &store)?),
        None => None,
    };
    let mut open = book::read(store);
    open.book.unread.extend_from_slice(&subject.conflicts);
    if let Some(Guarded { guarding, .. }) = &guarded {
        take_boats_limits(&mut open.book, guarding);
    }
    let mut checked = rules::check(&open.book, &open.faults, Check { as_of });
    checked.hold_beside(&open.book, &earlier::placed(changed, &open.book), as_of);
    if !arguments.no_waivers {
        checked.waive(&open.book, as_of);
    }
    tell_unseen(&mut open, &mut checked, unseen.as_deref(), &subject.conflicts);
    let mut settings_are_bad = open.settings_are_bad();
    if let Some(mut guarded) = guarded {
        if !unread_settings.is_empty() {
            // What can't be read here has not been loosened.
            guarded.of_settings.retain(|finding| finding.rule.id != "limit-loosened");
            checked.not_checked.push(limits_not_seen(&unread_settings));
        }
        checked.also(adopted(&mut open.book, &guarded.own, guarded.of_settings));
        open.told.push(guarded.told);
        settings_are_bad |= guarded.settings_are_bad;
    }
    let mut earlier = state.map(|state| compared(state, &mut checked, arguments, as_of));
    if let Some(sides) = subject.origin.as_ref().and_then(|origin| origin.sides.as_ref()) {
        tell_sides(&open.book, &mut checked, sides);
    }
    if let Some(earlier) =
        earlier.as_mut().filter(|_| !(subject.conflicts.is_empty() && open.absent.is_empty()))
    {
        // What is not merged yet, or not in the folder, is not gone.
        earlier.cured.clear();
    }
    Ok(CheckedBook { open, checked, earlier, conflicts: subject.conflicts, settings_are_bad })
}

/// Returns the readings that changed, or why that can't be told.
fn changed(subject: &mut Subject, arguments: &Lint) -> (Vec<ChangedReading>, Option<String>) {
    let unseen = subject.no_past.take();
    let Some(origin) = &subject.origin else { return (Vec::new(), unseen) };
    let since = arguments.since.as_deref();
    match earlier::changed_readings(origin, since, &subject.store.files) {
        Ok(changed) => (changed, unseen),
        Err(error) => (Vec::new(), Some(error.to_string())),
    }
}

/// Counts what was not looked at as not checked, so that it is never clear.
fn tell_unseen(
    open: &mut OpenBook,
    checked: &mut Checked,
    no_past: Option<&str>,
    conflicts: &[String],
) {
    if let Some(why) = no_past {
        checked.not_checked.push(past_not_seen(why));
        let told = format!("Not looked at, whether a reading changed without a new day: {why}");
        open.told.push(shown::line(&told));
    }
    checked.not_checked.extend(conflicts.iter().map(|path| not_merged(path)));
    checked.not_checked.extend(open.absent.iter().map(|path| not_here(path)));
}

fn past_not_seen(why: &str) -> NotChecked {
    let rule = "changed-but-not-remeasured";
    NotChecked { rule, name: Name::record("club"), missing: vec![shown::line(why)] }
}

fn not_merged(path: &str) -> NotChecked {
    let missing = vec!["one text of it: both sides changed the same lines".to_owned()];
    NotChecked { rule: "unreadable", name: Name::record(path), missing }
}

/// Returns the settings of the book that can't be had here.
fn unread_settings(subject: &Subject) -> Vec<String> {
    let unread = subject.conflicts.iter().chain(&subject.store.absent);
    unread.filter(|path| earlier::is_setting(path)).cloned().collect()
}

fn limits_not_seen(paths: &[String]) -> NotChecked {
    let missing = paths.iter().map(|path| format!("the text of {}", shown::line(path))).collect();
    NotChecked { rule: "limit-loosened", name: Name::record("club"), missing }
}

fn not_here(path: &str) -> NotChecked {
    let missing = vec!["the file: this checkout is sparse".to_owned()];
    NotChecked { rule: "unreadable", name: Name::record(path), missing }
}

/// Returns the subject with the settings of a commit, and what became of its own.
fn guarded(subject: &Subject, rev: &str) -> Result<(Store, Guarded), Done> {
    let repository = &subject.origin()?.repository;
    let had = || {
        let id = repository.commit(rev)?;
        let day = repository.details(id)?.committer.when.and_then(states::day_of);
        Ok((id, day, repository.at(id)?))
    };
    let (id, day, there) = had().map_err(|error| book::could_not(&error))?;
    let store = earlier::with_settings_of(subject.store.clone(), &there, &[]);
    let (own, faults) = reading::read(&subject.store.name, subject.store.files.clone());
    let (guarding, _) = reading::read(&there.name, there.files);
    let path = |fault: &Fault| own.file(fault.place.file).path.as_str();
    let unread: Vec<&Fault> = faults
        .iter()
        .filter(|fault| earlier::is_setting(path(fault)))
        .filter(|fault| !is_same(path(fault), &subject.store, &store))
        .collect();
    let settings_are_bad = unread.iter().any(|fault| path(fault) == "club.yaml");
    let mut of_settings = rules::loosened(&own, &guarding);
    of_settings.extend(rules::of_reading(unread));
    let of = day.map_or(String::new(), |day| format!(" of {day}"));
    let told = format!("Limits and waivers are those of {rev} (commit {}{of}).", id.short());
    let told = shown::line(&told);
    Ok((store, Guarded { own, guarding, of_settings, settings_are_bad, told }))
}

/// Gives every boat the limits of her own that she has there; one that is not there has none.
fn take_boats_limits(book: &mut Book, guarding: &Book) {
    let mut boats = std::mem::take(&mut book.boats);
    for boat in &mut boats {
        let there = guarding.boat(&boat.id.value).map(|there| there.limits.clone());
        let limits = there.unwrap_or_default();
        boat.limits = limits.moved(|place| book.adopt(guarding.file(place.file), place.span));
    }
    book.boats = boats;
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

/// Says of every value that only one side of a merge has, which one brought it.
fn tell_sides(book: &Book, checked: &mut Checked, sides: &[Side; 2]) {
    let now = by_name(book);
    let of_sides = sides.each_ref().map(|side| by_name(&side.book));
    for finding in &mut checked.findings {
        let mut brought = [false; 2];
        for label in &mut finding.labels {
            let Some(name) = book.name_at(label.place) else { continue };
            let is_now = |side: &ByName| side.get(name) == now.get(name);
            let from = match (is_now(&of_sides[0]), is_now(&of_sides[1])) {
                (true, false) => 0,
                (false, true) => 1,
                _ => continue,
            };
            brought[from] = true;
            label.text.push_str(&format!(", from {}", sides[from].called));
        }
        if brought == [true, true] {
            let (ours, theirs) = (&sides[0].called, &sides[1].called);
            finding
                .message
                .push_str(&format!("; one part comes from {ours}, another from {theirs}"));
        }
    }
}

/// What a book says, by name.
type ByName<'b> = HashMap<&'b Name, Vec<&'b Said>>;

fn by_name(book: &Book) -> ByName<'_> {
    let mut all = ByName::new();
    for written in &book.written {
        all.entry(&written.name).or_default().push(&written.said);
    }
    all
}

fn compared(state: EarlierBook, checked: &mut Checked, arguments: &Lint, as_of: Date) -> Compared {
    let mut before = rules::check(&state.book, &state.faults, Check { as_of });
    if !arguments.no_waivers {
        before.waive(&state.book, as_of);
    }
    let cured = checked.mark_since(&before);
    Compared { state, cured }
}
