//! What was not measured, or what the sums do not see, is unknown and never clears.

use tholebook::planning::matching::Suits;
use tholebook::planning::matching::Wanted;
use tholebook::planning::matching::Whose;

use crate::sound_book::SoundBook;
use crate::tries::BOAT;
use crate::tries::Change;
use crate::tries::OARS;
use crate::tries::changed;
use crate::tries::lacks;
use crate::tries::read;
use crate::tries::tried;

const SHAFT: &str = "widest: 52, narrowest: 46";

#[track_caller]
fn unknown(edits: &[Change], seat: u32, oar: &str, why: &str) {
    tried(edits, seat, oar, |tried| {
        assert_eq!(tried.decided.suits, Suits::Unknown);
        let told = tried.decided.why.as_ref().expect("a reason").to_string();
        assert!(told.contains(why), "no {why:?} in {told:?}");
    });
}

#[test]
fn a_spare_that_was_not_measured_is_unknown() {
    let edits = [(
        OARS,
        "oar: A5",
        "shaft: {widest: 52, narrowest: 46, bears: flat, leather: wet}\n    ",
        "",
    )];
    for seat in 1..=4 {
        unknown(&edits, seat, "A5", "A5/shaft/widest not measured");
    }
    tried(&edits, 1, "A5", |tried| assert_eq!(tried.whose, Whose::Spare));
    let only_widest = [(OARS, "oar: A5", SHAFT, "widest: 52")];
    unknown(&only_widest, 2, "A5", "A5/shaft/narrowest not measured");
    let dry = [(OARS, "oar: A5", "leather: wet", "leather: dry")];
    unknown(&dry, 2, "A5", "A5/shaft/widest not measured");
    let crossed = [(OARS, "oar: A5", SHAFT, "widest: 46, narrowest: 52")];
    unknown(&crossed, 2, "A5", "not measured");
}

#[test]
fn a_gap_that_was_not_measured_makes_every_oar_unknown_there_and_nowhere_else() {
    let edits = [(BOAT, "seat: 3", "gap: 60", "gap: not measured")];
    for oar in ["A1", "A3", "A5"] {
        unknown(&edits, 3, oar, "rowlock/gap not measured");
        tried(&edits, 2, oar, |tried| assert_eq!(tried.decided.suits, Suits::Clears));
    }
}

#[test]
fn what_the_sums_do_not_see_is_unknown_for_all_that_the_gap_is_wide_enough() {
    let hooks = [(BOAT, "seat: 1", "after-tip: 3", "after-tip: -3")];
    unknown(&hooks, 1, "A4", "the after horn hooks over");
    let perhaps = [(BOAT, "seat: 1", "after-tip: 3", "after-tip: 0.5")];
    unknown(&perhaps, 1, "A4", "may hook over: measure its tip again");
    let seized = [(BOAT, "seat: 1", "turns: free", "turns: seized")];
    unknown(&seized, 1, "A4", "the rowlock is seized");
    let stiff = [(BOAT, "seat: 1", "turns: free", "turns: stiff")];
    unknown(&stiff, 1, "A4", "turns only when pushed");
    let predicted = [(BOAT, "", "foot-holes:", "predicted: true\nfoot-holes:")];
    unknown(&predicted, 1, "A4", "nobody has measured it");
}

#[test]
fn an_oar_that_jammed_by_hand_does_not_clear_where_it_jammed() {
    let jams = [(BOAT, "seat: 1", "along: freely", "along: jams")];
    unknown(&jams, 1, "A1", "by hand it jammed lying along the boat");
    let stiffly = [(BOAT, "seat: 1", "catch: freely", "catch: stiffly")];
    unknown(&stiffly, 1, "A1", "by hand it came out only with a pull at the catch");
    // Nobody lifted any other oar out of that rowlock.
    tried(&jams, 1, "A2", |tried| assert_eq!(tried.decided.suits, Suits::Clears));
    tried(&jams, 2, "A1", |tried| assert_eq!(tried.decided.suits, Suits::Clears));
}

#[test]
fn a_tight_oar_is_tight_whatever_else_there_is() {
    let edits = [
        (BOAT, "seat: 1", "gap: 60", "gap: 55"),
        (BOAT, "seat: 1", "turns: free", "turns: seized"),
        (OARS, "oar: A1", SHAFT, "widest: 52, narrowest: 30"),
    ];
    tried(&edits, 1, "A1", |tried| {
        assert_eq!((tried.decided.suits, tried.decided.proven), (Suits::Tight, true));
        assert!((tried.decided.beyond - 2.0).abs() < 1e-9, "{}", tried.decided.beyond);
    });
}

#[test]
fn an_oar_that_stands_in_no_set_is_told() {
    let book = read(&changed(&[
        (BOAT, "", "spares: [A5]", "spares: [A5, A7]"),
        (BOAT, "seat: 2", "oar: A2", "oar: A9"),
    ]));
    let wanted: Vec<Wanted> = lacks(&book).into_iter().map(|lacks| lacks.wanted).collect();
    let expected = [Wanted::Oar("A9", Whose::Own), Wanted::Oar("A7", Whose::Spare)];
    assert_eq!(wanted, expected);
    let book = read(&changed(&[(BOAT, "", "oars: long-ash", "oars: long-oak")]));
    let wanted: Vec<Wanted> = lacks(&book).into_iter().map(|lacks| lacks.wanted).collect();
    assert_eq!(wanted, [Wanted::Set("long-oak")]);
    assert!(lacks(&read(&SoundBook::new())).is_empty());
}
