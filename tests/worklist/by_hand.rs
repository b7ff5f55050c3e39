//! The amounts of one boat's work, each against a sum done by hand or by another program.

use tholebook::planning::worklist::Step;
use tholebook::planning::worklist::Work;
use tholebook::planning::worklist::Worklist;
use tholebook::planning::worklist::worklist;
use tholebook::reading;
use tholebook::rules::Edit;

use crate::boats::day;
use crate::sound_book::SoundBook;

const BOAT: &str = "boats/kittiwake.yaml";
const OARS: &str = "oars/long-ash.yaml";
const PITCH: &str = "pitch: {catch: 11, square: 11, finish: 11}";
const HIGH: Edit = (BOAT, "seat: 3", PITCH, "pitch: {catch: 12, square: 15, finish: 17}");
const INBOARD: Edit = (BOAT, "seat: 3", "out: -0.5", "out: -4");

fn plan(edits: &[Edit]) -> Worklist {
    let (book, faults) = reading::read("book", SoundBook::with(edits).texts());
    worklist(&book, &faults, &book.boats[0], day())
}

#[track_caller]
fn only(list: &Worklist, work: Work) -> &Step {
    let all: Vec<&Step> = list.steps.iter().filter(|step| step.work == work).collect();
    let [one] = all.as_slice() else { panic!("{work:?}: {all:#?}\n{list:#?}") };
    one
}

#[track_caller]
fn is(step: &Step, key: &str, value: f64, within: f64) {
    let own = step.amounts.iter().find(|(own, _)| *own == key);
    let (_, own) = own.unwrap_or_else(|| panic!("no {key}: {step:#?}"));
    assert!((own - value).abs() < within, "{key} {own}, not {value}: {step:#?}");
}

#[track_caller]
fn says(step: &Step, part: &str) {
    let all = format!("{}\n{}", step.deed, step.because);
    assert!(all.contains(part), "no {part:?}: {all}");
}

/// By hand: 4 mm over 150 are 1.5275 deg, less the roll of 0.1 deg on starboard; times the plate of
/// 80 mm across. The blade: rotation matrices and a search for the flush rowlock, no formula of ours,
/// give 4.8748 deg for the 15 mm over 176 that were 4.8891 before. 0.6 deg above asin(11 / 176), less
/// the half of a written digit, is 4.1783; 0.6965 deg at 46 mm are 0.559 mm.
#[test]
fn a_pin_is_packed_and_the_blade_then_bent_by_what_is_still_wrong() {
    let list = plan(&[INBOARD, HIGH]);
    let works: Vec<Work> = list.steps.iter().map(|step| step.work).collect();
    assert_eq!(works, [Work::PackPin, Work::BendForwardHorn, Work::ReadAgain]);
    let pack = only(&list, Work::PackPin);
    is(pack, "pack_mm", 1.9937, 1e-3);
    says(pack, "under the inboard edge");
    says(pack, "from 4.89 deg to 4.88 deg square off");
    let bend = only(&list, Work::BendForwardHorn);
    is(bend, "pitch_deg", 4.1783, 1e-3);
    is(bend, "bend_deg", -0.6965, 5e-3);
    is(bend, "tip_mm", 0.559, 5e-3);
    says(bend, "its top to the bow");
    says(bend, "The gap opens with it from 60.0 mm to 60.6 mm");
    assert_eq!(list.bends(), 1);
    says(
        only(&list, Work::ReadAgain),
        "At seat 3, where the bed went in or out with the pin, read",
    );
}

/// By hand: 6 mm over 150 on a plate of 100 mm along are 4 mm, and lift its middle by 2; the pitch
/// falls by atan(6 / 150), 2.29 deg, from 3.58 to 1.28 (matrices: 1.2789).
#[test]
fn stern_lean_is_packed_under_the_stern_edge_and_takes_the_pitch_with_it() {
    let list = plan(&[(BOAT, "seat: 2", "lean: {aft: 0.5", "lean: {aft: 6")]);
    let pack = only(&list, Work::PackPin);
    is(pack, "pack_mm", 4.0, 1e-9);
    says(pack, "under the stern edge");
    says(pack, "from 3.58 deg to 1.28 deg square off");
    let bend = only(&list, Work::BendForwardHorn);
    is(bend, "pitch_deg", 3.005, 1e-9);
    is(bend, "bend_deg", 3.005 - 1.2789, 5e-3);
    says(bend, "its top to the stern");
    says(bend, "The gap closes with it");
    let seat = &list.predicted.boats[0].seats[1];
    let above = seat.rowlock.above_seat.as_ref().expect("measured").mean();
    assert!((above - 192.0).abs() < 1e-9, "{above}");
}

