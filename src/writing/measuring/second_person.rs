//! A second person's own readings beside those in the record: where the two disagree.

use super::answer;
use super::answer::Answer;
use super::dialogue::Dialogue;
use super::question::Question;
use super::recording::Cannot;
use crate::model::Name;
use crate::writing::editing;
use crate::writing::editing::Address;
use crate::writing::editing::Deed;
use crate::writing::editing::Meaning;
use crate::writing::editing::Wording;
use crate::writing::measuring::answering;
use crate::writing::measuring::jump;

/// A value that two people read differently.
#[derive(Clone, Debug, PartialEq)]
pub struct Disagreement {
    /// Its name below the record's own.
    pub name: String,
    /// What the record says.
    pub first: String,
    /// What was read now.
    pub second: String,
    /// How far the two are apart, and how far they may be, in words; nothing of words.
    pub apart: String,
}

/// Two readings of one value may be apart by the half-widths of both.
const BOTH: f64 = 2.0;

/// Returns how many values both have read, and where they disagree by more than their tools allow.
#[must_use]
pub fn compared(dialogue: &Dialogue) -> (usize, Vec<Disagreement>) {
    let now = dialogue.tentative().unwrap_or_default();
    let both: Vec<_> = of_both(dialogue).collect();
    let one = |(question, wording): &(&Question, &Wording)| {
        let name = Name::record(&dialogue.id).at(&question.name);
        let figures = (jump::figure(&dialogue.record, &name), jump::figure(&now, &name));
        let first = question.last.as_ref()?.text.clone();
        let second = answering::plain(wording);
        let apart = match (figures, question.fine) {
            ((Some((before, unit)), Some((after, own))), Some(fine)) if unit == own => {
                let (apart, may) = ((after - before).abs(), BOTH * fine);
                // What was typed in decimals differs by less than it says.
                (apart > may + 1e-9)
                    .then(|| format!("{apart:.1} {unit} apart; the tool allows {may:.1} {unit}"))
            }
            _ => (first != second).then(String::new),
        };
        Some(Disagreement { name: question.name.clone(), first, second, apart: apart? })
    };
    (both.len(), both.iter().filter_map(one).collect())
}

/// Returns the record with both readings of every value, and who checked it. Both must be of one day.
///
/// # Errors
///
/// The record can't be edited, nobody said who checked, the two are of different days or of one
/// person.
pub fn joined(dialogue: &Dialogue) -> Result<String, Cannot> {
    let by = dialogue.by()?;
    for (question, _) in of_both(dialogue) {
        let last = question.last.as_ref();
        if last.and_then(|last| last.on) != Some(dialogue.day()) {
            return Err(Cannot::OtherDay { today: dialogue.day() });
        }
        if last.and_then(|last| last.by.as_ref()) == Some(&by) {
            return Err(Cannot::SamePerson);
        }
    }
    let mut text = dialogue.record.clone();
    for (question, second) in of_both(dialogue) {
        let Some(first) = stood(dialogue, question).filter(|_| question.is_reading()) else {
            continue;
        };
        let both = Wording::of(answer::both(&first, second).meaning().clone());
        text = dialogue.edited(&text, &question.at, &Deed::Set(&both))?;
    }
    let at = entry_of(dialogue).key("checked-by");
    Ok(dialogue.edited(&text, &at, &Deed::Set(&Wording::word(&by)))?)
}

/// Returns where the record says who checked what was read on this day: with the rigging day, or
/// with what was read again.
fn entry_of(dialogue: &Dialogue) -> Address {
    let root = Address::root();
    if !dialogue.questions.iter().any(|own| own.name == "rigged/by") {
        return root.key("measured");
    }
    let says = editing::read(&dialogue.record).unwrap_or(Meaning::Empty);
    let day = Meaning::Word(dialogue.day().to_string());
    let again = root.key("read-again");
    let entries = match says.get(&again) {
        Some(Meaning::List(entries)) => entries.len(),
        _ => 0,
    };
    let is_of_the_day = |at: &Address| says.get(&at.key("date")) == Some(&day);
    let mut those = (1..=entries).rev().map(|number| again.number(number));
    those.find(is_of_the_day).unwrap_or_else(|| root.key("rigged"))
}

/// Returns what a record says of a value, as it is to be written again.
fn stood(dialogue: &Dialogue, question: &Question) -> Option<Wording> {
    let root = editing::read(&dialogue.record).ok()?;
    root.get(&question.at).cloned().map(Wording::of)
}

/// Returns the values that both people read.
fn of_both(dialogue: &Dialogue) -> impl Iterator<Item = (&Question, &Wording)> {
    let both = |(question, answer): (&'_ Question, &'_ Answer)| {
        question.is_dated && question.last.is_some() && answer.read().is_some()
    };
    let read = dialogue.answered().filter(move |(question, answer)| both((question, answer)));
    read.filter_map(|(question, answer)| Some((question, answer.read()?)))
}
