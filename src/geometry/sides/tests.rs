//! Signs, balance and refusals of the two sides.

use super::*;

fn oar(side: Side, pitch: f64, theta: f64) -> WorkingOar {
    WorkingOar {
        side,
        spread: Length::mm(750.0),
        ahead: Length::mm(0.0),
        levers: Levers { hand: Length::mm(1030.0), blade: Length::mm(2470.0) },
        theta: Angle::deg(theta),
        pitch: Angle::deg(pitch),
        dip: Angle::deg(6.0),
    }
}

fn four(port: f64, starboard: f64) -> [WorkingOar; 4] {
    let (port, starboard) = (oar(Side::Port, port, 0.0), oar(Side::Starboard, starboard, 0.0));
    [port, starboard, port, starboard]
}

#[test]
fn the_difference_is_port_less_starboard() {
    let [four, six] = [4.0, 6.0].map(Angle::deg);
    let more = side_difference(&[six, six], &[four]).expect("both sides were read");
    assert!((more.as_deg() - 2.0).abs() < 1e-12);
    let less = side_difference(&[four, six], &[six]).expect("both sides were read");
    assert!((less.as_deg() + 1.0).abs() < 1e-12);
}

#[test]
fn a_side_without_readings_has_no_difference() {
    let four = [Angle::deg(4.0)];
    assert!(side_difference(&[], &four).is_none());
    assert!(side_difference(&four, &[]).is_none());
}

#[test]
fn two_sides_alike_tip_and_turn_nothing() {
    let oars = four(4.0, 4.0);
    assert!(tip_index(&oars).expect("sound oars").abs() < 1e-15);
    assert!(yaw_index(&oars).expect("sound oars").abs() < 1e-15);
    assert!(oars.iter().map(|oar| yaw_moment(oar, 400.0)).sum::<f64>().abs() < 1e-9);
}

#[test]
fn more_pitch_on_port_lifts_the_port_side() {
    assert!(tip_index(&four(5.0, 4.0)).expect("sound oars") > 0.0);
    assert!(tip_index(&four(4.0, 5.0)).expect("sound oars") < 0.0);
}

/// Source: an independent program: at 400 N and mid-stroke, 18.7 N m for each degree between the
/// sides of a four.
#[test]
fn a_degree_between_the_sides_tips_a_four_by_19_newton_metres() {
    let tipped = tip_index(&four(4.5, 3.5)).expect("sound oars") * 400.0;
    assert!((tipped - 18.7).abs() < 0.05, "{tipped}");
}

#[test]
fn the_index_is_the_moment_for_one_newton() {
    let oars = four(6.0, 4.0);
    let moment: f64 = oars.iter().map(|oar| tip_moment(oar, 400.0)).sum();
    assert!((tip_index(&oars).expect("sound oars") * 400.0 - moment).abs() < 1e-9);
}

#[test]
fn a_port_oar_turns_the_bow_to_starboard() {
    assert!(yaw_moment(&oar(Side::Port, 4.0, 0.0), 400.0) < 0.0);
    assert!(yaw_moment(&oar(Side::Starboard, 4.0, 0.0), 400.0) > 0.0);
}

/// Source: an independent program: seats 0.95 m apart and alternating, bow-most to port, turn by
/// 0.123 at a catch of 50 deg, nothing square off, -0.088 at -35.
#[test]
fn alternating_seats_turn_her_one_way_at_the_catch_and_back_at_the_finish() {
    for (theta, expected) in [(50.0, 0.123), (0.0, 0.0), (-35.0, -0.088)] {
        let seats = [(Side::Port, 1.425), (Side::Starboard, 0.475), (Side::Port, -0.475)];
        let last = (Side::Starboard, -1.425);
        let at = |(side, ahead): (Side, f64)| WorkingOar {
            ahead: Length::mm(ahead * 1000.0),
            ..oar(side, 4.0, theta)
        };
        let oars = [at(seats[0]), at(seats[1]), at(seats[2]), at(last)];
        let index = yaw_index(&oars).expect("sound oars");
        assert!((index - expected).abs() < 1e-3, "{theta}: {index}");
    }
}

#[test]
fn no_oars_and_arms_without_length_are_refused() {
    assert_eq!(tip_index(&[]), Err(SidesError::NoOars));
    assert_eq!(yaw_index(&[]), Err(SidesError::NoOars));
    assert!(SidesError::NoOars.help().contains("seat"));
    let mut short = four(4.0, 4.0);
    short[2].levers.blade = Length::mm(0.0);
    let expected = SidesError::LeverNotPositive(Length::mm(0.0));
    assert_eq!(tip_index(&short), Err(expected));
    assert_eq!(yaw_index(&short), Err(expected));
    assert!(expected.help().contains("inboard"));
    short[2].levers.blade = Length::mm(2470.0);
    short[1].levers.hand = Length::mm(-1.0);
    assert_eq!(tip_index(&short), Err(SidesError::LeverNotPositive(Length::mm(-1.0))));
}
