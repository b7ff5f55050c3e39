//! Pitch of a blade, and what pitch readings imply.

use crate::Found;
use crate::case::Case;
use tholebook::geometry::arc;
use tholebook::geometry::arc::Rig;
use tholebook::geometry::arc_inverse;
use tholebook::geometry::arc_inverse::ArcReadings;
use tholebook::geometry::arc_inverse::Partials;
use tholebook::geometry::reading;
use tholebook::units::Angle;

/// The pitch complete to third order, radians: a check on the series, not a part of the program.
fn pitch_third_order(rig: Rig, theta: Angle, dip: Angle) -> f64 {
    let (g, o, d) = (rig.rowlock_pitch.as_rad(), rig.oar_pitch.as_rad(), dip.as_rad());
    let (s, l) = (rig.lean.aft.as_rad(), rig.lean.out.as_rad());
    let (c, n) = (theta.cos(), theta.sin());
    let (x, w) = (s * c + l * n, l * c - s * n);
    let e = w - d;
    let third = (s.powi(3) * c + l.powi(3) * n - x.powi(3)) / 3.0;
    (o + g + x + g * e * e / 2.0 + x * (d * d / 2.0 - d * w) + third).to_degrees()
}

pub(super) fn pitch(case: &Case) -> Found {
    let rig = Rig {
        rowlock_pitch: case.deg("rowlock_pitch_deg"),
        oar_pitch: case.deg("oar_pitch_deg"),
        lean: case.lean(),
    };
    let (theta, dip) = (case.deg("oar_angle_deg"), case.deg("dip_deg"));
    let exact = arc::pitch(rig, theta, dip);
    vec![
        ("pitch_exact_deg", exact.as_deg()),
        ("pitch_linear_deg", arc::pitch_linear(rig, theta).as_deg()),
        ("pitch_third_order_deg", pitch_third_order(rig, theta, dip)),
        ("plumb_offset_mm_per_100", 100.0 * dip.cos() * exact.tan()),
    ]
}

pub(super) fn reading(case: &Case) -> Found {
    let slope = reading::slope_from_offset(case.mm("offset_mm"), case.mm("gauge_mm"));
    vec![("pitch_deg", slope.expect("the gauge has a length").as_deg())]
}

pub(super) fn pitch_mean(case: &Case) -> Found {
    let rig = Rig {
        rowlock_pitch: case.deg("built_in_deg"),
        oar_pitch: Angle::deg(0.0),
        lean: case.lean(),
    };
    let mean = arc::mean_pitch_linear(rig, case.deg("catch_deg"), case.deg("finish_deg"));
    vec![("mean_pitch_deg", mean.as_deg())]
}

pub(super) fn inverse_linear(case: &Case) -> Found {
    let pitch = |name| {
        reading::slope_from_offset(case.mm(name), case.mm("gauge_mm")).expect("a sound gauge")
    };
    let readings = ArcReadings {
        catch: pitch("offset_catch_mm"),
        square: pitch("offset_square_mm"),
        finish: pitch("offset_finish_mm"),
        catch_at: case.deg("catch_deg"),
        finish_at: case.deg("finish_deg"),
        dip: Angle::deg(0.0),
        oar_pitch: Angle::deg(0.0),
    };
    let found = arc_inverse::inverse_linear(readings).expect("the angles are clear");
    let tells = arc_inverse::separation(readings.catch_at, readings.finish_at).expect("clear");
    let difference = readings.catch.as_deg() - readings.finish.as_deg();
    vec![
        ("pitch_catch_deg", readings.catch.as_deg()),
        ("pitch_square_deg", readings.square.as_deg()),
        ("pitch_finish_deg", readings.finish.as_deg()),
        ("built_in_deg", found.rig_pitch.as_deg()),
        ("stern_lean_deg", found.lean.aft.as_deg()),
        ("outboard_lean_deg", found.lean.out.as_deg()),
        ("square_off_sum_deg", found.rig_pitch.as_deg() + found.lean.aft.as_deg()),
        ("catch_minus_finish_deg", difference),
        ("outboard_lean_from_difference_only_deg", difference / tells.difference_gain),
        ("stern_leak_into_that", tells.leak),
    ]
}

