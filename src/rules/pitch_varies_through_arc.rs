//! A blade whose pitch changes from catch to finish.

use super::apart;
use super::apart::Apart;
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
use crate::metrology::decision::disagrees;
use crate::model::LimitKey;
use crate::model::Part;
use crate::working::Attitude;
use crate::working::Budget;
use crate::working::SeatSight;
use crate::working::Unit;
use crate::working::is_told;

pub(super) static RULE: Rule = Rule {
    id: "pitch-varies-through-arc",
    level: Level::Fault,
    checks: "The pitch of one blade differs between catch, square off and finish by more than the limit, corrected for the boat's level.",
    reason: "Over an upright pin the blade keeps its pitch through the arc. Where it changes, the blade dives at one end of the stroke and washes out at the other.",
    remedy: "Plumb the pin before bending anything. Catch above finish: its head inboard. Catch below finish: outboard. Both ends below square off: to the bow; above: to the stern.",
    formula: "highest less lowest of the three pitches; pitch = asin(offset / width at the mark), less what trim and roll add",
    default: "at most 0.6 deg",
    sources: &[
        sources::GEOMETRY
            .at("a leaning pin adds lean aft x cos(oar angle) + lean out x sin(oar angle)"),
        sources::PRACTICE.at("0.6 deg"),
    ],
    example: Example {
        wrong: &[
            (
                "boats/kittiwake.yaml",
                "seat: 1",
                "pitch: {catch: 11, square: 11, finish: 11}",
                "pitch: {catch: 15, square: 11, finish: 8}  # <--",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 2",
                "pitch: {catch: 11, square: 11, finish: 11}",
                "pitch: {catch: 7, square: 11, finish: 14}  # <--",
            ),
        ],
        right: &[
            ("boats/kittiwake.yaml", "seat: 1", "out: -0.5", "out: 0.5"),
            (
                "boats/kittiwake.yaml",
                "seat: 1",
                "pitch: {catch: 11, square: 11, finish: 11}",
                "pitch: {catch: 12, square: 11, finish: 11}",
            ),
            ("boats/kittiwake.yaml", "seat: 1", "lean-out: -0.09 deg", "lean-out: 0.29 deg"),
        ],
    },
    looks: Looks::AtEachSeat(check),
};

fn check(seat: &SeatSight) -> Vec<Outcome> {
    if seat.hands_set_pitch() {
        return Vec::new();
    }
    let name = seat.name().at("pitch");
    let range = Range::in_force(seat.at.in_force, LimitKey::Arc, Unit::Deg);
    let pitches = Attitude::ALL.into_iter().map(|attitude| (attitude, seat.pitch(attitude)));
    apart::judge(range.as_ref(), &RULE, &name, pitches, |pitches, difference, judged, range| {
        labelled(seat, pitches)
            .saying(format!(
                "{}: from catch to finish the pitch of the blade varies by {} ({}): {}. {}",
                seat.called(),
                words::measured(difference, Unit::Deg),
                listed(pitches),
                range.beyond(judged),
                implied(seat),
            ))
            .remedy(remedy(pitches))
    })
}

/// A finding that points at the odd one of the readings first, then at the others.
fn labelled(seat: &SeatSight, pitches: &Apart<Attitude>) -> Finding {
    let place = |attitude| {
        let reading = seat.pitch_reading(attitude);
        reading.map_or(seat.seat.place, |reading| reading.place)
    };
    let odd = pitches.odd_one();
    let others = pitches.all.iter().filter(|(attitude, _)| *attitude != odd.0);
    let first = Finding::new(&RULE, seat.name().at("pitch"), place(odd.0), one_pitch(odd));
    others.fold(first, |finding, one| finding.also(place(one.0), one_pitch(one)))
}

fn one_pitch((attitude, pitch): &(Attitude, Budget)) -> String {
    format!("{} {}", words::number(pitch.value(), "deg"), attitude.words())
}

fn listed(pitches: &Apart<Attitude>) -> String {
    let all: Vec<String> = pitches.all.iter().map(one_pitch).collect();
    format!("{}, each good to ± {}", all.join(", "), words::number(pitches.good_to(), "deg"))
}

/// What the blade says of the pin, and what it can't say.
fn implied(seat: &SeatSight) -> String {
    let Ok(lean) = seat.arc_lean() else {
        return "These readings alone don't tell where the pin leans".to_owned();
    };
    let ways = [(Leaning::Aft, &lean.aft), (Leaning::Out, &lean.out)];
    let said = ways.map(|(way, lean)| {
        let degrees = words::number(lean.value().abs(), "deg");
        let good = words::number(lean.expanded(), "deg");
        format!("{degrees} {}, good to ± {good}", way.towards(lean.value()))
    });
    let limit = |way: Leaning| {
        let limit = seat.at.in_force.limit(way.limit(), Part::Most);
        limit.map(|limit| limit.value)
    };
    let untold: Vec<&str> = ways
        .iter()
        .filter(|(way, lean)| !is_told(lean, limit(*way)))
        .map(|(way, _)| way.axis())
        .collect();
    let untold = match untold.as_slice() {
        [] => String::new(),
        axes => format!("; these readings can't tell the lean {}", axes.join(" or ")),
    };
    format!("The blade would have the pin lean {}{untold}", said.join(", and "))
}

fn remedy(pitches: &Apart<Attitude>) -> String {
    format!(
        "Plumb the pin before bending it: a blade alone can't tell how a pin stands.{} Then set the pitch again.",
        plainly(pitches)
    )
}

/// What the readings say in plain words, as far as they are sure.
fn plainly(pitches: &Apart<Attitude>) -> String {
    let at = |attitude| {
        let found = pitches.all.iter().find(|(own, _)| *own == attitude);
        found.map(|(_, pitch)| pitch)
    };
    let surely = |one: Option<&Budget>, other: Option<&Budget>| {
        let difference = one?.minus(other?);
        disagrees(difference.value(), difference.expanded()).then_some(difference.value() > 0.0)
    };
    let [catch, square, finish] = Attitude::ALL.map(at);
    let across = match surely(catch, finish) {
        Some(true) => " If the bob agrees, its head goes inboard: the catch is above the finish.",
        Some(false) => " If the bob agrees, its head goes outboard: the catch is below the finish.",
        None => "",
    };
    let along = match (surely(square, catch), surely(square, finish)) {
        (Some(true), Some(true)) => {
            " If the bob agrees, its head goes to the bow: both ends are below square off."
        }
        (Some(false), Some(false)) => {
            " If the bob agrees, its head goes to the stern: both ends are above square off."
        }
        _ => "",
    };
    format!("{across}{along}")
}
