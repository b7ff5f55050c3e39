//! `mend`: only how something is spelled changes, never what was measured.

use std::fs;

use tholebook::reading;
use tholebook::store::Named;
use tholebook::writing::mending::mended;

use crate::run::BOAT;
use crate::run::Club;

/// The sound boat with one slip of every kind.
fn slipped() -> Club {
    Club::new()
        .edit(BOAT, "gap: 60", "gap: 60,5 # by callipers")
        .edit(BOAT, "after-tip: 3", "after_tip: 3")
        .edit(BOAT, "  date: 2026", "  dat: 2026")
        .edit(BOAT, "horn: 46", "horn: 46 MM")
        .edit(BOAT, "pitch: {catch: 11, square: 11", "pitch: {catch: 11,5, square: 11,5")
        .edit(BOAT, "lean: {aft: 0.5, out: -0.5}", "lean: {aft: 0.5, out: \u{2212}0.5}")
}

const PUT_RIGHT: [(&str, &str); 6] = [
    ("  dat: 2026", "  date: 2026"),
    ("gap: 60,5 #", "gap: 60.5 #"),
    ("after_tip: 3", "after-tip: 3"),
    ("horn: 46 MM", "horn: 46 mm"),
    ("{catch: 11,5, square: 11,5", "{catch: 11.5, square: 11.5"),
    ("out: \u{2212}0.5", "out: -0.5"),
];

#[test]
fn corrections_are_shown_as_a_diff_and_nothing_is_written() {
    let club = slipped();
    let before = club.text(BOAT);
    let run = club.run(&["mend"]).ends(0);
    assert!(run.out.starts_with("--- boats/kittiwake.yaml\n+++ boats/kittiwake.yaml\n"));
    assert!(run.out.contains("\n-      gap: 60,5 # by callipers\n"), "{}", run.out);
    assert!(run.out.contains("\n+      gap: 60.5 # by callipers\n"), "{}", run.out);
    assert!(
        run.out.ends_with("7 corrections; nothing is written yet: add --write\n"),
        "{}",
        run.out
    );
    assert_eq!(club.text(BOAT), before);
}

#[test]
fn with_write_the_very_slips_are_put_right_and_every_other_byte_stays() {
    let club = slipped();
    let before = club.text(BOAT);
    let run = club.run(&["mend", "--write"]).ends(0);
    assert_eq!(run.err, "");
    assert!(run.out.contains("  kittiwake/seat-1/rowlock/gap: 60,5 -> 60.5\n"), "{}", run.out);
    let meant = PUT_RIGHT.iter().fold(before, |text, (old, new)| text.replacen(old, new, 1));
    assert_eq!(club.text(BOAT), meant);
    assert_eq!(club.run(&["mend", "--write"]).ends(0).out, "Nothing to mend by spelling alone.\n");
}

#[test]
fn only_what_is_asked_for_is_mended() {
    let club = slipped();
    let run = club.run(&["mend", "kittiwake/seat-1/pin", "--write"]).ends(0);
    assert!(run.out.starts_with("boats/kittiwake.yaml: 1 correction written\n"), "{}", run.out);
    assert!(club.text(BOAT).contains("gap: 60,5"));
    let unknown = club.run(&["mend", "kitiwake"]).ends(2);
    assert!(unknown.err.contains("Did you mean kittiwake?"), "{}", unknown.err);
}

#[test]
fn what_may_be_a_comma_between_thousands_is_left_and_told() {
    let club = Club::new().edit(BOAT, "chock-to-pin: 600", "chock-to-pin: 1,600");
    let before = club.text(BOAT);
    let run = club.run(&["mend", "--write"]).ends(0);
    assert_eq!(run.out, "Nothing to mend by spelling alone.\n");
    assert!(run.err.contains("1 thing needs a person to look"), "{}", run.err);
    assert_eq!(club.text(BOAT), before);
}

#[test]
fn a_key_that_stands_there_already_is_not_written_twice() {
    let text = "oar-set: ash\noars:\n  - {oar: A1, inboard: 1150, in-board: 1151}\n";
    assert_eq!(mended("oars/ash.yaml", text, None).text, text);
}

/// Every figure of the records, each with every slip that mend knows: what is read afterwards is
/// what was read before the slip.
#[test]
fn what_was_measured_reads_the_same_after_slip_and_correction() {
    let sound = fs::read_to_string("tests/data/sound-book/boats/kittiwake.yaml").expect("a boat");
    let said = |text: &str| {
        let (book, faults) = reading::read_alone(Named::text(BOAT, text));
        assert!(faults.is_empty(), "{faults:?}");
        let said = book.written().map(|own| (own.name.clone(), own.said.clone()));
        said.collect::<Vec<_>>()
    };
    let meant = said(&sound);
    let slips: [fn(&str) -> String; 3] = [
        |text| text.replace(".5,", ",5,").replace(".5}", ",5}"),
        |text| text.replace(": -", ": \u{2013}"),
        |text| text.replace(" deg", " Degrees"),
    ];
    for slip in slips {
        let slipped = slip(&sound);
        assert_ne!(slipped, sound);
        let mended = mended(BOAT, &slipped, None);
        assert!(!mended.made.is_empty());
        assert_eq!(said(&mended.text), meant);
    }
}
