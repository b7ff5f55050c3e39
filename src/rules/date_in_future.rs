//! A day that has not come yet.

use super::finding::Finding;
use super::finding::Outcome;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use crate::model::Book;
use crate::model::Name;
use crate::model::Placed;
use crate::units::Date;

pub(super) static RULE: Rule = Rule {
    id: "date-in-future",
    level: Level::Fault,
    checks: "A day on which something is said to have been done is later than today.",
    reason: "Readings dated ahead never fall due, and a knock or a defect dated ahead is passed over \
             until then.",
    remedy: "Write the day it was done, year first: 2026-10-17; or put the clock right.",
    formula: "the day is later than today, or than the day given with --as-of",
    default: "-",
    sources: &[sources::ISO_8601.at("calendar dates")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "rigged", "date: 2026-10-17", "date: 2026-12-17  # <--"),
            (
                "oars/long-ash.yaml",
                "",
                "{date: 2026-10-03, by: Ines Marlow, checked-by: Tomas Reyne}",
                "{date: 2026-11-02, by: Ines Marlow, checked-by: Tomas Reyne}  # <--",
            ),
        ],
        right: &[("oars/long-ash.yaml", "", "date: 2026-10-03", "date: 2026-11-01")],
    },
    looks: Looks::AtTheBook(check),
};

fn check(book: &Book, today: Date) -> Vec<Outcome> {
    let ahead = book.days().into_iter().filter(|day| day.value > today);
    ahead.map(|day| one(book, day, today)).collect()
}

fn one(book: &Book, day: Placed<Date>, today: Date) -> Outcome {
    let file = || Name::record(&book.file(day.place.file).path);
    let name = book.name_at(day.place).cloned().unwrap_or_else(file);
    Finding::new(&RULE, name.clone(), day.place, "not yet")
        .saying(format!("{name} is {}: later than today, {today}", day.value))
        .found()
}
