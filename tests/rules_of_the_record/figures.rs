//! Sums as written, units, and tools that read too coarsely.

use crate::found::BOAT;
use crate::found::checked;
use crate::found::found;
use crate::found::not_checked;
use crate::found::of;
use crate::found::only;
use crate::found::uncertainty;
use crate::sound_book::SoundBook;

// ---- worked-out values

#[test]
fn a_sum_is_right_when_it_is_rounded_as_it_is_written() {
    // Gearing: (3860 - 1150) / 1150 = 2.3565.
    for (written, right) in [("2.4", true), ("2.36", true), ("2.3565", true), ("2.35", false)] {
        let mut book = SoundBook::new();
        book.edit(BOAT, "seat: 1", "gearing: 2.357", &format!("gearing: {written}"));
        let (_, checked) = book.check();
        assert_eq!(of(&checked, "sum-wrong").is_empty(), right, "{written}");
    }
}

#[test]
fn a_wrong_sum_is_shown_as_written_beside_the_readings_it_rests_on() {
    let edits = [(BOAT, "seat: 1", "clearance: 8.0", "clearance: 9.25")];
    let finding = only(&edits, "sum-wrong");
    assert!(finding.message.contains("written as 9.25 mm; the readings give 8.0 mm"));
    let labels: Vec<&str> = finding.labels.iter().map(|label| &*label.text).collect();
    assert_eq!(
        labels[1..],
        ["gap between the horns: 60.0 mm", "widest part of the shaft: 52.0 mm"]
    );
}

#[test]
fn a_sum_whose_readings_are_missing_is_counted_as_not_checked() {
    let edits = [(BOAT, "seat: 1", "      gap: 60\n", "")];
    assert!(found(&edits, "sum-wrong").is_empty());
    let expected = ["kittiwake/seat-1/worked-out/clearance: rowlock/gap"];
    assert_eq!(not_checked(&edits, "sum-wrong"), expected);
}

// ---- units

#[test]
fn a_value_that_no_unit_helps_is_told_all_the_same() {
    let edits = [(BOAT, "seat: 1", "chock-to-pin: 600", "chock-to-pin: 2")];
    let finding = only(&edits, "unit-suspect");
    // 2 mm: 20, 50.8, 2000, 0.2, ... none lies in 350 to 900.
    assert_eq!(finding.remedy, "Read it again, and write it with its unit.");
}

#[test]
fn a_list_with_two_odd_readings_is_one_finding() {
    let edits = [(BOAT, "seat: 1", "chock-to-pin: 600", "chock-to-pin: [60, 60.5]")];
    assert_eq!(found(&edits, "unit-suspect").len(), 1);
}

#[test]
fn a_range_for_a_length_that_nobody_measures_is_told() {
    let class = "class: fourcar\nplausible:\n  rowlock/gab: {least: 35, most: 100}\n";
    let finding = only(&[("classes/fourcar.yaml", "", "", class)], "unknown-key");
    assert_eq!(finding.name.as_str(), "fourcar/plausible/rowlock/gab");
    assert!(finding.remedy.contains("rowlock/gap"), "{}", finding.remedy);
}

// ---- tools

#[test]
fn a_coarse_tool_is_told_once_a_limit_at_the_worst_seat() {
    // 2 x 15 / sqrt 3 = 17.3 and 2 x 20 / sqrt 3 = 23.1, both over half of 305 to 335.
    let edits = [
        (BOAT, "seat: 2", "handle-past-mark: 321", "handle-past-mark: {read: 321, to: 15}"),
        (BOAT, "seat: 3", "handle-past-mark: 321", "handle-past-mark: {read: 321, to: 20}"),
    ];
    let finding = only(&edits, "tool-too-coarse");
    assert!(
        finding.message.starts_with("Kittiwake, seat 3: handle past mark"),
        "{}",
        finding.message
    );
    assert!(finding.remedy.ends_with("with the plumb bob."), "{}", finding.remedy);
}

#[test]
fn a_pitch_read_too_coarsely_fails_each_limit_it_is_judged_by() {
    // A rule read to 3 mm: u = 3 / sqrt 3 / (176 cos 3.58 deg) rad = 0.565 deg. One blade against
    // the other: 2 sqrt 2 x 0.565 = 1.60 deg > 0.6; the means of the sides: 2 x 0.565 = 1.13 > 0.5;
    // one blade alone: with trim, 1.15 deg < half of 3 to 7.
    let edits = [(BOAT, "rigged", "  where: trailer", "  readings: {rule: 3}\n  where: trailer")];
    let checked = checked(&edits);
    let limits: Vec<String> = of(&checked, "tool-too-coarse")
        .iter()
        .filter(|finding| finding.message.contains("pitch"))
        .map(|finding| format!("{:.2}", uncertainty(finding)))
        .collect();
    assert!(
        limits.contains(&"1.60".to_owned()) && limits.contains(&"1.13".to_owned()),
        "{limits:?}"
    );
    assert!(
        !checked.findings.iter().any(|finding| finding.message.contains("pitch square off is"))
    );
}
