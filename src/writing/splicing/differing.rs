//! Compares three states of a value: what theirs changes, and what ours changed too.

use super::Change;
use super::Dispute;
use super::Does;
use super::parts;
use super::signing;
use crate::reading::tree::Node;
use crate::writing::editing;
use crate::writing::editing::Address;
use crate::writing::editing::Meaning;
use crate::writing::editing::Wording;

/// Their text, for the words of what they changed.
pub(super) struct Theirs<'t> {
    pub(super) text: &'t str,
    pub(super) root: &'t Node,
}

/// One value in three states, and its places in ours and in theirs.
#[derive(Clone, Copy)]
pub(super) struct Three<'m> {
    pub(super) base: &'m Meaning,
    pub(super) ours: &'m Meaning,
    pub(super) theirs: &'m Meaning,
}

/// The places of one value, which may stand elsewhere in a list of theirs.
#[derive(Clone)]
pub(super) struct Places {
    pub(super) ours: Address,
    pub(super) theirs: Address,
}

pub(super) const NOTHING: &Meaning = &Meaning::Empty;

/// Finds what theirs changes in a whole record, and returns what it says with all of it.
pub(super) fn changes(
    theirs: &Theirs<'_>,
    states: [&Meaning; 3],
    found: &mut Vec<Change>,
) -> Meaning {
    let [base, ours, their] = states;
    let three = Three { base, ours, theirs: their };
    let places = Places { ours: Address::root(), theirs: Address::root() };
    of_value(theirs, three, &places, found)
}

/// Finds what theirs changes in a value, and returns what it says with all of it.
pub(super) fn of_value(
    theirs: &Theirs<'_>,
    three: Three<'_>,
    at: &Places,
    found: &mut Vec<Change>,
) -> Meaning {
    if same(three.theirs, three.base) || same(three.ours, three.theirs) {
        return three.ours.clone();
    }
    match (three.ours, three.theirs) {
        (Meaning::Map(ours), Meaning::Map(their)) => {
            let new = their.iter().filter(|(key, _)| !ours.iter().any(|(own, _)| own == key));
            let begun = found.len();
            let mut each = Vec::new();
            for (key, _) in ours.iter().chain(new) {
                let three = three.each(|state| value_of(state, key));
                let at = Places { ours: at.ours.key(key), theirs: at.theirs.key(key) };
                each.push((key.clone(), of_value(theirs, three, &at, found)));
            }
            signing::dispute(three, &at.ours, &mut found[begun..]);
            Meaning::Map(each)
        }
        (Meaning::List(_), Meaning::List(_)) if three.is_list_of_sections() => {
            parts::changes(theirs, three, at, found)
        }
        _ => of_whole(theirs, three, at, found),
    }
}

/// Finds the change of a value that is taken or left as a whole. A number that one side only wrote
/// otherwise is not disputed.
pub(super) fn of_whole(
    theirs: &Theirs<'_>,
    three: Three<'_>,
    at: &Places,
    found: &mut Vec<Change>,
) -> Meaning {
    let ours_stands = same(three.ours, three.base);
    let alike = is_one_number(three.theirs, three.base) || is_one_number(three.ours, three.theirs);
    if !ours_stands && alike {
        return three.ours.clone();
    }
    let does = match three.theirs {
        Meaning::Empty => Does::Remove,
        value => Does::Set(theirs.wording(&at.theirs, value)),
    };
    let disputed = !ours_stands && !is_one_number(three.ours, three.base);
    let dispute = disputed.then_some(Dispute::Both);
    found.push(Change { at: at.ours.clone(), does, dispute });
    three.theirs.clone()
}

impl<'m> Three<'m> {
    fn each(self, of: impl Fn(&'m Meaning) -> &'m Meaning) -> Self {
        Self { base: of(self.base), ours: of(self.ours), theirs: of(self.theirs) }
    }

    /// Returns whether this is a list, in every state in which it is written, of sections only.
    fn is_list_of_sections(self) -> bool {
        let of_sections = |state: &Meaning| match state {
            Meaning::Empty => true,
            Meaning::List(parts) => parts.iter().all(|part| matches!(part, Meaning::Map(_))),
            Meaning::Word(_) | Meaning::Map(_) => false,
        };
        [self.base, self.ours, self.theirs].into_iter().all(of_sections)
    }
}

impl Theirs<'_> {
    /// Returns a value of theirs as they wrote it.
    pub(super) fn wording(&self, at: &Address, value: &Meaning) -> Wording {
        let node = at.steps().iter().try_fold(self.root, |node, step| editing::below(node, step));
        match node {
            Some(node) => Wording::as_written(value.clone(), lines(self.text, node)),
            None => Wording::of(value.clone()),
        }
    }
}

/// Returns the bytes of a value with its indent taken away.
fn lines(text: &str, node: &Node) -> String {
    let written = text[node.span.start..node.span.end].trim_end();
    let line = text[..node.span.start].rfind('\n').map_or(0, |end| end + 1);
    let column = text[line..node.span.start].chars().count();
    let mut lines = written.lines();
    let first = lines.next().unwrap_or_default().to_owned();
    lines.fold(first, |all, line| {
        let indent = line.len() - line.trim_start_matches(' ').len();
        format!("{all}\n{}", &line[indent.min(column)..])
    })
}

/// Returns the value of a key; nothing where there is none.
pub(super) fn value_of<'m>(state: &'m Meaning, key: &str) -> &'m Meaning {
    match state {
        Meaning::Map(map) => map.iter().find(|(own, _)| own == key).map_or(NOTHING, |(_, of)| of),
        _ => NOTHING,
    }
}

/// Returns whether two values say the same, whatever the order of their keys.
pub(super) fn same(one: &Meaning, other: &Meaning) -> bool {
    one.clone().settled() == other.clone().settled()
}

/// Returns whether two values are one number, written to more or fewer places.
fn is_one_number(one: &Meaning, other: &Meaning) -> bool {
    let number = |value: &Meaning| match value {
        Meaning::Word(word) => word.parse::<f64>().ok().filter(|number| number.is_finite()),
        _ => None,
    };
    matches!((number(one), number(other)), (Some(one), Some(other)) if one.total_cmp(&other).is_eq())
}
