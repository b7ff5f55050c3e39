//! What is said of values close to a limit, and of boats where something is missing. The sums in
//! the comments are by hand: U = 2 sqrt(sum of (half-width x sensitivity)^2 / 3).

mod sound_book;

use sound_book::SoundBook;
use tholebook::rules::Checked;
use tholebook::rules::Edit;
use tholebook::rules::Finding;
use tholebook::rules::Level;

const BOAT: &str = "boats/kittiwake.yaml";
const OARS: &str = "oars/long-ash.yaml";
const PITCH: &str = "pitch: {catch: 11, square: 11, finish: 11}";
const LEVEL: &str = "  level: {trim: 0.0, roll: 0.1}\n";
const A2_BEARS: Edit = (OARS, "oar: A2", "bears: flat", "bears: round");

fn checked(edits: &[Edit]) -> Checked {
    SoundBook::with(edits).check().1
}

/// What one rule finds in the sound book with edits.
fn found(rule: &str, edits: &[Edit]) -> Vec<Finding> {
    checked(edits).findings.into_iter().filter(|finding| finding.rule.id == rule).collect()
}

/// The only thing that one rule finds.
fn only(rule: &str, edits: &[Edit]) -> Finding {
    let mut found = found(rule, edits);
    assert_eq!(found.len(), 1, "{rule}: {found:#?}");
    found.remove(0)
}

/// What one rule finds at the first seat's own oar when its gap is written so.
fn with_gap(rule: &str, gap: &str) -> Option<Finding> {
    let own = |finding: &Finding| finding.name.as_str() == "kittiwake/seat-1/rowlock/gap";
    let gap: &str = format!("gap: {gap}").leak();
    found(rule, &[(BOAT, "seat: 1", "gap: 60", gap)]).into_iter().find(own)
}

fn says(finding: &Finding, part: &str) {
    let said = format!("{} {}", finding.message, finding.remedy);
    assert!(said.contains(part), "{part:?} is not in: {said}");
}

fn never_says_bend(finding: &Finding) {
    let said = format!("{} {}", finding.message, finding.remedy);
    assert!(!said.to_lowercase().contains("bend"), "{said}");
}

fn not_checked(checked: &Checked, rule: &str) -> usize {
    checked.not_checked.iter().filter(|missing| missing.rule == rule).count()
}

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
    says(&still, "over by 0.71 deg (at most 0.6 deg)");
    assert_eq!(still.labels.len(), 4);
    assert_eq!(still.labels[0].text, "4.89 deg here");
    for lay in ["level: {trim: 3.0, roll: -2}", "x-level: nobody looked"] {
        let other = only("pitch-mismatch", &level(lay));
        assert_eq!((&other.message, other.value), (&still.message, still.value), "{lay}");
    }
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

#[test]
fn what_nobody_measured_is_a_danger_of_a_boat_in_use() {
    let name = |edits: &[Edit]| only("gap-not-measured", edits).name.to_string();
    let gap = (BOAT, "seat: 3", "gap: 60", "gap: not measured");
    assert_eq!(name(&[gap]), "kittiwake/seat-3/rowlock");
    assert_eq!(name(&[(OARS, "oar: A2", "widest: 52, ", "")]), "kittiwake/seat-2/rowlock");
    assert_eq!(name(&[(OARS, "oar: A5", "widest: 52, ", "")]), "kittiwake/spare/A5");
    let no_set = found("gap-not-measured", &[(BOAT, "", "oars: long-ash", "oars: short-ash")]);
    assert_eq!(no_set.len(), 5, "four seats and a spare: {no_set:#?}");
    assert!(no_set.iter().all(|finding| finding.level == Level::Danger));
}

#[test]
fn a_boat_out_of_use_is_shown_and_nothing_of_her_stops_anyone() {
    let out = (
        BOAT,
        "",
        "seats:\n",
        "out-of-use: {since: 2026-10-20, by: Ines Marlow, because: gap}\nseats:\n",
    );
    let unread = (BOAT, "seat: 1", "gap: 60", "gap: not measured");
    let tight = (BOAT, "seat: 2", "gap: 60", "gap: 52");
    let in_use = checked(&[unread, tight]);
    assert_eq!(in_use.worst(), Some(Level::Danger));
    let shown = checked(&[out, unread, tight]);
    assert_eq!(shown.worst(), None);
    assert!(shown.findings.iter().any(|finding| finding.rule.id == "gap-too-tight"));
    assert!(shown.findings.iter().all(|finding| finding.rule.id != "gap-not-measured"));
    assert_eq!(not_checked(&shown, "gap-not-measured"), 1);
}

