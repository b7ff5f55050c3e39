//! Arcs of a rower written in a book, against an independent derivation.

use serde_json::Value;
use tholebook::planning::fitting::StoppedBy;

use crate::crew::BOAT;
use crate::crew::CREW;
use crate::crew::seated;
use crate::sound_book::SoundBook;

/// A rower alone in seat 1, with the lever, the seat and the brace of a case: 1150 of inboard and
/// 30 of collar less a grip of 150 are the 1030 of its lever, 792 and 158 the 950 to its seat. The
/// hands' height is not written, and taken to be the 250 mm of the case.
fn book(stature: u64, brace: u64) -> tholebook::model::Book {
    let mut book = SoundBook::new();
    let holes = format!("foot-holes: {{first: {brace}, apart: 30, count: 1}}");
    book.edit(BOAT, "", "foot-holes: {first: 820, apart: 30, count: 8}", &holes);
    book.edit(BOAT, "seat: 1", "seat-mark: 61", "seat-mark: 158");
    book.edit(BOAT, "seat: 1", "above-seat: 190", "above-seat: not measured");
    book.edit("oars/long-ash.yaml", "oar: A1", "grip: 120", "grip: 150");
    let rower = format!("{{seat: 1, stature: {stature}, foot-hole: 1}}");
    let crew = format!("crew: masters-a\nboat: kittiwake\nrowers:\n  - {rower}\n");
    book.edit(CREW, "", "", &crew);
    tholebook::reading::read("sound-book", book.texts()).0
}

/// Source: `geometry.json`, the cases of a crew; checked there by root finding in space.
#[test]
fn the_arcs_of_a_rower_in_a_book_are_those_found_by_roots_in_space() {
    let root: Value = serde_json::from_str(include_str!("../data/geometry.json")).expect("JSON");
    let cases = root["cases"].as_array().expect("a list");
    let cases = cases.iter().filter(|case| case["topic"] == "crew");
    let mut seen = 0;
    for case in cases {
        let stature = case["inputs"]["stature_mm"].as_u64().expect("a stature");
        // Without a brace the chock stops the rower wherever it is.
        let brace = case["inputs"]["brace_mm"].as_u64();
        let book = book(stature, brace.unwrap_or(700));
        let fit = seated(&book);
        let arc = fit.rowers[0].arc.as_ref().expect("a rower who fits");
        let expected = |key: &str| case["outputs"][key].as_f64().expect("a number");
        let stopped_by = if brace.is_some() { StoppedBy::Legs } else { StoppedBy::Chock };
        assert_eq!(arc.stopped_by, stopped_by, "{}", case["id"]);
        let catch = arc.catch.as_ref().expect("a catch").value();
        let needed = arc.leg_room.as_ref().expect("holes").value();
        let needed = needed + brace.unwrap_or(700) as f64;
        for (found, key) in
            [(arc.finish.value(), "finish_deg"), (catch, "catch_deg"), (needed, "brace_needed_mm")]
        {
            assert!((found - expected(key)).abs() < 1e-6, "{} {key}: {found}", case["id"]);
        }
        seen += 1;
    }
    assert_eq!(seen, 4);
}

/// The model errs by several degrees and says so: no assumption of a case moves an angle by more
/// than it is said to be good to, and a measured arc a few degrees off is not called impossible.
#[test]
fn an_angle_is_claimed_only_as_well_as_the_model_knows_it() {
    let book = book(1800, 700);
    let fit = seated(&book);
    let arc = fit.rowers[0].arc.as_ref().expect("a rower who fits");
    // Source: geometry, sensitivities at 1.80 m: layback 5 deg moves the finish by 1.0 deg, belly
    // and back by 0.01 of the stature 1.1 deg each; swing 5 deg the catch by 2.7, slide 30 mm 1.8.
    let finish = (1.0_f64.powi(2) + 2.0 * 1.1_f64.powi(2)).sqrt() * 2.0 / 3_f64.sqrt();
    assert!(arc.finish.expanded() > finish, "{}", arc.finish.expanded());
    let catch = (2.7_f64.powi(2) + 1.8_f64.powi(2)).sqrt() * 2.0 / 3_f64.sqrt();
    assert!(arc.catch.as_ref().expect("a catch").expanded() > catch);
}
