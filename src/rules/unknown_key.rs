//! A key that has no meaning.

use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;

pub(super) static RULE: Rule = Rule {
    id: "unknown-key",
    level: Level::Fault,
    checks: "A key has no meaning where it stands.",
    reason: "A reading under a misspelt key would be passed over, and nobody would miss it.",
    remedy: "Spell the key as the format does, or begin it with x- if it is the club's own.",
    formula: "every key is one of the format's, or begins with x-",
    default: "-",
    sources: &[sources::FORMAT.at("keys")],
    example: Example {
        wrong: &[(
            "boats/kittiwake.yaml",
            "",
            "foot-holes: {first: 820",
            "gap-note: none  # <--\nfoot-holes: {first: 820",
        )],
        right: &[(
            "boats/kittiwake.yaml",
            "",
            "foot-holes: {first: 820",
            "x-gap-note: none\nfoot-holes: {first: 820",
        )],
    },
    looks: Looks::WhileReading,
};
