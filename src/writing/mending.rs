//! Corrections of how a record is spelled: a unit, a decimal comma, a dash for a minus, a key.
//!
//! What was measured is evidence, and no correction changes it. Each one is proven by reading the
//! text again: the fault it is for is gone, no other has come or gone, the figure has the digits it
//! had, and every other value says what it said. What can't be proven is left to a person.

mod proving;
mod slips;
mod spelling;

use crate::model::Book;
use crate::model::Name;
use crate::reading::Fault;
use crate::reading::What;
use crate::reading::read_alone;
use crate::store::Named;

/// How many corrections are tried in one file; the rest is left for the next time.
const AT_ONCE: usize = 200;

/// A correction that was made.
#[derive(Clone, Debug, Eq, PartialEq)]
pub struct Correction {
    /// The name of the value or key.
    pub name: Name,
    /// How it was written.
    pub old: String,
    /// How it is written now.
    pub new: String,
}

/// A text with its corrections.
#[derive(Clone, Debug, Default, Eq, PartialEq)]
pub struct Mended {
    /// The text.
    pub text: String,
    /// What was corrected, from the top.
    pub made: Vec<Correction>,
    /// How much of what was asked for can't be read still.
    pub left: usize,
}

/// A text and what reading it says.
struct State {
    text: String,
    book: Book,
    faults: Vec<Fault>,
}

impl State {
    fn of(path: &str, text: String) -> Self {
        let (book, faults) = read_alone(Named::text(path, &text));
        Self { text, book, faults }
    }
}

/// Returns the text of a file with everything corrected that can be proven to be a matter of
/// spelling, of what has one of these names or lies below it; of all, where `only` is none.
///
/// # Example
///
/// ```
/// use tholebook::writing::mending::mended;
///
/// let text = "oar-set: ash\noars:\n  - {oar: A1, inboard: 115,5 CM}\n";
/// let mended = mended("oars/ash.yaml", text, None);
/// assert_eq!(mended.text, text.replace("115,5 CM", "115.5 cm"));
/// ```
#[must_use]
pub fn mended(path: &str, text: &str, only: Option<&str>) -> Mended {
    let mut state = State::of(path, text.to_owned());
    let asked = |fault: &&Fault| only.is_none_or(|only| fault.name.is_within(only));
    let mut faults: Vec<Fault> = state.faults.iter().filter(asked).cloned().collect();
    // From the end on: what is corrected moves nothing that stands before it.
    faults.sort_by_key(|fault| std::cmp::Reverse(fault.place));
    let mut made = Vec::new();
    let offered = faults.iter().filter_map(|fault| Some((fault, offered(text, fault)?)));
    for (fault, new) in offered.take(AT_ONCE) {
        let span = fault.place.span;
        let edited = format!("{}{new}{}", &state.text[..span.start], &state.text[span.end..]);
        let edited = State::of(path, edited);
        if proving::holds(&state, &edited, fault) {
            state = edited;
            let old = text[span.start..span.end].to_owned();
            made.push(Correction { name: fault.name.clone(), old, new });
        }
    }
    made.reverse();
    let left = state.faults.iter().filter(asked).count();
    Mended { text: state.text, made, left }
}

/// Returns how what a fault points at may be spelled instead.
fn offered(text: &str, fault: &Fault) -> Option<String> {
    let span = fault.place.span;
    let source = text.get(span.start..span.end)?;
    match &fault.what {
        What::UnknownKey { key: written, nearest: Some(key) } => {
            slips::is_slip(written, key).then(|| key.clone())
        }
        What::Figure { .. } => spelling::respelled(source),
        _ => None,
    }
}
