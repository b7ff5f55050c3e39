//! A pin that leans.

use super::finding::Finding;
use super::finding::Outcome;
use super::judging::Range;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::words;
use crate::model::LimitKey;
use crate::model::Reading;
use crate::units::Slope;
use crate::working::SeatSight;
use crate::working::Unit;
use crate::working::Worked;

pub(super) static RULE: Rule = Rule {
    id: "pin-not-vertical",
    level: Level::Fault,
    checks: "A pin leans fore and aft or outboard and inboard by more than the limit, plumbed and corrected for the boat's level.",
    reason: "The oar turns about the pin. A leaning pin tilts that turn: the blade's pitch changes \
             from catch to finish, and the shaft binds on one horn.",
    remedy: "Level the boat, plumb the pin both ways, and pack its plate or bend the pin at its foot until it stands straight; set the pitch again afterwards.",
    formula: "lean = atan(offset / pin gauge), less trim aft; plus roll outboard on starboard, less roll on port",
    default: "1 deg either way",
    sources: &[
        sources::LEHMANN.at("ch. IV, pins stand straight, never outward"),
        sources::CLUB.at(""),
    ],
    example: Example {
        wrong: &[
            (
                "boats/kittiwake.yaml",
                "seat: 1",
                "lean: {aft: 0.5, out: -0.5}",
                "lean: {aft: 6, out: -0.5}  # <--",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 2",
                "lean: {aft: 0.5, out: -0.5}",
                "lean: {aft: 0.5, out: -6}  # <--",
            ),
        ],
        right: &[
            (
                "boats/kittiwake.yaml",
                "seat: 1",
                "lean: {aft: 0.5, out: -0.5}",
                "lean: {aft: 0.6, out: -0.6}",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 1",
                "lean-aft: 0.19 deg, lean-out: -0.09 deg",
                "lean-aft: 0.23 deg, lean-out: -0.13 deg",
            ),
        ],
    },
    looks: Looks::AtEachSeat(check),
};

fn check(seat: &SeatSight) -> Vec<Outcome> {
    let lean = &seat.seat.pin.lean;
    let aft = one_way(seat, "aft", lean.aft.as_ref(), LimitKey::PinAft, &seat.lean_aft());
    let out = one_way(seat, "out", lean.out.as_ref(), LimitKey::PinOut, &seat.lean_out());
    aft.into_iter().chain(out).collect()
}

fn one_way(
    seat: &SeatSight,
    way: &'static str,
    reading: Option<&Reading<Slope>>,
    key: LimitKey,
    lean: &Worked,
) -> Vec<Outcome> {
    let name = seat.name().at(format_args!("pin/lean/{way}"));
    let range = Range::in_force(seat.at.in_force, key, Unit::Deg);
    let place = reading.map_or(seat.seat.place, |reading| reading.place);
    Range::finding(range.as_ref(), &RULE, &name, lean, |lean, judged, range| {
        let towards = towards(way, lean.value());
        let degrees = words::number(lean.value().abs(), "deg");
        let good = words::number(lean.expanded(), "deg");
        Finding::new(&RULE, name.clone(), place, format!("{degrees} {towards}"))
            .saying(format!(
                "{}: the pin leans {degrees} {towards}, good to ± {good}: over by {} ({})",
                seat.called(),
                words::number(judged.by, "deg"),
                range.words(judged.bound),
            ))
            .remedy(remedy(towards, lean.value()))
    })
}

fn towards(way: &str, lean: f64) -> &'static str {
    match (way, lean > 0.0) {
        ("aft", true) => "to the stern",
        ("aft", false) => "to the bow",
        (_, true) => "outboard",
        (_, false) => "inboard",
    }
}

fn remedy(towards: &str, lean: f64) -> String {
    let back = match towards {
        "to the stern" => ("stern", "to the bow"),
        "to the bow" => ("bow", "to the stern"),
        "outboard" => ("outboard", "inboard"),
        _ => ("inboard", "outboard"),
    };
    let degrees = words::number(lean.abs(), "deg");
    format!(
        "Pack under the {} edge of the plate, or bring the pin's head {} by {degrees}; then set the pitch again.",
        back.0, back.1
    )
}
