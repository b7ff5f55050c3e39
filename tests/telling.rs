//! What the readings tell of the pins, and what to measure next: against sums made by hand, against
//! the book as it would be once measured, and as `derive` and `why` tell it.

mod sound_book;

use std::process::Command;

use serde_json::Value;
use sound_book::SoundBook;
use tholebook::model::Book;
use tholebook::rules::Edit;
use tholebook::working::BoatSight;
use tholebook::working::Doubt;
use tholebook::working::LeanWay;
use tholebook::working::Measurement;
use tholebook::working::Next;
use tholebook::working::SeatSight;
use tholebook::working::is_told;

const BOAT: &str = "boats/kittiwake.yaml";
const OARS: &str = "oars/long-ash.yaml";
const PITCH: &str = "pitch: {catch: 11, square: 11, finish: 11}";
const NOT_PLUMBED: Edit = (BOAT, "seat: 1", "lean: {aft: 0.5, out: -0.5}", "x-lean: none");
const NARROW: Edit =
    (BOAT, "", "pitch-angles: {catch: 50, finish: 35}", "pitch-angles: {catch: 35, finish: 25}");

fn book(edits: &[Edit]) -> Book {
    SoundBook::with(edits).check().0
}

/// Looks at seat 1.
fn seat<T>(book: &Book, look: impl Fn(SeatSight) -> T) -> T {
    let boat = BoatSight::new(book, &book.boats[0]);
    look(boat.seats().next().expect("a seat"))
}

fn next(edits: &[Edit]) -> Vec<Next> {
    seat(&book(edits), |seat| seat.measure_next())
}

fn doubt(edits: &[Edit]) -> Doubt {
    seat(&book(edits), |seat| seat.doubt())
}

#[track_caller]
fn then(edits: &[Edit], what: Measurement) -> Doubt {
    let all = next(edits);
    let found = all.iter().find(|next| next.what == what);
    found.unwrap_or_else(|| panic!("{what:?} is not offered: {all:?}")).then
}

#[track_caller]
fn near(value: Option<f64>, expected: f64, part: f64) {
    let value = value.expect("known");
    assert!((value / expected - 1.0).abs() < part, "{value}, expected {expected}");
}

/// By hand: 0.5 mm over 150 mm are 0.1910 deg, the level is good to 0.2 deg, both rectangular:
/// 2 sqrt((0.1910² + 0.2²) / 3) = 0.3193 deg.
#[test]
fn a_plumbed_pin_is_known_as_well_as_its_bob_and_the_level_are() {
    let now = doubt(&[]);
    near(now.aft, 0.3193, 1e-3);
    near(now.out, 0.3193, 1e-3);
}

/// Square off the blade shows rowlock and lean together, and the trim cancels: by hand, 0.5 mm
/// over 176 mm are 0.1628 deg, over 150 mm 0.1910 deg: 2 sqrt((0.1628² + 0.1910²) / 3) = 0.2898.
#[test]
fn rowlock_and_oar_are_known_by_the_blade_less_the_bob_and_trim_has_no_part() {
    near(doubt(&[]).rig_pitch, 0.2898, 0.02);
    let coarse: Edit = (BOAT, "", "pin-gauge: 150", "pin-gauge: 150\n  readings: {level: 5 deg}");
    near(doubt(&[coarse]).rig_pitch, 0.2898, 0.02);
}

/// Source: the geometry of equal angles of 60 deg, derived independently: for each degree of error
/// in each reading 1.73 deg of rowlock and oar, 2.45 of lean aft, 0.82 of lean out; 0.5 mm over 176 mm.
#[test]
fn equal_wide_angles_leave_what_their_geometry_leaves() {
    let exact: Edit = (
        BOAT,
        "",
        "pin-gauge: 150",
        "pin-gauge: 150\n  readings: {level: 0.001 deg, oar-angle: 0.001 deg, dip: 0.001 deg}",
    );
    let each = 2.0 * (0.5_f64 / 176.0).asin().to_degrees() / 3.0_f64.sqrt();
    let then = then(&[exact, NOT_PLUMBED, NARROW], Measurement::ReadBladeWide);
    near(then.rig_pitch, 1.73 * each, 0.02);
    near(then.aft, 2.45 * each, 0.02);
    near(then.out, 0.82 * each, 0.02);
}

