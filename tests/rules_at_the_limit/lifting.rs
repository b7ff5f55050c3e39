//! What nobody measured, the handle, and the trial by hand.

use tholebook::rules::Edit;
use tholebook::rules::Level;

use crate::found::BOAT;
use crate::found::OARS;
use crate::found::checked;
use crate::found::found;
use crate::found::not_checked;
use crate::found::only;
use crate::found::says;

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
