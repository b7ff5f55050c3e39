//! A shaft between the horns and in its bed.

use crate::Found;
use crate::case::Case;
use tholebook::geometry::bedding;
use tholebook::geometry::bedding::ThirdOf;
use tholebook::geometry::clearance;
use tholebook::units::Angle;
use tholebook::units::Length;

pub(super) fn gap_tilt(case: &Case) -> Found {
    let (shaft, wall, tilt) = (case.mm("shaft_mm"), case.mm("wall_mm"), case.deg("tilt_deg"));
    vec![("gap_needed_mm", clearance::gap_for_tilt(shaft, wall, tilt).as_mm())]
}

pub(super) fn roll_tilt(case: &Case) -> Found {
    let (roll, theta) = (case.deg("roll_outboard_down_deg"), case.deg("oar_angle_deg"));
    let tilt = clearance::mouth_tilt(roll, theta, case.deg("dip_deg"));
    let gap = clearance::gap_for_tilt(Length::mm(50.0), Length::mm(10.0), tilt);
    vec![("mouth_tilt_deg", tilt.as_deg()), ("gap_needed_D50_wall10_mm", gap.as_mm())]
}

pub(super) fn gap_round_tips(case: &Case) -> Found {
    let (shaft, tip) = (case.mm("shaft_mm"), case.mm("tip_radius_mm"));
    let gap = clearance::gap_for_tilt_round_tips(shaft, tip, case.deg("tilt_deg"));
    vec![("gap_needed_mm", gap.as_mm())]
}

/// The table says its sections in words, numbers in order.
pub(super) fn section_width(case: &Case) -> Found {
    let section = case.text("section");
    let numbers: Vec<f64> = section
        .split(|c: char| !c.is_ascii_digit() && c != '.')
        .filter_map(|word| word.parse().ok())
        .collect();
    let [first, second, turned] = numbers[..] else { panic!("{}: {section}", case.id) };
    let (first, second, turned) = (Length::mm(first), Length::mm(second), Angle::deg(turned));
    let width = if section.starts_with("ellipse") {
        clearance::ellipse_width(first, second, turned)
    } else if section.contains("two flats") {
        clearance::two_flats_width(first, second, turned)
    } else {
        panic!("{}: nothing here checks {section}", case.id)
    };
    vec![("width_mm", width.as_mm())]
}

pub(super) fn seating(case: &Case) -> Found {
    let third = match case.text("third_of") {
        "depth" => ThirdOf::Depth,
        "circumference" => ThirdOf::Circumference,
        "area" => ThirdOf::Area,
        other => panic!("{}: a third of {other}", case.id),
    };
    let shaft = case.mm("shaft_mm");
    let depth = Length::mm(shaft.as_mm() * third.depth_fraction());
    let chord = bedding::chord_from_depth(shaft, depth).expect("inside the shaft");
    let arc = bedding::contact_arc(shaft, depth).expect("inside the shaft");
    let back = bedding::depth_from_chord(shaft, chord).expect("inside the shaft");
    vec![("depth_mm", back.as_mm()), ("chord_mm", chord.as_mm()), ("arc_deg", arc.as_deg())]
}

pub(super) fn seat_rect(case: &Case) -> Found {
    let (shaft, width) = (case.mm("shaft_mm"), case.mm("width_mm"));
    let depth = bedding::seat_in_flat_u(shaft, width, case.mm("wall_mm"));
    vec![("depth_mm", depth.expect("a sound rowlock").as_mm())]
}

pub(super) fn seat_round(case: &Case) -> Found {
    let (shaft, radius) = (case.mm("shaft_mm"), case.mm("radius_mm"));
    let seat = bedding::seat_in_round_u(shaft, radius, case.mm("depth_mm"));
    let seat = seat.expect("a sound rowlock");
    vec![("seat_depth_mm", seat.depth.as_mm()), ("mouth_mm", seat.mouth.as_mm())]
}