/// What is foretold of a measurement is what comes of it once it stands in the book.
#[test]
fn what_is_foretold_comes_true_once_it_is_measured() {
    let day = |readings: &'static str| -> Edit { (BOAT, "", "pin-gauge: 150", readings) };
    let finer = "pitch: {catch: {read: 11, to: 0.2}, square: {read: 11, to: 0.2}, \
                 finish: {read: 11, to: 0.2}}";
    let plumbed: Edit = (BOAT, "seat: 1", "lean: {aft: 0.5, out: -0.5}", "lean: {aft: 0, out: 0}");
    let long: Edit = (
        BOAT,
        "seat: 1",
        "lean: {aft: 0.5, out: -0.5}",
        "lean: {aft: 1 over 300, out: -1 over 300}",
    );
    let leaning: Edit = (BOAT, "seat: 1", PITCH, "pitch: {catch: 15, square: 11, finish: 8}");
    let cases: [(&[Edit], Measurement, &[Edit]); 5] = [
        (&[NOT_PLUMBED], Measurement::PlumbPin, &[plumbed]),
        (&[], Measurement::PlumbLonger, &[long]),
        (
            &[NOT_PLUMBED],
            Measurement::ReadBladeFiner,
            &[NOT_PLUMBED, (BOAT, "seat: 1", PITCH, finer)],
        ),
        (&[], Measurement::ReadLevelFiner, &[day("pin-gauge: 150\n  readings: {level: 0.1 deg}")]),
        (
            &[NOT_PLUMBED, leaning],
            Measurement::LayOarFiner,
            &[NOT_PLUMBED, leaning, day("pin-gauge: 150\n  readings: {oar-angle: 1 deg}")],
        ),
    ];
    for (before, what, after) in cases {
        let (foretold, true_then) = (then(before, what), doubt(after));
        for (foretold, known) in foretold.each().into_iter().zip(true_then.each()) {
            near(foretold, known.expect("known"), 2e-3);
        }
    }
}

/// Wide angles are foretold for the rig as it is known; read at them, it comes true.
#[test]
fn wide_angles_come_true_too() {
    let wide: Edit = (
        BOAT,
        "",
        "pitch-angles: {catch: 50, finish: 35}",
        "pitch-angles: {catch: 60, finish: 60}",
    );
    let foretold = then(&[NOT_PLUMBED], Measurement::ReadBladeWide);
    let known = doubt(&[NOT_PLUMBED, wide]);
    for (foretold, known) in foretold.each().into_iter().zip(known.each()) {
        near(foretold, known.expect("known"), 0.01);
    }
    let again = next(&[NOT_PLUMBED, wide]);
    assert!(again.iter().all(|next| next.what != Measurement::ReadBladeWide), "{again:?}");
}

#[test]
fn of_a_pin_that_nobody_plumbed_the_bob_comes_first_and_each_next_removes_less() {
    let seconds = [Measurement::ReadBladeFiner, Measurement::ReadBladeWide];
    let books: [&[Edit]; 2] = [&[NOT_PLUMBED], &[NOT_PLUMBED, NARROW]];
    for (edits, second) in books.into_iter().zip(seconds) {
        let all = next(edits);
        assert_eq!(all[0].what, Measurement::PlumbPin, "{all:?}");
        assert_eq!(all[1].what, second, "the narrower the arc, the more width wins: {all:?}");
        let now = doubt(edits).total();
        let totals: Vec<f64> = all.iter().map(|next| next.then.total()).collect();
        assert!(totals.is_sorted() && totals.iter().all(|total| *total < now), "{totals:?}");
    }
}

/// Every pin out of level alike: without a level nothing is known, and the level comes first.
#[test]
fn without_a_level_nothing_is_known_and_the_level_comes_first() {
    let no_level: Edit = (BOAT, "", "  level: {trim: 0.0, roll: 0.1}\n", "");
    assert_eq!(doubt(&[no_level]).unknown(), 3);
    let all = next(&[no_level]);
    assert_eq!(all[0].what, Measurement::LayLevel, "{all:?}");
    assert_eq!(all[0].then.unknown(), 0);
}

