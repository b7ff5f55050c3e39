//! A waiver that no longer counts.

use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;

pub(super) static RULE: Rule = Rule {
    id: "waiver-lapsed",
    level: Level::Fault,
    checks: "A waiver's last day is past or can't be read, or the value has moved further out than it was granted for.",
    reason: "A waiver is for one value and one season. When either has passed, someone must look at the boat again.",
    remedy: "Put the boat right and take the waiver out, or have it granted anew for the value of today.",
    formula: "last day >= today, and the value no further out than `at`",
    default: "-",
    sources: &[sources::FORMAT.at("waivers")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "", "foot-straps: ok", "foot-straps: watch"),
            (
                "waivers.yaml",
                "",
                "",
                "- finding: kittiwake/rigged/walk-round/foot-straps\n  rule: walk-round\n  because: new straps are on order\n  by: Tomas Reyne\n  until: 2026-10-31  # <--\n",
            ),
        ],
        right: &[
            ("boats/kittiwake.yaml", "", "foot-straps: ok", "foot-straps: watch"),
            (
                "waivers.yaml",
                "",
                "",
                "- finding: kittiwake/rigged/walk-round/foot-straps\n  rule: walk-round\n  because: new straps are on order\n  by: Tomas Reyne\n  until: 2026-11-01\n",
            ),
        ],
    },
    looks: Looks::WhileWaiving,
};
