//! `match`: every oar set against every boat.

use super::arguments::Match as Asked;
use super::arguments::MatchFormat;
use super::book;
use super::book::OpenBook;
use super::exit::Exit;
use super::look::look;
use super::output::Done;
use crate::model::Boat;
use crate::model::Book;
use crate::planning::matching::Match;
use crate::planning::matching::NotFound;
use crate::planning::matching::Suits;
use crate::planning::matching::not_found;
use crate::reports;
use crate::reports::shown;
use crate::working::BoatSight;

/// Runs the command.
pub(super) fn run(arguments: &Asked) -> Done {
    matched(arguments).unwrap_or_else(|refused| refused)
}

fn matched(arguments: &Asked) -> Result<Done, Done> {
    let open = book::open(arguments.book.as_deref(), None)?;
    let name = arguments.name.as_deref();
    let matches = tried(&open.book, name);
    if matches.is_empty() {
        return Err(nothing(&open, name));
    }
    let not_found = lacking(&open.book, name);
    let look = look(&arguments.look);
    let result = match (arguments.format, name) {
        (MatchFormat::Text, None) => reports::matching_text(&matches, &not_found, look),
        (MatchFormat::Text, Some(_)) => reports::matching_seats(&matches, &not_found, look),
        (MatchFormat::Json, _) => reports::matching_json(&matches, &not_found),
        (MatchFormat::Markdown, _) => reports::matching_markdown(&matches, &not_found),
    };
    let exit = if open.settings_are_bad() { Exit::Usage } else { exit(&matches, &not_found) };
    let mut told = open.told.clone();
    told.extend(open.unread());
    Ok(Done { exit, result, told })
}

/// A boat that is out of use is shown and gates nothing.
fn exit(matches: &[Match], not_found: &[NotFound]) -> Exit {
    let in_use = |boat: &Boat| !boat.is_out_of_use();
    let tried = matches.iter().filter(|of| in_use(of.boat.boat));
    let clears = tried.into_iter().all(|of| of.suits() == Suits::Clears);
    let lacks = not_found.iter().any(|lacks| in_use(lacks.boat));
    if clears && !lacks { Exit::Clear } else { Exit::Findings }
}

/// What the boats asked for name and nothing has; of a set, what the boats that carry it do.
fn lacking<'b>(book: &'b Book, name: Option<&str>) -> Vec<NotFound<'b>> {
    let asked = |boat: &&Boat| {
        let carries = |name| boat.oars.as_ref().is_some_and(|set| set.value == name);
        name.is_none_or(|name| name == boat.id.value || carries(name))
    };
    let boats = book.boats.iter().filter(asked);
    boats.flat_map(|boat| not_found(&BoatSight::new(book, boat))).collect()
}

/// Every set in every boat; of a name, the set or the boat that has it, or both.
fn tried<'b>(book: &'b Book, name: Option<&str>) -> Vec<Match<'b>> {
    let boats = book.boats.iter().map(|boat| BoatSight::new(book, boat));
    let pairs = boats.flat_map(|boat| book.oar_sets.iter().map(move |set| (boat, set)));
    let asked = |boat: &BoatSight, set: &str| {
        name.is_none_or(|name| name == boat.boat.id.value || name == set)
    };
    let pairs = pairs.filter(|(boat, set)| asked(boat, &set.id.value));
    pairs.map(|(boat, set)| Match::of(boat, set)).collect()
}

fn nothing(open: &OpenBook, name: Option<&str>) -> Done {
    let boats = open.book.boats.iter().map(|boat| &*boat.id.value);
    let sets = open.book.oar_sets.iter().map(|set| &*set.id.value);
    let ids: Vec<&str> = sets.chain(boats).collect();
    let known = name.is_some_and(|name| ids.contains(&name));
    let mut told = open.told.clone();
    let exit = match name {
        Some(name) if !known => {
            let there = match ids.as_slice() {
                [] => "This book has neither that can be read.".to_owned(),
                ids => format!("There are {}.", shown::line(&ids.join(", "))),
            };
            told.extend(book::unknown("oar set or boat", name, &ids, &there));
            Exit::Usage
        }
        _ => {
            let missing = if open.book.boats.is_empty() { "boat" } else { "oar set" };
            told.push(format!("Nothing to match: this book has no {missing} that can be read."));
            Exit::NotChecked
        }
    };
    told.extend(open.unread());
    Done::refused(exit, told)
}