#[test]
fn a_short_arc_tells_a_lean_in_and_out_and_not_fore_and_aft() {
    seat(&book(&[NARROW]), |seat| {
        let [aft, out] = LeanWay::ALL.map(|way| seat.lean_told(way));
        let told = |lean: &tholebook::working::LeanTold| {
            is_told(lean.by_blade.as_ref().expect("by the blade"), lean.limit)
        };
        assert!(told(&out) && !told(&aft));
        // Source: the same geometry: 0.131 of a lean aft shows between 35 and -25 deg.
        near(seat.aft_shown(), 0.131, 0.005);
    });
}

#[test]
fn a_blade_that_the_hands_set_tells_nothing_and_is_not_to_be_read_again() {
    let round: Edit = (OARS, "oar: A1", "bears: flat", "bears: round");
    let book = book(&[round, NOT_PLUMBED]);
    seat(&book, |seat| assert!(seat.lean_told(LeanWay::Out).by_blade.is_err()));
    let offered = seat(&book, |seat| seat.measure_next());
    assert_eq!(offered.len(), 1, "{offered:?}");
    assert_eq!(offered[0].what, Measurement::PlumbPin);
}

fn run(arguments: &[&str]) -> String {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    let done = command.args(arguments).args(["--book", "example-club"]).output().expect("a run");
    assert_eq!(done.status.code(), Some(0), "{done:?}");
    String::from_utf8(done.stdout).expect("UTF-8")
}

#[track_caller]
fn holds(text: &str, part: &str) {
    let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains(part), "no {part:?} in:\n{text}");
}

#[test]
fn derive_tells_what_the_blade_can_tell_and_what_would_tell_more() {
    let told = run(&["derive", "kittiwake"]);
    holds(
        &told,
        "seat 3: The blade tells the lean fore and aft (good to ± 0.98 deg) and in and out",
    );
    holds(
        &told,
        "only 26 % of a lean fore and aft shows; the rest looks like pitch of the rowlock",
    );
    holds(
        &told,
        "To tell more: 1. Plumb the pin, the offsets read with callipers: fore and aft from",
    );
    let sanderling = run(&["derive", "sanderling"]);
    holds(&sanderling, "The blade tells nothing of the pin: pitch/catch, rigged/level/trim,");
    holds(
        &sanderling,
        "1. Lay the level and write trim and roll: fore and aft, which is not known now",
    );
}

#[test]
fn derive_tells_programs_with_every_digit() {
    let json: Value = serde_json::from_str(&run(&["derive", "--format", "json"])).expect("JSON");
    let boats = json["boats"].as_array().expect("boats");
    let of = |id: &str| boats.iter().find(|boat| boat["boat"] == id).expect("a boat");
    let seat = &of("kittiwake")["seats"][2];
    assert_eq!(seat["can_tell"]["lean_aft_deg"]["by_blade"]["told"], true);
    assert_eq!(seat["can_tell"]["lean_aft_deg"]["most"], 1.0);
    let (first, now) = (&seat["measure_next"][0], &seat["worked_out"]["lean_aft_deg"]);
    assert_eq!(first["measure"], "plumb-with-callipers");
    assert_eq!(first["lean_aft_deg"]["now"], now["uncertainty"]);
    assert!(first["removes_deg"].as_f64().is_some_and(|removed| removed > 0.1), "{first}");
    let bare = &of("sanderling")["seats"][0];
    assert_eq!(bare["can_tell"]["lean_aft_deg"]["by_blade"], Value::Null);
    assert_eq!(bare["measure_next"][0]["lean_aft_deg"]["now"], Value::Null);
    assert_eq!(bare["measure_next"][0]["removes_deg"], Value::Null);
}

#[test]
fn why_tells_it_of_a_pitch_and_of_a_lean_and_of_nothing_else() {
    for name in
        ["kittiwake/seat-3/pitch", "kittiwake/seat-3/pitch/square", "kittiwake/seat-3/pin/lean/out"]
    {
        let told = run(&["why", name]);
        holds(&told, "What the readings tell of the pin kittiwake/seat-3 What can be told apart");
        holds(
            &told,
            "Measure next, what removes most doubt first; each by itself: 1. Plumb the pin",
        );
    }
    for name in ["kittiwake/seat-3/rowlock/gap", "kittiwake/seat-3/chock-to-pin", "kittiwake"] {
        assert!(!run(&["why", name]).contains("What the readings tell of the pin"), "{name}");
    }
}
