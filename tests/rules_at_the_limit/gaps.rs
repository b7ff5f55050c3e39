//! The gap, the horns, and the finer tool.

use tholebook::rules::Level;

use crate::found::BOAT;
use crate::found::OARS;
use crate::found::checked;
use crate::found::found;
use crate::found::never_says_bend;
use crate::found::not_checked;
use crate::found::only;
use crate::found::says;
use crate::found::with_gap;

/// 57.2 - 52 = 5.2, over the limit of 5 by 0.2; two calliper readings to 0.2 each give
/// U = 2 sqrt(2 x 0.2^2 / 3) = 0.327. Read to 0.1 they would give 0.163, less than 0.2.
#[test]
fn a_danger_too_close_to_call_is_a_danger_and_says_measure_again_and_never_bend() {
    let finding = with_gap("gap-too-tight", "57.2").expect("not shown to clear");
    assert_eq!(finding.level, Level::Danger);
    says(&finding, "clears oar A1 by 5.2 mm, good to ± 0.3 mm: only 0.2 mm over the limit");
    says(
        &finding,
        "Measure again: read the gap between the horns and the widest part of the shaft",
    );
    says(&finding, "to ± 0.1 mm");
    never_says_bend(&finding);
}

/// 56.8 - 52 = 4.8: 0.2 short of 5, within 0.327.
#[test]
fn a_danger_short_by_less_than_it_is_good_to_is_not_bent_either() {
    let finding = with_gap("gap-too-tight", "56.8").expect("not shown to clear");
    assert_eq!(finding.level, Level::Danger);
    says(&finding, "0.2 mm short, too close to call");
    never_says_bend(&finding);
}

/// 55 - 52 = 3: 2 short. To be shown to clear it must gain 2 + 0.327, so 2.4 in tenths, and read
/// 57.4. On a horn of 46 that is atan(2.327 / 46) = 2.896 deg.
#[test]
fn a_gap_proven_short_says_by_how_much_to_open_it_and_is_clear_when_that_is_done() {
    let finding = with_gap("gap-too-tight", "55").expect("short");
    assert_eq!(finding.level, Level::Danger);
    says(&finding, "2.0 mm short (at least 5 mm)");
    says(&finding, "Open the gap by at least 2.4 mm, until it reads 57.4 mm.");
    says(&finding, "the after horn only, its top to the stern (2.4 mm at its tip, 2.90 deg)");
    let thrice = [
        (BOAT, "seat: 1", "gap: 60", "gap: 55"),
        (BOAT, "seat: 1", "horn: 46", "horn: [45, 46, 47]"),
    ];
    says(&found("gap-too-tight", &thrice)[0], "(2.4 mm at its tip, 2.90 deg)");
    assert!(with_gap("gap-too-tight", "57.4").is_none());
    assert!(with_gap("gap-too-tight", "57.3").is_some(), "5.3 is within 0.327 of 5");
}

/// 51 - 52 = -1.
#[test]
fn a_gap_narrower_than_its_oar_is_told_so() {
    let finding = with_gap("gap-too-tight", "51").expect("short");
    says(&finding, "is narrower than oar A1 by 1.0 mm");
    says(&finding, "6.0 mm short");
}

/// 61.2 - 46 = 15.2, over 15 by 0.2 with U 0.327; 61.4 by 0.4.
#[test]
fn an_ordinary_limit_too_close_to_call_is_unsure_and_beyond_doubt_a_fault() {
    let close = with_gap("gap-too-loose", "61.2").expect("over");
    assert_eq!(close.level, Level::Unsure);
    says(&close, "Too close to call. Measure again");
    never_says_bend(&close);
    let over = with_gap("gap-too-loose", "61.4").expect("over");
    assert_eq!(over.level, Level::Fault);
    says(&over, "Close the gap by at least 0.4 mm, until it reads 61.0 mm.");
    assert!(with_gap("gap-too-loose", "61").is_none(), "at the limit is inside");
}

/// 61.5 - 46 = 15.5. By callipers U is 0.327, less than the 0.5 over: proven. By the tape, to 2,
/// U = 2 sqrt((2^2 + 0.2^2) / 3) = 2.32: not proven; the rule, to 0.5, would give 0.62, which
/// doesn't decide, callipers would.
#[test]
fn the_same_figure_is_a_fault_by_callipers_and_unsure_by_the_tape() {
    let callipers = with_gap("gap-too-loose", "61.5").expect("over");
    assert_eq!(callipers.level, Level::Fault);
    let tape = with_gap("gap-too-loose", "{read: 61.5, to: 2}").expect("over");
    assert_eq!(tape.level, Level::Unsure);
    says(&tape, "good to ± 2.3 mm");
    says(&tape, "read the gap between the horns with callipers");
}

