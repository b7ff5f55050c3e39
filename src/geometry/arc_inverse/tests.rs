//! Round trips, sensitivities and refusals of the inverse.

use super::*;

fn deg(value: f64) -> Angle {
    Angle::deg(value)
}

/// The three pitches of a rig, exact, at 50 and -35 deg and a dip of 6.
fn readings(rowlock: f64, oar: f64, aft: f64, out: f64) -> ArcReadings {
    let lean = Lean { aft: deg(aft), out: deg(out) };
    let rig = Rig { rowlock_pitch: deg(rowlock), oar_pitch: deg(oar), lean };
    let at = |theta: f64| arc::pitch(rig, deg(theta), deg(6.0));
    ArcReadings {
        catch: at(50.0),
        square: at(0.0),
        finish: at(-35.0),
        catch_at: deg(50.0),
        finish_at: deg(-35.0),
        dip: deg(6.0),
        oar_pitch: deg(oar),
    }
}

fn solved(readings: ArcReadings) -> [f64; 4] {
    let found = inverse(readings).expect("a rig gave these readings");
    [found.rowlock_pitch, found.rig_pitch, found.lean.aft, found.lean.out].map(Angle::as_deg)
}

#[test]
fn a_rig_is_found_again_from_its_three_pitches() {
    for (rowlock, oar, aft, out) in [(4.0, 0.0, 2.0, 1.0), (5.0, -1.0, -6.0, 6.0)] {
        let found = solved(readings(rowlock, oar, aft, out));
        let expected = [rowlock, rowlock + oar, aft, out];
        let near = found.iter().zip(expected).all(|(a, b)| (a - b).abs() < 1e-12);
        assert!(near, "{found:?} against {expected:?}");
    }
}

#[test]
fn all_plumb_reads_as_no_lean() {
    let [_, rig_pitch, aft, out] = solved(readings(4.0, 0.0, 0.0, 0.0));
    assert!(aft.abs() < 1e-8 && out.abs() < 1e-8 && (rig_pitch - 4.0).abs() < 1e-8);
}

