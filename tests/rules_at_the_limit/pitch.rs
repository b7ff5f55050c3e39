//! The level, the pins and the blades.

use tholebook::rules::Edit;
use tholebook::rules::Level;

use crate::found::A2_BEARS;
use crate::found::BOAT;
use crate::found::LEVEL;
use crate::found::OARS;
use crate::found::PITCH;
use crate::found::checked;
use crate::found::found;
use crate::found::not_checked;
use crate::found::only;
use crate::found::says;

/// A pin 6 mm over 150 leans 2.3 deg; without the level nobody knows against what.
#[test]
fn without_the_level_no_pin_or_blade_is_called_wrong_or_right() {
    let lean = (BOAT, "seat: 1", "aft: 0.5", "aft: 6");
    let steep = (BOAT, "seat: 1", PITCH, "pitch: {catch: 30, square: 23, finish: 11}");
    let checked = checked(&[(BOAT, "", LEVEL, ""), lean, steep]);
    let of = |rule: &str| checked.findings.iter().filter(|f| f.rule.id == rule).count();
    for rule in ["pin-not-vertical", "pitch-out-of-range", "pitch-varies-through-arc"] {
        assert_eq!(of(rule), 0, "{rule}");
        assert!(not_checked(&checked, rule) >= 4, "{rule}");
    }
    assert_eq!(of("level-not-recorded"), 1);
    assert_eq!(of("pitch-mismatch"), 1, "blades compare as they were read");
    let finding = only("level-not-recorded", &[(BOAT, "", LEVEL, "")]);
    assert_eq!((finding.level, finding.name.as_str()), (Level::Unsure, "kittiwake"));
}

#[test]
fn without_a_level_mark_the_level_is_not_recorded_either() {
    let mark = "level-mark: {where: after edge of thwart 2, found-afloat: 2026-09-05}\n";
    says(&only("level-not-recorded", &[(BOAT, "", mark, "")]), "place of the level mark");
    let half = (BOAT, "", "{trim: 0.0, roll: 0.1}", "{trim: 0.0}");
    says(&only("level-not-recorded", &[half]), "roll not recorded");
}

/// asin(15/176) = 4.889 deg and asin(11/176) = 3.583: 1.306 apart. Each offset to 0.5 gives 0.163
/// deg, each width to 2 mm tan(pitch) x 2/176: U = 2 sqrt((2 x 0.163^2 + 0.056^2 + 0.041^2) / 3)
/// = 0.278. Over 0.6 by 0.706. Trim moves every blade alike.
#[test]
fn a_mismatch_is_the_same_however_the_boat_lay() {
    let blade = (BOAT, "seat: 2", PITCH, "pitch: {catch: 15, square: 15, finish: 15}");
    let level = |to| [(BOAT, "", "level: {trim: 0.0, roll: 0.1}", to), blade];
    let still = only("pitch-mismatch", &level("level: {trim: 0.0, roll: 0.1}"));
    assert_eq!((still.level, still.name.as_str()), (Level::Fault, "kittiwake"));
    says(&still, "differ by 1.31 deg, good to ± 0.28 deg");
    // The worse known of the two: 2 sqrt((0.163^2 + 0.056^2) / 3) = 0.199.
    says(&still, "each good to ± 0.20 deg");
    says(&still, "over by 0.71 deg (at most 0.6 deg)");
    assert_eq!(still.labels.len(), 4);
    assert_eq!(still.labels[0].text, "4.89 deg here");
    for lay in ["level: {trim: 3.0, roll: -2}", "x-level: nobody looked"] {
        let other = only("pitch-mismatch", &level(lay));
        assert_eq!((&other.message, other.value), (&still.message, still.value), "{lay}");
    }
}

