//! `settings`: every limit in force, and where it is set.

use super::arguments::Settings;
use super::book;
use super::exit::Exit;
use super::look::look;
use super::output::Done;
use crate::reports;

/// Runs the command.
pub(super) fn run(arguments: &Settings) -> Done {
    shown(arguments).unwrap_or_else(|refused| refused)
}

fn shown(arguments: &Settings) -> Result<Done, Done> {
    let mut open = book::open(arguments.book.as_deref(), None)?;
    let result = reports::settings(&open.book, look(&arguments.look));
    let mut told = std::mem::take(&mut open.told);
    if open.book.boats.is_empty() {
        told.push("This book has no boat that can be read, so no limit is in force.".to_owned());
    }
    told.extend(open.unread());
    let exit = if open.settings_are_bad() { Exit::Usage } else { Exit::Clear };
    Ok(Done { exit, result, told })
}
