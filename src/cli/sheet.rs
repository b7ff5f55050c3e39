//! `sheet`: a boat's page to print.

use super::arguments::Sheet;
use super::book;
use super::exit::Exit;
use super::lint::today;
use super::open_past::made;
use super::output::Done;
use crate::reports;
use crate::reports::Asked;
use crate::reports::AtCommit;
use crate::reports::Report;
use crate::rules;
use crate::rules::Check;
use crate::store::Repository;
use crate::store::Store;
use crate::store::StoreError;

/// Runs the command.
pub(super) fn run(arguments: &Sheet) -> Done {
    shown(arguments).unwrap_or_else(|refused| refused)
}

fn shown(arguments: &Sheet) -> Result<Done, Done> {
    let store = book::opened(arguments.book.as_deref()).map_err(|error| book::could_not(&error))?;
    let commit = at_commit(&store);
    let open = book::read(store);
    let boat = open.boat(&arguments.boat)?;
    let as_of = arguments.as_of.unwrap_or_else(today);
    let mut checked = rules::check(&open.book, &open.faults, Check { as_of });
    checked.waive(&open.book, as_of);
    let report = Report { book: &open.book, checked: &checked, as_of, only: &[], earlier: None };
    let asked = Asked { last: arguments.last, twice: arguments.twice };
    let result = match arguments.blank {
        true => reports::blank_sheet(&report, boat, asked),
        false => reports::sheet(&report, boat, &commit),
    };
    let mut told = open.told.clone();
    told.extend(open.unread());
    let exit = if open.settings_are_bad() { Exit::Usage } else { Exit::Clear };
    Ok(Done { exit, result, told })
}

/// Returns which commit the texts are of. A book may lie in no repository.
pub(super) fn at_commit(store: &Store) -> AtCommit {
    let seen = || -> Result<AtCommit, StoreError> {
        let repository = Repository::around(&store.root)?;
        let Some(head) = repository.head()? else { return Ok(AtCommit::NotYet) };
        let made = made(&repository.details(head)?);
        let same = repository.at(head).is_ok_and(|then| then.files == store.files);
        Ok(if same { AtCommit::At(made) } else { AtCommit::ChangedSince(made) })
    };
    seen().unwrap_or(AtCommit::None)
}
