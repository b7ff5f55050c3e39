//! A reading that says something else than in the commit before, of the same day.

use super::finding::Finding;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use crate::model::Name;
use crate::model::Place;
use crate::units::Date;

pub(super) static RULE: Rule = Rule {
    id: "changed-but-not-remeasured",
    level: Level::Fault,
    checks: "A reading differs from the commit before, and the day it was read on is not a newer one. Within a day of reading it is a note only: a slip of the pen, put right.",
    reason: "A number that changes without a new reading was either wrong before or is wrong now, \
             and nobody can tell which.",
    remedy: "Measure it again and write the new day: rigged/date when all was read, else an entry under read-again. If it was not read again, put the old value back.",
    formula: "the value now is not the value in any parent commit, and its day is not later than there",
    default: "-",
    sources: &[sources::CLUB.at("a change of a reading is a new reading")],
    example: Example {
        wrong: &[(
            "boats/kittiwake.yaml",
            "seat: 2",
            "chock-to-pin: 600",
            "chock-to-pin: 602  # <--",
        )],
        right: &[
            ("boats/kittiwake.yaml", "rigged", "date: 2026-10-17", "date: 2026-10-31"),
            ("boats/kittiwake.yaml", "seat: 2", "chock-to-pin: 600", "chock-to-pin: 602"),
        ],
    },
    looks: Looks::BesideEarlier,
};

/// A day after the reading it may still be put right.
const PUT_RIGHT_WITHIN: i64 = 1;

/// A reading that differs from what stood in the commit before.
#[derive(Clone, Debug, PartialEq)]
pub struct ChangedReading {
    /// Its name.
    pub name: Name,
    /// Where it stands now.
    pub place: Place,
    /// What stood there, as it was written.
    pub old: String,
    /// What stands there now.
    pub new: String,
    /// The day on which it was read, as the record says now.
    pub read_on: Date,
    /// The day that the record gave before.
    pub read_before: Date,
}

/// Tells every reading that changed and was not read on a later day.
pub(super) fn findings(changed: &[ChangedReading], today: Date) -> Vec<Finding> {
    let not_later = changed.iter().filter(|one| one.read_on <= one.read_before);
    not_later.map(|one| finding(one, today)).collect()
}

fn finding(one: &ChangedReading, today: Date) -> Finding {
    let ChangedReading { name, place, old, new, read_on, .. } = one;
    let at_once = (0..=PUT_RIGHT_WITHIN).contains(&today.days_after(*read_on));
    let finding = Finding::new(&RULE, name.clone(), *place, format!("was {old}"))
        .saying(format!("{name}: {old} became {new}, but it is still the reading of {read_on}"));
    if at_once { finding.level(Level::Note) } else { finding }
}