pub(super) fn inverse_exact(case: &Case) -> Found {
    let readings = ArcReadings {
        catch: case.deg("pitch_catch_deg"),
        square: case.deg("pitch_square_deg"),
        finish: case.deg("pitch_finish_deg"),
        catch_at: case.deg("catch_deg"),
        finish_at: case.deg("finish_deg"),
        dip: case.deg("dip_deg"),
        oar_pitch: case.deg("oar_pitch_deg"),
    };
    let exact = arc_inverse::inverse(readings).expect("a rig gave these readings");
    let linear = arc_inverse::inverse_linear(readings).expect("the angles are clear");
    vec![
        ("rowlock_pitch_deg", exact.rowlock_pitch.as_deg()),
        ("stern_lean_deg", exact.lean.aft.as_deg()),
        ("outboard_lean_deg", exact.lean.out.as_deg()),
        ("linear_built_in_deg", linear.rig_pitch.as_deg()),
        ("linear_stern_deg", linear.lean.aft.as_deg()),
        ("linear_outboard_deg", linear.lean.out.as_deg()),
    ]
}

pub(super) fn conditioning(case: &Case) -> Found {
    assert!(case.number("square_deg").abs() < 1e-12, "{}: square off is nought", case.id);
    let tells = arc_inverse::separation(case.deg("catch_deg"), case.deg("finish_deg"));
    let tells = tells.expect("the angles are clear of square off");
    vec![
        ("cond_2norm", tells.condition),
        ("amp_built_in", tells.amp_built_in),
        ("amp_stern", tells.amp_aft),
        ("amp_outboard", tells.amp_out),
        ("worst_stern", tells.worst_aft),
        ("worst_outboard", tells.worst_out),
        ("corr_built_in_stern", tells.correlation),
        ("kappa_s", tells.kappa),
        ("difference_gain_l", tells.difference_gain),
        ("stern_leak", tells.leak),
    ]
}

/// The GUM's law of propagation (JCGM 100:2008, 5.1.2) with rectangular inputs (4.3.7), by the
/// sensitivities of the small-angle inverse.
pub(super) fn uncertainty(case: &Case) -> Found {
    let rig = Rig {
        rowlock_pitch: case.deg("built_in_deg"),
        oar_pitch: Angle::deg(0.0),
        lean: case.lean(),
    };
    let (catch_at, finish_at) = (case.deg("catch_deg"), case.deg("finish_deg"));
    let pitches = [catch_at, Angle::deg(0.0), finish_at].map(|at| arc::pitch_linear(rig, at));
    let [catch, square, finish] = pitches;
    let (dip, oar_pitch) = (Angle::deg(0.0), Angle::deg(0.0));
    let readings = ArcReadings { catch, square, finish, catch_at, finish_at, dip, oar_pitch };
    let s = arc_inverse::inverse_linear(readings).expect("the angles are clear").sensitivities;

    let offset = case.number("offset_half_width_mm") / 3_f64.sqrt() / case.number("gauge_mm");
    let by_offset = pitches.map(|pitch| (offset * pitch.cos().powi(2)).to_degrees());
    let by_angle = case.number("angle_half_width_deg") / 3_f64.sqrt();
    let terms = |p: Partials| {
        let [catch, square, finish] = by_offset;
        let read = [p.catch * catch, p.square * square, p.finish * finish];
        let turned = [p.catch_at, p.square_at, p.finish_at].map(|part| part * by_angle);
        [read, turned].concat()
    };
    let combined = |terms: Vec<f64>| terms.iter().map(|term| term * term).sum::<f64>().sqrt();
    let sum = terms(s.rig_pitch).iter().zip(terms(s.aft)).map(|(a, b)| a + b).collect();
    vec![
        ("u_built_in_deg", combined(terms(s.rig_pitch))),
        ("u_stern_deg", combined(terms(s.aft))),
        ("u_outboard_deg", combined(terms(s.out))),
        ("u_square_off_sum_deg", combined(sum)),
    ]
}
