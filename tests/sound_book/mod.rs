//! A sound book in memory, and the same with edits.

#![allow(dead_code, unreachable_pub, reason = "each test crate uses its own part of this")]

use std::collections::BTreeMap;

use tholebook::history;
use tholebook::model::Book;
use tholebook::reading;
use tholebook::rules;
use tholebook::rules::ChangedReading;
use tholebook::rules::Check;
use tholebook::rules::Checked;
use tholebook::rules::Edit;
use tholebook::store::Named;
use tholebook::units::Date;

/// The files of a book, by path.
pub struct SoundBook(BTreeMap<String, String>);

const FILES: [(&str, &str); 4] = [
    ("boats/kittiwake.yaml", include_str!("../data/sound-book/boats/kittiwake.yaml")),
    ("club.yaml", include_str!("../data/sound-book/club.yaml")),
    ("crews/masters-a.yaml", include_str!("../data/sound-book/crews/masters-a.yaml")),
    ("oars/long-ash.yaml", include_str!("../data/sound-book/oars/long-ash.yaml")),
];

impl SoundBook {
    /// The book as it is.
    pub fn new() -> Self {
        Self(FILES.iter().map(|(path, text)| ((*path).to_owned(), (*text).to_owned())).collect())
    }

    /// The book with edits. An edit of nothing makes the file, or replaces it whole.
    pub fn with(edits: &[Edit]) -> Self {
        let mut book = Self::new();
        for (path, after, from, to) in edits {
            book.edit(path, after, from, to);
        }
        book
    }

    /// Changes the first `from` that stands after the first `after`.
    pub fn edit(&mut self, path: &str, after: &str, from: &str, to: &str) {
        let text = self.0.entry(path.to_owned()).or_default();
        if from.is_empty() {
            to.clone_into(text);
            return;
        }
        let start = text.find(after).unwrap_or_else(|| panic!("{path} does not hold {after:?}"));
        let (before, rest) = text.split_at(start);
        assert!(rest.contains(from), "{path} does not hold {from:?} after {after:?}");
        *text = format!("{before}{}", rest.replacen(from, to, 1));
    }

    /// Every line with its file and number, counted from 1.
    pub fn lines(&self) -> impl Iterator<Item = (String, usize, &str)> {
        self.0.iter().flat_map(|(path, text)| {
            (1..).zip(text.lines()).map(|(number, line)| (path.clone(), number, line))
        })
    }

    /// Returns the texts as a store gives them.
    pub fn texts(&self) -> Vec<Named> {
        self.0.iter().map(|(path, text)| Named::text(path, text)).collect()
    }

    /// Reads and checks the book as of 1 November 2026.
    pub fn check(&self) -> (Book, Checked) {
        self.check_as_of("2026-11-01")
    }

    /// Reads and checks the book as of 1 November 2026 beside the sound book, as the state before.
    pub fn check_beside_the_sound_one(&self) -> (Book, Checked) {
        let (book, mut checked) = self.check();
        let (before, _) = reading::read("sound-book", Self::new().texts());
        let changed = history::changes(&before, &book).into_iter().filter_map(changed_reading);
        let as_of = Date::read("2026-11-01").expect("a day");
        checked.hold_beside(&book, &changed.collect::<Vec<_>>(), as_of);
        checked.also(rules::loosened(&book, &before));
        (book, checked)
    }

    /// Reads and checks the book as of a day.
    pub fn check_as_of(&self, day: &str) -> (Book, Checked) {
        let (book, faults) = reading::read("sound-book", self.texts());
        let as_of = Date::read(day).expect("a day");
        let mut checked = rules::check(&book, &faults, Check { as_of });
        checked.waive(&book, as_of);
        (book, checked)
    }
}

/// Returns a change of a reading as the rules take it.
fn changed_reading(change: history::Change) -> Option<ChangedReading> {
    let (old, new) = (change.old?, change.new?);
    Some(ChangedReading {
        place: new.place?,
        name: change.name,
        read_on: new.measured?.on,
        read_before: old.measured?.on,
        old: old.text,
        new: new.text,
    })
}
