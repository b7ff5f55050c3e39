//! Whole records, and an edit of one of their values beside a second, independent reader.

use serde_yaml::Value;

use tholebook::reading::tree;
use tholebook::writing::editing::Address;
use tholebook::writing::editing::Deed;
use tholebook::writing::editing::Meaning;
use tholebook::writing::editing::Step;
use tholebook::writing::editing::Wording;
use tholebook::writing::editing::edited;

pub(crate) const RECORDS: [&str; 4] = [
    include_str!("../../example-club/boats/kittiwake.yaml"),
    include_str!("../../example-club/boats/fulmar.yaml"),
    include_str!("../../example-club/oars/long-ash.yaml"),
    include_str!("../../example-club/club.yaml"),
];

/// Returns the place of every value, lists by number.
fn places(meaning: &Meaning, here: &Address, all: &mut Vec<Address>) {
    match meaning {
        Meaning::Map(map) => {
            for (key, below) in map {
                all.push(here.key(key));
                places(below, &here.key(key), all);
            }
        }
        Meaning::List(list) => {
            for (index, below) in list.iter().enumerate() {
                all.push(here.number(index + 1));
                places(below, &here.number(index + 1), all);
            }
        }
        Meaning::Empty | Meaning::Word(_) => {}
    }
}

/// Returns the place of every value of a record.
pub(crate) fn places_of(text: &str) -> Vec<Address> {
    let root = tree::read(text).root.expect("a record");
    let mut all = Vec::new();
    places(&Meaning::of(&root), &Address::root(), &mut all);
    all
}

/// Returns the value at a place, as the other reader sees it.
fn pick<'v>(value: &'v mut Value, at: &Address) -> Option<&'v mut Value> {
    at.steps().iter().try_fold(value, |here, step| match step {
        Step::Key(key) => here.get_mut(key.as_str()),
        Step::Number(number) => here.get_mut(number - 1),
        Step::Part { .. } => None,
    })
}

/// Checks one edit; returns whether it was carried out.
pub(crate) fn check(text: &str, at: &Address, word: &str, deed: usize) -> bool {
    let wording = Wording::word(word);
    let deed = if deed == 0 { Deed::Remove } else { Deed::Set(&wording) };
    let Ok(after) = edited(text, at, &deed) else {
        return false;
    };
    let mut old: Value = serde_yaml::from_str(text).expect("the record is YAML");
    let new: Result<Value, _> = serde_yaml::from_str(&after);
    if deed == Deed::Remove {
        let mut new = new.unwrap_or_else(|error| panic!("{error}\n{after}"));
        let (last, before) = at.steps().split_last().expect("a place below the root");
        let parent = before.iter().fold(Address::root(), |at, step| at.at(step.clone()));
        take(pick(&mut old, &parent).expect("it stood there"), last);
        settle(&mut old);
        settle(&mut new);
        assert_eq!(old, new, "at {at}:\n{after}");
    } else if let Some(expected) = alone(word) {
        let mut new = new.unwrap_or_else(|error| panic!("{error}\n{after}"));
        assert_eq!(*pick(&mut new, at).expect("it stands there"), expected, "{after}");
        *pick(&mut old, at).expect("it stood there") = expected;
        assert_eq!(old, new, "at {at}:\n{after}");
    }
    true
}

/// Returns a word as the second reader sees it; nothing where it can't hold it: a whole number of
/// more than 64 bits.
fn alone(word: &str) -> Option<Value> {
    let read = serde_yaml::from_str(&wording_alone(word)).ok();
    assert!(read.is_some() || word.len() > 19, "{word:?} is not read alone");
    read
}

fn wording_alone(word: &str) -> String {
    let text = edited("x: 1\n", &Address::root().key("x"), &Deed::Set(&Wording::word(word)));
    text.expect("a word can be set")["x: ".len()..].to_owned()
}

fn take(parent: &mut Value, step: &Step) {
    match (parent, step) {
        (Value::Mapping(map), Step::Key(key)) => drop(map.remove(key.as_str())),
        (Value::Sequence(list), Step::Number(number)) => drop(list.remove(number - 1)),
        _ => {}
    }
}

/// A section or list without parts says nothing.
fn settle(value: &mut Value) {
    match value {
        Value::Mapping(map) => map.values_mut().for_each(settle),
        Value::Sequence(list) => list.iter_mut().for_each(settle),
        _ => {}
    }
    let bare = matches!(value, Value::Mapping(map) if map.is_empty())
        || matches!(value, Value::Sequence(list) if list.is_empty());
    if bare {
        *value = Value::Null;
    }
}
