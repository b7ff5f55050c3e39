//! A pin that leans.

use super::finding::Finding;
use super::finding::Outcome;
use super::judging::Range;
use super::leaning::Leaning;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::words;
use crate::geometry::correction::packing_thickness;
use crate::model::Reading;
use crate::units::Angle;
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
    formula: "fore and aft, lean = atan(lean aft / pin gauge) - trim of the boat; in and out, lean = atan(lean out / pin gauge), on starboard plus and on port less the roll of the boat",
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
                "lean: {aft: 2, out: -0.6}",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 1",
                "lean-aft: 0.19 deg, lean-out: -0.09 deg",
                "lean-aft: 0.76 deg, lean-out: -0.13 deg",
            ),
        ],
    },
    looks: Looks::AtEachSeat(check),
};

fn check(seat: &SeatSight) -> Vec<Outcome> {
    let lean = &seat.seat.pin.lean;
    let aft = one_way(seat, Leaning::Aft, lean.aft.as_ref(), &seat.lean_aft());
    let out = one_way(seat, Leaning::Out, lean.out.as_ref(), &seat.lean_out());
    aft.into_iter().chain(out).collect()
}

fn one_way(
    seat: &SeatSight,
    way: Leaning,
    reading: Option<&Reading<Slope>>,
    lean: &Worked,
) -> Vec<Outcome> {
    let name = seat.name().at(format_args!("pin/lean/{}", way.key()));
    let range = Range::in_force(seat.at.in_force, way.limit(), Unit::Deg);
    let place = reading.map_or(seat.seat.place, |reading| reading.place);
    Range::finding(range.as_ref(), &RULE, &name, lean, |lean, judged, range| {
        let towards = way.towards(lean.value());
        let degrees = words::number(lean.value().abs(), "deg");
        let good = words::number(lean.expanded(), "deg");
        Finding::new(&RULE, name.clone(), place, format!("{degrees} {towards}"))
            .saying(format!(
                "{}: the pin leans {degrees} {towards}, good to ± {good}: {}",
                seat.called(),
                range.beyond(judged),
            ))
            .remedy(remedy(seat, way, lean.value()))
    })
}

fn remedy(seat: &SeatSight, way: Leaning, lean: f64) -> String {
    let plate = match way {
        Leaning::Aft => seat.seat.pin.plate.along.as_ref(),
        Leaning::Out => seat.seat.pin.plate.across.as_ref(),
    };
    let pack = plate.and_then(|plate| plate.values.first()).map_or(String::new(), |plate| {
        let packing = packing_thickness(*plate, Angle::deg(lean.abs()));
        format!("{} ", words::number(packing.as_mm(), "mm"))
    });
    format!(
        "Pack {pack}under the {} edge of the plate, or bring the pin's head {} by {}, until the bob shows it upright; then set the pitch again.",
        way.edge(lean),
        way.towards(-lean),
        words::number(lean.abs(), "deg"),
    )
}
