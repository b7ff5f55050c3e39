//! A text that can't be an id.

use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;

pub(super) static RULE: Rule = Rule {
    id: "wrong-id",
    level: Level::Fault,
    checks: "An id does not begin with a letter, holds something else than letters, digits and hyphens, or is a word that some YAML readers take for yes or no.",
    reason: "Ids stand in names such as kittiwake/seat-2/pitch. One that is read in two ways names two things.",
    remedy: "Begin it with a letter, then letters, digits and hyphens; not yes, no, on, off or their like.",
    formula: "a letter, then letters, digits, hyphens; at most 100; none of y n yes no on off true false null",
    default: "-",
    sources: &[sources::FORMAT.at("ids")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "", "spares: [A5]", "spares: [A5, no]  # <--"),
            ("boats/kittiwake.yaml", "seat: 2", "oar: A2", "oar: 2A  # <--"),
            ("boats/kittiwake.yaml", "seat: 3", "oar: A3", "oar: A 3  # <--"),
            ("crews/veterans.yaml", "", "", "crew: yes  # <--\nboat: kittiwake\n"),
        ],
        right: &[("crews/veterans.yaml", "", "", "crew: yes-sir\nboat: kittiwake\n")],
    },
    looks: Looks::WhileReading,
};
