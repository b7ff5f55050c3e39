//! Checks what `lint` was asked to check: by which limits, beside which earlier state.

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
    let mut unseen = subject.no_past.take();
    let changed = match &subject.origin {
        Some(origin) => earlier::changed_readings(origin, &subject.store.files),
        None => Ok(Vec::new()),
    };
    let changed = changed.unwrap_or_else(|error| {
        unseen = Some(error.to_string());
        Vec::new()
    });
    let guarded = match &arguments.rules_from {
        Some(rev) => Some(guarded(&subject, rev)?),
        None => None,
    };
    let (store, guarded) = match guarded {
        Some((store, guarded)) => (store, Some(guarded)),
        None => (std::mem::take(&mut subject.store), None),
    };
    let state = match &arguments.since {
        Some(rev) => Some(earlier::since(subject.origin()?, rev, &store)?),
        None => None,
    };
    let mut open = book::read(store);
    let mut checked = rules::check(&open.book, &open.faults, Check { as_of });
    checked.hold_beside(&open.book, &earlier::placed(changed, &open.book), as_of);
    if !arguments.no_waivers {
        checked.waive(&open.book, as_of);
    }
    checked.not_checked.extend(unseen.as_deref().map(past_not_seen));
    let mut settings_are_bad = open.settings_are_bad();
    if let Some(guarded) = guarded {
        checked.also(adopted(&mut open.book, &guarded.own, guarded.of_settings));
        open.told.push(guarded.told);
        settings_are_bad |= guarded.settings_are_bad;
    }
    if let Some(sides) = subject.origin.as_ref().and_then(|origin| origin.sides.as_ref()) {
        tell_sides(&open.book, &mut checked, sides);
    }
    let mut earlier = state.map(|state| compared(state, &mut checked, arguments, as_of));
    if let Some(earlier) = earlier.as_mut().filter(|_| !subject.conflicts.is_empty()) {
        // What is not merged yet is not gone.
        earlier.cured.clear();
    }
    Ok(CheckedBook { open, checked, earlier, conflicts: subject.conflicts, settings_are_bad })
}

fn past_not_seen(why: &str) -> NotChecked {
    let rule = "changed-but-not-remeasured";
    NotChecked { rule, name: Name::record("club"), missing: vec![shown::line(why)] }
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
    Ok((store, Guarded { own, of_settings, settings_are_bad, told: shown::line(&told) }))
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
    for finding in &mut checked.findings {
        let mut brought = [false; 2];
        for label in &mut finding.labels {
            let Some(name) = book.name_at(label.place) else { continue };
            let said = [said(&sides[0].book, name), said(&sides[1].book, name)];
            let now = self::said(book, name);
            let from = match (said[0] == now, said[1] == now) {
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

fn said<'b>(book: &'b Book, name: &Name) -> Vec<&'b Said> {
    let own = book.written.iter().filter(|written| written.name == *name);
    own.map(|written| &written.said).collect()
}

fn compared(state: EarlierBook, checked: &mut Checked, arguments: &Lint, as_of: Date) -> Compared {
    let mut before = rules::check(&state.book, &state.faults, Check { as_of });
    if !arguments.no_waivers {
        before.waive(&state.book, as_of);
    }
    let cured = checked.mark_since(&before);
    Compared { state, cured }
}
