//! `ready`: before a race, a page a boat.

use super::arguments::Ready;
use super::arguments::ReadyFormat;
use super::checking;
use super::checking::CheckedBook;
use super::checking::Yardstick;
use super::exit::Exit;
use super::lint;
use super::lint::today;
use super::look::look;
use super::output::Done;
use super::states;
use super::states::Asked;
use super::states::State;
use super::subject;
use crate::history;
use crate::model::Boat;
use crate::model::Book;
use crate::model::Name;
use crate::reading;
use crate::reports;
use crate::reports::Before;
use crate::reports::Report;
use crate::rules::Level;

/// Runs the command.
pub(super) fn run(arguments: &Ready) -> Done {
    told(arguments).unwrap_or_else(|refused| refused)
}

fn told(arguments: &Ready) -> Result<Done, Done> {
    let before = before(arguments)?;
    let subject = subject::files(arguments.book.as_deref(), None)?;
    let (on, gate) = (arguments.on.unwrap_or_else(today), lint::gate(arguments.fail_on));
    let by = Yardstick { since: None, rules_from: None, waivers: true, as_of: on };
    let mut came = checking::check(subject, by)?;
    let ids = boats_asked(&came, arguments)?;
    if !arguments.boats.is_empty() {
        narrow(&mut came, &ids);
    }
    let CheckedBook { open, checked, .. } = &came;
    let changes = before.as_ref().map(|(_, old)| history::changes(old, &open.book));
    let before = before.as_ref().zip(changes.as_ref());
    let before = before.map(|((called, _), changes)| Before { called, changes });
    let boats: Vec<&Boat> = ids.iter().filter_map(|id| open.book.boat(id)).collect();
    let report = Report { book: &open.book, checked, as_of: on, only: &[], earlier: None };
    let ready = reports::Ready { report, boats: &boats, before, gate };
    let result = match arguments.format {
        ReadyFormat::Text => reports::ready_text(&ready, look(&arguments.look)),
        ReadyFormat::Json => reports::ready_json(&ready),
        ReadyFormat::Markdown => reports::ready_markdown(&ready),
    };
    let mut told = open.told.clone();
    told.extend(open.unread());
    Ok(Done { exit: exit(&came, gate), result, told })
}

/// Texts that are not here leave the answer open, whatever the others say.
fn exit(came: &CheckedBook, gate: Level) -> Exit {
    let exit = lint::exit(came, gate, false);
    let is_whole = came.conflicts.is_empty() && came.open.absent.is_empty();
    if is_whole { exit } else { exit.max(Exit::NotChecked) }
}

/// Returns the state that changes are told since, and what it is called.
fn before(arguments: &Ready) -> Result<Option<(String, Book)>, Done> {
    let Some(rev) = arguments.since.as_deref() else { return Ok(None) };
    if rev.contains("..") {
        let told = "--since takes one tag, commit or branch; up to the files as they lie.";
        return Err(Done::refused(Exit::Usage, vec![told.to_owned()]));
    }
    let book = arguments.book.as_deref();
    let (from, _) = states::both(&Asked { from: Some(rev), to: None, staged: false, book })?;
    let State { called, store, .. } = from;
    let book = store.map(|store| reading::read(&store.name, store.files).0).unwrap_or_default();
    Ok(Some((called, book)))
}

/// Returns the ids of the boats that were asked for, each once.
fn boats_asked(came: &CheckedBook, arguments: &Ready) -> Result<Vec<String>, Done> {
    let open = &came.open;
    let asked: Vec<&Boat> = if arguments.boats.is_empty() {
        open.book.boats.iter().collect()
    } else {
        arguments.boats.iter().map(|id| open.boat(id)).collect::<Result<_, _>>()?
    };
    let mut ids: Vec<String> = Vec::new();
    for boat in asked {
        if !ids.contains(&boat.id.value) {
            ids.push(boat.id.value.clone());
        }
    }
    if ids.is_empty() {
        let told = "Nothing to tell: this book has no boat that can be read.".to_owned();
        return Err(open.refused(Exit::NotChecked, vec![told]));
    }
    Ok(ids)
}

/// Leaves only what concerns the boats asked for.
fn narrow(came: &mut CheckedBook, ids: &[String]) {
    let CheckedBook { open, checked, .. } = came;
    let book = &open.book;
    let boats: Vec<&Boat> = ids.iter().filter_map(|id| book.boat(id)).collect();
    let asked = |name: &Name| boats.iter().any(|boat| reports::concerns(book, boat, name));
    checked.findings.retain(|finding| asked(&finding.name));
    let of_all = |name: &Name| !book.boats.iter().any(|boat| reports::concerns(book, boat, name));
    checked.not_checked.retain(|missing| asked(&missing.name) || of_all(&missing.name));
}
