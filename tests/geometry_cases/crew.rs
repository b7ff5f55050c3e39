//! Where a rower catches and finishes.

use crate::Found;
use crate::case::Case;
use tholebook::geometry::crew;
use tholebook::geometry::crew::Bench;
use tholebook::geometry::crew::Body;
use tholebook::geometry::crew::Posture;
use tholebook::units::Length;

pub(super) fn crew(case: &Case) -> Found {
    let posture = posture(case);
    assert!(case.number("p_heel").abs() < 1e-12, "{}: the heel is at the ankle", case.id);
    let bench = Bench {
        chock_to_pin: case.mm("p_w"),
        brace: case.inputs["brace_mm"].as_f64().map(Length::mm),
        hand_lever: case.mm("p_rh"),
        dip: case.deg("p_de"),
        across: case.mm("p_dy"),
        hands_above_seat: case.mm("p_zh"),
        seat_above_heels: case.mm("p_seat_over_heel"),
    };
    let body = Body::of_stature(case.mm("stature_mm"));
    let finish = crew::finish(bench, body, posture).expect("a rower who fits").as_deg();
    let catch = crew::catch(bench, body, posture).expect("a rower who fits").as_deg();
    let handle = crew::handle_at_finish(bench, body, posture).expect("a rower who fits");
    let needed = crew::brace_needed(body, posture, bench.seat_above_heels);
    vec![
        ("finish_deg", finish),
        ("catch_deg", catch),
        ("arc_deg", catch - finish),
        ("handle_x_finish_mm", handle.as_mm()),
        ("brace_needed_mm", needed.expect("legs that reach").as_mm()),
    ]
}

/// The posture of the case, which is the usual one: what is assumed of every rower is that too.
fn posture(case: &Case) -> Posture {
    let posture = Posture {
        layback: case.deg("p_beta_f"),
        swing: case.deg("p_beta_c"),
        slide: case.mm("p_slide"),
        knee: case.deg("p_knee_max"),
        back_to_hip: case.number("p_kb"),
        hip_to_belly: case.number("p_kt"),
        hip_above_seat: case.number("p_kzh"),
    };
    assert_eq!(posture, Posture::USUAL, "{}", case.id);
    posture
}
