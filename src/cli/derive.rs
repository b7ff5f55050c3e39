//! `derive`: every worked-out value.

mod writing;

use super::arguments::Derive;
use super::arguments::DeriveFormat;
use super::book;
use super::book::OpenBook;
use super::exit::Exit;
use super::look::look;
use super::output::Done;
use crate::model::Boat;
use crate::reports;
use crate::working::BoatSight;

/// Runs the command.
pub(super) fn run(arguments: &Derive) -> Done {
    derived(arguments).unwrap_or_else(|refused| refused)
}

fn derived(arguments: &Derive) -> Result<Done, Done> {
    let open = book::open(arguments.book.as_deref(), None)?;
    let asked = |boat: &&Boat| arguments.name.as_ref().is_none_or(|name| *name == boat.id.value);
    let boats = open.book.boats.iter().filter(asked);
    let sights: Vec<BoatSight> = boats.map(|boat| BoatSight::new(&open.book, boat)).collect();
    if sights.is_empty() {
        return Err(no_boat(&open, arguments.name.as_deref()));
    }
    if arguments.write {
        return Ok(writing::write(&open, &sights, arguments.name.is_none()));
    }
    let result = match arguments.format {
        DeriveFormat::Text => reports::figures_text(&sights, look(&arguments.look)),
        DeriveFormat::Json => reports::figures_json(&sights),
    };
    let exit = if open.settings_are_bad() { Exit::Usage } else { Exit::Clear };
    let unread = open.unread();
    let mut told = open.told;
    told.extend(unread);
    Ok(Done { exit, result, told })
}

fn no_boat(open: &OpenBook, name: Option<&str>) -> Done {
    let mut told = open.told.clone();
    let Some(name) = name else {
        told.push("Nothing to work out: this book has no boat that can be read.".to_owned());
        return Done::refused(Exit::NotChecked, told);
    };
    let ids: Vec<&str> = open.book.boats.iter().map(|boat| &*boat.id.value).collect();
    let see =
        if open.faults.is_empty() { "" } else { "Some texts can't be read; see tholebook lint" };
    told.extend(book::unknown("boat", name, &ids, see));
    Done::refused(Exit::Usage, told)
}