/// 58 - 52 = 6: by callipers clear of 5 by 1 with U 0.327; by the tape U is 2.32. The rule would
/// decide: 2 sqrt((0.5^2 + 0.2^2) / 3) = 0.62.
#[test]
fn the_same_gap_is_clear_by_callipers_and_a_danger_by_the_tape() {
    assert!(with_gap("gap-too-tight", "58").is_none());
    let tape = with_gap("gap-too-tight", "{read: 58, to: 2}").expect("not shown to clear");
    assert_eq!(tape.level, Level::Danger);
    says(&tape, "read the gap between the horns with the rule");
    never_says_bend(&tape);
}

/// The tip is read with the rule, to 0.5: U = 2 x 0.5 / sqrt(3) = 0.577.
#[test]
fn a_horn_must_be_shown_not_to_hook() {
    let tip = |edit| found("horn-hooks", &[(BOAT, "seat: 1", "after-tip: 3", edit)]);
    assert!(tip("after-tip: 0.6").is_empty());
    for doubtful in ["after-tip: 0.5", "after-tip: 0", "after-tip: -0.5"] {
        let finding = tip(doubtful).remove(0);
        assert_eq!(finding.level, Level::Danger, "{doubtful}");
        says(&finding, "too close to call");
        never_says_bend(&finding);
    }
    let hooked = tip("after-tip: -3").remove(0);
    says(&hooked, "3.0 mm ahead of its shank, good to ± 0.6 mm");
    says(&hooked, "Bend the after horn's tip to the stern by at least 3.6 mm");
    let missing = checked(&[(BOAT, "seat: 1", "after-tip: 3", "after-tip: not measured")]);
    assert_eq!(not_checked(&missing, "horn-hooks"), 1);
}

/// 56.2 - 46 = 10.2 against 15 - 5 = 10, U 0.327; 56.4 is 0.4 over.
#[test]
fn no_gap_suits_an_oar_that_is_out_of_round_by_more_than_the_limits_leave() {
    let oar = |widest| only("oar-cannot-suit", &[(OARS, "oar: A1", "widest: 52", widest)]);
    assert_eq!(oar("widest: 56.2").level, Level::Unsure);
    let finding = oar("widest: 56.4");
    assert_eq!((finding.level, finding.name.as_str()), (Level::Fault, "kittiwake/seat-1/oar"));
    assert!(found("oar-cannot-suit", &[(OARS, "oar: A1", "widest: 52", "widest: 56")]).is_empty());
}

/// Along the boat the tilt is atan(tan 15 / cos 6) = 15.08 deg: 52 / cos = 53.86, wall 49.5 - 26
/// = 23.5 times tan = 6.33: 60 - 60.19 = -0.19, good to some 0.33.
/// As below, with a horn of 46: 59.24 - 53.86 - 20 x 0.2695 = -0.01 mm.
#[test]
fn a_shaft_that_may_only_just_rub_is_not_said_to_rub_by_nothing() {
    let just = with_gap("gap-rubs-in-roll", "59.24").expect("a note");
    assert!(just.message.ends_with(": it only just rubs, too close to call"), "{}", just.message);
    let little = with_gap("gap-rubs-in-roll", "59.0").expect("a note");
    let words = ": 0.2 mm too little not to rub, too close to call";
    assert!(little.message.ends_with(words), "{}", little.message);
    let much = with_gap("gap-rubs-in-roll", "58.0").expect("a note");
    assert!(much.message.ends_with(": 1.2 mm too little not to rub"), "{}", much.message);
}

#[test]
fn a_shaft_that_may_rub_in_a_roll_is_a_note_however_close() {
    let horn = |edit| only("gap-rubs-in-roll", &[(BOAT, "seat: 1", "horn: 46", edit)]);
    let close = horn("horn: 49.5");
    assert_eq!(close.level, Level::Note);
    says(&close, "with the oar along the boat -0.2 mm");
    says(&close, "Too close to call");
    let sure = horn("horn: 62");
    assert_eq!(sure.level, Level::Note);
    for place in ["at the catch (50 deg)", "at the finish (35 deg)", "along the boat"] {
        says(&sure, place);
    }
}
