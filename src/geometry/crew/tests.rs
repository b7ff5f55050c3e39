//! Checks of a rower's arc that need no table of cases.

use super::*;

fn bench(chock: f64, brace: Option<f64>) -> Bench {
    Bench {
        chock_to_pin: Length::mm(chock),
        brace: brace.map(Length::mm),
        hand_lever: Length::mm(1030.0),
        dip: Angle::deg(6.0),
        across: Length::mm(950.0),
        hands_above_seat: Length::mm(250.0),
        seat_above_heels: Length::mm(200.0),
    }
}

fn finish_at(stature: f64, chock: f64, brace: Option<f64>) -> f64 {
    let body = Body::of_stature(Length::mm(stature));
    finish(bench(chock, brace), body, Posture::USUAL).expect("a rower who fits").as_deg()
}

fn catch_at(stature: f64, posture: Posture) -> f64 {
    let body = Body::of_stature(Length::mm(stature));
    catch(bench(600.0, None), body, posture).expect("a rower who fits").as_deg()
}

/// Source: an independent program: 1.0 deg less finish and 3.45 deg more catch per 100 mm of
/// stature; the chock at 583, 600 and 617 mm brings 1.70, 1.80 and 1.90 m to one finish.
#[test]
fn the_tall_finish_shorter_against_one_chock_and_catch_longer() {
    assert!((finish_at(1900.0, 600.0, None) - finish_at(1800.0, 600.0, None) - 1.0).abs() < 0.05);
    let gain = catch_at(1900.0, Posture::USUAL) - catch_at(1800.0, Posture::USUAL);
    assert!((gain - 3.45).abs() < 0.05, "{gain}");
    for (stature, chock) in [(1700.0, 583.0), (1800.0, 600.0), (1900.0, 617.0)] {
        let finish = finish_at(stature, chock, None);
        assert!((finish + 22.27).abs() < 0.03, "{stature}: {finish}");
    }
}

/// Source: an independent program, a rower of 1.80 m.
#[test]
fn each_assumption_moves_the_arc_as_far_as_it_is_said_to() {
    let usual = Posture::USUAL;
    let more = |posture| catch_at(1800.0, posture) - catch_at(1800.0, usual);
    assert!((more(Posture { swing: Angle::deg(45.0), ..usual }) - 2.7).abs() < 0.1);
    assert!((more(Posture { slide: Length::mm(130.0), ..usual }) - 1.8).abs() < 0.1);
    let finish = |posture| {
        finish(bench(600.0, None), Body::of_stature(Length::mm(1800.0)), posture)
            .expect("a rower who fits")
            .as_deg()
    };
    let more = |posture| finish(posture) - finish(usual);
    assert!((more(Posture { layback: Angle::deg(25.0), ..usual }) + 1.0).abs() < 0.1);
    assert!((more(Posture { back_to_hip: 0.075, ..usual }) - 1.1).abs() < 0.05);
    assert!((more(Posture { hip_to_belly: 0.095, ..usual }) - 1.1).abs() < 0.05);
}

#[test]
fn against_the_chock_the_brace_changes_nothing_and_beyond_it_moves_the_hands_by_as_much() {
    let at = |brace| finish_at(1800.0, 600.0, Some(brace));
    assert!((at(700.0) - finish_at(1800.0, 600.0, None)).abs() < 1e-12);
    assert!((at(970.0) - at(800.0)).abs() < 1e-12);
    let one_hole = at(1030.0) - at(1000.0);
    assert!((one_hole - 1.81).abs() < 0.03, "{one_hole}");
    let body = Body::of_stature(Length::mm(1800.0));
    let stopped = |brace| stopped_by(bench(600.0, brace), body, Posture::USUAL);
    assert_eq!(stopped(None), Ok(StoppedBy::Chock));
    assert_eq!(stopped(Some(970.0)), Ok(StoppedBy::Chock));
    assert_eq!(stopped(Some(971.0)), Ok(StoppedBy::Legs));
}

/// A brace that is just met by straight legs stops nobody: the chock does.
#[test]
fn at_the_very_brace_that_is_needed_the_chock_stops_the_rower() {
    let body = Body::of_stature(Length::mm(1800.0));
    let needed = brace_needed(body, Posture::USUAL, Length::mm(200.0)).expect("legs that reach");
    let bench = bench(600.0, Some(needed.as_mm()));
    assert_eq!(stopped_by(bench, body, Posture::USUAL), Ok(StoppedBy::Chock));
}

/// Where the hands would have to reach as far as the lever is long, the oar lies along the boat.
#[test]
fn an_oar_along_the_boat_is_no_finish() {
    let body = Body::of_stature(Length::mm(1800.0));
    let flat = Bench { dip: Angle::deg(0.0), ..bench(600.0, None) };
    let hand_lever = handle_at_finish(flat, body, Posture::USUAL).expect("a rower who fits");
    let refused = finish(Bench { hand_lever, ..flat }, body, Posture::USUAL);
    assert_eq!(refused, Err(CrewError::HandleOutOfReach));
}

/// Source: the definition, by hand: 800 + (0.051 - 0.039) 1800 = 821.6, with an ankle at 0.039 of
/// the stature.
#[test]
fn a_leg_is_longer_than_its_inside_by_what_the_hip_stands_above_the_ankle() {
    let leg = leg_of_inside_leg(Length::mm(800.0), Length::mm(1800.0), ANKLE + 0.012);
    assert!((leg.as_mm() - 821.6).abs() < 1e-9, "{leg}");
}

#[test]
fn one_who_does_not_fit_is_refused_with_what_to_do() {
    let tall = Body::of_stature(Length::mm(1800.0));
    let short = Body { leg: Length::mm(150.0), ..tall };
    let refused = finish(bench(600.0, None), short, Posture::USUAL);
    assert_eq!(refused, Err(CrewError::LegsTooShort));
    for chock in [2000.0, -2000.0] {
        let refused = finish(bench(chock, None), tall, Posture::USUAL);
        assert_eq!(refused, Err(CrewError::HandleOutOfReach));
    }
    let refused = catch(bench(5000.0, None), tall, Posture::USUAL);
    assert_eq!(refused, Err(CrewError::ArmsTooShort));
    let none = Body { arm: Length::mm(0.0), ..tall };
    let refused = catch(bench(600.0, None), none, Posture::USUAL);
    assert_eq!(refused, Err(CrewError::ArmsTooShort));
    for (error, word) in [
        (CrewError::LegsTooShort, "leg"),
        (CrewError::HandleOutOfReach, "chock"),
        (CrewError::ArmsTooShort, "spread"),
    ] {
        assert!(error.help().contains(word), "{error}");
    }
}

#[test]
fn numbers_of_no_boat_never_give_a_number_that_is_none() {
    for wild in [0.0, -1.0, 1e150, f64::MAX, -f64::MAX] {
        let bench = Bench { hand_lever: Length::mm(wild), ..bench(wild, Some(-wild)) };
        let body = Body::of_stature(Length::mm(wild));
        for angle in [finish(bench, body, Posture::USUAL), catch(bench, body, Posture::USUAL)] {
            assert!(angle.is_err() || angle.is_ok_and(|angle| angle.as_deg().is_finite()));
        }
    }
}
