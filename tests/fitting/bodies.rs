//! The model's body against published ones.

use tholebook::geometry::crew::ANKLE;
use tholebook::geometry::crew::Body;
use tholebook::geometry::crew::Posture;
use tholebook::geometry::crew::leg_of_inside_leg;
use tholebook::units::Length;

/// One row of the table: the numbers expected.
fn row(id: &str) -> Vec<f64> {
    let table = include_str!("../data/published.tsv");
    let line = table.lines().find(|line| line.starts_with(&format!("{id}\t"))).expect("the row");
    let expected = line.split('\t').nth(3).expect("what is expected");
    expected.split([',', ';']).map(|cell| cell.trim().parse().expect("a number")).collect()
}

/// Source: `published.tsv` A01 and A02, ANSUR II, mean men and women: what of a body is not above
/// the seat is the inside leg.
#[test]
fn the_models_leg_is_that_of_six_thousand_people_within_a_hundredth_of_the_stature() {
    for id in ["A01", "A02"] {
        let [stature, _, sitting, _] = row(id)[..] else { panic!("four numbers in {id}") };
        let hip = Posture::USUAL.hip_above_seat;
        let of_inside =
            leg_of_inside_leg(Length::mm(stature - sitting), Length::mm(stature), hip).as_mm();
        let of_stature = Body::of_stature(Length::mm(stature)).leg.as_mm();
        let off = (of_inside - of_stature) / stature;
        assert!(off.abs() < 0.01, "{id}: {off}");
    }
}

/// Source: `published.tsv` A03: sitting height by stature; the hip joint 0.530 of it up.
#[test]
fn the_seat_is_as_far_below_the_hip_joint_as_sitting_heights_say() {
    let [slope, base, _] = row("A03")[..] else { panic!("three numbers") };
    for stature in [1600.0, 1750.0, 1900.0] {
        let seat = stature - (slope * stature + base);
        let hip = Body::of_stature(Length::mm(stature)).leg.as_mm() + ANKLE * stature;
        let above = (hip - seat) / stature;
        assert!((above - Posture::USUAL.hip_above_seat).abs() < 0.02, "{stature}: {above}");
    }
}
