//! What follows from the readings of a seat, against sums made by hand, and what is in force.

mod sound_book;

use sound_book::SoundBook;
use tholebook::model::Book;
use tholebook::model::LimitKey;
use tholebook::model::Part;
use tholebook::model::Tool;
use tholebook::reading;
use tholebook::working::Attitude;
use tholebook::working::BoatSight;
use tholebook::working::SeatSight;
use tholebook::working::Worked;

const BOAT: &str = "boats/kittiwake.yaml";

fn read(edits: &[tholebook::rules::Edit]) -> Book {
    let (book, faults) = reading::read("sound-book", SoundBook::with(edits).texts());
    assert!(faults.is_empty(), "{faults:#?}");
    book
}

fn seat(book: &Book, number: usize) -> SeatSight<'_> {
    BoatSight::new(book, &book.boats[0]).seats().nth(number - 1).expect("the seat")
}

fn near(worked: &Worked, value: f64, uncertainty: f64) {
    let budget = worked.as_ref().expect("worked out");
    assert!((budget.value() - value).abs() < 0.005, "{} against {value}", budget.value());
    assert!((budget.expanded() - uncertainty).abs() < 0.005, "U {}", budget.expanded());
}

/// asin(11/176) = 3.5833 deg; of the offset ±0.5 mm: 0.5/176/cos(3.58 deg) = 0.1631 deg, of the
/// width ±2 mm: 2/176 tan(3.58 deg) = 0.0408 deg; both rectangular: U = 2/√3 × their root sum.
#[test]
fn pitch_is_the_arc_sine_of_offset_over_width() {
    let book = read(&[]);
    near(&seat(&book, 1).pitch_as_read(Attitude::Square), 3.5833, 0.1941);
}

/// 192.5 is not a pitch: no blade shows an offset wider than itself.
#[test]
fn an_offset_wider_than_the_blade_is_impossible_and_nothing_breaks() {
    let book = read(&[(BOAT, "seat: 1", "square: 11", "square: 192.5")]);
    let lack = seat(&book, 1).pitch(Attitude::Square).expect_err("impossible");
    assert!(lack.missing().is_empty(), "{lack}");
}

/// The lean by the bob is atan(0.5/150) = 0.19099 deg; roll 0.1 deg adds to a starboard lean
/// outboard and takes from a port one: -0.19099 + 0.1 and -0.19099 - 0.1. U: the offset ±0.5 mm
/// is 0.19098 deg, the level ±0.2 deg; 2/√3 × root sum = 0.3193.
#[test]
fn lean_is_corrected_for_level_by_side() {
    let book = read(&[]);
    near(&seat(&book, 1).lean_aft(), 0.19099, 0.3193);
    near(&seat(&book, 1).lean_out(), -0.09099, 0.3193);
    near(&seat(&book, 2).lean_out(), -0.29099, 0.3193);
}

/// (1150 + 30) cos 6 deg - 792 - 61 = 320.54 mm. U: inboard ±2 mm × cos 6, spread ±1, mark ±1,
/// dip ±2 deg × 1180 sin 6 deg × π/180 = 4.305 mm: 2/√3 × 4.951 = 5.72.
#[test]
fn the_handle_is_worked_out_from_inboard_spread_mark_and_dip() {
    let book = read(&[]);
    near(&seat(&book, 1).handle_computed(), 320.536, 5.717);
    near(&seat(&book, 1).overlap(), 381.536, 5.597);
}

/// The handle end is 190 + 1180 sin 6 deg = 313.3 mm above the seat; roll 0.1 deg swings the bob
/// 0.547 mm to port: a starboard handle reads long by that, a port one short.
#[test]
fn the_bob_at_the_handle_is_corrected_for_roll() {
    let book = read(&[]);
    let value = |number| seat(&book, number).handle_read().expect("worked out").value();
    assert!((value(1) - 320.453).abs() < 0.002, "{}", value(1));
    assert!((value(2) - 321.547).abs() < 0.002, "{}", value(2));
}

/// Without the height of the rowlock the bob's swing is known no better than handles differ.
#[test]
fn a_height_that_nobody_measured_makes_the_handle_less_sure() {
    let book = read(&[
        (BOAT, "seat: 1", "      above-seat: 190\n", ""),
        (BOAT, "", "roll: 0.1", "roll: 2"),
    ]);
    let (bare, measured) = (seat(&book, 1).handle_read(), seat(&book, 2).handle_read());
    let expanded = |worked: &Worked| worked.as_ref().expect("worked out").expanded();
    assert!(expanded(&bare) > 2.0 * expanded(&measured), "{bare:?}");
}

/// (3860 - 1150) / 1150 = 2.3565; levers: (3860 - 1150 - 30 - 300) / (1150 + 30 - 120) = 2.2453.
#[test]
fn gearing_is_outboard_over_inboard_and_the_levers_stand_beside_it() {
    let book = read(&[]);
    near(&seat(&book, 1).gearing(), 2.3565, 0.0048);
    near(&seat(&book, 1).gearing_levers(), 2.2453, 0.0081);
}

/// 60 - 52 = 8 and 60 - 46 = 14; two callipers readings ±0.2: 2/√3 × 0.2 √2 = 0.327.
#[test]
fn clearance_and_looseness_are_gap_less_the_widest_and_the_narrowest() {
    let book = read(&[]);
    near(&seat(&book, 1).clearance(), 8.0, 0.3266);
    near(&seat(&book, 1).looseness(), 14.0, 0.3266);
}

