//! A tool too coarse for the limit that its readings are judged by.

use super::apart;
use super::apart::Measure;
use super::blades;
use super::chock_distance;
use super::chocks_unlike;
use super::finding::Finding;
use super::finding::Outcome;
use super::gearing_unlike;
use super::judging::Range;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::words;
use crate::model::LimitKey;
use crate::model::Place;
use crate::working::Attitude;
use crate::working::BoatSight;
use crate::working::Budget;
use crate::working::SeatSight;
use crate::working::Unit;
use crate::working::Worked;

pub(super) static RULE: Rule = Rule {
    id: "tool-too-coarse",
    level: Level::Note,
    checks: "What is judged by a limit is read so coarsely that it is good to more than the whole of a one-sided limit, or more than half the band between two: whatever is read, little can be said.",
    reason: "Measuring with such a tool is work for nothing: neither a good boat nor a bad one can be \
             told from it.",
    remedy: "Read it with a finer tool or over a longer gauge, or ask the club for a limit that can be measured.",
    formula: "± of the value > the limit, or > (most - least) / 2",
    default: "-",
    sources: &[
        sources::GUM.at("5.1.2, combined uncertainty; U = 2 u"),
        sources::GEOMETRY.at("no band narrower than the reading can be kept"),
    ],
    example: Example {
        wrong: &[(
            "boats/kittiwake.yaml",
            "seat: 3",
            "handle-past-mark: 321",
            "handle-past-mark: {read: 321, to: 15}  # <--",
        )],
        right: &[(
            "boats/kittiwake.yaml",
            "seat: 3",
            "handle-past-mark: 321",
            "handle-past-mark: {read: 321, to: 12}",
        )],
    },
    looks: Looks::AtEachBoat(check),
};

/// One limit and every value of a boat that is judged by it.
struct Judged {
    key: LimitKey,
    unit: Unit,
    what: &'static str,
    values: for<'b> fn(&BoatSight<'b>) -> Vec<Value<'b>>,
}

/// A value that could be worked out, at the seat it belongs to; a value of the boat has none.
type Value<'b> = (Option<SeatSight<'b>>, Budget);

const fn judged(
    key: LimitKey,
    unit: Unit,
    what: &'static str,
    values: for<'b> fn(&BoatSight<'b>) -> Vec<Value<'b>>,
) -> Judged {
    Judged { key, unit, what, values }
}

const JUDGED: [Judged; 15] = [
    judged(LimitKey::Level, Unit::Deg, "trim", |boat| whole(boat.trim())),
    judged(LimitKey::Level, Unit::Deg, "roll", |boat| whole(boat.roll())),
    judged(LimitKey::PinAft, Unit::Deg, "lean of the pin aft", |boat| {
        each(boat, |seat| seat.lean_aft())
    }),
    judged(LimitKey::PinOut, Unit::Deg, "lean of the pin out", |boat| {
        each(boat, |seat| seat.lean_out())
    }),
    judged(LimitKey::Arc, Unit::Deg, "pitch from catch to finish", arcs),
    judged(LimitKey::Pitch, Unit::Deg, "pitch square off", |boat| {
        there(set_by_rowlock(boat).map(|seat| (seat, seat.pitch(Attitude::Square))))
    }),
    judged(LimitKey::PitchMatch, Unit::Deg, "pitch from blade to blade", |boat| {
        furthest(Measure::Own, blades::square_off(boat))
    }),
    judged(LimitKey::Sides, Unit::Deg, "pitch from side to side", |boat| {
        whole(boat.side_difference())
    }),
    judged(LimitKey::Clearance, Unit::Mm, "gap less the widest section", |boat| {
        each(boat, |seat| seat.clearance())
    }),
    judged(LimitKey::Loose, Unit::Mm, "gap less the narrowest section", |boat| {
        each(boat, |seat| seat.looseness())
    }),
    judged(LimitKey::Bed, Unit::None, "depth in the bed", |boat| {
        each(boat, |seat| seat.bed_fraction())
    }),
    judged(LimitKey::Handle, Unit::Mm, "handle past mark", |boat| {
        each(boat, |seat| seat.handle_read())
    }),
    judged(LimitKey::Chock, Unit::Mm, "back chock to pin", |boat| {
        there(chock_distance::off_aim(boat).into_iter())
    }),
    judged(LimitKey::Chocks, Unit::Mm, "back chocks from seat to seat", |boat| {
        furthest(Measure::Own, chocks_unlike::chocks(boat))
    }),
    judged(LimitKey::Gearing, Unit::Percent, "gearing from seat to seat", |boat| {
        furthest(Measure::Percent, gearing_unlike::gearings(boat))
    }),
];