/// By hand: a gap of 55 mm must be 52 + 5 mm and what two readings of callipers are good to,
/// 2 sqrt(2) 0.2 / sqrt(3) = 0.327 mm: 57.4. 2.4 mm at 46 are 2.987 deg; the tip goes further than the
/// middle of the shaft does by 20 mm of 46: 1.043 mm.
#[test]
fn a_gap_is_opened_by_the_least_that_surely_clears() {
    let list = plan(&[(BOAT, "seat: 1", "gap: 60", "gap: 55")]);
    let bend = only(&list, Work::BendAfterHorn);
    is(bend, "gap_mm", 57.4, 1e-9);
    is(bend, "tip_mm", 2.4, 1e-9);
    is(bend, "bend_deg", 2.9866, 1e-3);
    says(bend, "from 3.0 mm abaft its shank to 4.0 mm");
}

/// By hand: the narrowest of the shaft is 46 mm, and 15 mm is the most that holds it.
#[test]
fn a_gap_is_closed_to_the_most_that_holds_the_oar() {
    let list = plan(&[(BOAT, "seat: 1", "gap: 60", "gap: 63")]);
    let bend = only(&list, Work::BendAfterHorn);
    is(bend, "gap_mm", 61.0, 1e-9);
    is(bend, "tip_mm", -2.0, 1e-9);
    says(bend, "its top to the bow");
}

/// By hand: a rule read to 0.5 mm is good to 0.577 mm, up to a tenth 0.6; from -2 that is 2.6 mm, at
/// 46 mm 3.235 deg.
#[test]
fn a_hook_is_brought_surely_abaft_its_shank() {
    let list = plan(&[(BOAT, "seat: 3", "after-tip: 3", "after-tip: -2")]);
    let bend = only(&list, Work::BendAfterHorn);
    is(bend, "after_tip_mm", 0.6, 1e-9);
    is(bend, "tip_mm", 2.6, 1e-9);
    is(bend, "bend_deg", 3.2351, 1e-3);
}

/// By hand: the handle end stands 190 + 1138.8 sin 6 = 309 mm up, and a roll of 0.1 deg carries its bob
/// by 0.54 mm: 280.54 mm. 320 is 39.46 mm more, along the oar 39.46 / cos 6 = 39.68.
#[test]
fn a_collar_is_slid_to_what_is_aimed_at() {
    let list = plan(&[
        (BOAT, "seat: 4", "handle-past-mark: 321", "handle-past-mark: 280"),
        (OARS, "oar: A4", "inboard: 1150", "inboard: 1108.8"),
    ]);
    let slide = only(&list, Work::SlideCollar);
    is(slide, "slide_mm", 39.68, 0.02);
    is(slide, "inboard_mm", 1148.48, 0.02);
    says(slide, "towards the blade");
    says(slide, "319.5 mm past the mark");
    assert_eq!(slide.oar.as_deref(), Some("A4"));
}

/// By hand: the roll of 0.1 deg makes the handles of starboard 320.47 mm and of port 321.53; to pass
/// the mark by 330 to 331, by 1150 + 9.58 to 10.59 mm and 1150 + 8.52 to 9.52: no common inboard.
#[test]
fn collars_that_have_no_common_place_are_slid_to_places_that_are_alike() {
    let limits = "limits:\n  surfboat:\n    handle: {least: 330, most: 331, source: ours}\npeople:";
    let list = plan(&[("club.yaml", "", "people:", limits)]);
    assert!(list.conflicts.is_empty(), "{:#?}", list.conflicts);
    for step in list.steps.iter().filter(|step| step.work == Work::SlideCollar) {
        match step.seat {
            Some(1 | 3) => is(step, "inboard_mm", 1160.085, 0.505),
            Some(_) => is(step, "inboard_mm", 1159.02, 0.505),
            None => is(step, "inboard_mm", 1159.55, 1.04),
        }
    }
    let slid = list.steps.iter().filter(|step| step.work == Work::SlideCollar).count();
    assert_eq!(slid, 5, "the spare goes with them: {:#?}", list.steps);
}

