//! A handle that ends in the wrong place before the rower.

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
use crate::working::SeatSight;
use crate::working::Unit;

pub(super) static RULE: Rule = Rule {
    id: "handle-past-mark-wrong",
    level: Level::Fault,
    checks: "The handle passes the seat mark by more or less than the limits, corrected for the boat's roll.",
    reason: "The hands finish against the ribs when the handle passes too little, and beside the body when it passes too much: neither is a pull.",
    remedy: "Slide the collar: towards the blade when the handle falls short, towards the handle when it passes too far; all four alike.",
    formula: "true = handle past mark, on port plus and on starboard less (rowlock above seat + (inboard of the oar + collar to pin) x sin(dip of the oar)) x tan(roll of the boat)",
    default: "305 to 335 mm",
    sources: &[
        sources::PRACTICE.at("320 within 15 mm"),
        sources::GEOMETRY.at("a bob in a rolled boat hangs to the low side"),
    ],
    example: Example {
        wrong: &[
            (
                "boats/kittiwake.yaml",
                "seat: 1",
                "handle-past-mark: 321",
                "handle-past-mark: 345  # <--",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 2",
                "handle-past-mark: 321",
                "handle-past-mark: 290  # <--",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 3",
                "handle-past-mark: 321",
                "handle-past-mark: -20  # <--",
            ),
        ],
        right: &[
            ("boats/kittiwake.yaml", "seat: 1", "seat-mark: 61", "seat-mark: 50"),
            ("boats/kittiwake.yaml", "seat: 1", "handle-past-mark: 321", "handle-past-mark: 334"),
            (
                "boats/kittiwake.yaml",
                "seat: 1",
                "handle-past-mark: 320.5",
                "handle-past-mark: 331.5",
            ),
        ],
    },
    looks: Looks::AtEachSeat(check),
};

fn check(seat: &SeatSight) -> Vec<Outcome> {
    let name = seat.name().at("handle-past-mark");
    let range = Range::in_force(seat.at.in_force, LimitKey::Handle, Unit::Mm);
    let reading = seat.seat.handle_past_mark.as_ref();
    let place = reading.map_or(seat.seat.place, |reading| reading.place);
    Range::finding(range.as_ref(), &RULE, &name, &seat.handle_read(), |handle, judged, range| {
        Finding::new(&RULE, name.clone(), place, "this handle")
            .saying(format!(
                "{}: the handle passes the seat mark by {}: {}",
                seat.called(),
                words::measured(handle, Unit::Mm),
                range.beyond(judged),
            ))
            .remedy(remedy(handle.value(), range.aim().unwrap_or_default()))
    })
}

fn remedy(handle: f64, aim: f64) -> String {
    let way = if handle < aim { "towards the blade" } else { "towards the handle" };
    format!(
        "Slide the collar {way} by {}, to pass the mark by {}: all four alike. Then check the gearing and the spread of all four.",
        words::number((aim - handle).abs(), "mm"),
        words::limit(aim, "mm"),
    )
}
