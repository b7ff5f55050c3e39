//! A key that must be there.

use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;

pub(super) static RULE: Rule = Rule {
    id: "missing-key",
    level: Level::Fault,
    checks: "A record, a seat, an oar or an entry lacks a key without which it says nothing.",
    reason: "Readings without a day, a name or a side can't be trusted, compared or corrected.",
    remedy: "Write the key and its value where the record is shown.",
    formula: "the keys that must be there: boat, class, oars, rigged date and by; seat, side, oar; and their like",
    default: "-",
    sources: &[sources::FORMAT.at("what must be there")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "", "class: surfboat\n", ""),
            ("boats/kittiwake.yaml", "", "boat: kittiwake", "boat: kittiwake  # <--"),
            (
                "boats/kittiwake.yaml",
                "",
                "date: 2026-10-17\n  by: Ines Marlow",
                "date: 2026-10-17  # <--",
            ),
            ("boats/kittiwake.yaml", "seat: 2", "side: port\n    ", ""),
            ("boats/kittiwake.yaml", "", "- seat: 2", "- seat: 2  # <--"),
            ("boats/kittiwake.yaml", "seat: 3", "oar: A3", "oar:  # <--"),
            (
                "waivers.yaml",
                "",
                "",
                "- finding: kittiwake/seat-2/pitch  # <--\n  rule: pitch-mismatch\n  by: Tomas Reyne\n  until: 2026-12-31\n",
            ),
        ],
        right: &[("boats/kittiwake.yaml", "", "name: Kittiwake\n", "")],
    },
    looks: Looks::WhileReading,
};