/// (1150 + 30) cos 6 - 792 - 61 = 320.5; inboard to 2, spread and mark to 1, dip to 2 deg (2.15 mm
/// a degree), the bob to 1, roll to 0.2 deg on 313 mm of height: U = 2 sqrt((2^2 x 0.99 + 1 + 1 +
/// 4.3^2 + 1 + 1.09^2) / 3) = 5.97. 330 is 8.9 off, 325 is 3.9 off.
#[test]
fn a_handle_that_its_own_oar_contradicts_is_a_fault_and_never_unsure() {
    let handle = |edit| {
        found("handle-past-mark-disagrees", &[(BOAT, "seat: 1", "handle-past-mark: 321", edit)])
    };
    assert!(handle("handle-past-mark: 325").is_empty());
    assert!(handle("handle-past-mark: 316").is_empty());
    for edit in ["handle-past-mark: 328", "handle-past-mark: 330", "handle-past-mark: 312"] {
        let finding = handle(edit).remove(0);
        assert_eq!((finding.level, finding.labels.len()), (Level::Fault, 4), "{edit}");
    }
}

/// The handle stands about 190 + 1180 sin 6 = 313 mm above the seat: port side down by 0.1 deg
/// hangs the bob of a port oar 313 tan 0.1 = 0.5 mm towards port, so that 290 is 290.5: 29.5 short
/// of 320. 335.5 is 336.0, over 335 by 1.0 with U = 2 sqrt((1 + 1.09^2) / 3) = 1.7.
#[test]
fn a_collar_slides_towards_the_blade_when_the_handle_falls_short() {
    let handle =
        |edit| only("handle-past-mark-wrong", &[(BOAT, "seat: 2", "handle-past-mark: 321", edit)]);
    let short = handle("handle-past-mark: 290");
    assert_eq!(short.level, Level::Fault);
    says(&short, "Slide the collar towards the blade by 29.5 mm");
    says(&short, "all four alike");
    says(&handle("handle-past-mark: 345"), "towards the handle");
    assert_eq!(handle("handle-past-mark: 335.5").level, Level::Unsure);
}

#[test]
fn a_jam_is_a_danger_and_a_pull_a_fault_each_in_its_own_place() {
    let lifts = "lifts-out: {square: freely, catch: freely, finish: freely, along: freely}";
    let worse = "lifts-out: {square: jams, catch: freely, finish: stiffly, along: freely}";
    let found = found("oar-did-not-lift-out", &[(BOAT, "seat: 4", lifts, worse)]);
    let told: Vec<_> = found.iter().map(|f| (f.name.as_str(), f.level)).collect();
    let expected = [
        ("kittiwake/seat-4/lifts-out/square", Level::Danger),
        ("kittiwake/seat-4/lifts-out/finish", Level::Fault),
    ];
    assert_eq!(told, expected);
}

/// Days have no hours: a bend on the day of a trial comes before it, a knock on the rigging day
/// after it, a knock on the day an oar was tried again before that.
#[test]
fn an_oar_is_lifted_out_again_after_a_knock_or_a_bend() {
    const AGAIN: &str = "read-again:\n  - {date: 2026-10-24, by: Tomas Reyne, values: ";
    let history = |text: String| {
        let seats: &str = format!("{text}seats:\n").leak();
        let found = found("lift-not-tried", &[(BOAT, "", "seats:\n", seats)]);
        found.iter().map(|finding| finding.name.to_string()).collect::<Vec<_>>()
    };
    let bend = |day| format!("bends:\n  - {{date: {day}, seat: 2, part: pin, deg: 1}}\n");
    let knock = |day, at| format!("knocks:\n  - {{date: {day}, what: rolled, where: {at}}}\n");
    let again = |values| format!("{AGAIN}{values}}}\n");
    let two = ["kittiwake/seat-2/lifts-out"];
    assert!(history(bend("2026-10-17")).is_empty());
    assert_eq!(history(bend("2026-10-18")), two);
    assert_eq!(history(knock("2026-10-17", "[seat-2]")), two);
    assert!(history(knock("2026-10-16", "[seat-2]")).is_empty());
    assert_eq!(history(knock("2026-10-18", "[]")).len(), 4, "no seat named: all of them");
    for cure in ["[seat-2]", "[seat-2/lifts-out]", "['*/lifts-out']"] {
        let text = knock("2026-10-24", "[seat-2]") + &bend("2026-10-24") + &again(cure);
        assert!(history(text).is_empty(), "{cure}");
    }
    for part in ["[seat-2/lifts-out/square]", "[seat-1/lifts-out]", "[seat-2/rowlock/gap]"] {
        assert_eq!(history(bend("2026-10-24") + &again(part)), two, "{part}");
    }
}
