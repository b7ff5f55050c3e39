//! A text that is larger than any record.

use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;

pub(super) static RULE: Rule = Rule {
    id: "too-large",
    level: Level::Fault,
    checks: "A file is longer than 1 MiB, holds more than 50 000 keys and values, or more than 32 lists and groups one inside the other.",
    reason: "No boat needs that much. It would be read for minutes, or it is not a record at all.",
    remedy: "Take out what is no record, or give each record a file of its own.",
    formula: "bytes <= 1 048 576, keys and values <= 50 000, depth <= 32",
    default: "-",
    sources: &[sources::FORMAT.at("what a file may hold")],
    example: Example {
        wrong: &[(
            "crews/veterans.yaml",
            "",
            "",
            "crew: veterans\nx-deep: [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]  # <--\n",
        )],
        right: &[(
            "crews/veterans.yaml",
            "",
            "",
            "crew: veterans\nboat: kittiwake\nx-deep: [[[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]]]\n",
        )],
    },
    looks: Looks::WhileReading,
};