fn check(boat: &BoatSight) -> Vec<Outcome> {
    JUDGED.iter().filter_map(|judged| one(boat, judged)).flatten().collect()
}

fn one(boat: &BoatSight, judged: &Judged) -> Option<[Outcome; 2]> {
    let range = match judged.key {
        LimitKey::Chock => chock_distance::either_way(boat)?,
        key => Range::in_force(boat.in_force, key, judged.unit)?,
    };
    let values = (judged.values)(boat);
    let (seat, worst) = values
        .iter()
        .reduce(|worst, one| if one.1.expanded() > worst.1.expanded() { one } else { worst })?;
    let again = range.too_coarse(worst)?;
    let good_to = words::number(worst.expanded(), judged.unit.word());
    let called = seat.as_ref().map_or_else(|| boat.boat.called().to_owned(), SeatSight::called);
    let place = read_at(boat, worst);
    let place = place.or_else(|| seat.as_ref().map(|seat| seat.seat.place));
    let place = place.unwrap_or(boat.boat.id.place);
    let text = format!("good to ± {good_to}");
    let finding = Finding::new(&RULE, boat.boat.record(), place, text)
        .saying(format!(
            "{called}: {} is good to ± {good_to} only; that is too coarse for the limit ({}), whatever is read",
            judged.what,
            range.words(),
        ))
        .remedy(again)
        .judged(words::figure(worst, judged.unit), Some(range.shown_whole()));
    Some([finding.found(), range.coarse_sum(&RULE, &boat.boat.record(), worst)])
}

/// Returns where the reading was written, in the boat's own file, that makes a value coarsest.
fn read_at(boat: &BoatSight, value: &Budget) -> Option<Place> {
    let mut places = value.shares().into_iter().map(|(input, _)| input.place);
    places.find(|place| place.file == boat.boat.file)
}

/// What could not be worked out is counted where it is judged.
fn there<'b>(values: impl Iterator<Item = (SeatSight<'b>, Worked)>) -> Vec<Value<'b>> {
    values.filter_map(|(seat, value)| Some((Some(seat), value.ok()?))).collect()
}

fn whole<'b>(value: Worked) -> Vec<Value<'b>> {
    value.ok().map(|value| (None, value)).into_iter().collect()
}

fn each<'b>(boat: &BoatSight<'b>, value: fn(&SeatSight) -> Worked) -> Vec<Value<'b>> {
    there(boat.seats().map(|seat| (seat, value(&seat))))
}

fn furthest<'b>(
    measure: Measure,
    values: impl Iterator<Item = (SeatSight<'b>, Worked)>,
) -> Vec<Value<'b>> {
    let furthest = apart::odd_one_and_difference(measure, values);
    furthest.map(|(seat, by)| (Some(seat), by)).into_iter().collect()
}

fn set_by_rowlock<'b>(boat: &BoatSight<'b>) -> impl Iterator<Item = SeatSight<'b>> + use<'b> {
    boat.seats().filter(|seat| !seat.hands_set_pitch())
}

/// Returns how far the pitches of each blade are apart, catch to finish.
fn arcs<'b>(boat: &BoatSight<'b>) -> Vec<Value<'b>> {
    let arc = |seat: SeatSight<'b>| {
        let pitches = Attitude::ALL.into_iter().map(|attitude| (seat, seat.pitch(attitude)));
        apart::odd_one_and_difference(Measure::Own, pitches)
    };
    set_by_rowlock(boat).filter_map(arc).map(|(seat, by)| (Some(seat), by)).collect()
}
