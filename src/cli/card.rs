//! `card`: a boat's rig card.

use super::arguments::Card;
use super::book;
use super::exit::Exit;
use super::lint::today;
use super::look::look;
use super::output::Done;
use crate::reports;
use crate::reports::Report;
use crate::rules;
use crate::rules::Check;

/// Runs the command.
pub(super) fn run(arguments: &Card) -> Done {
    shown(arguments).unwrap_or_else(|refused| refused)
}

fn shown(arguments: &Card) -> Result<Done, Done> {
    let open = book::open(arguments.book.as_deref(), None)?;
    let boat = open.boat(&arguments.boat)?;
    let as_of = arguments.as_of.unwrap_or_else(today);
    let mut checked = rules::check(&open.book, &open.faults, Check { as_of });
    checked.waive(&open.book, as_of);
    let report = Report { book: &open.book, checked: &checked, as_of, only: &[], earlier: None };
    let result = reports::card(&report, boat, look(&arguments.look));
    let mut told = open.told.clone();
    told.extend(open.unread());
    // A card does not gate, but limits that could not be read are wrong usage everywhere.
    let exit = if open.settings_are_bad() { Exit::Usage } else { Exit::Clear };
    Ok(Done { exit, result, told })
}
