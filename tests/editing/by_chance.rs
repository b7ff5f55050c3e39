//! Thousands of edits at places picked by chance in whole records.

use std::cell::Cell;

use proptest::prelude::*;
use proptest::test_runner::Config;
use proptest::test_runner::TestRunner;
use serde_yaml::Value;

use tholebook::reading::tree;
use tholebook::writing::editing::Address;
use tholebook::writing::editing::Deed;
use tholebook::writing::editing::Meaning;
use tholebook::writing::editing::Wording;
use tholebook::writing::editing::edited;

const RECORDS: [&str; 4] = [
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

fn places_of(text: &str) -> Vec<Address> {
    let root = tree::read(text).root.expect("a record");
    let mut all = Vec::new();
    places(&Meaning::of(&root), &Address::root(), &mut all);
    all
}

/// Returns the value at a place, as the other reader sees it.
fn pick<'v>(value: &'v mut Value, at: &Address) -> Option<&'v mut Value> {
    use tholebook::writing::editing::Step;
    at.steps().iter().try_fold(value, |here, step| match step {
        Step::Key(key) => here.get_mut(key.as_str()),
        Step::Number(number) => here.get_mut(number - 1),
        Step::Part { .. } => None,
    })
}

/// Returns what follows each `#` that begins a comment.
fn comments(text: &str) -> Vec<String> {
    let comment = |line: &str| {
        let at = if line.trim_start().starts_with('#') { line.find('#') } else { line.find(" #") };
        at.map(|at| line[at..].trim().to_owned())
    };
    let mut comments: Vec<String> = text.lines().filter_map(comment).collect();
    comments.sort();
    comments
}

/// Returns the text with Windows' line ends, or without its last one.
fn laid_out(text: &str, how: usize) -> String {
    match how {
        0 => text.to_owned(),
        1 => text.replace('\n', "\r\n"),
        _ => text.trim_end().to_owned(),
    }
}

/// Checks one edit; returns whether it was carried out.
fn check(text: &str, at: &Address, word: &str, deed: usize) -> Result<bool, TestCaseError> {
    let wording = Wording::word(word);
    let deed = if deed == 0 { Deed::Remove } else { Deed::Set(&wording) };
    let Ok(after) = edited(text, at, &deed) else {
        return Ok(false);
    };
    let mut old: Value = serde_yaml::from_str(text).expect("the record is YAML");
    let mut new: Value = serde_yaml::from_str(&after)
        .map_err(|error| TestCaseError::fail(format!("{error}\n{after}")))?;
    if deed == Deed::Remove {
        let (last, before) = at.steps().split_last().expect("a place below the root");
        let parent = before.iter().fold(Address::root(), |at, step| at.at(step.clone()));
        take(pick(&mut old, &parent).expect("it stood there"), last);
        settle(&mut old);
        settle(&mut new);
    } else {
        let set = pick(&mut new, at).expect("it stands there");
        let expected: Value = serde_yaml::from_str(&wording_alone(word)).expect("a word");
        prop_assert_eq!(&*set, &expected, "{}", after);
        *pick(&mut old, at).expect("it stood there") = expected;
    }
    prop_assert_eq!(&old, &new, "at {}:\n{}", at, after);
    Ok(true)
}

fn wording_alone(word: &str) -> String {
    let text = edited("x: 1\n", &Address::root().key("x"), &Deed::Set(&Wording::word(word)));
    text.expect("a word can be set")["x: ".len()..].to_owned()
}

fn take(parent: &mut Value, step: &tholebook::writing::editing::Step) {
    use tholebook::writing::editing::Step;
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

/// Returns how many of so many edits picked by chance were carried out; each was checked.
fn carried_out(edits: u32) -> u32 {
    let config = Config { cases: edits, failure_persistence: None, ..Config::default() };
    let texts: Vec<(String, Vec<Address>)> = RECORDS
        .iter()
        .flat_map(|text| (0..3).map(|how| laid_out(text, how)))
        .map(|text| (text.clone(), places_of(&text)))
        .collect();
    let done = Cell::new(0);
    let words = "[ -~]{0,12}|[0-9]{1,3}(\\.[0-9])?";
    let edits = (0..texts.len(), any::<prop::sample::Index>(), words, 0..4_usize);
    let checked = TestRunner::new(config).run(&edits, |(record, index, word, deed)| {
        let (text, places) = &texts[record];
        if check(text, index.get(places), &word, deed)? {
            done.set(done.get() + 1);
        }
        Ok(())
    });
    checked.expect("every edit changes its target only");
    done.get()
}

#[test]
fn a_thousand_edits_change_their_target_only() {
    let done = carried_out(1_000);
    assert!(done > 985, "only {done} of the edits were carried out");
}

#[test]
#[ignore = "takes a minute; run by name before a change lands"]
fn ten_thousand_edits_change_their_target_only() {
    let done = carried_out(10_000);
    assert!(done > 9_900, "only {done} of the edits were carried out");
}

#[test]
fn a_single_value_set_or_taken_out_leaves_every_comment() {
    for text in RECORDS {
        let before = comments(text);
        for at in places_of(text) {
            let is_single = matches!(meaning_at(text, &at), Some(Meaning::Word(_)));
            for deed in [Deed::Remove, Deed::Set(&Wording::word("7"))] {
                let Ok(after) = edited(text, &at, &deed) else { continue };
                assert!(!is_single || comments(&after) == before, "at {at}:\n{after}");
            }
        }
    }
}

fn meaning_at(text: &str, at: &Address) -> Option<Meaning> {
    let root = tree::read(text).root?;
    Meaning::of(&root).get(at).cloned()
}