/// By hand: two degrees of roll on port, less 0.5 mm over 150, are 2.191 deg inboard; 80 mm of plate
/// take 3.061 mm.
#[test]
fn the_boat_is_laid_level_first_and_what_was_read_is_corrected_for_it() {
    let list = plan(&[(BOAT, "", "roll: 0.1", "roll: 2")]);
    assert_eq!(list.steps[0].work, Work::Level);
    says(&list.steps[0], "her port side comes up by 2.00 deg");
    is(&list.steps[0], "roll_deg", -2.0, 1e-9);
    let seat_2 = |step: &&Step| step.work == Work::PackPin && step.seat == Some(2);
    let pack = list.steps.iter().find(seat_2).unwrap_or_else(|| panic!("seat 2: {list:#?}"));
    is(pack, "pack_mm", 3.061, 2e-3);
    says(pack, "under the inboard edge");
    says(pack, "until the bob reads 0.0 mm");
}

/// Two pairs cost the same: the pair nearest the bow is bent, and the other one is told.
#[test]
fn a_tie_is_told() {
    let low = "pitch: {catch: 10, square: 10, finish: 10}";
    let high = "pitch: {catch: 14, square: 14, finish: 14}";
    let seats = [("seat: 1", low), ("seat: 2", low), ("seat: 3", high), ("seat: 4", high)];
    let edits: Vec<Edit> = seats.iter().map(|(seat, to)| (BOAT, *seat, PITCH, *to)).collect();
    let list = plan(&edits);
    let bends = |step: &&Step| step.work == Work::BendForwardHorn;
    let bent: Vec<_> = list.steps.iter().filter(bends).map(|step| step.seat).collect();
    assert_eq!(bent, [Some(1), Some(2)], "{:#?}", list.steps);
    let first = list.steps.iter().find(bends).expect("bends");
    says(first, "A tie: to bend seats 3 and 4 instead");
}

const OFTEN: Edit = (
    BOAT,
    "",
    "seats:\n  - seat: 1",
    "bends:\n  - {date: 2026-10-10, by: Ines Marlow, seat: 3, part: forward-horn, deg: 2}\n  - {date: 2026-10-11, by: Ines Marlow, seat: 3, part: forward-horn, deg: 2}\n  - {date: 2026-10-12, by: Ines Marlow, seat: 3, part: forward-horn, deg: 2}\nseats:\n  - seat: 1",
);

#[test]
fn a_horn_bent_three_times_is_replaced_and_nothing_of_it_is_bent() {
    let list = plan(&[HIGH, INBOARD, OFTEN]);
    let new = only(&list, Work::ReplaceRowlock);
    says(new, "Replace the rowlock, and set the new one until the blade reads 12.8 mm");
    is(new, "pitch_deg", 4.1783, 1e-3);
    assert!(new.amounts.iter().all(|(key, _)| *key != "bend_deg"), "{new:#?}");
    assert_eq!(list.bends(), 0);
    let gap = list.predicted.boats[0].seats[2].rowlock.gap.as_ref().expect("measured").mean();
    assert!((gap - 60.0).abs() < 1e-9, "the new one has the old one's gap: {gap}");
    assert!(list.predicted.boats[0].bends.is_empty(), "those were of the old one");
}

/// The forward horn alone may be bent once more; the after horn may not, and both go with it.
#[test]
fn no_horn_is_bent_of_a_rowlock_that_is_replaced_after_it() {
    let after: Edit = (BOAT, "", OFTEN.2, Box::leak(OFTEN.3.replace("forward", "after").into()));
    let tight: Edit = (BOAT, "seat: 3", "gap: 60", "gap: 55");
    let list = plan(&[HIGH, tight, after]);
    assert_eq!(list.bends(), 0, "{:#?}", list.steps);
    let new = |step: &&Step| step.work == Work::ReplaceRowlock;
    assert_eq!(list.steps.iter().filter(new).count(), 2, "{:#?}", list.steps);
}

