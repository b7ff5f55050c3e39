//! A key that is given twice.

use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;

pub(super) static RULE: Rule = Rule {
    id: "key-twice",
    level: Level::Fault,
    checks: "A key stands twice in one group.",
    reason: "Nobody can tell which of the two is the reading. So neither is used.",
    remedy: "Keep the right one and take the other out.",
    formula: "every key of a group is there once",
    default: "-",
    sources: &[sources::YAML.at("3.2.1.3, the keys of a mapping are unique")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "seat: 1", "gap: 60", "gap: 60\n      gap: 61  # <--"),
            ("boats/kittiwake.yaml", "seat: 2", "oar: A2", "oar: A2\n    oar: A3  # <--"),
            (
                "boats/kittiwake.yaml",
                "seat: 3",
                "pitch: {catch: 11,",
                "pitch: {catch: 11, catch: 12,  # <--\n     ",
            ),
            (
                "boats/petrel.yaml",
                "",
                "",
                "boat: petrel\nboat: heron  # <--\nclass: surfboat\noars: long-ash\nrigged: {date: 2026-10-18, by: Ines Marlow}\n",
            ),
        ],
        right: &[("boats/kittiwake.yaml", "seat: 1", "gap: 60", "gap: [60, 60]\n      x-gap: 60")],
    },
    looks: Looks::WhileReading,
};
