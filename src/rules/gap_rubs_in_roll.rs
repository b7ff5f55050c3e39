//! A shaft that rubs on a horn when it is lifted straight up in a roll.

use super::finding::Finding;
use super::finding::Outcome;
use super::judging::Judged;
use super::judging::Range;
use super::judging::not_checked;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::words;
use crate::model::LimitKey;
use crate::model::Part;
use crate::working::Attitude;
use crate::working::Budget;
use crate::working::Lack;
use crate::working::SeatSight;
use crate::working::Unit;

pub(super) static RULE: Rule = Rule {
    id: "gap-rubs-in-roll",
    level: Level::Note,
    checks: "In the roll of the limit the gap is too narrow for a straight lift at the catch, at the finish or with the oar along the boat.",
    reason: "In a roll the mouth of the rowlock is tilted to a straight lift. The shaft still comes out where it clears, but it slides up a horn on its way.",
    remedy: "Know it when lifting in surf: follow the mouth of the rowlock, not the plumb. A wider gap or a lower horn gives a straight lift.",
    formula: "what is left = gap between the horns - (widest part of the shaft / cos(tilt) + wall tan(tilt)); tilt about roll x sin(oar angle), wall = height of the horn - half the widest part",
    default: "roll of 15 deg",
    sources: &[
        sources::GEOMETRY.at("a shaft between two walls, tilted"),
        sources::CLUB.at("the roll"),
    ],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "seat: 1", "gap: 60", "gap: 60  # <--"),
            ("boats/kittiwake.yaml", "seat: 1", "horn: 46", "horn: 62"),
        ],
        right: &[("boats/kittiwake.yaml", "seat: 1", "horn: 46", "horn: 48")],
    },
    looks: Looks::AtEachSeat(check),
};

fn check(seat: &SeatSight) -> Vec<Outcome> {
    let Some(roll) = seat.at.in_force.limit(LimitKey::Roll, Part::Most) else { return Vec::new() };
    let name = seat.name().at("rowlock/gap");
    let left = match left_in_roll(seat) {
        Ok(left) => left,
        Err(lack) => return vec![not_checked(&RULE, &name, &lack)],
    };
    let by_value = |one: &&(String, Budget), other: &&(String, Budget)| {
        one.1.value().total_cmp(&other.1.value())
    };
    let Some((_, worst)) = left.iter().min_by(by_value) else { return Vec::new() };
    let source = format!("a roll of {}: {}", words::limit(roll.value, "deg"), roll.source);
    let range = Range::at_least_nought(seat.at.in_force, Unit::Mm, &source);
    let gap = seat.seat.rowlock.gap.as_ref();
    let place = gap.map_or(seat.seat.place, |gap| gap.place);
    Range::finding(Some(&range), &RULE, &name, &Ok(worst.clone()), |_, judged, _| {
        Finding::new(&RULE, name.clone(), place, "this gap").saying(format!(
            "{}: in a roll of {} a straight lift leaves of the gap, {}: {}",
            seat.called(),
            words::limit(roll.value, "deg"),
            left.iter().map(said).collect::<Vec<_>>().join("; "),
            rubs(judged),
        ))
    })
}

/// What is left of the gap in each place of the oar.
fn left_in_roll(seat: &SeatSight) -> Result<Vec<(String, Budget)>, Lack> {
    let at = |attitude: Attitude| {
        let angle = seat.oar_angle(attitude)?;
        let degrees = words::limit(angle.value().abs(), "deg");
        let left = seat.clearance_in_roll_at(&Ok(angle))?;
        Ok((format!("{} ({degrees})", attitude.words()), left))
    };
    let along = ("with the oar along the boat".to_owned(), seat.clearance_in_roll()?);
    Ok(vec![at(Attitude::Catch)?, at(Attitude::Finish)?, along])
}

/// How much it rubs; where that is next to nothing, or in doubt, so it is said.
fn rubs(judged: &Judged) -> String {
    let by = words::number(judged.by, "mm");
    let much = if by == words::number(0.0, "mm") {
        "it only just rubs".to_owned()
    } else {
        format!("{by} too little not to rub")
    };
    if judged.proven { much } else { format!("{much}, too close to call") }
}

fn said((place, left): &(String, Budget)) -> String {
    format!("{place} {}", words::measured(left, Unit::Mm))
}
