//! A text where a day belongs.

use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;

pub(super) static RULE: Rule = Rule {
    id: "not-a-date",
    level: Level::Fault,
    checks: "A day is not written as year, month, day, or no month has it.",
    reason: "03-10 is March to one reader and October to another. How old a reading is decides whether it still counts.",
    remedy: "Write the year, the month and the day: 2026-10-17.",
    formula: "YYYY-MM-DD, and a day of the calendar",
    default: "-",
    sources: &[sources::ISO_8601.at("calendar date, extended format")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "", "date: 2026-10-17", "date: 17.10.2026  # <--"),
            (
                "boats/kittiwake.yaml",
                "",
                "found-afloat: 2026-09-05}",
                "found-afloat: 2026-09-31}  # <--",
            ),
            ("oars/long-ash.yaml", "", "date: 2026-10-03, by", "date: 2026-10, by"),
            ("oars/long-ash.yaml", "", "Tomas Reyne}", "Tomas Reyne}  # <--"),
        ],
        right: &[("boats/kittiwake.yaml", "", "date: 2026-10-17", "date: '2026-10-17'")],
    },
    looks: Looks::WhileReading,
};
