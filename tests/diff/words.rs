//! How a change is put into words.

use super::pair::BOAT;
use super::pair::Pair;
use super::pair::run;

#[test]
fn a_difference_of_decimals_is_a_decimal() {
    let pair =
        Pair::new().edit("a", BOAT, "gap: 60", "gap: 10.9").edit("b", BOAT, "gap: 60", "gap: 11.0");
    assert_eq!(pair.change("kittiwake/seat-1/rowlock/gap")["delta"], 0.1);
}

#[test]
fn a_number_that_is_only_written_otherwise_has_its_unit() {
    let digits = Pair::new().edit("b", BOAT, "gap: 60", "gap: 60.0");
    assert!(digits.run(&[]).out.contains("60 → 60.0 mm"), "{}", digits.run(&[]).out);
    let unit = Pair::new().edit("b", BOAT, "gap: 60", "gap: 6 cm");
    assert!(unit.run(&[]).out.contains("60 mm → 6 cm"), "{}", unit.run(&[]).out);
}

#[test]
fn what_was_measured_again_stands_last_and_a_whole_boat_is_one_line() {
    let pair = Pair::new().edit("b", BOAT, "gap: 60", "gap: 58").edit(
        "b",
        BOAT,
        "date: 2026-10-17",
        "date: 2026-10-24",
    );
    let text = pair.run(&[]).out;
    let at = |words: &str| text.find(words).unwrap_or_else(|| panic!("{words} in {text}"));
    assert!(at("What follows from it") < at("Measured again, the same"), "{text}");
    let again: Vec<&str> = text[at("Measured again")..].lines().filter(|l| !l.is_empty()).collect();
    let lines = again.iter().filter(|line| line.starts_with("  kittiwake")).count();
    assert_eq!(lines, 1, "{text}");
    assert!(again[1].contains("values, on 2026-10-24"), "{text}");
}

#[test]
fn a_path_to_no_folder_is_told_as_such() {
    let pair = Pair::new();
    for path in ["../nosuch", "./nosuch", "/no/such/folder", "../no..such"] {
        let refused = run(&pair.path("a"), &[path]);
        assert_eq!((refused.code, &*refused.out), (Some(3), ""), "{path}");
        assert!(refused.err.contains(&format!("no folder \"{path}\"")), "{}", refused.err);
    }
}
