//! A tag before a value.

use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;

pub(super) static RULE: Rule = Rule {
    id: "tag-not-allowed",
    level: Level::Fault,
    checks: "A value begins with a ! and a word that says how it is to be read.",
    reason: "What a value is follows from its field. A tag could make a number of a text, or worse.",
    remedy: "Take the tag out; if the ! belongs to a text, put quotes round it.",
    formula: "no value is tagged",
    default: "-",
    sources: &[sources::YAML.at("6.9.1, node tags"), sources::FORMAT.at("what YAML of it is read")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "", "name: Kittiwake", "name: !!str Kittiwake  # <--"),
            ("boats/kittiwake.yaml", "seat: 1", "gap: 60", "gap: !mm 60  # <--"),
        ],
        right: &[
            ("boats/kittiwake.yaml", "", "name: Kittiwake", "name: '!Kittiwake'"),
            ("boats/kittiwake.yaml", "", "wind: light", "wind: light!"),
        ],
    },
    looks: Looks::WhileReading,
};
