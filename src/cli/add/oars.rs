//! A new oar set.

use super::New;
use crate::cli::arguments::AddOars;
use crate::cli::output::Done;
use crate::model::Book;
use crate::reading::RecordKind;
use crate::writing::blank::Blank;

/// How many oars a set has where none is named: one a rower, and a spare.
const USUAL: usize = 5;

/// Returns the set that is asked for.
///
/// # Errors
///
/// None: what is wrong with an id is told when the record is read.
pub(super) fn new(_: &Book, asked: &AddOars) -> Result<New, Done> {
    let oars = if asked.oar.is_empty() { usual(&asked.id) } else { asked.oar.clone() };
    let said = vec![format!("{}: {}", asked.id, oars.join(", "))];
    let mut blank = Blank { parts: oars, ..Blank::default() };
    blank.say("oar-set", &*asked.id);
    Ok(New { kind: RecordKind::OarSet, shelf: "oars", id: asked.id.clone(), blank, said })
}

fn usual(id: &str) -> Vec<String> {
    let letter: String = id.chars().take(1).flat_map(char::to_uppercase).collect();
    (1..=USUAL).map(|number| format!("{letter}{number}")).collect()
}
