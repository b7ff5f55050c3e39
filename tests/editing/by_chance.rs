//! Thousands of edits at places picked by chance in whole records.

use std::cell::Cell;

use proptest::prelude::*;
use proptest::test_runner::Config;
use proptest::test_runner::TestRunner;

use tholebook::reading::tree;
use tholebook::writing::editing::Address;
use tholebook::writing::editing::Deed;
use tholebook::writing::editing::Meaning;
use tholebook::writing::editing::Wording;
use tholebook::writing::editing::edited;

use crate::checking::RECORDS;
use crate::checking::check;
use crate::checking::places_of;

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
        if check(text, index.get(places), &word, deed) {
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
