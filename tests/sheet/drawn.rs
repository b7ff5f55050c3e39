//! What is drawn stands where the readings put it.

use tholebook::rules::Edit;

use super::page::BOAT;
use super::page::drawing;
use super::page::near;
use super::page::numbers;
use super::page::one_to;

const POINT: [&str; 2] = ["cx", "cy"];
const LINE: [&str; 4] = ["x1", "y1", "x2", "y2"];

/// The height of the string line, in millimetres of paper.
fn string(plan: &str) -> f64 {
    numbers(plan, "string", &LINE)[0][1]
}

#[test]
fn pins_stand_at_their_spread_from_the_string_and_along_it() {
    let plan = drawing("plan", &[(BOAT, "seat: 2", "spread: 792", "spread: 900")]);
    let (scale, string) = (one_to(&plan), string(&plan));
    let pins = numbers(&plan, "pin", &POINT);
    assert_eq!(pins.len(), 4);
    for (pin, spread) in pins.iter().zip([-792.0, 900.0, -792.0, 792.0]) {
        near((pin[1] - string) * scale, spread);
    }
    for pair in pins.windows(2) {
        near((pair[1][0] - pair[0][0]) * scale, 950.0);
    }
}

#[test]
fn an_oar_square_off_ends_where_its_length_and_inboard_put_it() {
    let plan = drawing("plan", &[]);
    let (scale, string) = (one_to(&plan), string(&plan));
    let pins = numbers(&plan, "pin", &POINT);
    let dip = 6.0_f64.to_radians().cos();
    for (oar, pin) in numbers(&plan, "oar-square", &LINE).iter().zip(&pins) {
        near(oar[0], pin[0]);
        near(oar[2], pin[0]);
        let away = (pin[1] - string).signum();
        // Length 3860, inboard 1150 and 30 from the collar to the pin.
        near((oar[3] - pin[1]) * away * scale, (3860.0 - 1180.0) * dip);
        near((pin[1] - oar[1]) * away * scale, 1180.0 * dip);
    }
}

#[test]
fn an_oar_at_the_catch_lies_forward_and_at_the_finish_abaft_by_its_angle() {
    let plan = drawing("plan", &[]);
    let angles = |kind: &str| -> Vec<f64> {
        let oars = numbers(&plan, kind, &LINE);
        let angle = |oar: &Vec<f64>| {
            let (along, across): (f64, f64) = (oar[2] - oar[0], (oar[3] - oar[1]).abs());
            along.atan2(across).to_degrees()
        };
        oars.iter().map(angle).collect()
    };
    assert_eq!(angles("oar-catch").len(), 4);
    for angle in angles("oar-catch") {
        near(angle, -50.0);
    }
    for angle in angles("oar-finish") {
        near(angle, 35.0);
    }
}

#[test]
fn a_seat_mark_stands_on_the_far_side_of_the_string() {
    let plan = drawing("plan", &[(BOAT, "seat: 1", "seat-mark: 61", "seat-mark: 80")]);
    let marks = numbers(&plan, "seat-mark", &LINE);
    let middle = f64::midpoint(marks[0][1], marks[0][3]);
    near((middle - string(&plan)) * one_to(&plan), 80.0);
}

#[test]
fn a_rowlock_is_as_wide_as_its_gap_and_holds_both_sections_of_the_shaft() {
    let rowlock = drawing("rowlock-1", &[(BOAT, "seat: 1", "gap: 60", "gap: 57")]);
    let scale = one_to(&rowlock);
    let gap = &numbers(&rowlock, "gap", &LINE)[0];
    near((gap[2] - gap[0]) * scale, 57.0);
    let widest = &numbers(&rowlock, "widest", &["r", "cx"])[0];
    near(widest[0] * 2.0 * scale, 52.0);
    near(widest[1] - widest[0], gap[0]);
    near(numbers(&rowlock, "narrowest", &["r"])[0][0] * 2.0 * scale, 46.0);
    let clears = &numbers(&rowlock, "clears", &LINE)[0];
    near((clears[2] - clears[0]) * scale, 5.0);
}