/// One input with a name, how to move it, and its partial.
type Input = (&'static str, fn(&mut ArcReadings) -> &mut Angle, fn(&Partials) -> f64);

const INPUTS: [Input; 7] = [
    ("catch", |r| &mut r.catch, |p| p.catch),
    ("square", |r| &mut r.square, |p| p.square),
    ("finish", |r| &mut r.finish, |p| p.finish),
    ("catch_at", |r| &mut r.catch_at, |p| p.catch_at),
    ("finish_at", |r| &mut r.finish_at, |p| p.finish_at),
    ("dip", |r| &mut r.dip, |p| p.dip),
    ("oar_pitch", |r| &mut r.oar_pitch, |p| p.oar_pitch),
];

/// Source: the whole inverse done again with the input moved a little each way.
#[test]
fn the_sensitivities_are_what_moving_an_input_does() {
    let middle = readings(4.0, 0.5, 3.0, -2.0);
    let s = inverse(middle).expect("a rig gave these readings").sensitivities;
    for (name, input, partial) in INPUTS {
        let moved = |by: f64| {
            let mut other = middle;
            *input(&mut other) = deg(input(&mut other).as_deg() + by);
            solved(other)
        };
        let (more, less) = (moved(0.01), moved(-0.01));
        for (i, partials) in [s.rowlock_pitch, s.rig_pitch, s.aft, s.out].iter().enumerate() {
            // The oar's pitch is part of the rig's, whatever the readings say.
            let expected = (more[i] - less[i]) / 0.02;
            let found = partial(partials);
            assert!((found - expected).abs() < 1e-5, "{name} {i}: {found} against {expected}");
        }
    }
}

/// Source: turning the oar off square by a little changes the reading by the pitch's own slope.
#[test]
fn a_shaft_not_quite_square_counts_like_a_wrong_reading() {
    let middle = readings(4.0, 0.0, 3.0, -2.0);
    let lean = Lean { aft: deg(3.0), out: deg(-2.0) };
    let rig = Rig { rowlock_pitch: deg(4.0), oar_pitch: deg(0.0), lean };
    let at = |theta: f64| arc::pitch(rig, deg(theta), deg(6.0)).as_deg();
    // Read at 0.01 deg but booked as square off, so the answer is off by the opposite of what
    // correcting for the angle would do.
    let mut turned = middle;
    turned.square = deg(at(0.01));
    let moved = solved(turned)[2] - solved(middle)[2];
    let s = inverse(middle).expect("a rig gave these readings").sensitivities;
    assert!((moved / 0.01 + s.aft.square_at).abs() < 1e-4, "{moved}");
}

#[test]
fn only_the_sum_of_rowlock_and_oar_is_seen() {
    let s = inverse(readings(4.0, 0.0, 2.0, 1.0)).expect("a rig gave these").sensitivities;
    assert!((s.rowlock_pitch.oar_pitch + 1.0).abs() < 0.02);
    assert!(s.rig_pitch.oar_pitch.abs() < 0.02 && s.aft.oar_pitch.abs() < 0.02);
}

/// Source: an independent program, on exact data: (4, 2, 1) at a dip of 5 gives 4.027, 1.988,
/// 1.017.
#[test]
fn the_small_angle_answer_is_as_good_as_it_says() {
    let mut exact = readings(4.0, 0.0, 2.0, 1.0);
    let lean = Lean { aft: deg(2.0), out: deg(1.0) };
    let rig = Rig { rowlock_pitch: deg(4.0), oar_pitch: deg(0.0), lean };
    exact.dip = deg(5.0);
    exact.catch = arc::pitch(rig, deg(50.0), exact.dip);
    exact.square = arc::pitch(rig, deg(0.0), exact.dip);
    exact.finish = arc::pitch(rig, deg(-35.0), exact.dip);
    let found = inverse_linear(exact).expect("the angles are clear of square off");
    assert!((found.rig_pitch.as_deg() - 4.027).abs() < 5e-4);
    assert!((found.lean.aft.as_deg() - 1.988).abs() < 5e-4);
    assert!((found.lean.out.as_deg() - 1.017).abs() < 5e-4);
}

#[test]
fn the_small_angle_answer_takes_the_oars_pitch_off_the_rowlock() {
    let mut twisted = readings(4.0, 0.0, 2.0, 1.0);
    let plain = inverse_linear(twisted).expect("the angles are clear of square off");
    twisted.oar_pitch = deg(1.5);
    let found = inverse_linear(twisted).expect("the angles are clear of square off");
    assert!((plain.rowlock_pitch.as_deg() - found.rowlock_pitch.as_deg() - 1.5).abs() < 1e-12);
    assert!((plain.rig_pitch.as_deg() - found.rig_pitch.as_deg()).abs() < 1e-12);
    assert!((found.sensitivities.rowlock_pitch.oar_pitch + 1.0).abs() < 1e-12);
    assert!(found.sensitivities.rig_pitch.oar_pitch.abs() < 1e-12);
}

#[test]
fn angles_that_tell_nothing_are_refused() {
    let mut same = readings(4.0, 0.0, 2.0, 1.0);
    same.finish_at = deg(50.0);
    assert_eq!(inverse(same), Err(ArcError::FinishAngle(deg(50.0))));
    assert_eq!(inverse_linear(same), Err(ArcError::FinishAngle(deg(50.0))));
    same.catch_at = deg(0.0);
    assert_eq!(inverse(same), Err(ArcError::CatchAngle(deg(0.0))));
}

#[test]
fn readings_of_no_rig_are_refused_and_say_so() {
    let mut wild = readings(4.0, 0.0, 2.0, 1.0);
    wild.catch = deg(80.0);
    wild.square = deg(-80.0);
    wild.finish = deg(80.0);
    let refused = inverse(wild).expect_err("no rig goes from 80 to -80 and back");
    assert!(matches!(refused, ArcError::NoRigFits { .. }), "{refused}");
    assert!(refused.help().contains("again"));
    assert!(ArcError::CatchAngle(deg(0.0)).help().contains("square off"));
}

/// A wild number anywhere ends in an answer or a refusal, never in a panic or for ever.
#[test]
fn wild_numbers_end_in_an_answer_or_a_refusal() {
    for wild in [90.0, -90.0, 180.0, 1e9, 1e300, f64::MAX, -f64::MAX] {
        for (name, input, _) in INPUTS {
            let mut other = readings(4.0, 0.0, 2.0, 1.0);
            *input(&mut other) = deg(wild);
            for answer in [inverse(other), inverse_linear(other)].into_iter().flatten() {
                assert!(answer.lean.aft.as_deg().is_finite(), "{name} {wild}");
            }
        }
    }
}
