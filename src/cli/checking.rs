//! Checks what `lint` was asked to check: by which limits, beside which earlier state.

use std::collections::HashMap;

use super::book;
use super::book::OpenBook;
use super::limits_from;
use super::output::Done;
use super::parting;
use super::parting::EarlierBook;
use super::remeasuring;
use super::subject::Side;
use super::subject::Subject;
use crate::model::Book;
use crate::model::Name;
use crate::model::Said;
use crate::reports::Earlier;
use crate::reports::shown;
use crate::rules;
use crate::rules::ChangedReading;
use crate::rules::Check;
use crate::rules::Checked;
use crate::rules::Finding;
use crate::rules::NotChecked;
use crate::rules::Parted;
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
    /// The names of the findings that went away with their records.
    pub(super) gone: Vec<Name>,
}

impl Compared {
    /// Returns it for a report.
    pub(super) fn shown(&self) -> Earlier<'_> {
        let Self { state, cured, gone } = self;
        Earlier { called: &state.called, book: &state.book, cured, gone: gone.len() }
    }
}

/// By what, and beside what, a subject is checked.
#[derive(Clone, Copy)]
pub(super) struct Yardstick<'a> {
    /// The commit that old findings are known from.
    pub(super) since: Option<&'a str>,
    /// The commit that limits and waivers are taken from, where they are not the subject's own.
    pub(super) rules_from: Option<&'a str>,
    /// Whether waivers count.
    pub(super) waivers: bool,
    /// The day that ages are counted to.
    pub(super) as_of: Date,
}

/// Checks a subject.
///
/// # Errors
///
/// What the command comes to instead: a state that is needed can't be had.
pub(super) fn check(mut subject: Subject, by: Yardstick<'_>) -> Result<CheckedBook, Done> {
    let as_of = by.as_of;
    let (changed, unseen) = changed(&mut subject, by.since);
    let guarded = match by.rules_from {
        Some(rev) => Some(limits_from::guarded(&subject, rev)?),
        None => None,
    };
    let (store, guarded) = match guarded {
        Some((store, guarded)) => (store, Some(guarded)),
        None => (std::mem::take(&mut subject.store), None),
    };
    let state = match by.since {
        Some(rev) => Some(parting::since(subject.origin()?, rev, &store)?),
        None => None,
    };
    let mut open = book::read(store);
    open.book.unread.extend_from_slice(&subject.conflicts);
    if let Some(guarded) = &guarded {
        guarded.hold(&mut open.book);
    }
    let mut checked = rules::check(&open.book, &open.faults, Check { as_of: by.as_of });
    checked.hold_beside(&open.book, &remeasuring::placed(changed, &open.book), as_of);
    if by.waivers {
        checked.waive(&open.book, as_of);
    }
    tell_unseen(&mut open, &mut checked, unseen.as_deref(), &subject.conflicts);
    let mut settings_are_bad = open.settings_are_bad();
    if let Some(guarded) = guarded {
        settings_are_bad |= guarded.settings_are_bad;
        guarded.tell(&mut open, &mut checked);
    }
    // What is not merged yet, or not in the folder, is not gone.
    let is_whole = subject.conflicts.is_empty() && open.absent.is_empty();
    let earlier = state.map(|state| compared(state, &open.book, &mut checked, by, is_whole));
    if let Some(sides) = subject.origin.as_ref().and_then(|origin| origin.sides.as_ref()) {
        tell_sides(&open.book, &mut checked, sides);
    }
    Ok(CheckedBook { open, checked, earlier, conflicts: subject.conflicts, settings_are_bad })
}

/// Returns the readings that changed, or why that can't be told.
fn changed(subject: &mut Subject, since: Option<&str>) -> (Vec<ChangedReading>, Option<String>) {
    let unseen = subject.no_past.take();
    let Some(origin) = &subject.origin else { return (Vec::new(), unseen) };
    match remeasuring::changed_readings(origin, since, &subject.store.files) {
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
    checked.not_checked.extend(open.strays.iter().map(|path| not_so_named(path)));
}

fn past_not_seen(why: &str) -> NotChecked {
    let rule = "changed-but-not-remeasured";
    NotChecked { rule, name: Name::record("club"), missing: vec![shown::line(why)] }
}

fn not_merged(path: &str) -> NotChecked {
    let missing = vec!["one text of it: both sides changed the same lines".to_owned()];
    NotChecked { rule: "unreadable", name: Name::record(path), missing }
}

fn not_here(path: &str) -> NotChecked {
    let missing = vec!["the file: this checkout is sparse".to_owned()];
    NotChecked { rule: "unreadable", name: Name::record(path), missing }
}

fn not_so_named(path: &str) -> NotChecked {
    let missing = vec!["a place and a name that end in .yaml: it holds a record".to_owned()];
    NotChecked { rule: "unreadable", name: Name::record(path), missing }
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
    for written in book.written() {
        all.entry(&written.name).or_default().push(&written.said);
    }
    all
}

fn compared(
    state: EarlierBook,
    now: &Book,
    checked: &mut Checked,
    by: Yardstick<'_>,
    is_whole: bool,
) -> Compared {
    let mut before = rules::check(&state.book, &state.faults, Check { as_of: by.as_of });
    if by.waivers {
        before.waive(&state.book, by.as_of);
    }
    let not_there = checked.mark_since(&before);
    if !is_whole {
        return Compared { state, cured: Vec::new(), gone: Vec::new() };
    }
    let Parted { cured, dangers, gone } = rules::part_gone(not_there, &state.book, now);
    checked.also(dangers);
    Compared { state, cured, gone }
}