#[test]
fn a_bob_that_nobody_read_is_asked_for_and_no_limit_is_against_another() {
    let list = plan(&[HIGH, (BOAT, "", "  pin-gauge: 150\n", "")]);
    assert!(list.conflicts.is_empty(), "{:#?}", list.conflicts);
    assert!(list.not_planned.iter().any(|own| own.missing.contains("pin-gauge")));
    let arc = list.left.iter().find(|own| own.rule.id == "pitch-varies-through-arc");
    let arc = arc.expect("still open");
    assert!(arc.remedy.contains("before this is known: rigged/pin-gauge"), "{}", arc.remedy);
}

#[test]
fn a_handle_that_nobody_read_keeps_no_limit_from_being_kept() {
    let list = plan(&[
        (BOAT, "", "  level: {trim: 0.0, roll: 0.1}\n", ""),
        (OARS, "oar: A2", "inboard: 1150", "inboard: 1126"),
    ]);
    assert!(list.conflicts.is_empty(), "{:#?}", list.conflicts);
    let collar = |own: &&_| {
        let own: &tholebook::planning::worklist::NotPlanned = own;
        own.name.as_str() == "kittiwake" && own.what == "the collar"
    };
    let own = list.not_planned.iter().find(collar).expect("told");
    assert!(own.missing.contains("seats 1, 2, 3 and 4"), "{}", own.missing);
}

/// 16 oars: more than one boat carries, but one of them is to be slid all the same.
#[test]
fn a_collar_of_a_large_set_is_slid_too() {
    let more: String = (6..=25)
        .map(|oar| {
            format!("  - oar: A{oar}\n    length: 3860\n    inboard: 1150\n    state: sound\n")
        })
        .collect();
    let list = plan(&[
        (BOAT, "seat: 4", "handle-past-mark: 321", "handle-past-mark: 280"),
        (OARS, "oar: A4", "inboard: 1150", "inboard: 1108.8"),
        (OARS, "", "oars:\n", Box::leak(format!("oars:\n{more}").into())),
    ]);
    is(only(&list, Work::SlideCollar), "slide_mm", 39.68, 0.02);
}

#[test]
fn limits_that_are_against_each_other_are_named_and_nothing_is_bent_for_them() {
    let limits = "limits:\n  surfboat:\n    pitch: {least: 6, most: 6.1, source: ours}\n    pitch-match: {most: 0.6, source: ours}\n    loose: {most: 5, source: ours}\npeople:";
    let list = plan(&[("club.yaml", "", "people:", limits)]);
    let says: Vec<&str> = list.conflicts.iter().map(|own| own.says.as_str()).collect();
    assert_eq!(says.len(), 4, "the gap of every seat: {says:#?}");
    assert!(says[0].contains("at least 57.4 mm, to hold the oar at most 51.0 mm"), "{says:#?}");
    assert!(says[0].contains("loose: at most 5 mm, from club.yaml:"), "{says:#?}");
    assert!(list.steps.iter().all(|step| step.work != Work::BendAfterHorn), "{:#?}", list.steps);
    let loose = list.left.iter().filter(|own| own.rule.id == "gap-too-loose");
    let remedies: Vec<&str> = loose.map(|own| own.remedy.as_str()).collect();
    assert!(remedies.iter().all(|own| own.contains("can't be cured together")), "{remedies:#?}");
}

#[test]
fn readings_older_than_a_knock_are_read_again_first() {
    let knock =
        "knocks:\n  - {date: 2026-10-18, what: rolled, where: [seat-3]}\nseats:\n  - seat: 1";
    let list = plan(&[INBOARD, HIGH, (BOAT, "", "seats:\n  - seat: 1", knock)]);
    assert!(list.measure.iter().any(|own| own.rule.id == "knocked-since"), "{:#?}", list.measure);
}

#[test]
fn a_bob_and_a_blade_that_disagree_are_read_again_before_the_pin_is_packed() {
    let list = plan(&[(BOAT, "seat: 2", "lean: {aft: 0.5", "lean: {aft: 6")]);
    let again = list.measure.iter().find(|own| own.rule.id == "arc-disagrees");
    assert_eq!(again.expect("told").name.as_str(), "kittiwake/seat-2/pitch");
    assert!(!plan(&[HIGH]).measure.iter().any(|own| own.rule.id == "arc-disagrees"));
}
