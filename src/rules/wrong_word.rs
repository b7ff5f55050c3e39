//! A word that has no meaning where it stands.

use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;

pub(super) static RULE: Rule = Rule {
    id: "wrong-word",
    level: Level::Fault,
    checks: "A field that takes one of a few words holds another.",
    reason: "A rowlock that turns easy may be free or stiff, and the difference is a rower's wrist.",
    remedy: "Write one of the words that are read there.",
    formula: "the word is one of the field's",
    default: "-",
    sources: &[sources::FORMAT.at("fixed words")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "seat: 1", "turns: free", "turns: fre  # <--"),
            ("boats/kittiwake.yaml", "seat: 2", "side: port", "side: left  # <--"),
            ("boats/kittiwake.yaml", "", "bung: ok", "bung: fine  # <--"),
            ("oars/long-ash.yaml", "oar: A3", "bears: flat", "bears: [flat]"),
            ("oars/long-ash.yaml", "oar: A2", "state: sound", "state: new  # <--"),
        ],
        right: &[("boats/kittiwake.yaml", "seat: 1", "turns: free", "turns: 'free'")],
    },
    looks: Looks::WhileReading,
};
