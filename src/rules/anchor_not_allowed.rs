//! A value that stands for another one.

use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;

pub(super) static RULE: Rule = Rule {
    id: "anchor-not-allowed",
    level: Level::Fault,
    checks: "A value is named with & and used again with *, or keys are taken in with <<.",
    reason: "Two seats that share one written figure were not both measured, and one change would move both.",
    remedy: "Write every value out; if the sign belongs to a text, put quotes round it.",
    formula: "no &name, no *name, no <<",
    default: "-",
    sources: &[
        sources::YAML.at("7.1, alias nodes; 6.9.2, node anchors"),
        sources::FORMAT.at("what YAML of it is read"),
    ],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "seat: 1", "gap: 60", "gap: &gap 60  # <--"),
            ("boats/kittiwake.yaml", "seat: 2", "gap: 60", "gap: *gap  # <--"),
            (
                "boats/kittiwake.yaml",
                "seat: 3",
                "lifts-out: {square: freely,",
                "lifts-out: {<<: {square: freely},  # <--\n      square: freely,",
            ),
        ],
        right: &[
            ("boats/kittiwake.yaml", "", "name: Kittiwake", "name: '&Kittiwake'"),
            ("boats/kittiwake.yaml", "", "wind: light", "wind: light & steady"),
        ],
    },
    looks: Looks::WhileReading,
};