#[test]
fn a_pin_leans_ten_times_as_far_as_it_does_and_to_its_own_side() {
    let lean: Edit =
        (BOAT, "seat: 1", "lean: {aft: 0.5, out: -0.5}", "lean: {aft: 2 deg, out: 1 deg}");
    let port: Edit =
        (BOAT, "seat: 2", "lean: {aft: 0.5, out: -0.5}", "lean: {aft: -2 deg, out: 1 deg}");
    // Square to her trim and roll: none of either, so that what is read is what is drawn.
    let level: Edit = (BOAT, "", "level: {trim: 0.0, roll: 0.1}", "level: {trim: 0.0, roll: 0.0}");
    let drawn = |id: &str| -> Vec<f64> {
        let svg = drawing(id, &[lean, port, level]);
        let pins = numbers(&svg, "pin", &LINE);
        pins.iter().map(|pin| (pin[2] - pin[0]).atan2(pin[1] - pin[3]).to_degrees()).collect()
    };
    let [aft, out] = drawn("lean-1")[..] else { panic!("two views") };
    assert!((aft - 20.0).abs() < 0.1 && (out - 10.0).abs() < 0.1, "{aft} {out}");
    // Looking to the bow, port is on the left; leaning to the bow goes to the left as well.
    let [aft, out] = drawn("lean-2")[..] else { panic!("two views") };
    assert!((aft + 20.0).abs() < 0.1 && (out + 10.0).abs() < 0.1, "{aft} {out}");
}

#[test]
fn a_pitch_twice_as_far_from_another_is_drawn_twice_as_far_away() {
    let read: Edit = (
        BOAT,
        "seat: 1",
        "pitch: {catch: 11, square: 11, finish: 11}",
        "pitch: {catch: 3 deg, square: 4 deg, finish: 6 deg}",
    );
    let level: Edit = (BOAT, "", "level: {trim: 0.0, roll: 0.1}", "level: {trim: 0.0, roll: 0.0}");
    let plot = drawing("pitch-1", &[read, level]);
    let points = numbers(&plot, "reading", &POINT);
    let [catch, square, finish] = &points[..] else { panic!("{points:?}") };
    assert!(catch[0] < square[0] && square[0] < finish[0], "the catch is on the left");
    let one = catch[1] - square[1];
    assert!(one > 0.5, "more pitch is higher");
    near(square[1] - finish[1], one * 2.0);
    // The angles 50, 0 and -35 are as far apart on the paper.
    near((square[0] - catch[0]) / (finish[0] - square[0]), 50.0 / 35.0);
}

#[test]
fn what_nobody_measured_is_not_drawn_and_says_so() {
    let unmeasured: &[Edit] = &[
        (BOAT, "seat: 1", "spread: 792", "spread: not measured"),
        (BOAT, "seat: 1", "gap: 60", "gap: not measured"),
        (BOAT, "seat: 1", "square: 11", "square: not measured"),
    ];
    let plan = drawing("plan", unmeasured);
    assert_eq!(numbers(&plan, "pin", &POINT).len(), 3);
    assert!(plan.contains("not drawn"), "{plan}");
    let rowlock = drawing("rowlock-1", unmeasured);
    assert!(numbers(&rowlock, "gap", &LINE).is_empty() && rowlock.contains("gap not measured"));
    let pitch = drawing("pitch-1", unmeasured);
    assert_eq!(numbers(&pitch, "reading", &POINT).len(), 2);
    assert!(pitch.contains("not read"), "{pitch}");
}

#[test]
fn what_is_outside_has_a_shape_and_a_word() {
    let tight = drawing("rowlock-1", &[(BOAT, "seat: 1", "gap: 60", "gap: 55")]);
    assert!(tight.contains("D danger") && tight.contains("class=\"fullorange\""), "{tight}");
    assert!(!drawing("rowlock-2", &[]).contains("class=\"mark\""));
}
