//! A blade and a plumb bob that say different things of one pin.

use super::finding::Finding;
use super::finding::Outcome;
use super::judging::judged_sum;
use super::judging::not_checked;
use super::leaning::Leaning;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::sum::Against;
use super::words;
use crate::metrology::decision::disagrees;
use crate::working::Attitude;
use crate::working::Budget;
use crate::working::SeatSight;
use crate::working::Unit;
use crate::working::Worked;

pub(super) static RULE: Rule = Rule {
    id: "arc-disagrees",
    level: Level::Note,
    checks: "The lean of the pin that the blade's three pitches imply is not the lean that was plumbed, by more than both are good to.",
    reason: "Both show the same pin. Where they disagree, something else moves the blade: play on the pin, a worn leather, a twisted flat, or an oar not laid at the angle written.",
    remedy: "Look for play on the pin, a worn leather and a twisted flat, and check the oar angles written; then read the three pitches again, the shaft pressed on the forward horn.",
    formula: "|implied lean - plumbed lean| against how good the difference is, fore and aft and in and out",
    default: "-",
    sources: &[
        sources::GEOMETRY.at("pitch at three oar angles solved for the pin's lean"),
        sources::GUM.at("5.2, what two values share cancels in their difference"),
    ],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "seat: 1", "out: -0.5", "out: 4"),
            (
                "boats/kittiwake.yaml",
                "seat: 1",
                "pitch: {catch: 11, square: 11, finish: 11}",
                "pitch: {catch: 11, square: 11, finish: 11}  # <--",
            ),
            ("boats/kittiwake.yaml", "seat: 2", "out: -0.5", "out: -4"),
            (
                "boats/kittiwake.yaml",
                "seat: 2",
                "pitch: {catch: 11, square: 11, finish: 11}",
                "pitch: {catch: 11, square: 11, finish: 11}  # <--",
            ),
        ],
        right: &[
            ("boats/kittiwake.yaml", "seat: 1", "out: -0.5", "out: 0.6"),
            ("boats/kittiwake.yaml", "seat: 1", "lean-out: -0.09 deg", "lean-out: 0.33 deg"),
        ],
    },
    looks: Looks::AtEachSeat(check),
};

/// One axis on which blade and bob disagree.
struct Disagreement {
    way: Leaning,
    implied: Budget,
    plumbed: Budget,
    difference: Budget,
}

fn check(seat: &SeatSight) -> Vec<Outcome> {
    if seat.hands_set_pitch() {
        return Vec::new();
    }
    let name = seat.name().at("pitch");
    let implied = match seat.arc_lean() {
        Ok(implied) => implied,
        Err(lack) => return vec![not_checked(&RULE, &name, &lack)],
    };
    let mut outcomes = Vec::new();
    let mut found = Vec::new();
    let plumbed: [(Leaning, Budget, Worked); 2] = [
        (Leaning::Aft, implied.aft, seat.lean_aft()),
        (Leaning::Out, implied.out, seat.lean_out()),
    ];
    for (way, implied, plumbed) in plumbed {
        match plumbed {
            Ok(plumbed) => {
                let apart = implied.minus(&plumbed);
                outcomes.push(judged_sum(&RULE, &name, &apart, Unit::Deg, Against::Agreement));
                found.extend(disagreement(way, implied, plumbed));
            }
            Err(lack) => outcomes.push(not_checked(&RULE, &name, &lack)),
        }
    }
    outcomes.extend(finding(seat, &found).map(Finding::found));
    outcomes
}

fn disagreement(way: Leaning, implied: Budget, plumbed: Budget) -> Option<Disagreement> {
    let difference = implied.minus(&plumbed);
    disagrees(difference.value(), difference.expanded()).then_some(Disagreement {
        way,
        implied,
        plumbed,
        difference,
    })
}

/// One finding for both axes, with the figure of the one that disagrees more.
fn finding(seat: &SeatSight, found: &[Disagreement]) -> Option<Finding> {
    let sure = |one: &Disagreement| one.difference.value().abs() / one.difference.expanded();
    let worst = found.iter().max_by(|one, other| sure(one).total_cmp(&sure(other)))?;
    let said: Vec<String> = found.iter().map(said).collect();
    let square = seat.pitch_reading(Attitude::Square);
    let place = square.map_or(seat.seat.place, |reading| reading.place);
    let lean = &seat.seat.pin.lean;
    let mut finding = Finding::new(&RULE, seat.name().at("pitch"), place, "pitch of this blade")
        .saying(format!("{}: {}", seat.called(), said.join("; ")))
        .judged(words::figure(&worst.difference, Unit::Deg), None);
    for one in found {
        let reading = match one.way {
            Leaning::Aft => lean.aft.as_ref(),
            Leaning::Out => lean.out.as_ref(),
        };
        if let Some(reading) = reading {
            finding = finding.also(reading.place, format!("plumbed lean {}", one.way.axis()));
        }
    }
    Some(finding)
}

fn said(one: &Disagreement) -> String {
    let lean = |lean: &Budget| {
        let degrees = words::number(lean.value().abs(), "deg");
        let good = words::number(lean.expanded(), "deg");
        format!("{degrees} {}, good to ± {good}", one.way.towards(lean.value()))
    };
    format!(
        "plumbed, the pin leans {}; by the blade, {}: they differ {} by {}, good to ± {}",
        lean(&one.plumbed),
        lean(&one.implied),
        one.way.axis(),
        words::number(one.difference.value().abs(), "deg"),
        words::number(one.difference.expanded(), "deg"),
    )
}
