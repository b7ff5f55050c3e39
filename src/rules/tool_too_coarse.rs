//! A tool too coarse for the limit that its readings are judged by.

use super::alike;
use super::alike::Candidate;
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
use crate::working::Apart;
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
    values: fn(&BoatSight) -> Vec<Candidate>,
}

const fn judged(
    key: LimitKey,
    unit: Unit,
    what: &'static str,
    values: fn(&BoatSight) -> Vec<Candidate>,
) -> Judged {
    Judged { key, unit, what, values }
}

const JUDGED: [Judged; 15] = [
    judged(LimitKey::Level, Unit::Deg, "trim", |boat| whole(boat, boat.trim())),
    judged(LimitKey::Level, Unit::Deg, "roll", |boat| whole(boat, boat.roll())),
    judged(LimitKey::PinAft, Unit::Deg, "lean of the pin aft", |boat| {
        each(boat, |seat| seat.lean_aft())
    }),
    judged(LimitKey::PinOut, Unit::Deg, "lean of the pin out", |boat| {
        each(boat, |seat| seat.lean_out())
    }),
    judged(LimitKey::Arc, Unit::Deg, "pitch from catch to finish", |boat| each(boat, arc)),
    judged(LimitKey::Pitch, Unit::Deg, "pitch square off", |boat| each(boat, square_off)),
    judged(LimitKey::PitchMatch, Unit::Deg, "pitch from blade to blade", |boat| {
        between(boat, each(boat, square_off), false)
    }),
    judged(LimitKey::Sides, Unit::Deg, "pitch from side to side", |boat| {
        whole(boat, boat.side_difference())
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
    judged(LimitKey::Chock, Unit::Mm, "back chock to pin", chock_distance::off_aim),
    judged(LimitKey::Chocks, Unit::Mm, "back chocks from seat to seat", |boat| {
        between(boat, boat.seats().map(chocks_unlike::chock_of).collect(), false)
    }),
    judged(LimitKey::Gearing, Unit::Percent, "gearing from seat to seat", |boat| {
        between(boat, boat.seats().map(gearing_unlike::gearing_of).collect(), true)
    }),
];

fn check(boat: &BoatSight) -> Vec<Outcome> {
    JUDGED.iter().filter_map(|judged| one(boat, judged)).collect()
}

fn one(boat: &BoatSight, judged: &Judged) -> Option<Outcome> {
    let range = match judged.key {
        LimitKey::Chock => chock_distance::either_way(boat)?,
        key => Range::in_force(boat.in_force, key, judged.unit)?,
    };
    // What could not be worked out is counted where it is judged.
    let (members, _) = alike::gather(&RULE, (judged.values)(boat).into_iter());
    let coarser = |one: &Budget, other: &Budget| one.expanded() > other.expanded();
    let worst =
        members.iter().reduce(
            |worst, member| {
                if coarser(&member.value, &worst.value) { member } else { worst }
            },
        )?;
    let again = range.too_coarse(&worst.value)?;
    let good_to = words::number(worst.value.expanded(), judged.unit.word());
    let text = format!("good to ± {good_to}");
    let finding = Finding::new(&RULE, boat.boat.record(), worst.place, text)
        .saying(format!(
            "{}, {}: {} is good to ± {good_to} only; that is too coarse for the limit ({}), whatever is read",
            boat.boat.called(),
            worst.called,
            judged.what,
            range.words(),
        ))
        .remedy(again)
        .judged(words::figure(&worst.value, judged.unit), Some(range.shown_whole()));
    Some(finding.found())
}

fn square_off(seat: &SeatSight) -> Worked {
    if seat.hands_set_pitch() { Err(unset()) } else { seat.pitch(Attitude::Square) }
}

fn unset() -> crate::working::Lack {
    crate::working::Lack::Impossible("the hands set this blade")
}

/// Returns the greatest pitch of one blade less the least, catch to finish.
fn arc(seat: &SeatSight) -> Worked {
    if seat.hands_set_pitch() {
        return Err(unset());
    }
    let [catch, square, finish] = Attitude::ALL.map(|attitude| seat.pitch(attitude));
    let mut pitches = [catch?, square?, finish?];
    pitches.sort_by(|one, other| one.value().total_cmp(&other.value()));
    Ok(pitches[2].minus(&pitches[0]))
}

/// Returns one value of the boat as a whole.
fn whole(boat: &BoatSight, value: Worked) -> Vec<Candidate> {
    let place = boat.boat.rigged.date.map_or(boat.boat.rigged.place, |date| date.place);
    let called = "the whole boat".to_owned();
    let place = value.as_ref().ok().and_then(|value| read_at(boat, value)).unwrap_or(place);
    vec![Candidate { name: boat.boat.record(), called, place, value }]
}

/// Returns one value of each seat.
fn each(boat: &BoatSight, value: fn(&SeatSight) -> Worked) -> Vec<Candidate> {
    let candidate = |seat: SeatSight| {
        let value = value(&seat);
        let read = value.as_ref().ok().and_then(|value| read_at(boat, value));
        let place = read.unwrap_or(seat.seat.place);
        Candidate { name: seat.name(), called: seat.short(), place, value }
    };
    boat.seats().map(candidate).collect()
}

/// Returns where the reading was written, in the boat's own file, that makes a value coarsest.
fn read_at(boat: &BoatSight, value: &Budget) -> Option<crate::model::Place> {
    let mut places = value.shares().into_iter().map(|(input, _)| input.place);
    places.find(|place| place.file == boat.boat.file)
}

/// Returns how far apart the seats are, as one value.
fn between(boat: &BoatSight, seats: Vec<Candidate>, percent: bool) -> Vec<Candidate> {
    let (members, _) = alike::gather(&RULE, seats.into_iter());
    let apart = Apart::of(&members);
    let one = apart.and_then(|apart| {
        let by = if percent { apart.percent(&members)? } else { apart.by.clone() };
        let (name, place) = (boat.boat.record(), apart.odd.place);
        Some(Candidate { name, called: apart.odd.called.clone(), place, value: Ok(by) })
    });
    one.into_iter().collect()
}
