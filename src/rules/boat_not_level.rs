//! A boat that was measured out of level.

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
use crate::units::Angle;
use crate::working::BoatSight;
use crate::working::Unit;
use crate::working::Worked;

pub(super) static RULE: Rule = Rule {
    id: "boat-not-level",
    level: Level::Fault,
    checks: "The boat lay out of level on the rigging day by more than the limit, fore and aft or across.",
    reason: "Pins and blades are measured against a plumb line. Leans and pitches are corrected for the level, but an oar, a bob or a person leaning on a tilted boat is not.",
    remedy: "Chock the boat until the level reads true at its mark, fore and aft and across, then measure again.",
    formula: "trim and roll, as read on the level",
    default: "1 deg either way",
    sources: &[sources::CLUB.at("1 deg")],
    example: Example {
        wrong: &[(
            "boats/kittiwake.yaml",
            "",
            "level: {trim: 0.0, roll: 0.1}",
            "level:\n    trim: 1.5  # <--\n    roll: -1.5  # <--",
        )],
        right: &[(
            "boats/kittiwake.yaml",
            "",
            "spares: [A5]",
            "spares: [A5]\nlimits: {level: {least: -0.25 deg, most: 0.25 deg, source: committee minute 2026-08}}",
        )],
    },
    looks: Looks::AtEachBoat(check),
};

fn check(boat: &BoatSight) -> Vec<Outcome> {
    let rigged = &boat.boat.rigged;
    let trim = one_way(boat, "trim", rigged.trim.as_ref(), &boat.trim(), ["bow", "stern"]);
    let sides = ["port side", "starboard side"];
    let roll = one_way(boat, "roll", rigged.roll.as_ref(), &boat.roll(), sides);
    trim.into_iter().chain(roll).collect()
}

/// Judges one axis. `ends` are the ends told of: trim's positive end is up, roll's is down.
fn one_way(
    boat: &BoatSight,
    axis: &'static str,
    reading: Option<&Reading<Angle>>,
    angle: &Worked,
    ends: [&'static str; 2],
) -> Vec<Outcome> {
    let name = boat.boat.record().at(format_args!("rigged/level/{axis}"));
    let range = Range::in_force(boat.in_force, LimitKey::Level, Unit::Deg);
    let place = reading.map_or(boat.boat.rigged.place, |reading| reading.place);
    Range::finding(range.as_ref(), &RULE, &name, angle, |angle, judged, range| {
        let end = if angle.value() > 0.0 { ends[0] } else { ends[1] };
        let way = if axis == "trim" { "up" } else { "down" };
        let degrees = words::number(angle.value().abs(), "deg");
        let good = words::number(angle.expanded(), "deg");
        let finding = Finding::new(&RULE, name.clone(), place, format!("{end} {way} by {degrees}"))
            .saying(format!(
                "{}: the boat lay {end} {way} by {degrees}, good to ± {good}: {}",
                boat.boat.called(),
                range.beyond(judged),
            ))
            .remedy(remedy(axis, end, &degrees));
        match &boat.boat.rigged.level_accepted {
            Some(why) => finding.also(why.place, "measured all the same"),
            None => finding,
        }
    })
}

fn remedy(axis: &str, end: &str, degrees: &str) -> String {
    let chock = if axis == "trim" { "Let the" } else { "Raise the" };
    let verb = if axis == "trim" { " down" } else { "" };
    format!(
        "{chock} {end}{verb} by {degrees}: chock her until the level reads true at its mark, then measure leans, pitches and handles again."
    )
}