/// Along the boat a roll of 15 deg tilts the mouth by atan(tan 15 / cos 6) = 15.08 deg; the wall is
/// 46 - 26 = 20 mm: 60 - 52/cos(15.08) - 20 tan(15.08) = 0.753.
#[test]
fn in_a_roll_the_wall_of_the_lower_horn_takes_from_the_gap() {
    let book = read(&[]);
    let worked = seat(&book, 1).clearance_in_roll().expect("worked out");
    assert!((worked.value() - 0.753).abs() < 0.01, "{}", worked.value());
}

/// A shaft of 48 mm whose mark is 45.25 mm wide lies 24 - √(24² - 22.627²) = 16 mm deep: a third.
#[test]
fn the_mark_in_the_bed_tells_how_deep_a_round_shaft_lies() {
    let shaft = "{widest: 52, narrowest: 46, bears: flat, leather: wet}";
    let book = read(&[
        ("oars/long-ash.yaml", "oar: A1", shaft, "{round: 48, bears: round}"),
        (BOAT, "seat: 1", "seat-mark: 61", "seat-mark: 61\n    oar-bed: 45.2548"),
    ]);
    let worked = seat(&book, 1).bed_fraction().expect("worked out");
    assert!((worked.value() - 1.0 / 3.0).abs() < 1e-4, "{}", worked.value());
}

/// Trim stands in every blade alike: it makes no side differ from the other.
#[test]
fn sides_are_compared_free_of_level() {
    let book = read(&[(BOAT, "", "trim: 0.0, roll: 0.1", "trim: 0.9, roll: -0.9")]);
    let sight = BoatSight::new(&book, &book.boats[0]);
    let difference = sight.side_difference().expect("worked out");
    assert!(difference.value().abs() < 1e-9);
    assert!(difference.parts().iter().all(|part| part.input.tool != Tool::Level));
}

/// What is missing is told by name; what is there is worked out all the same.
#[test]
fn what_is_missing_is_named() {
    let book = read(&[
        (BOAT, "seat: 1", "gap: 60", "gap: not measured"),
        ("oars/long-ash.yaml", "oar: A1", "widest: 52, ", ""),
        (BOAT, "", "{trim: 0.0, roll: 0.1}", "{trim: 0.0}"),
    ]);
    let seat = seat(&book, 1);
    let missing = |worked: Worked| worked.expect_err("missing").missing().join(" ");
    assert_eq!(missing(seat.clearance()), "rowlock/gap A1/shaft/widest");
    assert_eq!(missing(seat.lean_out()), "rigged/level/roll");
    assert!(seat.lean_aft().is_ok());
}

#[test]
fn a_reading_taken_twice_counts_by_its_mean_and_half_its_spread() {
    let book = read(&[(BOAT, "seat: 1", "gap: 60", "gap: [59, 61]")]);
    let gap = seat(&book, 1).gap().expect("worked out");
    assert!((gap.value() - 60.0).abs() < 1e-9);
    assert!((gap.parts()[0].half_width - 1.0).abs() < 1e-9);
}

#[test]
fn a_reading_may_say_itself_how_fine_it_is() {
    let book = read(&[
        (BOAT, "seat: 1", "gap: 60", "gap: {read: 60, to: 0.05}"),
        (BOAT, "", "  pin-gauge: 150", "  readings: {callipers: 0.1}\n  pin-gauge: 150"),
    ]);
    let half_width = |number| seat(&book, number).gap().expect("read").parts()[0].half_width;
    assert!((half_width(1) - 0.05).abs() < 1e-12);
    assert!((half_width(2) - 0.1).abs() < 1e-12);
}

/// Order of say, figure by figure: the boat, the club, the class.
#[test]
fn limits_are_taken_figure_by_figure_from_boat_club_and_class() {
    let book = read(&[
        ("club.yaml", "", "people:", "limits:\n  surfboat:\n    pitch: {most: 6 deg}\npeople:"),
        (BOAT, "", "seats:\n", "limits:\n  pitch: {least: 2 deg, source: minute 7}\nseats:\n"),
    ]);
    let in_force = BoatSight::new(&book, &book.boats[0]).in_force;
    let limit = |part| in_force.limit(LimitKey::Pitch, part).expect("in force");
    let (least, most) = (limit(Part::Least), limit(Part::Most));
    assert_eq!((least.value.to_string(), least.source), ("2".to_owned(), "minute 7".to_owned()));
    assert!(least.from.starts_with("boats/kittiwake.yaml:"), "{}", least.from);
    assert_eq!((most.value.to_string(), &*most.source), ("6".to_owned(), "set by the club"));
    assert_eq!(most.from, "club.yaml:13");
    let arc = in_force.limit(LimitKey::Arc, Part::Most).expect("in force");
    assert_eq!(arc.from, "class surfboat");
}

#[test]
fn a_limit_that_guards_life_cant_be_switched_off() {
    let book = read(&[(BOAT, "", "seats:\n", "limits: {clearance: none, pitch: none}\nseats:\n")]);
    let in_force = BoatSight::new(&book, &book.boats[0]).in_force;
    assert!(in_force.limit(LimitKey::Pitch, Part::Most).is_none());
    assert!(in_force.limit(LimitKey::Clearance, Part::Least).is_some());
}

#[test]
fn where_a_boat_has_no_class_the_clearance_still_has_a_limit() {
    let book = read(&[(BOAT, "", "class: surfboat", "class: nowhere")]);
    let in_force = BoatSight::new(&book, &book.boats[0]).in_force;
    assert!(in_force.limit(LimitKey::Pitch, Part::Most).is_none());
    let clearance = in_force.limit(LimitKey::Clearance, Part::Least).expect("in force");
    assert_eq!(clearance.from, "class surfboat");
}
