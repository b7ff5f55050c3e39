//! Readings that no second person looked at.

use super::finding::Finding;
use super::finding::Outcome;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use crate::model::Name;
use crate::model::Placed;
use crate::working::BoatSight;

pub(super) static RULE: Rule = Rule {
    id: "not-signed-off",
    level: Level::Unsure,
    checks: "Readings were checked by nobody, or by the one who took them.",
    reason: "A number misread or written into the wrong line is seen by a second pair of eyes, and \
             hardly ever by the first.",
    remedy: "Have a second person read the values again at the boat, and write the name under checked-by.",
    formula: "checked-by is there and is another name than by; capitals and blanks make no other name",
    default: "-",
    sources: &[sources::PRACTICE.at("two persons sign for a boat")],
    example: Example {
        wrong: &[
            (
                "boats/kittiwake.yaml",
                "rigged",
                "checked-by: Tomas Reyne",
                "checked-by: ines marlow  # <--",
            ),
            (
                "boats/kittiwake.yaml",
                "",
                "seats:\n",
                "read-again:\n  - {date: 2026-10-24, by: Tomas Reyne, values: [seat-2/rowlock/gap]}  # <--\nseats:\n",
            ),
        ],
        right: &[(
            "boats/kittiwake.yaml",
            "",
            "seats:\n",
            "read-again:\n  - {date: 2026-10-24, by: Tomas Reyne, checked-by: Ines Marlow, values: [seat-2/rowlock/gap]}\nseats:\n",
        )],
    },
    looks: Looks::AtEachBoat(check),
};

fn check(boat: &BoatSight) -> Vec<Outcome> {
    let record = boat.boat.record();
    let rigged = &boat.boat.rigged;
    let day = one(boat, record.at("rigged"), rigged.by.as_ref(), rigged.checked_by.as_ref());
    let again = boat.boat.read_again.iter().zip(1..).filter_map(|(again, number)| {
        let name = record.at("read-again").at(number);
        one(boat, name, again.by.as_ref(), again.checked_by.as_ref())
    });
    day.into_iter().chain(again).collect()
}

/// Judges one pair of names; who measured must be there, and is told where it is not.
fn one(
    boat: &BoatSight,
    name: Name,
    by: Option<&Placed<String>>,
    checked_by: Option<&Placed<String>>,
) -> Option<Outcome> {
    let by = by?;
    let called = boat.boat.called();
    let name = name.at("checked-by");
    let finding = match checked_by {
        None => Finding::new(&RULE, name, by.place, "measured by")
            .saying(format!("{called}: what {} measured was checked by nobody", by.value)),
        Some(checked) if same(&by.value, &checked.value) => {
            Finding::new(&RULE, name, checked.place, "checked by the same person")
                .also(by.place, "measured by")
                .saying(format!("{called}: {} measured and checked", by.value))
        }
        Some(_) => return None,
    };
    Some(finding.found())
}

fn same(one: &str, other: &str) -> bool {
    let plain = |name: &str| name.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase();
    plain(one) == plain(other)
}
