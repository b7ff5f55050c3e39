//! Where an oar reaches, its gearing, and what it does to the boat.

use crate::Found;
use crate::case::Case;
use serde_json::Value;
use tholebook::geometry::Side;
use tholebook::geometry::blade_force;
use tholebook::geometry::gearing;
use tholebook::geometry::gearing::Levers;
use tholebook::geometry::handle;
use tholebook::geometry::level;
use tholebook::geometry::sides;
use tholebook::geometry::sides::WorkingOar;
use tholebook::units::Angle;
use tholebook::units::Length;

pub(super) fn overlap(case: &Case) -> Found {
    let [inboard, collar] = ["inboard_mm", "swivel_offset_mm"].map(|name| case.mm(name));
    let [spread, mark] = ["pin_to_centreline_mm", "seat_offset_away_mm"].map(|name| case.mm(name));
    let dip = case.deg("dip_deg");
    let past = |dip| handle::past_mark(inboard, collar, spread, mark, dip);
    // A collar measured level instead of along the oar: as if the pin stood that much nearer.
    let nearer = Length::mm(spread.as_mm() - collar.as_mm());
    let level = handle::past_mark(inboard, Length::mm(0.0), nearer, mark, dip);
    let back = handle::inboard_for(past(dip), collar, spread, mark, dip);
    let beside = |by: f64| past(Angle::deg(dip.as_deg() + by)).as_mm();
    vec![
        ("overlap_mm", past(dip).as_mm()),
        ("overlap_w_horizontal_mm", level.as_mm()),
        ("inboard_back_mm", back.as_mm()),
        ("dO_ddip_mm_per_deg", (beside(1e-3) - beside(-1e-3)) / 2e-3),
    ]
}

pub(super) fn bob_bias(case: &Case) -> Found {
    let bias = level::bob_bias(case.mm("height_over_string_mm"), case.deg("roll_deg"));
    vec![("bias_mm", bias.as_mm())]
}

pub(super) fn gear(case: &Case) -> Found {
    let (length, inboard) = (case.mm("oar_mm"), case.mm("inboard_mm"));
    let collar = case.mm("swivel_offset_mm");
    let (hands, tip) = (case.mm("handle_end_to_hands_mm"), case.mm("tip_to_blade_centre_mm"));
    let arms = gearing::levers(length, inboard, collar, hands, tip).expect("a sound oar");
    let by_levers = gearing::lever_gearing(length, inboard, collar, hands, tip);
    vec![
        ("gear_simple", gearing::gearing(length, inboard).expect("a sound oar")),
        ("hand_lever_mm", arms.hand.as_mm()),
        ("blade_lever_mm", arms.blade.as_mm()),
        ("gear_lever", by_levers.expect("a sound oar")),
    ]
}

pub(super) fn arc(case: &Case) -> Found {
    let (radius, dip) = (case.mm("radius_mm"), case.deg("dip_deg"));
    let (catch, finish) = (case.deg("catch_deg"), case.deg("finish_deg"));
    vec![
        ("arc_mm", gearing::arc_length(radius, catch, finish, dip).as_mm()),
        ("chord_mm", gearing::chord_length(radius, catch, finish, dip).as_mm()),
    ]
}

pub(super) fn side_bias(case: &Case) -> Found {
    let rows = case.inputs["oars"].as_array().expect("a list of oars");
    let number = |row: &Value, name: &str| row[name].as_f64().expect("an oar's measures");
    let oars: Vec<(WorkingOar, f64)> = rows
        .iter()
        .map(|row| {
            let metres = |name| Length::mm(1000.0 * number(row, name));
            let deg = |name| Angle::deg(number(row, name));
            let side = if number(row, "side") > 0.0 { Side::Port } else { Side::Starboard };
            let levers = Levers { hand: metres("rh"), blade: metres("rb") };
            let (spread, ahead) = (metres("p"), metres("X"));
            let (theta, pitch, dip) = (deg("th"), deg("phi"), deg("de"));
            let oar = WorkingOar { side, spread, ahead, levers, theta, pitch, dip };
            (oar, number(row, "Fh"))
        })
        .collect();
    let yaw: f64 = oars.iter().map(|(oar, pull)| sides::yaw_moment(oar, *pull)).sum();
    let bare: Vec<WorkingOar> = oars.iter().map(|(oar, _)| *oar).collect();
    // All pull alike in the table, so the index for one newton serves them all.
    let pull = oars[0].1;
    assert!(oars.iter().all(|(_, other)| (other - pull).abs() < 1e-12), "{}", case.id);
    let tipped = sides::tip_index(&bare).expect("sound oars") * pull;
    vec![
        ("yaw_moment_Nm", yaw),
        ("lift_roll_moment_Nm", tipped),
        ("yaw_index", sides::yaw_index(&bare).expect("sound oars")),
    ]
}

pub(super) fn blade_force(case: &Case) -> Found {
    let levers = Levers {
        hand: Length::mm(1000.0 * case.number("hand_lever_m")),
        blade: Length::mm(1000.0 * case.number("blade_lever_m")),
    };
    let pitch = case.deg("pitch_deg");
    let pull = case.number("handle_force_N");
    let force = blade_force::blade_force(pull, levers, pitch, Angle::deg(0.0));
    vec![
        ("horizontal_N", force.horizontal),
        ("lift_N", force.lift),
        ("normal_N", force.normal),
        ("cos3", blade_force::part_left_at_same_speed(pitch)),
    ]
}
