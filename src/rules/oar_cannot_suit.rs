//! An oar for which there is no right gap.

use super::finding::Finding;
use super::finding::Outcome;
use super::judging::Range;
use super::judging::not_checked;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::words;
use crate::model::LimitKey;
use crate::working::Budget;
use crate::working::Lack;
use crate::working::SeatSight;
use crate::working::Unit;
use crate::working::Worked;

pub(super) static RULE: Rule = Rule {
    id: "oar-cannot-suit",
    level: Level::Fault,
    checks: "The shaft is so far from round that no gap both clears its widest section and holds its narrowest.",
    reason: "Open the gap and she loses the oar; close it and the oar may jam. No bending helps: it is the shaft or its leather.",
    remedy: "Put on a leather that brings the widest and the narrowest section nearer to each other, or give the seat another oar; leave the horns as they are.",
    formula: "widest - narrowest against the limit of looseness less the limit of clearance",
    default: "at most 10 mm",
    sources: &[
        sources::GEOMETRY.at("widest + clearance must be no more than narrowest + looseness"),
        sources::CLUB.at("both limits"),
    ],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "seat: 1", "oar: A1", "oar: A1  # <--"),
            ("oars/long-ash.yaml", "oar: A1", "widest: 52", "widest: 58"),
        ],
        right: &[
            (
                "oars/long-ash.yaml",
                "oar: A1",
                "widest: 52, narrowest: 46",
                "widest: 52.5, narrowest: 45",
            ),
            ("boats/kittiwake.yaml", "seat: 1", "clearance: 8.0", "clearance: 7.5"),
        ],
    },
    looks: Looks::AtEachSeat(check),
};

fn check(seat: &SeatSight) -> Vec<Outcome> {
    let (Some(oar), Some(place)) = (seat.oar, seat.seat.oar.as_ref().map(|oar| oar.place)) else {
        let lack = Lack::NotMeasured(vec!["oar".to_owned()]);
        return vec![not_checked(&RULE, &seat.name().at("oar"), &lack)];
    };
    let name = seat.name().at("oar");
    let (clears, holds) = (LimitKey::Clearance, LimitKey::Loose);
    let range = Range::between(seat.at.in_force, clears, holds, Unit::Mm);
    Range::finding(range.as_ref(), &RULE, &name, &out_of_round(seat), |value, judged, range| {
        let by = words::number(judged.by, "mm");
        let finding = Finding::new(&RULE, name.clone(), place, "this oar")
            .saying(format!(
                "{}: no gap suits this oar: its widest and narrowest part differ by {}: {}",
                seat.called(),
                words::measured(value, Unit::Mm),
                range.beyond(judged),
            ))
            .remedy(format!(
                "Put on a leather that brings the widest and the narrowest part nearer by at least {by}, or give the seat another oar. Leave the horns as they are."
            ));
        let widest = oar.shaft.widest().map(|widest| (widest.place, "widest"));
        let narrowest = oar.shaft.narrowest().map(|narrowest| (narrowest.place, "narrowest"));
        let parts = [widest, narrowest].into_iter().flatten();
        parts.fold(finding, |finding, (place, which)| {
            finding.also(place, format!("the {which} part of its shaft"))
        })
    })
}

fn out_of_round(seat: &SeatSight) -> Worked {
    let (widest, narrowest) = (seat.widest(), seat.narrowest());
    if seat.oar.is_some_and(|oar| oar.shaft.widest() == oar.shaft.narrowest()) {
        return widest.map(|_| Budget::exact(0.0));
    }
    Ok(widest?.minus(&narrowest?))
}