/// asin(13.74/176) = 4.478 deg is 0.894 from the others, 0.294 beyond 0.6; U = 0.278 as above. The
/// furthest two of four are picked, so only 1.12 U = 0.311 would prove it; of two, 1 U does.
#[test]
fn a_difference_that_was_picked_needs_more_proof_than_one_that_was_meant() {
    let blade = (BOAT, "seat: 2", PITCH, "pitch: {catch: 13.74, square: 13.74, finish: 13.74}");
    let [third, fourth] =
        ["oar: A3", "oar: A4"].map(|oar| (OARS, oar, "bears: flat", "bears: round"));
    let of = |edits: &[Edit]| only("pitch-mismatch", edits).level;
    assert_eq!(of(&[blade]), Level::Unsure, "of four");
    assert_eq!(of(&[blade, fourth]), Level::Unsure, "of three");
    assert_eq!(of(&[blade, third, fourth]), Level::Fault, "of two");
}

/// What is missing could only make a difference more: a finding stands without it, and what is
/// switched off lacks nothing.
#[test]
fn a_missing_blade_is_told_only_where_it_could_change_the_verdict() {
    let wild = (BOAT, "seat: 2", PITCH, "pitch: {catch: 15, square: 15, finish: 15}");
    let unread = (BOAT, "seat: 3", PITCH, "pitch: {catch: 11, finish: 11}");
    let off = (BOAT, "", "seats:\n", "limits: {pitch-match: none}\nseats:\n");
    let told = |edits: &[Edit]| not_checked(&checked(edits), "pitch-mismatch");
    assert_eq!(told(&[unread]), 1);
    assert_eq!(told(&[unread, wild]), 0);
    assert_eq!(told(&[unread, off]), 0);
}

/// Two blades of 15 against two of 11: moving one would leave the other.
#[test]
fn every_blade_that_is_too_far_off_is_told_to_move() {
    let fifteen = "pitch: {catch: 15, square: 15, finish: 15}";
    let blades = [(BOAT, "seat: 2", PITCH, fifteen), (BOAT, "seat: 4", PITCH, fifteen)];
    let finding = only("pitch-mismatch", &blades);
    says(&finding, "At seat 2: ");
    says(&finding, "The same at seat 4 by 0.71 deg.");
}

/// Mean of port less mean of starboard: asin(13.2/176) = 4.301, less 3.583 = 0.718, over 0.5 by
/// 0.218; asin(13/176) = 4.236: over by 0.152. Each blade is good to u = 0.098, four of them in a
/// difference of two means to U = 2 x 0.098 = 0.195.
#[test]
fn sides_are_unequal_only_beyond_what_they_are_good_to() {
    let port = |pitch| [(BOAT, "seat: 2", PITCH, pitch), (BOAT, "seat: 4", PITCH, pitch)];
    let sure = only("sides-unequal", &port("pitch: {catch: 13.2, square: 13.2, finish: 13.2}"));
    assert_eq!(sure.level, Level::Fault);
    says(&sure, "port has more pitch than starboard, square off, by 0.72 deg, good to ± 0.20 deg");
    let close = only("sides-unequal", &port("pitch: {catch: 13, square: 13, finish: 13}"));
    assert_eq!(close.level, Level::Unsure);
    let less = only("sides-unequal", &port("pitch: {catch: 8, square: 8, finish: 8}"));
    says(&less, "starboard has more pitch than port");
}

/// By the small-angle form of `inverse_linear`: asin(17/176), (12.5/176), (11/176) are 5.543, 4.073 and
/// 3.583 deg: 1.36 to the bow and 1.28 outboard, and the roll of 0.1 is in the latter too. What is
/// further off for what it is good to is the figure: 1.48 to ± 0.33, not 1.55 to ± 1.00.
#[test]
fn a_blade_and_a_pin_that_disagree_say_both_leans_each_way() {
    let blade = (BOAT, "seat: 1", PITCH, "pitch: {catch: 17, square: 12.5, finish: 11}");
    let finding = only("arc-disagrees", &[blade]);
    says(
        &finding,
        "plumbed, the pin leans 0.19 deg to the stern, good to ± 0.32 deg; by the blade",
    );
    says(&finding, "by the blade, 1.35 deg to the bow, good to ± 1.00 deg");
    says(&finding, "by the blade, 1.39 deg outboard");
    let figure = finding.value.expect("a figure");
    assert!((figure.number - 1.478).abs() < 0.001, "{figure:?}");
}

