//! Damaged records: whatever a slip of the hand, a bad disk or a bad merge makes of a record,
//! reading it ends, with every fault inside its file.
//!
//! The damage is dealt out from fixed numbers, so every run reads the same texts.

#[path = "damaged_records/damage.rs"]
mod damage;
mod sound_book;

use std::panic::catch_unwind;
use std::time::Duration;
use std::time::Instant;

use damage::Damage;
use proptest::prelude::*;
use rayon::prelude::*;
use sound_book::SoundBook;
use tholebook::model::Book;
use tholebook::model::Place;
use tholebook::reading;
use tholebook::reading::Fault;
use tholebook::rules;
use tholebook::store::Named;
use tholebook::units::Date;

/// How many damaged copies are read.
const COPIES: u64 = 100_000;
/// How many are read at once: the program's own class is read along with each lot.
const LOT: u64 = 250;
/// The longest that one text may take.
const LONGEST: Duration = Duration::from_secs(1);

/// The records of the sound book, cut to one seat and one oar each so that many can be read.
fn short_records() -> Vec<(&'static str, String)> {
    let whole = SoundBook::new();
    let text = |path: &str| {
        let named = whole.texts().into_iter().find(|named| named.path == path);
        match named.expect("a file of the sound book").content {
            tholebook::store::Content::Text(text) => text,
            tholebook::store::Content::Refused(refused) => panic!("{path}: {refused:?}"),
        }
    };
    let until = |path: &str, end: &str| {
        let text = text(path);
        let end = text.find(end).expect("the next part");
        text[..end].to_owned()
    };
    vec![
        ("boats/kittiwake.yaml", until("boats/kittiwake.yaml", "  - seat: 2")),
        ("oars/long-ash.yaml", until("oars/long-ash.yaml", "  - oar: A2")),
        ("crews/masters-a.yaml", text("crews/masters-a.yaml")),
        ("club.yaml", text("club.yaml")),
    ]
}

/// Returns the damaged copy of a number.
fn copy(records: &[(&'static str, String)], number: u64) -> Named {
    let mut damage = Damage::from(number);
    let (path, text) = &records[damage.below(records.len())];
    let text = damage.done_to(text);
    // Only one file of a book is its club.yaml; its copies are read as lone files, each in turn.
    let path = if *path == "club.yaml" && number % LOT < 4 {
        (*path).to_owned()
    } else {
        format!("{number}/{path}")
    };
    Named::text(&path, &text)
}

#[test]
fn no_damage_stops_the_reading_or_sends_a_fault_out_of_its_file() {
    let records = short_records();
    let lots: Vec<u64> = (0..COPIES / LOT).collect();
    lots.par_iter().for_each(|lot| {
        let numbers = lot * LOT..(lot + 1) * LOT;
        let texts: Vec<Named> = numbers.map(|number| copy(&records, number)).collect();
        let begun = Instant::now();
        let read = catch_unwind(|| reading::read("damaged", texts.clone()));
        let took = begun.elapsed();
        match read {
            Ok((book, faults)) => check_places(&book, &faults),
            Err(_) => find_the_culprit(&texts),
        }
        if took > LONGEST {
            texts.iter().for_each(time_alone);
        }
    });
}

/// Reads each text alone, so that the one that can't be borne is shown.
fn find_the_culprit(texts: &[Named]) {
    for text in texts {
        let read = catch_unwind(|| reading::read("damaged", vec![text.clone()]));
        assert!(read.is_ok(), "reading panics at {text:?}");
    }
    panic!("reading panics at these texts together: {texts:?}");
}

fn time_alone(text: &Named) {
    let begun = Instant::now();
    let (_, faults) = reading::read("damaged", vec![text.clone()]);
    let took = begun.elapsed();
    assert!(took < LONGEST, "{took:?}, {} faults: {text:?}", faults.len());
}

/// Every place that was told or kept lies in its file, between two characters.
fn check_places(book: &Book, faults: &[Fault]) {
    let in_its_file = |place: Place| {
        let file = &book.file(place.file);
        let text = file.text.get(place.span.start..place.span.end);
        assert!(text.is_some(), "{place:?} of {:?}", file.text);
    };
    for fault in faults {
        in_its_file(fault.place);
        fault.also.into_iter().for_each(in_its_file);
        assert!(!fault.what.to_string().is_empty() && !fault.what.help().is_empty());
    }
    book.written().for_each(|own| in_its_file(own.place));
    let in_order = faults.windows(2).all(|two| two[0].place.file <= two[1].place.file);
    assert!(in_order, "faults are told in the order of the files");
}

#[test]
fn the_damage_is_the_same_in_every_run_and_is_damage() {
    let records = short_records();
    let texts = |number| copy(&records, number);
    assert_eq!(texts(17), texts(17));
    let (_, faults) = reading::read("damaged", (0..200).map(texts).collect());
    let mut rules: Vec<&str> = faults.iter().map(|fault| fault.what.rule()).collect();
    rules.sort_unstable();
    rules.dedup();
    assert!(rules.len() >= 6, "only {rules:?} came of it");
}

/// A damaged file must not stop the checks of the others either.
#[test]
fn no_damage_to_one_file_stops_the_rules() {
    let as_of = Date::read("2026-11-01").expect("a day");
    (0..400_u64).into_par_iter().for_each(|number| {
        let mut damage = Damage::from(number);
        let mut texts = SoundBook::new().texts();
        let hit = damage.below(texts.len());
        if let tholebook::store::Content::Text(text) = &mut texts[hit].content {
            *text = damage.done_to(text);
        }
        let (book, faults) = reading::read("damaged", texts);
        let checked = rules::check(&book, &faults, rules::Check { as_of });
        assert!(checked.findings.len() >= faults.len(), "a fault was told and not found");
    });
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 512, ..ProptestConfig::default() })]

    #[test]
    fn no_text_at_all_stops_the_reading(text in "\\PC{0,200}") {
        let (book, faults) = reading::read("any", vec![Named::text("boats/any.yaml", &text)]);
        check_places(&book, &faults);
    }

    #[test]
    fn no_heap_of_yaml_signs_stops_the_reading(
        text in "(boat: b\n)?([-:?,\\[\\]{}#&*!|>'\"%@`~ \t\r\n0-9a-c.\u{feff}é]|seats:|- seat: 1|pitch: |<<: |x-|1,5){0,80}"
    ) {
        let texts = ["boats/any.yaml", "club.yaml", "waivers.yaml"];
        let texts = texts.map(|path| Named::text(path, &text)).to_vec();
        let (book, faults) = reading::read("any", texts);
        check_places(&book, &faults);
    }
}
