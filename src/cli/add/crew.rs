//! A new crew: a rower for every seat of its boat.

use super::New;
use super::none_such;
use super::refused;
use crate::cli::arguments::AddCrew;
use crate::cli::output::Done;
use crate::model::Book;
use crate::reading::RecordKind;
use crate::writing::blank::Blank;

/// Returns the crew that is asked for.
///
/// # Errors
///
/// What the command comes to instead: its boat is not in the book, or has no seats.
pub(super) fn new(book: &Book, asked: &AddCrew) -> Result<New, Done> {
    let boat = book.boat(&asked.boat).ok_or_else(|| {
        let known: Vec<&str> = book.boats.iter().map(|boat| &*boat.id.value).collect();
        none_such("boat", &asked.boat, &known)
    })?;
    let numbers = boat.seats.iter().filter_map(|seat| seat.number);
    let parts: Vec<String> = numbers.map(|number| number.value.to_string()).collect();
    if parts.is_empty() {
        return Err(refused(vec![format!("{} has no seats written yet.", asked.boat)]));
    }
    let said = vec![format!("{}: {} rowers of {}", asked.id, parts.len(), asked.boat)];
    let mut blank = Blank { parts, ..Blank::default() };
    blank.say("crew", &*asked.id);
    blank.say("boat", &*asked.boat);
    Ok(New { kind: RecordKind::Crew, shelf: "crews", id: asked.id.clone(), blank, said })
}