#[test]
fn a_blade_that_the_hands_set_is_left_out_of_every_rule_of_pitch() {
    let wild = (BOAT, "seat: 2", PITCH, "pitch: {catch: 30, square: 23, finish: 5}");
    let rules = [
        "pitch-varies-through-arc",
        "arc-disagrees",
        "pitch-out-of-range",
        "pitch-mismatch",
        "sides-unequal",
    ];
    for rule in rules {
        assert!(!found(rule, &[wild]).is_empty(), "{rule} sees a blade on its flat");
        assert!(found(rule, &[wild, A2_BEARS]).is_empty(), "{rule}");
    }
    let unread = (BOAT, "seat: 2", PITCH, "pitch: {catch: 11, finish: 11}");
    let whole = checked(&[unread, A2_BEARS]);
    assert_eq!(not_checked(&whole, "pitch-mismatch"), 0);
    assert_eq!(not_checked(&checked(&[unread]), "pitch-mismatch"), 1);
}

/// asin(23/176) = 7.509, over 7 by 0.509; on a horn of 46 that is 46 tan(0.509) = 0.41 mm, so 0.5
/// in tenths; 176 sin(7) = 21.449, so 21.4. The other way 176 sin(3) = 9.211, so 9.3.
#[test]
fn a_pitch_out_of_range_says_which_horn_which_way_how_far_and_what_to_read_then() {
    let blade = |pitch| found("pitch-out-of-range", &[(BOAT, "seat: 1", PITCH, pitch)]);
    let much = blade("pitch: {catch: 11, square: 23, finish: 11}").remove(0);
    says(
        &much,
        "the forward horn only, its top to the bow by at least 0.51 deg (0.5 mm at its tip)",
    );
    says(&much, "until the blade reads 21.4 mm square off");
    let little = blade("pitch: {catch: 11, square: 7.5, finish: 11}").remove(0);
    says(&little, "its top to the stern");
    says(&little, "until the blade reads 9.3 mm square off");
    for set in ["pitch: {catch: 11, square: 21.4, finish: 11}", "pitch: {square: 9.3}"] {
        assert!(blade(set).is_empty(), "{set}");
    }
    let angle = blade("pitch: {square: 8 deg}").remove(0);
    says(&angle, "until the blade reads 7.00 deg square off");
}

/// 15, 11 and 8 mm: the catch is above the finish, so the pin leans out. Square off is in line
/// with both ends, and at oar angles of 50 and 35 the lean fore and aft is told four times worse.
#[test]
fn an_arc_tells_the_lean_it_can_and_says_which_it_cannot_and_bends_no_pin() {
    let blade = (BOAT, "seat: 1", PITCH, "pitch: {catch: 15, square: 11, finish: 8}");
    let finding = only("pitch-varies-through-arc", &[blade]);
    says(&finding, "outboard");
    says(&finding, "these readings can't tell the lean fore and aft");
    says(&finding, "Plumb the pin before bending it");
    says(&finding, "its head goes inboard: the catch is above the finish");
    let bowed = (BOAT, "seat: 1", PITCH, "pitch: {catch: 4, square: 11, finish: 6}");
    says(&only("pitch-varies-through-arc", &[bowed]), "to the bow: both ends are below square off");
    let unread = checked(&[(BOAT, "seat: 1", PITCH, "pitch: {catch: 11, finish: 11}")]);
    assert_eq!(not_checked(&unread, "pitch-varies-through-arc"), 1);
    let two = (BOAT, "seat: 1", PITCH, "pitch: {catch: 15, finish: 8}");
    assert_eq!(found("pitch-varies-through-arc", &[two]).len(), 1, "two are enough to prove it");
}
