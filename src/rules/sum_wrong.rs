//! A worked-out value that the readings don't give.

use super::finding::Figure;
use super::finding::Finding;
use super::finding::Outcome;
use super::judging::judged_sum;
use super::judging::not_checked;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::sum::Against;
use super::words;
use crate::metrology::decision;
use crate::model::Placed;
use crate::model::Stated;
use crate::working::Budget;
use crate::working::SeatSight;
use crate::working::Sum;
use crate::working::Unit;

pub(super) static RULE: Rule = Rule {
    id: "sum-wrong",
    level: Level::Fault,
    checks: "A value under worked-out is not what the readings beside it give, rounded as it is written.",
    reason: "People rig by the worked-out value. If it does not follow from the readings, one of the \
             two was changed without the other, and nobody can say which is the boat.",
    remedy: "Look whether the reading or the sum was changed. When the reading stands, write what it gives, or run `tholebook derive --write`.",
    formula: "the written value less the computed one is at most half of its last digit",
    default: "half of the last digit written",
    sources: &[sources::FORMAT.at("worked-out values")],
    example: Example {
        wrong: &[
            (
                "boats/kittiwake.yaml",
                "seat: 2",
                "worked-out: {pitch: 3.58 deg",
                "worked-out: {pitch: 3.68 deg",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 2",
                "lean-out: -0.29 deg}",
                "lean-out: -0.29 deg}  # <--",
            ),
        ],
        right: &[(
            "boats/kittiwake.yaml",
            "seat: 2",
            "worked-out: {pitch: 3.58 deg",
            "worked-out: {pitch: 3.6 deg",
        )],
    },
    looks: Looks::AtEachSeat(check),
};

fn check(seat: &SeatSight) -> Vec<Outcome> {
    seat.sums().iter().flat_map(|sum| one(seat, sum)).collect()
}

fn one(seat: &SeatSight, sum: &Sum) -> Vec<Outcome> {
    let Some(stated) = sum.stated else { return Vec::new() };
    let name = seat.name().at("worked-out").at(sum.key);
    let worked = match &sum.worked {
        Ok(worked) => worked,
        Err(lack) => return vec![not_checked(&RULE, &name, lack)],
    };
    let Stated { value, half_digit } = stated.value;
    let against = Against::Written { value, half_digit };
    let judged = judged_sum(&RULE, &name, worked, sum.unit, against);
    if !decision::disagrees(value - worked.value(), half_digit) {
        return vec![judged];
    }
    let gives = words::number(worked.value(), sum.unit.word());
    let finding = Finding::new(&RULE, name, stated.place, format!("the readings give {gives}"))
        .saying(format!(
            "{}: {} is written as {}; the readings give {gives}",
            seat.called(),
            sum.key.replace('-', " "),
            written(stated, sum.unit),
        ))
        .remedy(format!(
            "If the readings stand, write {gives}, or run `tholebook derive --write`; if not, put the reading right."
        ))
        .judged(Figure { number: value, uncertainty: None, unit: sum.unit.word() }, None);
    vec![with_inputs(seat, finding, worked).found(), judged]
}

/// Returns a stated value with as many decimals as it was written with.
fn written(stated: Placed<Stated>, unit: Unit) -> String {
    let Stated { value, half_digit } = stated.value;
    let places = (0_usize..6).find(|places| {
        let digit = 10_f64.powi(-i32::try_from(*places).unwrap_or(0));
        digit <= 2.0 * half_digit * (1.0 + decision::GRAIN)
    });
    let places = places.unwrap_or(6);
    format!("{value:.places$} {}", unit.word()).trim_end().to_owned()
}

/// Labels every reading of the book that the sum rests on, each place once.
fn with_inputs(seat: &SeatSight, finding: Finding, worked: &Budget) -> Finding {
    let inputs = worked.parts().iter().map(|part| part.input);
    let own = inputs.filter(|input| !seat.at.book.file(input.place.file).built_in);
    own.fold(finding, |finding, input| {
        if finding.labels.iter().any(|label| label.place == input.place) {
            return finding;
        }
        let value = words::number(input.value, input.unit.word());
        finding.also(input.place, format!("{}: {value}", input.what))
    })
}
