//! `diff`: what changed between two states of a book.

use std::path::PathBuf;

use super::arguments::Diff;
use super::arguments::DiffFormat;
use super::book;
use super::book::OpenBook;
use super::exit::Exit;
use super::lint::today;
use super::look::look;
use super::output::Done;
use super::states;
use super::states::Asked;
use super::states::State;
use crate::history;
use crate::model::Book;
use crate::model::Name;
use crate::reports;
use crate::reports::Difference;
use crate::reports::shown;
use crate::rules;
use crate::rules::Check;
use crate::rules::Checked;
use crate::units::Date;

/// Runs the command.
pub(super) fn run(arguments: &Diff) -> Done {
    compared(arguments).unwrap_or_else(|refused| refused)
}

fn compared(arguments: &Diff) -> Result<Done, Done> {
    let (from, to) = states::both(&Asked {
        from: arguments.from.as_deref(),
        to: arguments.to.as_deref(),
        staged: arguments.staged,
        book: arguments.book.as_deref(),
    })?;
    let as_of = arguments.as_of.or(to.day).unwrap_or_else(today);
    let (from_called, to_called) = (from.called.clone(), to.called.clone());
    let (old, new) = (opened(from), opened(to));
    let (before, after) = (checked(&old, as_of), checked(&new, as_of));
    let since = rules::compared(&before, &after);
    known(&old, &new, [&before, &after], &arguments.only)?;
    let difference = Difference {
        from: &from_called,
        to: &to_called,
        old: &old.book,
        new: &new.book,
        changes: &history::changes(&old.book, &new.book),
        after: &after,
        since: &since,
        as_of,
        only: &arguments.only,
    };
    let result = match arguments.format {
        DiffFormat::Text => reports::diff_text(&difference, look(&arguments.look)),
        DiffFormat::Json => reports::diff_json(&difference),
        DiffFormat::Markdown => reports::diff_markdown(&difference),
    };
    let changed = arguments.exit_code && !difference.is_empty();
    let exit = if changed { Exit::Findings } else { Exit::Clear };
    let exit = if new.settings_are_bad() { exit.max(Exit::Usage) } else { exit };
    Ok(Done { exit, result, told: told(&old, &new, [&from_called, &to_called]) })
}

fn opened(state: State) -> OpenBook {
    match state.store {
        Some(store) => book::read(store),
        None => OpenBook {
            root: PathBuf::new(),
            book: Book::default(),
            faults: Vec::new(),
            told: Vec::new(),
            absent: Vec::new(),
            strays: Vec::new(),
        },
    }
}

fn checked(open: &OpenBook, as_of: Date) -> Checked {
    let mut checked = rules::check(&open.book, &open.faults, Check { as_of });
    checked.waive(&open.book, as_of);
    checked
}

/// Returns what the user should know besides of each side; of what is true of both, once.
fn told(old: &OpenBook, new: &OpenBook, called: [&str; 2]) -> Vec<String> {
    let of = |open: &OpenBook| {
        let unread = (!open.faults.is_empty()).then(|| unread(open));
        open.told.iter().cloned().chain(unread).collect::<Vec<String>>()
    };
    let (before, after) = (of(old), of(new));
    let line = |called: &str, told: &str| format!("In {}: {told}", shown::line(called));
    let only_before = before.iter().filter(|told| !after.contains(told));
    let mut all: Vec<String> = only_before.map(|told| line(called[0], told)).collect();
    all.extend(after.iter().map(|told| {
        if before.contains(told) { format!("In both: {told}") } else { line(called[1], told) }
    }));
    all
}

fn unread(open: &OpenBook) -> String {
    let count = open.faults.len();
    let things = if count == 1 { "thing" } else { "things" };
    format!("{count} {things} can't be read; tholebook lint says where.")
}

/// A name that neither side knows is refused.
fn known(
    old: &OpenBook,
    new: &OpenBook,
    checks: [&Checked; 2],
    only: &[String],
) -> Result<(), Done> {
    let written = [old, new].into_iter().flat_map(|open| open.book.written());
    let written = written.map(|own| &own.name);
    let found = checks.into_iter().flat_map(|checked| &checked.findings);
    let known: Vec<&Name> = written.chain(found.map(|finding| &finding.name)).collect();
    let Some(strange) = only.iter().find(|whole| !known.iter().any(|name| name.is_within(whole)))
    else {
        return Ok(());
    };
    let mut ids: Vec<&str> =
        known.iter().filter_map(|name| name.as_str().split('/').next()).collect();
    ids.sort_unstable();
    ids.dedup();
    let see = "Names are such as kittiwake or kittiwake/seat-2.";
    Err(Done::refused(Exit::Usage, book::unknown("record or value", strange, &ids, see)))
}
