//! A pin plumbed, out of level, loose, packed and bent.

use crate::Found;
use crate::case::Case;
use tholebook::geometry::Side;
use tholebook::geometry::correction;
use tholebook::geometry::level;
use tholebook::geometry::reading;
use tholebook::units::Length;

pub(super) fn pin_direct(case: &Case) -> Found {
    let lean = |offset| {
        reading::lean_from_offset(Length::mm(offset), case.mm("height_mm")).expect("a sound gauge")
    };
    // The slope of an upright pin, over one rectangular millimetre.
    let slope = (lean(1e-3).as_deg() - lean(-1e-3).as_deg()) / 2e-3;
    vec![
        ("lean_deg", lean(case.number("offset_mm")).as_deg()),
        ("u_from_1mm_rect_deg", slope / 3_f64.sqrt()),
    ]
}

fn side_named(name: &str) -> Side {
    match name {
        "port" => Side::Port,
        "starboard" => Side::Starboard,
        other => panic!("no such side: {other}"),
    }
}

pub(super) fn attitude(case: &Case) -> Found {
    let (trim, roll) = (case.deg("bow_up_deg"), case.deg("port_down_deg"));
    let side = side_named(case.text("side"));
    let apparent = level::apparent_lean(case.lean(), trim, roll, side);
    // The program takes the angles off again; the table adds them on.
    let added = level::true_lean(case.lean(), -trim, -roll, side);
    vec![
        ("apparent_stern_deg", apparent.aft.as_deg()),
        ("apparent_outboard_deg", apparent.out.as_deg()),
        ("additive_stern_deg", added.aft.as_deg()),
        ("additive_outboard_deg", added.out.as_deg()),
    ]
}

pub(super) fn pin_play(case: &Case) -> Found {
    let play = case.mm("diametral_clearance_mm");
    let tilt = correction::pin_play_tilt(play, case.mm("bush_length_mm"));
    vec![("tilt_deg", tilt.expect("the bush has a length").as_deg())]
}

pub(super) fn packing(case: &Case) -> Found {
    let (base, lean) = (case.mm("base_mm"), case.deg("lean_deg"));
    vec![
        ("thickness_mm", correction::packing_thickness(base, lean).as_mm()),
        ("thickness_if_base_along_plate_mm", correction::packing_along_plate(base, lean).as_mm()),
    ]
}

pub(super) fn bend(case: &Case) -> Found {
    let moved = correction::tip_move(case.mm("height_mm"), case.deg("lean_deg"));
    vec![("tip_move_mm", moved.as_mm())]
}
